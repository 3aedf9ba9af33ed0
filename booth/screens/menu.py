"""A menu over the screen: a question, and lines to choose from. Gives which was chosen."""

from __future__ import annotations

from typing import NamedTuple

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Static

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import WORK_OVER, room
from booth.screens.list_screen import MOVES
from booth.widgets.lists import PickList, step
from booth.widgets.text import content
from booth.words.shown import Lines, PickLine


class Taken(NamedTuple):
    """The line that was chosen; typed: the character that begins one's own words there."""

    line: int
    typed: str = ""


class Menu(OwnScreen[Taken | None], ModalScreen[Taken | None]):
    """Arrows or a digit choose, Enter takes, Esc leaves with nothing done.

    words_at: the line for one's own words, if there is one: whoever just types is taken there.
    """

    WORK = WORK_OVER
    SHOWS: tuple[str, ...] = ()

    def __init__(
        self, title: str, lines: tuple[PickLine, ...], words_at: int | None = None
    ) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.lines = lines
        self.words_at = words_at
        self.picked = 0

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet"):
            yield Static(content(self.words), classes="dialog-title", markup=False)
            yield PickList(id="rows")
            yield Static("", classes="dialog-keys", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())

    def deed(self, key: Key) -> Deed | None:
        if key.name in MOVES:
            return Deed("choose", lambda: self._pick(MOVES[key.name]))
        if key.name in ("enter", "space", "pagedown"):
            word = "take it" if key.name == "enter" else ""
            return Deed(word, lambda: self.close(Taken(self.picked)))
        if key.name in ("escape", "backspace", "left", "f9"):
            return Deed("back" if key.name == "escape" else "", lambda: self.close(None))
        if key.character is None or not key.character.isprintable():
            return None
        if self.words_at is not None:
            taken = Taken(self.words_at, key.character)
            return Deed("", lambda: self.close(taken))
        at = int(key.character) - 1 if key.character.isdecimal() else -1
        return Deed("", lambda: self.close(Taken(at))) if 0 <= at < len(self.lines) else None

    async def paste(self, text: str) -> None:
        """A pasted text is one's own words as well."""
        if self.words_at is None:
            return
        await self.close(Taken(self.words_at))
        if isinstance(self.app.screen, OwnScreen):
            await self.app.screen.paste(text)

    def _pick(self, by: int) -> None:
        self.picked = step(self.lines, self.picked, by)

    def on_drawn_picked(self, event: PickList.Picked) -> None:
        event.stop()
        self.picked = event.index
        self.press_soon("enter")

    def draw(self, now: Moment) -> None:
        shown = self.query_one(PickList)
        shown.styles.height = min(len(self.lines), room(self))
        shown.shown = Lines(self.lines, self.picked)
        self.draw_keys()
