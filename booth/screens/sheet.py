"""A sheet of text to read: help, a fault report, an entry that could not be kept."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Static

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import WORK_OVER, room
from booth.widgets.page_view import PageView
from booth.widgets.text import content
from booth.words.shown import Page

ROWS = 2
LEAVE = ("enter", "escape", "space", "pagedown", "backspace", "question_mark", "f1", "f9", "q")


class Sheet(OwnScreen[None], ModalScreen[None]):
    """Title and paragraphs; any of the usual keys leaves."""

    WORK = WORK_OVER
    SHOWS: tuple[str, ...] = ()

    def __init__(self, title: str, paragraphs: tuple[str, ...], *, grave: bool = False) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.paragraphs = paragraphs
        self.grave = grave

    def compose(self) -> ComposeResult:
        blocks = (("text", each) for paragraph in self.paragraphs for each in (paragraph, ""))
        with Vertical(classes="sheet -grave" if self.grave else "sheet"):
            yield Static(content(self.words), classes="dialog-title", markup=False)
            yield PageView(Page(tuple(blocks)))
            yield Static("", classes="dialog-keys", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("up", "down"):
            by = ROWS if key.name == "down" else -ROWS
            return Deed("more", lambda: self.query_one(PageView).scroll_by(by))
        if key.name in LEAVE:
            return Deed("back" if key.name == "enter" else "", self.close)
        return None

    def draw(self, now: Moment) -> None:
        self.query_one(PageView).styles.max_height = room(self)
        self.draw_keys()
