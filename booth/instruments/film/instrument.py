"""The wet film: notch gauge readings by part and coat, what they mean, what to change."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number, quantity, word
from booth.instruments.film.words import change_lines, dry_line, lands_line
from booth.job.gauge_readings import coat_on, film_of, readings_of, statistics_of
from booth.job.steps import steps_of
from booth.log.events import Event, FilmRead
from booth.log.fold import Job
from booth.moment import Moment
from booth.trade.film.wet_gauge import TEETH_MIL, FilmInterval, Judgement, Verdict, judge_film
from booth.trade.result import BadInput
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.widgets.entry import Choice, Field, FieldRow
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone

UM_PER_MIL = 25.4
#: A tooth is recognised when what was typed is this near to it.
SAME_TOOTH = 0.01
TONES = {
    Verdict.TOO_THIN: Tone.CAUTION,
    Verdict.IN_RANGE: Tone.GOOD,
    Verdict.TOO_THICK: Tone.LATE,
    Verdict.CANNOT_TELL: Tone.CAUTION,
}


class Film(Instrument):
    """Last wetted tooth, first dry tooth."""

    KIND: ClassVar[str] = "film"
    NAME: ClassVar[str] = "Wet film"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "A notch gauge does not give a figure but two: the film lies between the last tooth that "
        "came out wet and the first that stayed dry (ASTM D4414). So does the mean of several "
        "readings. Too thin, in range, too thick are said only where the whole interval says so; "
        "else it cannot tell, and more places or finer teeth help. 0 as last wetted: no tooth was.",
        "Where only the wetted tooth is typed, the dry one offered is the next of your own earlier "
        "readings, or of the example gauge of ASTM D4414 in mil: look at your own gauge.",
        "Read it at once: solvent leaves and the film shrinks. Gauge square to the surface, on a "
        "curve along its length, away from edges. Several places tell more than one.",
        "Dry film = wet film x volume solids / (1 + thinner) (Organic Finishing Guidebook 2012-13 "
        "p. 615). What flashed off before the reading makes the dry film thicker than this.",
        "What lands (transfer efficiency) = film x gun speed x pitch / delivery, conservation of "
        "volume. It takes the coating caught, the fan measured and a pass timed; pace and amount "
        "then reckon with it instead of a usual band.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (FilmRead,)
    GO: ClassVar[str] = "next part"

    def fields(self, context: Context) -> tuple[Field, ...]:
        parts = tuple((part, part) for part in context.job.parts)
        return (
            Field("part", "Part", choices=parts, default=usual_part(context)),
            Field("wetted", "Last wetted", Kind.THICKNESS, hint="farthest in"),
            Field(
                "dry", "First dry", Kind.THICKNESS, default=self._next_tooth(context),
                hint="the next tooth",
            ),
        )  # fmt: skip

    def _next_tooth(self, context: Context) -> Quantity | None:
        if not self.is_mounted or not self.rows:
            return None
        return next_tooth(context, number(self.values(), "wetted"))

    def go(self, at: Moment) -> None:
        """On to the next part."""
        place = self.row("part").place
        if isinstance(place, Choice) and len(place.choices) > 1:
            place.turn(1)

    def readout(self, context: Context, values: Values) -> Readout:
        return film_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        part = word(self.values(), "part")
        return tuple(
            f"{self.desk.local_time(each.at)}  {reading_words(each, context.system)}"
            for each in [each for each in context.job.films if each.part == part][-3:]
        )

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        keys = super().keys(context)
        if self.all_empty and between_coats(context.job):
            keys = (*keys[:-1], ("Enter", "back to the coats"))
        return keys if len(context.job.parts) > 1 else tuple(k for k in keys if k[0] != "Space")

    def enter(self, row: FieldRow | None = None) -> None:
        """Between two coats back to them; after the last one on to the next step."""
        if self.all_empty and between_coats(self.desk.context.job):
            self.desk.open_kind("coats")
        else:
            super().enter(row)

    def event(self, context: Context, values: Values) -> Event | None:
        wetted, dry, part = (
            quantity(values, "wetted"),
            quantity(values, "dry"),
            word(values, "part"),
        )
        if wetted is None or dry is None:
            return None
        read = FilmRead(
            n=0,
            at=context.now,
            part=part,
            last_wetted=wetted,
            first_dry=dry if dry.typed else Quantity(dry.value, dry.unit, _typed(dry)),
            coat=coat_on(context.job, part),
        )
        try:
            film_of(read)
        except BadInput as fault:
            self.desk.say(str(fault), fault=True)
            return None
        return read


def _typed(dry: Quantity) -> str:
    return f"{dry.value:g} um"


def between_coats(job: Job) -> bool:
    """Whether a coat was begun and one is still to come on some part. Pure."""
    step = next((each for each in steps_of(job) if each.kind == "coats"), None)
    if step is None or step.key in job.done or step.key in job.skipped:
        return False
    coats = [len(job.coats_on(part)) for part in job.parts]
    return any(coats) and min(coats) < job.profile.film.coats


def usual_part(context: Context) -> str:
    """The part whose coat began last, for it is the wet one; else the first. Pure."""
    begun = [
        (coats[-1].begun.n, part)
        for part in context.job.parts
        if (coats := context.job.coats_on(part))
    ]
    return max(begun)[1] if begun else context.job.parts[0]


def next_tooth(context: Context, wetted_um: float | None) -> Quantity | None:
    """The tooth after the one typed: of readings in this job, else of the standard's gauge. Pure."""
    if wetted_um is None:
        return None
    for read in reversed(context.job.films):
        if math.isclose(read.last_wetted.value, wetted_um, rel_tol=SAME_TOOTH):
            return read.first_dry
    teeth = [0.0, *TEETH_MIL]
    for tooth, after in pairwise(teeth):
        if math.isclose(wetted_um, tooth * UM_PER_MIL, rel_tol=SAME_TOOTH, abs_tol=1e-9):
            return Quantity(after * UM_PER_MIL, "um", f"{after:g} mil")
    return None


def film_words(film: FilmInterval, system: System, unit: bool = True) -> str:
    """An interval as it is read, '2.0-2.5 mil'. Pure."""
    name = f" {shown_unit(Kind.THICKNESS, system)}" if unit else ""
    low = show(film.low_um, Kind.THICKNESS, system, unit=False)
    if math.isinf(film.high_um):
        return f"over {low}{name}"
    return f"{low}-{show(film.high_um, Kind.THICKNESS, system, unit=False)}{name}"


def reading_words(each: FilmRead, system: System) -> str:
    """One reading in a line. Pure."""
    coat = f"coat {each.coat}" if each.coat is not None else "no coat"
    low, high = each.last_wetted.value, each.first_dry.value
    span = f"{show(low, Kind.THICKNESS, system, unit=False)}-{show(high, Kind.THICKNESS, system)}"
    return f"{each.part}  {coat}  {span}"


def film_readout(context: Context, values: Values) -> Readout:
    """The interval as the figure: of the teeth typed, else the mean of this coat's readings. Pure."""
    part = word(values, "part") or usual_part(context)
    coat = coat_on(context.job, part)
    where = part + (f", coat {coat}" if coat is not None else ", no coat yet")
    unit = shown_unit(Kind.THICKNESS, context.system)
    wetted, dry = number(values, "wetted"), number(values, "dry")
    if wetted is not None:
        if dry is None:
            low = show(wetted, Kind.THICKNESS, context.system, unit=False)
            return Readout(f"{low}-?", unit, label=where, lines=("Which tooth stayed dry?",))
        if dry <= wetted:
            line = "The first dry tooth is above the last wetted one."
            return Readout("–", unit, label=where, tone=Tone.CAUTION, word="", lines=(line,))
        film = FilmInterval(wetted, dry)
        return _judged(context, part, coat, film, f"{where}: this place")
    found = statistics_of(readings_of(context.job, part, coat))
    if found is None:
        asked = _asked(context)
        return Readout("–", unit, label=where, lines=(asked, *_stale(context, part, coat)))
    label = where if found.count == 1 else f"{where}: mean of {found.count}"
    return _judged(context, part, coat, found.mean, label)


def _asked(context: Context) -> str:
    asked = range_words(context.profile.film.wet_um, Kind.THICKNESS, context.system)
    return f"profile: {asked} wet a coat" if asked else "The profile asks for no wet film."


def _stale(context: Context, part: str, coat: int | None) -> tuple[str, ...]:
    if coat is None:
        return ("A reading belongs to a coat: begin it at the step Coats and waits.",)
    return ()


def _judged(
    context: Context, part: str, coat: int | None, film: FilmInterval, label: str
) -> Readout:
    target = context.profile.film.wet_um
    judgement: Judgement | None = None
    if target is not None:
        judgement = judge_film(film, target.low, target.high)
    tone = TONES[judgement.verdict] if judgement else Tone.PLAIN
    lines = [_asked(context)]
    spread = statistics_of(readings_of(context.job, part, coat))
    if spread is not None and spread.count > 1:
        lines.append(f"{spread.count} places: {film_words(spread.everywhere, context.system)}")
    if judgement and judgement.verdict is Verdict.CANNOT_TELL:
        lines.append(judgement.sentence)
    lines += [
        *change_lines(context, part, coat, film, judgement),
        *dry_line(context, film),
        *lands_line(context, part, coat),
    ]
    return Readout(
        film_words(film, context.system, unit=False),
        shown_unit(Kind.THICKNESS, context.system),
        label=label,
        tone=tone,
        word=judgement.verdict.value.upper() if judgement else "",
        lines=tuple(lines),
    )
