"""Asks for a line of words: a note, a reason, a name. Gives the text, or None where it was left."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.widgets import Static

from booth.forms.form import Field, Form, Rows
from booth.screens.dialog import WORK_OVER, Dialog
from booth.screens.form_screen import FormScreen
from booth.widgets.form_view import FormView
from booth.widgets.text import content


class Ask(Dialog[str | None], FormScreen[str | None]):
    """One question, one line to type."""

    WORK = ("units", *WORK_OVER)

    def __init__(
        self, question: str, why: str = "", *, needed: bool = False, text: str = ""
    ) -> None:
        super().__init__(question)
        self.why = why
        self.needed = needed
        self.form: Form = Form(texts={"words": text} if text else {})

    def body(self) -> ComposeResult:
        if self.why:
            yield Static(content(self.why), classes="dialog-text", markup=False)
        yield FormView()

    def fields(self) -> tuple[Field, ...]:
        return (Field("words", "", optional=not self.needed),)

    async def keep(self, rows: Rows) -> str:
        text = rows.row("words").text.strip()
        if self.needed and not text:
            return "A word is needed: Esc leaves."
        await self.close(text or None)
        return ""
