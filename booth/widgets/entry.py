"""One row of a form: a label, what is typed or chosen, and what was understood of it.

A quantity is typed freely with or without its unit; what was understood is written beside it before
it is accepted. The row knows its field, not what the field is for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.widgets import Input, Static

from booth.units import (
    EntryError,
    Kind,
    Quantity,
    System,
    echo,
    read,
    read_amount,
    show,
    shown_unit,
)
from booth.widgets.text import content, plain

#: What a field gives: a quantity, a chosen or typed text, or None where it was left empty.
Given = Quantity | str | None


@dataclass(frozen=True, slots=True)
class Field:
    """What a row asks for.

    kind: a quantity of this kind; None with `choices`: one of them (value, words); None without: text.
    amount: volume or weight, either. default: taken where the row is left empty, shown dim.
    """

    key: str
    label: str
    kind: Kind | None = None
    choices: tuple[tuple[str, str], ...] = ()
    amount: bool = False
    optional: bool = False
    default: Given = None
    hint: str = ""

    @property
    def is_quantity(self) -> bool:
        """Whether the row takes a quantity."""
        return self.kind is not None or self.amount


def shown(given: Quantity, field: Field, system: System) -> str:
    """Give a quantity of a field in the painter's units."""
    if field.amount:
        return show(given.value, Kind.MASS if given.unit == "g" else Kind.VOLUME, system)
    assert field.kind is not None
    return show(given.value, field.kind, system)


def understood(text: str, field: Field, system: System) -> Quantity:
    """Read what was typed for a field. Raises EntryError with a sentence."""
    if field.amount:
        return read_amount(text, system)
    assert field.kind is not None
    return read(text, field.kind, system)


class TypedText(Input):
    """The place to type. Keys that the job needs are let through where they cannot be text."""

    class Void(Message):
        """Backspace in an empty entry: void the last one."""

    def __init__(self, *, quantity: bool, placeholder: str = "") -> None:
        super().__init__(placeholder=placeholder, compact=True, select_on_focus=False)
        self.quantity = quantity

    def check_consume_key(self, key: str, character: str | None) -> bool:
        """Let a question mark (never part of a quantity) and the space of an empty entry pass."""
        if self.quantity and character == "?":
            return False
        if key == "space" and not self.value:
            return False
        return super().check_consume_key(key, character)

    def on_key(self, event: events.Key) -> None:
        """Keep the entry from taking what is not for it; the key goes on to the screen, with its time."""
        if (event.key == "space" and not self.value) or (self.quantity and event.character == "?"):
            event.prevent_default()

    def insert_text_at_cursor(self, text: str) -> None:
        """Whatever is typed or pasted, control characters are shown, not kept."""
        super().insert_text_at_cursor(plain(text))

    def action_delete_left(self) -> None:
        """Delete a character; in an empty entry void the last one kept."""
        if self.value:
            super().action_delete_left()
        else:
            self.post_message(self.Void())


class Choice(Static, can_focus=True):
    """One of a few words, changed with the left and right arrows or a click."""

    class Changed(Message):
        """Another one was chosen."""

    def __init__(self, choices: tuple[tuple[str, str], ...], value: str) -> None:
        super().__init__(markup=False)
        self.choices = choices
        keys = [key for key, _ in choices]
        self.index = keys.index(value) if value in keys else 0

    @property
    def value(self) -> str:
        """The chosen key."""
        return self.choices[self.index][0]

    def choose(self, value: str) -> None:
        """Choose by key, without telling."""
        keys = [key for key, _ in self.choices]
        if value in keys:
            self.index = keys.index(value)
            self.refresh(layout=True)

    def render(self) -> Content:
        words = self.choices[self.index][1]
        return Content.assemble(("◂ ", "dim"), content(words), (" ▸", "dim"))

    def turn(self, by: int) -> None:
        """Go on to the next or back to the previous one."""
        self.index = (self.index + by) % len(self.choices)
        self.refresh(layout=True)
        self.post_message(self.Changed())

    def on_key(self, event: events.Key) -> None:
        if event.key in ("left", "right"):
            event.stop()
            self.turn(1 if event.key == "right" else -1)

    def on_click(self, event: events.Click) -> None:
        event.stop()
        self.turn(-1 if event.x < 2 else 1)
        self.focus()


class FieldRow(Horizontal):
    """Label, entry, echo."""

    class Edited(Message):
        """What the row holds has changed."""

    class Entered(Message):
        """Enter was pressed in the row."""

        def __init__(self, row: FieldRow) -> None:
            super().__init__()
            self.row = row

        @property
        def control(self) -> FieldRow:
            """The row it came from."""
            return self.row

    def __init__(self, field: Field, system: Callable[[], System]) -> None:
        super().__init__(id=f"field-{field.key}", classes="field")
        self.field = field
        self._system = system
        self.fault = ""

    def compose(self) -> ComposeResult:
        yield Static(content(self.field.label), classes="field-label", markup=False)
        if self.field.choices:
            value = self.field.default if isinstance(self.field.default, str) else ""
            yield Choice(self.field.choices, value)
        else:
            yield TypedText(quantity=self.field.is_quantity, placeholder=self._placeholder())
        yield Static("", classes="field-echo", markup=False)

    def on_mount(self) -> None:
        self.say()

    def _placeholder(self) -> str:
        field = self.field
        if isinstance(field.default, Quantity):
            return shown(field.default, field, self._system())
        if isinstance(field.default, str):
            return plain(field.default)
        if field.kind is not None and not field.amount:
            return shown_unit(field.kind, self._system())
        return "volume or weight" if field.amount else ""

    @property
    def place(self) -> TypedText | Choice:
        """The widget that takes the focus."""
        if self.field.choices:
            return self.query_one(Choice)
        return self.query_one(TypedText)

    @property
    def typed(self) -> str:
        """What was typed, as it stands."""
        place = self.place
        return place.value

    @property
    def is_empty(self) -> bool:
        """Whether nothing was typed (a choice always holds something)."""
        return not self.field.choices and not self.typed.strip()

    def given(self) -> Given:
        """What the row holds now; its default where it is empty. Raises EntryError with a sentence."""
        field = self.field
        if field.choices:
            return self.typed
        text = self.typed.strip()
        if not text:
            return field.default
        if not field.is_quantity:
            return text
        return understood(text, field, self._system())

    def clear(self) -> None:
        """Empty the entry."""
        if not self.field.choices:
            self.query_one(TypedText).value = ""

    def fill(self, text: str) -> None:
        """Write into the entry as if it had been typed."""
        place = self.place
        if isinstance(place, Choice):
            place.choose(text)
        else:
            place.value = plain(text)
        self.say()

    def offer(self, default: Given) -> None:
        """Change what is taken when the row is left empty."""
        if default == self.field.default:
            return
        self.field = replace(self.field, default=default)
        if not self.field.choices:
            self.query_one(TypedText).placeholder = self._placeholder()
        self.say()

    def units_changed(self, before: System) -> None:
        """A bare number keeps the unit in which it was typed; the rest is only shown anew."""
        if self.field.choices or not self.field.is_quantity:
            return
        text = self.typed.strip()
        if text:
            try:
                was = understood(text, self.field, before)
                if understood(text, self.field, self._system()).value != was.value:
                    kind = self.field.kind or (Kind.MASS if was.unit == "g" else Kind.VOLUME)
                    self.query_one(TypedText).value = f"{text} {shown_unit(kind, before)}"
            except EntryError:
                pass
        self.query_one(TypedText).placeholder = self._placeholder()
        self.say()

    def say(self) -> None:
        """Write beside the entry what was understood, or the sentence that says why not."""
        self.fault = ""
        words = self.field.hint
        if not self.field.is_quantity and not self.field.choices and not self.is_empty:
            words = ""  # what is typed needs the room
        if self.field.is_quantity and not self.is_empty:
            try:
                given = understood(self.typed.strip(), self.field, self._system())
                kind = self.field.kind or (Kind.MASS if given.unit == "g" else Kind.VOLUME)
                words = "= " + echo(given, kind, self._system())
            except EntryError as fault:
                self.fault = str(fault)
                words = self.fault
        self.set_class(bool(self.fault), "-fault")
        self.query_one(".field-echo", Static).update(content(words))

    def on_input_changed(self, event: Input.Changed) -> None:
        event.stop()
        self.say()
        self.post_message(self.Edited())

    def on_choice_changed(self, event: Choice.Changed) -> None:
        event.stop()
        self.post_message(self.Edited())

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        self.post_message(self.Entered(self))
