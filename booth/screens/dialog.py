"""A dialog lies over another screen: a title, something to read or to choose from, its keys.

The sheet is one of them: help, a fault report, an entry that could not be kept.
"""

from __future__ import annotations

from typing import Generic, TypeVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import ModalScreen

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, Framed
from booth.widgets.alarm_field import AlarmField, strip_rows
from booth.widgets.page_view import PageView
from booth.words.shown import Page

T = TypeVar("T")
#: Rows of a dialog besides what it holds (frame, padding, title, keys), and of the screen around it.
AROUND = 10
LEAST_ROWS = 3
#: The commands that work over another screen too.
WORK_OVER: tuple[str, ...] = ("theme", "alarm", "quit")
#: What one press of an arrow scrolls on a sheet.
SHEET_ROWS = 2


class Dialog(Framed[T], ModalScreen[T], Generic[T]):
    """The base of all of them. title: its first line; grave: something went wrong."""

    WORK = WORK_OVER
    SHOWS: tuple[str, ...] = ()

    def __init__(self, title: str, *, grave: bool = False) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.grave = grave

    def heading(self) -> str:
        return self.words

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet -grave" if self.grave else "sheet"):
            yield from super().compose()

    @property
    def room(self) -> int:
        """The rows for what it holds, so that its keys stay in sight in a low window and
        under an alarm."""
        rows = self.size.height or self.app.size.height
        alarms = sum(strip_rows(rows) for each in self.query(AlarmField) if each.display)
        return max(rows - alarms - AROUND, LEAST_ROWS)


class Sheet(Dialog[None]):
    """Title and paragraphs, or a page; any of the usual keys leaves."""

    LEAVES = (
        *("enter", "escape", "space", "pagedown", "backspace"),
        *("question_mark", "f1", "f9", "q"),
    )

    def __init__(self, title: str, told: tuple[str, ...] | Page, *, grave: bool = False) -> None:
        super().__init__(title, grave=grave)
        self.told = told

    def body(self) -> ComposeResult:
        if isinstance(self.told, Page):
            yield PageView(self.told)
            return
        blocks = (("text", each) for paragraph in self.told for each in (paragraph, ""))
        yield PageView(Page(tuple(blocks)))

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("up", "down"):
            by = SHEET_ROWS if key.name == "down" else -SHEET_ROWS
            return Deed("more", lambda: self.query_one(PageView).scroll_by(by))
        return super().deed(key)

    def draw(self, now: Moment) -> None:
        self.query_one(PageView).styles.max_height = self.room
        super().draw(now)
