"""The pace of the gun: a bar to follow, there and back, and one's own pass timed against it."""

from __future__ import annotations

import math
from typing import NamedTuple

from msgspec.structs import replace

from booth.bench.act import Act, Context, Keep, SetForm, refused
from booth.bench.instrument import Instrument, number, quantity, word
from booth.forms.form import Field, Rows, Values
from booth.instruments.figures import against, figure, interval
from booth.instruments.large.gun import passes_at_large
from booth.instruments.learnt_here import of_pace
from booth.job.coat_plan import wet_to_come
from booth.job.measured import HAND_MM_S, Basis, basis_of, speed_mm_s, steady_passes
from booth.job.stopwatches import BAR, PASS, SILENT, Sweeping, passing_s, sweeping
from booth.log.events import PassTimed, StopwatchDropped, StopwatchStarted
from booth.profile.model import Range
from booth.trade.film.gun_speed import pass_time_s, speed_of_pass_mm_s
from booth.trade.result import Estimate
from booth.units import EntryError, Kind, Quantity, System, read, show
from booth.words.about import of_the_gun
from booth.words.profile_words import range_words
from booth.words.shown import Bar, Picture, Readout, Tone
from booth.words.tried import AtLarge

MM_PER_M = 1000.0
#: A film wanted is met within so much of it, where the profile gives no range.
ABOUT_IT = 0.1
SOUND, TIME = "sound", "time"
MODES = ((SOUND, "a bar that ticks"), (SILENT, "a silent bar"), (TIME, "your own pass, timed"))
#: Rows that hold for more than one pass.
STAY = ("wet", "delivery", "fan")

#: Whose the figure is.
WHOSE = "PASS"


class Pace(Instrument):
    KIND = "pace"
    NAME = "Pace"
    ABOUT = of_the_gun.PACE
    KEEPS = (PassTimed,)
    RECORDS = 2
    UNSAID = "pass timed: "
    FIRST = ("mode",)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        span, reckoned = wet_to_come(context.job), not basis_of(context.job)[1]
        wet, known = span.middle if span else None, span is not None
        thick, hint, length = Kind.THICKNESS, "of one coat", _usual_length(context)
        return (
            Field("mode", "Bar or pass", choices=MODES),
            Field("length", "Pass length", Kind.PART_LENGTH, default=length),
            Field("wet", "Wet film", thick, default=wet, hint=hint, optional=True, assumed=known),
            Field("delivery", "Delivery", Kind.DELIVERY, optional=True, hidden=reckoned),
            Field("fan", "Fan", Kind.LENGTH, optional=True, hidden=reckoned),
        )

    def frames(self, context: Context) -> int:
        """Tenths of a pass; the bar smooth to the eye, and little work."""
        if passing_s(context.job.stopwatches, context.now) is not None:
            return 10
        return 20 if sweeping(context.job.stopwatches, context.now) is not None else 0

    def readout(self, context: Context, values: Values) -> Readout:
        seconds = passing_s(context.job.stopwatches, context.now)
        bar = sweeping(context.job.stopwatches, context.now)
        if seconds is not None:
            label, said = f"pass of {wanted(context, values).length}", "SPACE AT ITS END"
            wanted_s = wanted(context, values).pass_s
            edge = None if not wanted_s else min(seconds / wanted_s, 1.0)
            tone = Tone.RUNNING
            return Readout(
                f"{seconds:.1f}", "s", label, tone, said, like="00.0", whose=WHOSE, edge=edge
            )
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
        seconds = wanted(context, values).pass_s
        return () if seconds is None or word(values, "mode") == TIME else (Bar(seconds),)

    def record(self, context: Context) -> tuple[str, ...]:
        """The speed of each pass behind it; nothing where it took no time."""
        lines = []
        for line, each in zip(
            super().record(context), context.job.passes[-self.RECORDS :], strict=True
        ):
            length_mm, speed = each.length.value * MM_PER_M, ""
            if each.seconds > 0:
                speed = f", {_speed(speed_of_pass_mm_s(length_mm, each.seconds), context.system)}"
            lines.append(f"{line}{speed}")
        return (*of_pace(context), *lines)

    def at_large(self, context: Context, values: Values) -> AtLarge:
        speed = wanted(context, values).speed
        likely = None if speed is None else speed.likely
        large = passes_at_large(context, likely, wanted_film(context, values))
        return replace(large, record=of_pace(context))

    def event(self, context: Context, values: Values) -> str | None:
        return self.busy(context) or None

    def space(self, context: Context, rows: Rows) -> Act:
        if passing_s(context.job.stopwatches, context.now) is not None:
            return _passed(context, rows)
        if sweeping(context.job.stopwatches, context.now) is not None:
            dropped = Keep(StopwatchDropped(n=0, at=context.now, stopwatch=BAR))
            return Act("stop the bar", (dropped,))
        return _started(context, rows)


def _started(context: Context, rows: Rows) -> Act:
    """The bar, or one's own pass, begins; or why it cannot."""
    values, at, pace = rows.values, context.now, wanted(context, rows.values)
    mode, length = word(values, "mode"), quantity(values, "length")
    go = "the pass begins" if mode == TIME else "start the bar"
    if rows.fault:
        return refused(rows.fault, go)
    if length is None or not length.value:
        return refused("A pass has a length: type it first.", go)
    if mode == TIME:
        started = StopwatchStarted(n=0, at=at, stopwatch=PASS, what=f"{length.value:g} m")
    elif pace.pass_s is None:
        return refused(f"No pace yet: {pace.needed}", go)
    else:
        started = StopwatchStarted(n=0, at=at, stopwatch=BAR, what=mode, window_s=pace.pass_s)
    return Act(go, (Keep(started),))


def _passed(context: Context, rows: Rows) -> Act:
    """The pass that is going ends: it belongs to the moment at which it began."""
    started = context.job.stopwatches[PASS].started
    length = quantity(rows.values, "length") or _usual_length(context)
    seconds = round(context.since(started.at), 2)
    typed = length if length.typed else Quantity(length.value, "m", f"{length.value:g} m")
    kept = PassTimed(n=0, at=started.at, length=typed, seconds=seconds)
    form = rows.emptied(but=STAY).choosing("mode", TIME)
    return Act("the pass ends", (Keep(kept), SetForm(form)))


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


class Wanted(NamedTuple):
    """The pace that the rows ask for.

    basis: what it rests on, the job's figures and the rows' where it has none, missing: what that
    lacks; needed: what the pace lacks, in words; speed: of the gun [mm/s]; pass_s: one pass at the
    likely speed [s]; length: of it, in words.
    """

    basis: Basis | None
    missing: tuple[str, ...]
    needed: str
    speed: Estimate | None
    pass_s: float | None
    length: str


def wanted(context: Context, values: Values) -> Wanted:
    wet, length = number(values, "wet"), number(values, "length")
    basis, missing = basis_of(context.job, number(values, "delivery"), number(values, "fan"))
    rows = ((wet, "the wet film wanted"), (length, "the length of a pass"))
    needed = ", ".join((*missing, *(words for given, words in rows if not given)))
    needed = needed or "a delivery, a fan and an overlap that make sense together"
    speed = basis.speed_for(wet) if basis is not None and wet else None
    pass_s = pass_time_s(length * MM_PER_M, speed.likely) if speed is not None and length else None
    words = show(length or 0.0, Kind.PART_LENGTH, context.system)
    return Wanted(basis, missing, needed, speed, pass_s, words)


def _speed(mm_s: float, system: System) -> str:
    return show(mm_s / MM_PER_M, Kind.SPEED, system)


def basis_lines(context: Context, basis: Basis) -> tuple[str, ...]:
    system, lands = context.system, basis.lands
    return (
        f"{show(basis.delivery_ml_min, Kind.DELIVERY, system)} {basis.delivery_from}, "
        f"fan {show(basis.fan_mm, Kind.LENGTH, system)} {basis.fan_from}, "
        f"overlap {basis.overlap * 100:.0f} % {basis.overlap_from}",
        f"lands {lands.low * 100:.0f} to {lands.high * 100:.0f} %: {lands.source.split(': ')[0]}",
    )


def pace_readout(context: Context, values: Values) -> Readout:
    """The seconds of a pass as the figure; the gun speed beneath. Pure."""
    pace, system, advice = wanted(context, values), context.system, []
    speed = pace.speed
    if pace.basis is None or speed is None or pace.pass_s is None:
        needed = (f"Still needed: {pace.needed}.",)
        return Readout("", "s", "time of a pass", word="NOT KNOWN", lines=needed, whose=WHOSE)
    tone, said = Tone.READY, pace.length
    if speed.likely < HAND_MM_S[0]:
        tone, said = Tone.CAUTION, "TOO SLOW"
        advice.append("Slower than a hand keeps steady: more delivery, or a thinner coat.")
    elif speed.likely > HAND_MM_S[1]:
        tone, said = Tone.CAUTION, "TOO FAST"
        advice.append("Faster than a hand keeps steady: less delivery, or a wider fan.")
    ends = interval(speed.low / MM_PER_M, speed.high / MM_PER_M, Kind.SPEED, system)
    told = f"gun speed {_speed(speed.likely, system)}, estimate: {ends}"
    wet = show(number(values, "wet") or 0.0, Kind.THICKNESS, system)
    label = f"for a pass of {pace.length}, {wet} wet, estimate"
    lines = (*advice, told, *basis_lines(context, pace.basis))
    return Readout(f"{pace.pass_s:.1f}", "s", label, tone, said, lines, whose=WHOSE)


def sweeping_readout(context: Context, values: Values, bar: Sweeping) -> Readout:
    """While the bar sweeps: which pass it is on. Pure."""
    pace, label = wanted(context, values), f"pass, {bar.pass_s:.1f} s each"
    if pace.speed and pace.pass_s is not None and math.isclose(pace.pass_s, bar.pass_s):
        label += f", {pace.length} at {_speed(pace.speed.likely, context.system)}"
    said = "TURN" if bar.turned else ""
    return Readout(
        f"{bar.number}", "", label, Tone.RUNNING, said, like="00", whose=WHOSE, edge=bar.place
    )


def wanted_film(context: Context, values: Values) -> Range | None:
    """The wet film wanted [um]: the range of the coat to come, or about what was typed. Pure."""
    span, wet = wet_to_come(context.job), number(values, "wet")
    if wet is None or (span is not None and abs(wet - span.middle) < 1e-6):
        return span
    return Range(wet * (1 - ABOUT_IT), wet * (1 + ABOUT_IT))


def timed_readout(context: Context, values: Values) -> Readout:
    """The wet film that the passes timed last would give, held against the one wanted. Pure."""
    system, speed = context.system, speed_mm_s(context.job)
    basis, missing, _, _, wanted_s, length = wanted(context, values)
    pace = "no pace to compare with yet"
    if wanted_s is not None:
        pace = f"wanted: {length} in {wanted_s:.1f} s"
    if speed is None:
        how = ("Space as the pass begins, Space as it ends.", pace)
        label = "your own pass"
        return Readout("0.0", "s", label, word="TIME IT", like="00.0", lines=how, whose=WHOSE)
    passes = steady_passes(context.job)
    last = passes[-1]
    many = f", mean of {len(passes)}" if len(passes) > 1 else ""
    your = f"{show(last.length.value, Kind.PART_LENGTH, system)} in {last.seconds:.1f} s"
    if basis is None:
        needed = (f"For its wet film still needed: {', '.join(missing)}.",)
        label = f"your gun speed{many}: {your}"
        return figure(context, speed / MM_PER_M, Kind.SPEED, label, lines=needed, whose=WHOSE)
    film = basis.film_at(speed)
    if film is None:
        return Readout("", label=f"your pass: {your}", word="NOT KNOWN", whose=WHOSE)
    span = wanted_film(context, values)
    tone, said = against(film.likely, span, "TOO FAST", "TOO SLOW")
    ends = interval(film.low, film.high, Kind.THICKNESS, system)
    label = f"wet film of your pass, estimate: {your}"
    lines = (
        f"estimate {ends}, wanted {range_words(span, Kind.THICKNESS, system) or '?'}",
        f"your speed{many}: {_speed(speed, system)}; {pace}",
        *basis_lines(context, basis),
    )
    return figure(
        context, film.likely, Kind.THICKNESS, label, tone, said, lines, whose=WHOSE, span=span
    )
