"""The instrument: what a step asks for, what it shows, what it keeps. Pure; no widget is known here.

A simple instrument says which rows it has (``fields``), what they come to (``readout``) and which
event is kept (``event``). What keys do is the same for all (``next_act``); one with more to say
answers in ``space``, ``enter`` or ``own``.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, Choice
from booth.bench.context import Context
from booth.clock import local_hhmm
from booth.forms.field import Field
from booth.forms.form import Form, Rows, Values, rows_of
from booth.forms.key import Key
from booth.log.events import Event
from booth.moment import Moment
from booth.units import Quantity
from booth.words.last_good_words import starting_points
from booth.words.pictures import Picture
from booth.words.readout import Readout


class Instrument:
    """Base of all instruments: one object serves every step of its kind, and holds nothing."""

    #: the kind of step it serves, its name on the screen and in the palette
    KIND: ClassVar[str] = ""
    NAME: ClassVar[str] = ""
    #: the help behind '?': what the figure is, its rule, its source, its limits
    ABOUT: ClassVar[tuple[str, ...]] = ()
    #: which events of the job Backspace voids, the latest first
    KEEPS: ClassVar[tuple[type[Event], ...]] = ()
    #: the stopwatch that Space starts here, if it does
    STOPWATCH: ClassVar[str] = ""
    #: whether what Space does here can wait: after a bare number it is the space before the unit
    UNIT_FIRST: ClassVar[bool] = False

    # -- what each instrument says ----------------------------------------------------------

    def fields(self, context: Context) -> tuple[Field, ...]:
        return ()

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return None

    def first(self, context: Context, values: Values) -> str:
        """The key of the row where the form begins; "" for the first to type in."""
        return ""

    def readout(self, context: Context, values: Values) -> Readout | None:
        """The figure that matters, from the job and from what the rows hold now; None for none."""
        return None

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        return ()

    def record(self, context: Context) -> tuple[str, ...]:
        """Lines of what was kept in this step so far, the latest last."""
        return ()

    def event(self, context: Context, values: Values) -> Event | str | None:
        """The event that the filled rows make, or the sentence why they make none; None where
        nothing is kept of them, since they only shape the figure."""
        return "There is nothing to keep here."

    def space(self, context: Context, rows: Rows) -> Act | None:
        return None

    def enter(self, context: Context, rows: Rows) -> Act | None:
        return None

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """What another key does where it is not what it does in every form."""
        return None

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        return None

    def more(self, context: Context, rows: Rows) -> tuple[Choice, ...]:
        """What can be asked for here besides the commands, for the menu of the right arrow."""
        return ()

    def kept_any(self, context: Context) -> bool:
        return bool(self.KEEPS) and context.job.last_of(*self.KEEPS) is not None

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """What Backspace would void: the latest entry of this step first, then what falls with it."""
        last = context.job.last_of(*self.KEEPS) if self.KEEPS else None
        return (last,) if last is not None else ()

    def leaving(self, context: Context) -> tuple[Event, ...]:
        return ()

    def cleared(self, form: Form) -> Form:
        return form.emptied()

    def fast(self, context: Context) -> bool:
        """Whether tenths of a second are running."""
        watch = context.running(self.STOPWATCH)
        return watch is not None and watch.stopped is None

    def frames(self, context: Context) -> int:
        """How many times a second it wants to be drawn; 0 for once, on the whole second."""
        return 10 if self.fast(context) else 0

    def busy(self, context: Context) -> str:
        """Why the step cannot be left with Enter now; "" where it can."""
        return "A stopwatch is running here: Space stops it." if self.fast(context) else ""

    # -- the same for all -------------------------------------------------------------------

    def rows(self, context: Context, form: Form) -> Rows:
        """The form's rows as they stand."""
        fields = self.fields(context)
        every = rows_of(form, fields, context.system)
        wanted = self.wanted(context, every.values)
        first = self.first(context, every.values)
        return rows_of(form, fields, context.system, wanted, first)

    def last_good(self, context: Context) -> tuple[str, ...]:
        """Until something is kept here: what came out good the last time."""
        words = starting_points(context.good, context.system).get(self.KIND)
        return (words,) if words else ()


def local_time(moment: Moment) -> str:
    return local_hhmm(moment)


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
