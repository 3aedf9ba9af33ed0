"""The pace of the gun: a bar to follow, there and back, and one's own pass timed against it."""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, Keep, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, quantity, word
from booth.forms.field import Field
from booth.forms.form import Rows, Values
from booth.instruments.pace.words import (
    missing_words,
    pace_readout,
    pass_s_of,
    pass_words,
    passing_readout,
    sweeping_readout,
    timed_readout,
)
from booth.job.pace_basis import basis_of
from booth.job.stopwatches import BAR, PASS, SILENT, passing_s, sweeping
from booth.log.events import Event, PassTimed, StopwatchDropped, StopwatchStarted
from booth.units import EntryError, Kind, Quantity, System, read
from booth.words.pictures import Bar, Picture
from booth.words.readout import Readout

SOUND, TIME = "sound", "time"
MODES = ((SOUND, "a bar that ticks"), (SILENT, "a silent bar"), (TIME, "your own pass, timed"))
#: Rows that hold for more than one pass.
STAY = ("wet", "delivery", "fan")


class Pace(Instrument):
    """Gun speed for the wanted film; the bar; timed passes."""

    KIND: ClassVar[str] = "pace"
    NAME: ClassVar[str] = "Pace"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The large figure is the time of one pass: its length / gun speed. Gun speed = delivery x "
        "what lands / (wet film wanted x pitch), pitch = fan x (1 - overlap): conservation of "
        "volume. Delivery, fan and overlap are this job's own where they were measured; the lines "
        "under the figure say from where each is.",
        "What lands on the part (transfer efficiency) varies with gun, part and painter by a factor "
        "of three, so the speed is an estimate with two ends: HVLP on large flat parts 60 to 70 % "
        "(common practice, no source; one rule for clean air asks 65 %), conventional air 20 to 50 "
        "% (25 % in 40 CFR 60.313). A gauge reading at the step Wet film replaces the band by what you "
        "do: delivery of the coating caught, fan measured, and a pass timed here.",
        "The bar crosses the window in the time of one pass over the length typed: run-out at both "
        "ends counted in, the turn not. A hand holds about 0.2 to 0.8 m/s (40 to 160 ft/min; "
        "common practice, no source): a figure outside asks for another delivery, not another arm.",
        "Your own pass: Space as it begins, Space as it ends. A hand is late by about 0.2 s at "
        "either end, so long passes tell more; passes that agree within a tenth are averaged.",
        "The film is a mean: how even it is, the step Test pattern shows. The gauge decides.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (PassTimed,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        wet = context.profile.film.wet_um
        rows = [
            Field("mode", "Bar or pass", choices=MODES),
            Field("length", "Pass length", Kind.PART_LENGTH, default=_usual_length(context)),
            Field(
                "wet",
                "Wet film",
                Kind.THICKNESS,
                optional=True,
                default=Quantity(wet.middle, "um", "") if wet else None,
                hint="of one coat",
                assumed=wet is not None,
            ),
        ]
        if basis_of(context.job)[1]:
            rows.append(Field("delivery", "Delivery", Kind.DELIVERY, optional=True))
            rows.append(Field("fan", "Fan", Kind.LENGTH, optional=True))
        return tuple(rows)

    def first(self, context: Context, values: Values) -> str:
        return "mode"

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return () if self.fast(context) else None

    def fast(self, context: Context) -> bool:
        return self.frames(context) > 0

    def frames(self, context: Context) -> int:
        """Tenths of a pass; the bar smooth to the eye, and little work."""
        if passing_s(context.job.stopwatches, context.now) is not None:
            return 10
        return 20 if sweeping(context.job.stopwatches, context.now) is not None else 0

    def readout(self, context: Context, values: Values) -> Readout:
        seconds = passing_s(context.job.stopwatches, context.now)
        bar = sweeping(context.job.stopwatches, context.now)
        if seconds is not None:
            return passing_readout(context, values, seconds)
        if bar is not None:
            return sweeping_readout(context, values, bar)
        if word(values, "mode") == TIME:
            return timed_readout(context, values)
        return pace_readout(context, values)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        """The bar, sweeping or at rest; none beside one's own pass, nor without a pace."""
        bar = sweeping(context.job.stopwatches, context.now)
        if bar is not None:
            return (Bar(bar.pass_s, bar.place, bar.number, bar.turned),)
        seconds = pass_s_of(context, values)
        return () if seconds is None or word(values, "mode") == TIME else (Bar(seconds),)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{local_time(each.at)}  {pass_words(each, context.system)}"
            for each in context.job.passes[-2:]
        )

    def event(self, context: Context, values: Values) -> str | None:
        return self.busy(context) or None

    def space(self, context: Context, rows: Rows) -> Act:
        """Start the bar or a pass; stop the one that runs."""
        if passing_s(context.job.stopwatches, context.now) is not None:
            return _passed(context, rows)
        if sweeping(context.job.stopwatches, context.now) is not None:
            dropped = StopwatchDropped(n=0, at=context.now, stopwatch=BAR)
            return Act("stop the bar", (Keep(dropped),))
        return _started(context, rows)


def _started(context: Context, rows: Rows) -> Act:
    """The bar, or one's own pass, begins; or why it cannot."""
    values, at = rows.values, context.now
    mode, length = word(values, "mode"), quantity(values, "length")
    go = "the pass begins" if mode == TIME else "start the bar"
    seconds = pass_s_of(context, values)
    fault = next((row.fault for row in rows.every if row.fault), "")
    if fault:
        return refused(fault, go)
    if length is None or not length.value:
        return refused("A pass has a length: type it first.", go)
    if mode == TIME:
        started = StopwatchStarted(n=0, at=at, stopwatch=PASS, what=_metres(length))
    elif seconds is None:
        return refused(f"No pace yet: {', '.join(missing_words(context, values))}", go)
    else:
        started = StopwatchStarted(n=0, at=at, stopwatch=BAR, what=mode, window_s=seconds)
    return Act(go, (Keep(started),))


def _passed(context: Context, rows: Rows) -> Act:
    """The pass that is going ends: it belongs to the moment at which it began."""
    started = context.job.stopwatches[PASS].started
    length = quantity(rows.values, "length") or _usual_length(context)
    seconds = round(context.since(started.at), 2)
    typed = length if length.typed else Quantity(length.value, "m", _metres(length))
    kept = PassTimed(n=0, at=started.at, length=typed, seconds=seconds)
    form = rows.form.choosing("mode", TIME).emptied(but=STAY)
    return Act("the pass ends", (Keep(kept), SetForm(form)))


def _metres(length: Quantity) -> str:
    return f"{length.value:g} m"


def _usual_length(context: Context) -> Quantity:
    """The length of the pass that is going, though the program died meanwhile; else of the last."""
    watch = context.running(PASS)
    if watch is not None:
        try:
            return read(watch.started.what, Kind.PART_LENGTH, System.METRIC)
        except EntryError:
            pass  # an odd line of a log edited by hand
    if context.job.passes:
        return context.job.passes[-1].length
    return Quantity(1.2192 if context.system is System.US else 1.0, "m", "")
