"""Asks for a word or two: a note, a reason for a skip. Gives the text, or None where it was left."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.screen import ModalScreen
from textual.widgets import Input, Static

from booth.screens.keyline import clickable
from booth.widgets.entry import TypedText
from booth.widgets.text import content, plain

KEYS = clickable(("Enter keeps it", "enter"), ("Esc leaves", "escape"))


class Ask(ModalScreen[str | None]):
    """One question, one line to type."""

    BINDINGS = [Binding("escape", "leave", "back", show=False)]

    def __init__(
        self, question: str, why: str = "", *, needed: bool = False, text: str = ""
    ) -> None:
        super().__init__(classes="dialog")
        self.text = text
        self.question = question
        self.why = why
        self.needed = needed

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet"):
            yield Static(content(self.question), classes="dialog-title", markup=False)
            if self.why:
                yield Static(content(self.why), classes="dialog-text", markup=False)
            yield TypedText(quantity=False)
            yield Static(KEYS, classes="dialog-keys", markup=False)

    def on_mount(self) -> None:
        entry = self.query_one(TypedText)
        entry.value = plain(self.text)
        entry.cursor_position = len(entry.value)
        self.set_focus(entry)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        text = event.value.strip()
        if self.needed and not text:
            self.query_one(".dialog-keys", Static).update("A word is needed: Esc leaves")
            return
        self.dismiss(text or None)

    def action_leave(self) -> None:
        """Leave without an answer."""
        self.dismiss(None)
