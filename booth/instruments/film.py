"""The wet film: notch gauge readings by part and coat, kept where the film is still wet."""

from __future__ import annotations

import math
from itertools import pairwise

from booth.bench.act import Act, Context, OpenStep, SetForm
from booth.bench.instrument import Instrument, number, quantity, word
from booth.files.safe_text import visible
from booth.forms.form import Field, Rows, Values, same
from booth.instruments.figures import asked_for, gauge, given, interval
from booth.instruments.large.film import films_at_large
from booth.job import measured
from booth.job.advice import on_film
from booth.job.coat_plan import coat_named, coats_wanted, wet_wanted
from booth.job.film_total import film_total
from booth.job.measured import basis_of, coat_on, film_of, readings_of, statistics_of
from booth.job.steps import key_of
from booth.log.events import CoatBegun, Event, FilmRead
from booth.log.fold import Job
from booth.trade.film.film_thickness import WetCoat, film_in_all
from booth.trade.film.wet_gauge import TEETH_MIL, FilmInterval, Verdict, judge_film
from booth.trade.result import Estimate, Outside
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.units.sentences import in_units
from booth.words.about import of_the_coat
from booth.words.film_words import total_words
from booth.words.profile_words import range_words
from booth.words.shown import Readout, Tone

MM_PER_M = 1000.0
UM_PER_MIL = 25.4
#: A tooth is recognised when what was typed is this near to it.
SAME_TOOTH = 0.01
WHICH_TOOTH = "Which tooth stayed dry?"
WRONG_WAY_ROUND = "The first dry tooth must be above the last wetted one."
NO_COAT = "A reading belongs to a coat: begin it at the step Coats and waits."
TONES = {
    Verdict.TOO_THIN: Tone.CAUTION,
    Verdict.IN_RANGE: Tone.GOOD,
    Verdict.TOO_THICK: Tone.LATE,
    Verdict.CANNOT_TELL: Tone.CAUTION,
}
#: Where the film lies, for what to change.
SIDES = {Verdict.TOO_THIN: "below", Verdict.TOO_THICK: "above"}


class Film(Instrument):
    KIND = "film"
    NAME = "Wet film"
    ABOUT = of_the_coat.WET_FILM
    KEEPS = (FilmRead,)
    RECORDS = 3
    UNSAID = "wet film on "
    at_large = films_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """The tooth after the wetted one is offered as the first dry one."""
        parts, after = same(context.job.parts), next_tooth(context, number(values, "wetted"))
        wet, alone = usual_part(context), len(parts) < 2
        return (
            Field("part", "Part", choices=parts, default=wet, hidden=alone),
            Field("wetted", "Last wetted", Kind.THICKNESS, hint="the last that got wet"),
            Field("dry", "First dry", Kind.THICKNESS, default=after, hint="the next tooth"),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        """The interval: of the teeth typed, else the mean of this coat's readings."""
        part, system = word(values, "part"), context.system
        coat = coat_on(context.job, part)
        where = part + (f", coat {coat}" if coat is not None else ", no coat yet")
        unit = shown_unit(Kind.THICKNESS, system)
        wetted, dry = number(values, "wetted"), number(values, "dry")
        if wetted is not None and dry is None:
            low = show(wetted, Kind.THICKNESS, system, unit=False)
            return Readout(
                f"over {low}", unit, where, word="FIRST DRY?", lines=(WHICH_TOOTH,), whose=part
            )
        if wetted is not None and dry is not None and dry <= wetted:
            return Readout("", "", where, Tone.CAUTION, "CHECK", (WRONG_WAY_ROUND,), whose=part)
        if wetted is not None and dry is not None:
            film = FilmInterval(wetted, dry)
            return _judged(context, part, coat, film, f"{where}: this place")
        found = statistics_of(readings_of(context.job, part, coat))
        if found is not None:
            label = where if found.count == 1 else f"{where}: mean of {found.count}"
            return _judged(context, part, coat, found.mean, label)
        asked, wet = _asked(context, coat), wet_wanted(context.job, coat)
        lines = (asked, *total_line(context, part))
        lines = lines if coat is not None else (*lines, NO_COAT)
        label = where if wet is None else f"{where}: wet film asked for"
        return asked_for(context, wet, Kind.THICKNESS, label, "", lines, part)

    def event(self, context: Context, values: Values) -> Event | str:
        wetted, dry = quantity(values, "wetted"), quantity(values, "dry")
        if wetted is None or dry is None:
            return WHICH_TOOTH
        at, part = context.now, word(values, "part")
        coat = coat_on(context.job, part)
        read = FilmRead(n=0, at=at, part=part, last_wetted=wetted, first_dry=dry, coat=coat)
        film_of(read)  # refuses teeth the wrong way round
        return read

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        part = word(values, "part")
        return tuple(each for each in context.job.films if each.part == part)[-1:]

    def space(self, context: Context, rows: Rows) -> Act | None:
        """On to the next part; not with a reading half typed, which is of this one."""
        parts = context.job.parts
        if len(parts) < 2 or rows.holds:
            return None
        part = parts[(parts.index(word(rows.values, "part")) + 1) % len(parts)]
        return Act(f"next part: {part}", (SetForm(rows.form.choosing("part", part)),))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """Between two coats back to them; after the last one on to the next step."""
        key = between_coats(context.job)
        return Act("back to the coats", (OpenStep(key),)) if key and not rows.holds else None


def between_coats(job: Job) -> str:
    """The key of the coats' step, where one was begun and one is to come on some part; else ""."""
    key, coats = key_of(job, "coats"), [len(job.coats_on(part)) for part in job.parts]
    lacking = any(n < coats_wanted(job, part) for part, n in zip(job.parts, coats, strict=True))
    if key in job.done or key in job.skipped:
        return ""
    return key if any(coats) and lacking else ""


def usual_part(context: Context) -> str:
    """The part whose coat began last, for it is the wet one; else the first. Pure."""
    last = context.job.last_of(CoatBegun)
    laid = last.part if isinstance(last, CoatBegun) else ""
    return laid if laid in context.job.parts else context.job.parts[0]


def next_tooth(context: Context, wetted_um: float | None) -> Quantity | None:
    """The tooth after the one typed: of readings in this job, else of the standard's gauge. Pure."""
    if wetted_um is None:
        return None
    for read in reversed(context.job.films):
        if math.isclose(read.last_wetted.value, wetted_um, rel_tol=SAME_TOOTH):
            return read.first_dry
    for tooth, after in pairwise((0.0, *TEETH_MIL)):
        if math.isclose(wetted_um, tooth * UM_PER_MIL, rel_tol=SAME_TOOTH, abs_tol=1e-9):
            return Quantity(after * UM_PER_MIL, "um", f"{after:g} mil")
    return None


def film_words(film: FilmInterval, system: System, unit: str) -> str:
    """An interval as it is read, '2.0-2.5 mil'. Pure."""
    low, high = (show(e, Kind.THICKNESS, system, unit=False) for e in (film.low_um, film.high_um))
    return f"over {low}{unit}" if math.isinf(film.high_um) else f"{low}-{high}{unit}"


def _asked(context: Context, coat: int | None) -> str:
    wet, name = wet_wanted(context.job, coat), coat_named(context.job, coat or 1).plan.name
    asked = range_words(wet, Kind.THICKNESS, context.system)
    whose = f", {visible(name)}" if name else " a coat"
    return f"profile: {asked} wet{whose}" if asked else "The profile asks for no wet film."


def _judged(
    context: Context, part: str, coat: int | None, film: FilmInterval, label: str
) -> Readout:
    target = wet_wanted(context.job, coat)
    judgement = judge_film(film, target.low, target.high) if target is not None else None
    tone = TONES[judgement.verdict] if judgement else Tone.PLAIN
    lines = [_asked(context, coat)]
    spread = statistics_of(readings_of(context.job, part, coat))
    if spread is not None and spread.count > 1:
        unit = f" {shown_unit(Kind.THICKNESS, context.system)}"
        lines.append(
            f"{spread.count} places: {film_words(spread.everywhere, context.system, unit)}"
        )
    if judgement and judgement.verdict is Verdict.CANNOT_TELL:
        lines.append(judgement.sentence)
    if judgement:
        lines = [*_deeds(context, part, coat, judgement.verdict), *lines]
    lines += [*total_line(context, part), *dry_line(context, film)]
    lines += lands_line(context, part, coat)
    word = judgement.verdict.value.upper() if judgement else ""
    unit = shown_unit(Kind.THICKNESS, context.system)
    # The edge stands in the middle of what the teeth leave open.
    likely = film.low_um if math.isinf(film.high_um) else (film.low_um + film.high_um) / 2
    edge, band = gauge(context.system, likely, target, Kind.THICKNESS)
    return Readout(
        film_words(film, context.system, ""),
        unit,
        label,
        tone,
        word,
        tuple(lines),
        whose=part,
        edge=edge if judgement and judgement.verdict is not Verdict.CANNOT_TELL else None,
        band=band,
    )


def _deeds(context: Context, part: str, coat: int | None, verdict: Verdict) -> tuple[str, ...]:
    """What to change for the next coat; the new speed only where this coat's readings tell it."""
    target, job, speed = wet_wanted(context.job, coat), context.job, None
    implied = measured.implied_efficiency(job, part, coat)
    basis = basis_of(job)[0]
    if target is not None and isinstance(implied, Estimate) and basis is not None:
        speed = basis.speed_for(target.middle)
    return on_film(
        given(context),
        SIDES.get(verdict, ""),
        speed_mm_s=None if speed is None else speed.likely,
        was_mm_s=measured.speed_mm_s(job),
        turns=measured.last_told(job.catches[-1:], "turns"),
    )


def total_line(context: Context, part: str) -> tuple[str, ...]:
    """What lies on the part after its coats, against the dry film wanted in all."""
    total = film_total(context.job, part)
    wanted = context.profile.film.dry_total_um
    said = total_words(total, wanted, context.system) if total is not None else ""
    return (f"in all {said}",) if said else ()


def dry_line(context: Context, film: FilmInterval) -> tuple[str, ...]:
    """What the film dries to, and on what that rests."""
    solids = context.profile.film.volume_solids_percent
    if solids is None:
        return ()
    thinner = measured.thinner_fraction(context.job)
    coat = WetCoat(film.low_um, film.high_um, thinner or 0.0)
    ends = solids.low or solids.middle, solids.high or solids.middle
    dry = measured.known(film_in_all, [coat], *(end / 100 for end in ends))
    if dry is None:
        return ()
    with_thinner = "thinner not counted: the mix is not in the log by volume"
    if thinner is not None:
        with_thinner = f"thinner {thinner * 100:.0f} %"
    said = interval(dry.low_um, dry.high_um, Kind.THICKNESS, context.system)
    of = range_words(solids, Kind.PERCENT, context.system)
    return (f"dries to {said} (volume solids {of}, {with_thinner})",)


def lands_line(context: Context, part: str, coat: int | None) -> tuple[str, ...]:
    """The share that landed by these readings, or what is missing to tell."""
    if not readings_of(context.job, part, coat):
        return ()
    found = measured.implied_efficiency(context.job, part, coat)
    if isinstance(found, Outside):
        said = in_units(f"{found.reason} {found.advice}", context.system)
        return (f"What share landed cannot be told. {said}",)
    lands = f"{found.low * 100:.0f} to {found.high * 100:.0f} %"
    used = measured.transfer_efficiency(context.job)
    carried = (used.low, used.high) == (found.low, found.high)
    both = "pace and amount" if measured.parts_are_large(context.job) else "pace"
    return (f"landed on the part: {lands}{f', used for {both} from here on' if carried else ''}",)
