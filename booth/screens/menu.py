"""A menu over the screen: a question, and lines to choose from. Gives which was chosen."""

from __future__ import annotations

from typing import NamedTuple

from textual.app import ComposeResult

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import Dialog
from booth.screens.list_screen import ListScreen
from booth.widgets.lists import PickList, rows_in_all
from booth.words.shown import PickLine


class Taken(NamedTuple):
    """The line that was chosen; typed: the character that begins one's own words there."""

    line: int
    typed: str = ""


class Menu(Dialog[Taken | None], ListScreen[Taken | None, PickLine]):
    """Arrows or a digit choose, Enter takes, Esc leaves with nothing done.

    words_at: the line for one's own words, if there is one: whoever just types is taken there.
    """

    LEAVES = ("escape", "backspace", "left", "f9")
    BESIDE = False
    CLICK_TAKES = True

    def __init__(
        self, title: str, lines: tuple[PickLine, ...], words_at: int | None = None
    ) -> None:
        super().__init__(title)
        self.choices = lines
        self.words_at = words_at

    def body(self) -> ComposeResult:
        yield PickList(id="rows")

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return self.choices

    def enter(self) -> Deed:
        return Deed("take it", lambda: self.close(Taken(self.picked)))

    def deed(self, key: Key) -> Deed | None:
        found = super().deed(key)
        if found is not None or key.character is None or not key.character.isprintable():
            return found
        if self.words_at is not None:
            taken = Taken(self.words_at, key.character)
            return Deed("", lambda: self.close(taken))
        at = int(key.character) - 1 if key.character.isdecimal() else -1
        return Deed("", lambda: self.close(Taken(at))) if 0 <= at < len(self.choices) else None

    async def paste(self, text: str) -> None:
        """A pasted text is one's own words as well."""
        if self.words_at is None:
            return
        await self.close(Taken(self.words_at))
        if isinstance(self.app.screen, OwnScreen):
            await self.app.screen.paste(text)

    def draw(self, now: Moment) -> None:
        shown = self.query_one(PickList)
        rows = (
            rows_in_all(self.choices, shown.size.width) if shown.size.width else len(self.choices)
        )
        shown.styles.height = min(rows, self.room)
        super().draw(now)
