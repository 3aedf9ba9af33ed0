"""A screen that is a form: rows to fill under the law of input, and what becomes of them.

New job, the shop's forms and every question that takes words are such screens.
"""

from __future__ import annotations

from typing import Generic, TypeVar

from booth.forms.edit import edit, other_units, paste
from booth.forms.form import BLANK, Field, Form, Rows, rows_of
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, Framed
from booth.units import System
from booth.widgets.form_view import FormView

T = TypeVar("T")


class FormScreen(Framed[T], Generic[T]):
    """Rows of a form. A subclass gives ``fields`` and ``keep``, and mounts a FormView."""

    SHOWS: tuple[str, ...] = ("units",)
    #: what Enter on the last row does
    KEEP = "keep"

    form: Form = BLANK

    def fields(self) -> tuple[Field, ...]:
        return ()

    async def keep(self, rows: Rows) -> str:
        """Keep what the rows hold and leave; the sentence why not, where that cannot be."""
        return ""

    def erase(self, rows: Rows) -> Deed | None:
        return None

    @property
    def rows(self) -> Rows:
        fields = self.fields()
        first = tuple(field.key for field in fields)
        return rows_of(self.form, fields, self.host.system, first)

    def deed(self, key: Key) -> Deed | None:
        rows = self.rows
        if key.name == "enter":
            return self._enter(rows)
        leaves = super().deed(key)
        if leaves is not None:
            return leaves
        edited = edit(rows, key)
        if edited is not None:
            return Deed(
                edited.word if key.character is None else "", lambda: self.set_form(edited.form)
            )
        if key.name == "backspace" and not self.form.erased:
            return self.erase(rows)
        return None

    def _enter(self, rows: Rows) -> Deed:
        marked = rows.marked
        if marked is not None and marked.lacks:
            why = marked.fault or f"{marked.field.label} is needed."
            word = "what is wrong here" if marked.fault else "what is missing"
            return Deed(word, lambda: self.say(why, fault=True))
        following = rows.after(marked) if marked is not None and self.goes_on(rows) else None
        following = following or rows.waiting
        if following is not None:
            form = self.form.marking(following.key)
            return Deed(f"on: {following.field.label}", lambda: self.set_form(form))
        return Deed(self.KEEP, self._keep)

    def goes_on(self, rows: Rows) -> bool:
        """Whether Enter leads from row to row before anything is kept."""
        return rows.holds

    async def _keep(self) -> None:
        why_not = await self.keep(self.rows)
        if why_not:
            self.say(why_not, fault=True)

    def set_form(self, form: Form) -> None:
        """The form is like this now."""
        self.form = form
        self.say("")

    async def paste(self, text: str) -> None:
        pasted = paste(self.rows, text)
        if pasted is not None:
            self.set_form(pasted)
            self.draw(self.host.clock.now())

    def units_changed(self, before: System) -> None:
        """What was typed keeps its meaning under other units."""
        self.form = other_units(self.form, self.fields(), before, self.host.system)

    def on_form_view_clicked(self, event: FormView.Clicked) -> None:
        event.stop()
        self.form = self.form.marking(event.key)
        if event.by:
            edited = edit(self.rows, Key("right" if event.by > 0 else "left"))
            self.form = edited.form if edited is not None else self.form
        self.draw(self.host.clock.now())

    def draw(self, now: Moment) -> None:
        self.query_one(FormView).shown = self.rows
        super().draw(now)
