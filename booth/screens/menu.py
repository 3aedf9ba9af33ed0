"""A menu over the screen: a question, and lines to choose from. Gives the chosen line's place."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Static

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.widgets.pick_list import PickList, step
from booth.widgets.text import content
from booth.words.lines import PickLine

MOST_ROWS = 14


class Menu(OwnScreen[int | None], ModalScreen[int | None]):
    """Arrows or a digit choose, Enter takes, Esc leaves with nothing done."""

    SHOWS = ()

    def __init__(self, title: str, lines: tuple[PickLine, ...]) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.lines = lines
        self.picked = 0

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet"):
            yield Static(content(self.words), classes="dialog-title", markup=False)
            yield PickList(id="rows")
            yield Static("", classes="dialog-keys", id="keys", markup=False)

    def on_mount(self) -> None:
        self.query_one(PickList).styles.height = min(len(self.lines), MOST_ROWS)
        self.draw(self.host.clock.now())

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("up", "down"):
            return Deed("choose", lambda: self._pick(1 if key.name == "down" else -1))
        if key.name in ("enter", "space", "pagedown"):
            word = "take it" if key.name == "enter" else ""
            return Deed(word, lambda: self.close(self.picked))
        if key.character is not None and key.character.isdigit():
            at = int(key.character) - 1
            return Deed("", lambda: self.close(at)) if 0 <= at < len(self.lines) else None
        if key.name in ("escape", "backspace", "left", "f9"):
            return Deed("back" if key.name == "escape" else "", lambda: self.close(None))
        return None

    def commands(self) -> tuple[str, ...]:
        return ()

    def _pick(self, by: int) -> None:
        self.picked = step(self.lines, self.picked, by)

    def on_pick_list_picked(self, event: PickList.Picked) -> None:
        event.stop()
        self.picked = event.index
        self.press_soon("enter")

    def draw(self, now: Moment) -> None:
        shown = self.query_one(PickList)
        shown.lines, shown.picked = self.lines, self.picked
        self.draw_keys()
