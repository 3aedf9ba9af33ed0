"""A sheet of text to read: help, a fault report, an entry that could not be kept."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical, VerticalScroll
from textual.screen import ModalScreen
from textual.widgets import Static

from booth.screens.keyline import clickable
from booth.widgets.text import content

KEYS = clickable(("Enter or Esc goes back", "enter"), ("↑↓ more", "down"))


class Sheet(ModalScreen[None]):
    """Title and paragraphs; any of the usual keys leaves."""

    BINDINGS = [
        Binding("escape,enter,question_mark,f1", "leave", "back", show=False),
        Binding("down", "scroll(1)", show=False),
        Binding("up", "scroll(-1)", show=False),
    ]

    def __init__(self, title: str, paragraphs: tuple[str, ...], *, grave: bool = False) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.paragraphs = paragraphs
        self.grave = grave

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet -grave" if self.grave else "sheet"):
            yield Static(content(self.words), classes="dialog-title", markup=False)
            with VerticalScroll(can_focus=False):
                for paragraph in self.paragraphs:
                    yield Static(
                        content(paragraph, keep_lines=True), classes="paragraph", markup=False
                    )
            yield Static(KEYS, classes="dialog-keys", markup=False)

    def action_leave(self) -> None:
        """Go back."""
        self.dismiss(None)

    def action_scroll(self, by: int) -> None:
        """Scroll by a line."""
        self.query_one(VerticalScroll).scroll_relative(y=by * 2, animate=False)
