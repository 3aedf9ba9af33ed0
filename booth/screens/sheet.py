"""A sheet of text to read: help, a fault report, an entry that could not be kept."""

from __future__ import annotations

from textual.app import ComposeResult

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.dialog import Dialog
from booth.widgets.page_view import PageView
from booth.words.shown import Page

ROWS = 2


class Sheet(Dialog[None]):
    """Title and paragraphs; any of the usual keys leaves."""

    LEAVES = (
        *("enter", "escape", "space", "pagedown", "backspace"),
        *("question_mark", "f1", "f9", "q"),
    )

    def __init__(self, title: str, paragraphs: tuple[str, ...], *, grave: bool = False) -> None:
        super().__init__(title, grave=grave)
        self.paragraphs = paragraphs

    def body(self) -> ComposeResult:
        blocks = (("text", each) for paragraph in self.paragraphs for each in (paragraph, ""))
        yield PageView(Page(tuple(blocks)))

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("up", "down"):
            by = ROWS if key.name == "down" else -ROWS
            return Deed("more", lambda: self.query_one(PageView).scroll_by(by))
        return super().deed(key)

    def draw(self, now: Moment) -> None:
        self.query_one(PageView).styles.max_height = self.room
        super().draw(now)
