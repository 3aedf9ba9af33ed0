"""The instrument: a figure as large as the space allows, rows to fill, and what it keeps.

A simple instrument says only which rows it has (``fields``), what they come to (``readout``) and which
event is kept (``event``). One with a clock adds ``go``. It draws its Context and nothing else.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.message import Message
from textual.widget import Widget
from textual.widgets import Static

from booth.instruments.context import Context, Desk
from booth.log.events import Event, Voided
from booth.moment import Moment
from booth.units import EntryError, Quantity, System
from booth.widgets.entry import Choice, Field, FieldRow, Given, TypedText
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.text import content, reflow
from booth.words.last_good_words import starting_points
from booth.words.readout import Readout

Values = Mapping[str, Given]


class Instrument(Vertical):
    """Base of all instruments."""

    class Edited(Message):
        """A row changed: figure and keys are to be drawn anew."""

    #: the kind of step it serves, its name on the screen and in the palette
    KIND: ClassVar[str] = ""
    NAME: ClassVar[str] = ""
    #: the help behind '?': what the figure is, its rule, its source, its limits
    ABOUT: ClassVar[tuple[str, ...]] = ()
    #: which events of the job Backspace voids, the latest first
    KEEPS: ClassVar[tuple[type[Event], ...]] = ()
    #: what Space does, for the key line; empty where it does nothing
    GO: ClassVar[str] = ""
    #: whether the step may be left without having kept anything
    can_be_empty: ClassVar[bool] = False

    def __init__(self, desk: Desk) -> None:
        super().__init__(id="instrument", classes=f"instrument kind-{self.KIND or 'plain'}")
        self.desk = desk
        self._record: str | None = None
        self._fields: tuple[Field, ...] = ()
        self._system: System = desk.context.system
        self._typed_at: Widget | None = None  # the row that a running clock hides

    # -- what each instrument says ----------------------------------------------------------

    def fields(self, context: Context) -> tuple[Field, ...]:
        """The rows to fill."""
        return ()

    def readout(self, context: Context, values: Values) -> Readout:
        """The figure that matters, from the job and from what the rows hold now."""
        raise LookupError(f"{type(self).__name__} has no readout")

    def record(self, context: Context) -> tuple[str, ...]:
        """Lines of what was kept in this step so far, the latest last."""
        return ()

    def event(self, context: Context, values: Values) -> Event | None:
        """The event that the filled rows make; None where the instrument keeps none this way."""
        return None

    def kept_any(self, context: Context) -> bool:
        """Whether this step has kept what it is for."""
        return context.job.last_of(*self.KEEPS) is not None

    def go(self, at: Moment) -> None:
        """Space or Page Down, pressed at `at`."""

    @property
    def whole(self) -> bool:
        """Whether all of it is on the screen: not on its way in, not on its way out."""
        return self.is_mounted and self.is_running and not self._pruning

    @property
    def fast(self) -> bool:
        """Whether tenths of a second are running."""
        return False

    @property
    def busy(self) -> bool:
        """Whether leaving now would lose a running clock."""
        return False

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        """The keys that matter now, the most important first: (key, word)."""
        found = [("Space", self.GO)] if self.GO else []
        if self._fields and not self.all_empty:
            row = next((each for each in self.rows if each.place.has_focus), None)
            waiting = row is not None and not row.fault and self._next_to_fill(row) is not None
            return (*found, ("Enter", "next row" if waiting else "keep"))
        return (*found, ("Enter", self.leaving(context)))

    def leaving(self, context: Context) -> str:
        """What an Enter with nothing to keep does, for the key line."""
        if self.kept_any(context):
            return "next step"
        return "skip, say why" if context.step.must else "go on"

    # -- the screen -------------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        context = self.desk.context
        yield Static(content(context.step.name), classes="step-name", markup=False)
        yield Static(
            content(" ".join(reflow(context.step.how))),
            classes="how",
            markup=False,
        )
        yield FigurePanel()
        yield Static("", classes="record", markup=False)
        with Vertical(classes="fields"):
            self._fields = self.fields(context)
            for field in self._fields:
                yield FieldRow(field, lambda: self._system)

    def on_mount(self) -> None:
        self.draw(self.desk.context)
        self.focus_first()

    @property
    def rows(self) -> tuple[FieldRow, ...]:
        """The rows of the form."""
        return tuple(self.query(FieldRow))

    def row(self, key: str) -> FieldRow:
        """The row of this key."""
        return self.query_one(f"#field-{key}", FieldRow)

    @property
    def all_empty(self) -> bool:
        """Whether nothing was typed (choices always hold something)."""
        return all(row.is_empty for row in self.rows if not row.field.choices)

    def values(self) -> dict[str, Given]:
        """What the rows hold; a row that cannot be understood is left out."""
        found: dict[str, Given] = {}
        for row in self.rows:
            try:
                found[row.field.key] = row.given()
            except EntryError:
                continue
        return found

    def focus_first(self) -> None:
        """Put the focus where digits are expected: the first row to type in, else the instrument."""
        for row in self.rows:
            if not row.field.choices:
                self._focus(row.place)
                return
        if self.rows:
            self._focus(self.rows[0].place)
        else:
            self.can_focus = True
            self._focus(self)

    def _focus(self, place: Widget) -> None:
        """Move the focus at once: Widget.focus() does it only after the keys that are waiting."""
        self.screen.set_focus(place)

    def draw(self, context: Context) -> None:
        """Draw the context; called on every event and tick."""
        if not self.is_mounted:
            return
        if context.system != self._system:
            before, self._system = self._system, context.system
            for row in self.rows:
                row.units_changed(before)
        for field in self.fields(context):
            for row in self.rows:
                if row.field.key == field.key:
                    row.offer(field.default)
        self._hide_rows(self.busy)
        self.set_class(bool(self.KEEPS) and self.kept_any(context), "-kept")
        self.query_one(FigurePanel).readout = self.readout(context, self.values())
        text = "\n".join(self.record(context) or self._start(context))
        if text != self._record:
            self._record = text
            shown = self.query_one(".record", Static)
            shown.update(content(text, keep_lines=True))
            shown.set_class(bool(text), "-any")

    def _hide_rows(self, running: bool) -> None:
        """Hide the rows while a clock runs; afterwards the focus is where it was before."""
        if running == self.has_class("-running"):
            return
        self.set_class(running, "-running")
        places = [row.place for row in self.rows]
        focused = self.screen.focused
        if running:
            self._typed_at = focused if focused in places else None
        elif self._typed_at is not None and focused not in places:
            self._focus(self._typed_at)

    def _start(self, context: Context) -> tuple[str, ...]:
        """Until something is kept here: what came out good the last time."""
        words = starting_points(context.good, context.system).get(self.KIND)
        return (words,) if words else ()

    # -- what the painter does --------------------------------------------------------------

    def on_field_row_edited(self, event: FieldRow.Edited) -> None:
        event.stop()
        if not self.all_empty:
            self.desk.say("")  # what was said of the entry before does not stand beside a new one
        self.post_message(self.Edited())

    def on_field_row_entered(self, event: FieldRow.Entered) -> None:
        event.stop()
        self.enter(event.row)

    def on_typed_text_void(self, event: TypedText.Void) -> None:
        event.stop()
        self.void_last()

    def enter(self, row: FieldRow | None = None) -> None:
        """Enter: on to the next row, keep what the rows hold, or go on to the next step."""
        if self.busy:
            self.desk.say("A clock is running here: stop it with Space first.", fault=True)
            return
        if row is None or self.all_empty:
            self.desk.finish_step()
            return
        if row.fault:
            self.desk.say(row.fault, fault=True)
            return
        waiting = self._next_to_fill(row)
        if waiting is not None:
            self._focus(waiting.place)
            return
        self.commit()

    def _next_to_fill(self, row: FieldRow) -> FieldRow | None:
        rows = self.rows
        at = rows.index(row)
        for other in (*rows[at + 1 :], *rows[:at]):
            wanted = not other.field.optional and other.field.default is None
            if other.fault or (wanted and other.is_empty):
                return other
        return None

    def commit(self) -> None:
        """Keep the event that the rows make, and empty them for the next."""
        context = self.desk.context
        event = self.event(context, self.values())
        if event is None or self.desk.keep(event) is None:
            return
        self.clear()

    def clear(self) -> None:
        """Empty the rows."""
        for row in self.rows:
            row.clear()
        self.focus_first()

    def can_void(self, context: Context) -> bool:
        """Whether Backspace has an entry of this step to void."""
        return bool(self.KEEPS) and context.job.last_of(*self.KEEPS) is not None

    def void_last(self) -> None:
        """Void the latest entry that this instrument kept."""
        last = self.desk.context.job.last_of(*self.KEEPS) if self.KEEPS else None
        if last is None:
            self.desk.say("Nothing here to void.")
            return
        if self.desk.keep(Voided(n=0, at=self.desk.context.now, target=last.n)) is not None:
            self.desk.say("Voided. It stays in the log and can be brought back there.")

    def move_focus(self, by: int) -> bool:
        """Up or down among the rows; False where there is none further that way."""
        places = [row.place for row in self.rows]
        focused = self.screen.focused
        if focused not in places:
            return False
        at = places.index(focused) + by  # type: ignore[arg-type]
        if not 0 <= at < len(places):
            return False
        self._focus(places[at])
        return True

    def type_digit(self, character: str) -> bool:
        """A digit typed outside any entry begins the first one."""
        for row in self.rows:
            if not row.field.choices and row.is_empty:
                self._focus(row.place)
                row.fill(character)
                place = row.place
                assert not isinstance(place, Choice)
                place.cursor_position = len(place.value)
                return True
        return False


def quantity(values: Values, key: str) -> Quantity | None:
    """The quantity of a row, if it holds one."""
    given = values.get(key)
    return given if isinstance(given, Quantity) else None


def number(values: Values, key: str) -> float | None:
    """The base value of a row's quantity, if it holds one."""
    given = quantity(values, key)
    return given.value if given is not None else None


def word(values: Values, key: str) -> str:
    """The text or choice of a row; empty where there is none."""
    given = values.get(key)
    return given if isinstance(given, str) else ""
