"""The instrument: what a step asks for, what it shows, what it keeps. Pure; no widget is known here.

A simple instrument says which rows it has (``fields``), what they come to (``readout``) and which
event is kept (``event``). What keys do is the same for all (``next_act``); one with more to say
answers in ``space``, ``enter`` or ``own``.
"""

from __future__ import annotations

from typing import ClassVar

from booth.bench.act import Act, Choice, Context
from booth.clock import local_date, local_day_hhmm
from booth.forms.form import Field, Form, Rows, Values, only, rows_of
from booth.forms.key import Key
from booth.job.the_gun import tip_mm_of
from booth.job.today import Around
from booth.log.events import Event
from booth.moment import Moment
from booth.shop.room_readings import RoomReading
from booth.units import Quantity
from booth.words.about.headed import About
from booth.words.event_words import words
from booth.words.last_good_words import (
    lesson_line,
    rehearsed_line,
    starting_points,
    today_lines,
)
from booth.words.shown import Picture, Readout
from booth.words.tried import AtLarge, Tries, Try


class Instrument:
    """Base of all instruments: one object serves every step of its kind, and holds nothing."""

    #: the kind of step it serves, its name on the screen and in the palette
    KIND: ClassVar[str] = ""
    NAME: ClassVar[str] = ""
    #: what stands behind '?': what it is, what to do, rule, limits, source
    ABOUT: ClassVar[About] = About()
    #: which events of the job Backspace voids, the latest first
    KEEPS: ClassVar[tuple[type[Event], ...]] = ()
    #: how many of the first kind of them stand in the record, and with what left out in front
    RECORDS: ClassVar[int] = 0
    UNSAID: ClassVar[str] = ""
    #: the rows where the form may begin, by their keys; without them the first to type in
    FIRST: ClassVar[tuple[str, ...]] = ()
    #: whether what Space does here can wait: after a bare number it is the space before the unit
    UNIT_FIRST: ClassVar[bool] = False

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """Every row there may be, also those out of sight. values: what they hold; nothing when
        that is still to be found out."""
        return ()

    def readout(self, context: Context, values: Values) -> Readout | None:
        """The figure that matters, from the job and from what the rows hold now; None for none."""
        return None

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        return ()

    def record(self, context: Context) -> tuple[str, ...]:
        """Lines of what was kept in this step so far, the latest last."""
        found = context.job.of(self.KEEPS[0])[-self.RECORDS :] if self.RECORDS else ()
        said = ((event.at, words(event, context.system, context.job)) for event in found)
        return tuple(
            f"{local_day_hhmm(at, context.now)}  {each.removeprefix(self.UNSAID)}"
            for at, each in said
        )

    def at_large(self, context: Context, values: Values) -> AtLarge:
        """What else there is to say where the window has room: what was tried here, its record in
        full; an instrument with a scale puts it on that."""
        found = context.job.of(self.KEEPS[0]) if self.RECORDS else ()
        told = ((e.at, words(e, context.system, context.job)) for e in found)
        tries = tuple(
            Try(f"{local_day_hhmm(at, context.now)}  {each.removeprefix(self.UNSAID)}")
            for at, each in told
        )
        return AtLarge((Tries(self.NAME, tries),)) if tries else AtLarge()

    def event(self, context: Context, values: Values) -> Event | str | None:
        """The event that the filled rows make, or the sentence why they make none (which may be
        raised as BadInput); None where nothing is kept of them, since they only shape the figure."""
        return "There is nothing to keep here."

    def space(self, context: Context, rows: Rows) -> Act | None:
        return None

    def enter(self, context: Context, rows: Rows) -> Act | None:
        return None

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """What another key does where it is not what it does in every form."""
        return None

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        """What a click on a line, part or paper of the picture does."""
        return None

    def more(self, context: Context, rows: Rows) -> tuple[Choice, ...]:
        """What can be asked for here besides the commands, for the menu of the right arrow."""
        return ()

    def kept_any(self, context: Context) -> bool:
        """Whether the step has what it is there for."""
        return bool(self.KEEPS) and context.job.last_of(*self.KEEPS) is not None

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """What Backspace would void: the latest entry of this step first, then what falls with it."""
        last = context.job.last_of(*self.KEEPS) if self.KEEPS else None
        return (last,) if last is not None else ()

    def frames(self, context: Context) -> int:
        """How many times a second it wants to be drawn, while tenths of a second are running and no
        row is asked for; 0 for once, on the whole second."""
        return 0

    def busy(self, context: Context) -> str:
        """Why the step cannot be left with Enter now; "" where it can."""
        return "A stopwatch is running here: Space stops it." if self.frames(context) else ""


def rows_at(instrument: Instrument, context: Context, form: Form) -> Rows:
    """The rows of an instrument as they stand: what they hold says which of them are asked for."""
    blank = rows_of(form, instrument.fields(context, {}), context.system)
    fields = instrument.fields(context, blank.values)
    if instrument.frames(context):
        fields = only((), fields)
    return rows_of(form, fields, context.system, instrument.FIRST)


def starting_point(instrument: Instrument, context: Context) -> tuple[str, ...]:
    """Until something is kept in a step: what came out good the last time, and what is otherwise
    today; before the first coat, what the last job said to change."""
    system, good = context.system, context.good
    said = starting_points(good, system).get(instrument.KIND)
    if said:
        return (said, *today_lines(good, around_now(context), system))
    if instrument.KIND != "coats" or any(context.job.coats.values()):
        return ()
    key, gun, job = context.profile.key, context.job.fitted.gun, context.job
    if job.opened.rehearsal:
        return ()
    rehearsed = context.past.rehearsal(key, gun, without=job.opened.job)
    lesson = context.past.lesson(key, gun)
    told = [lesson_line(lesson, local_date(lesson.opened))] if lesson is not None else []
    told += [rehearsed_line(rehearsed, local_date(rehearsed.opened.at))] if rehearsed else []
    return tuple(told)


def around_now(context: Context) -> Around:
    """The gun in the hand and the weather as read in this job, else what the sensor says."""
    job, gun, room = context.job, context.gun, context.room
    read, tip_mm = job.weather, tip_mm_of(job, gun)
    if read is not None:
        return Around(job.fitted.gun, tip_mm, read.air.value, read.humidity.value)
    return around_in(room, context.now, job.fitted.gun, tip_mm)


def around_in(room: RoomReading | None, now: Moment, gun: str, tip_mm: float | None) -> Around:
    """A gun and its tip, in the air that the sensor tells, where that is of now."""
    if room is None or not room.is_fresh(now):
        return Around(gun, tip_mm)
    return Around(gun, tip_mm, room.air_c, room.humidity_percent)


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
