"""What a wet film means: its figure, what to change, what it dries to, what share landed. Pure."""

from __future__ import annotations

import math

from booth.bench.context import Context
from booth.bench.instrument import number, word
from booth.forms.form import Values
from booth.instruments.fan import figure_of
from booth.job.gauge_readings import coat_on, readings_of, statistics_of
from booth.job.measured import (
    implied_efficiency,
    speed_mm_s,
    thinner_fraction,
    transfer_efficiency,
)
from booth.job.pace_basis import basis_of
from booth.log.events import FilmRead
from booth.trade.film.film_thickness import dry_film_um
from booth.trade.film.wet_gauge import FilmInterval, Judgement, Verdict, judge_film
from booth.trade.result import BadInput, Estimate, Outside
from booth.units import Kind, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone

MM_PER_M = 1000.0
WHICH_TOOTH = "Which tooth stayed dry?"
WRONG_WAY_ROUND = "The first dry tooth must be above the last wetted one."
NO_COAT = "A reading belongs to a coat: begin it at the step Coats and waits."
TONES = {
    Verdict.TOO_THIN: Tone.CAUTION,
    Verdict.IN_RANGE: Tone.GOOD,
    Verdict.TOO_THICK: Tone.LATE,
    Verdict.CANNOT_TELL: Tone.CAUTION,
}


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
    part = word(values, "part")
    coat = coat_on(context.job, part)
    where = part + (f", coat {coat}" if coat is not None else ", no coat yet")
    unit = shown_unit(Kind.THICKNESS, context.system)
    wetted, dry = number(values, "wetted"), number(values, "dry")
    if wetted is not None:
        if dry is None:
            low = show(wetted, Kind.THICKNESS, context.system, unit=False)
            return Readout(f"{low}-?", unit, label=where, lines=(WHICH_TOOTH,))
        if dry <= wetted:
            return Readout(
                "–", unit, label=where, tone=Tone.CAUTION, word="", lines=(WRONG_WAY_ROUND,)
            )
        film = FilmInterval(wetted, dry)
        return _judged(context, part, coat, film, f"{where}: this place")
    found = statistics_of(readings_of(context.job, part, coat))
    if found is None:
        lines = (_asked(context), *(() if coat is not None else (NO_COAT,)))
        wet = context.profile.film.wet_um
        if wet is None:
            return Readout("–", unit, label=where, lines=lines)
        figure = figure_of(wet, Kind.THICKNESS, context.system)
        return Readout(figure, unit, label=f"{where}: wet film asked for", lines=lines)
    label = where if found.count == 1 else f"{where}: mean of {found.count}"
    return _judged(context, part, coat, found.mean, label)


def _asked(context: Context) -> str:
    asked = range_words(context.profile.film.wet_um, Kind.THICKNESS, context.system)
    return f"profile: {asked} wet a coat" if asked else "The profile asks for no wet film."


def _judged(
    context: Context, part: str, coat: int | None, film: FilmInterval, label: str
) -> Readout:
    target = context.profile.film.wet_um
    judgement = judge_film(film, target.low, target.high) if target is not None else None
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


def change_lines(
    context: Context, part: str, coat: int | None, film: FilmInterval, judgement: Judgement | None
) -> tuple[str, ...]:
    """What to change when the film is too thin or too thick; in figures where they are known."""
    if judgement is None or judgement.verdict not in (Verdict.TOO_THIN, Verdict.TOO_THICK):
        return ()
    thin = judgement.verdict is Verdict.TOO_THIN
    pace = _pace_words(context, part, coat)
    if thin:
        first = f"Next coat: slower{pace}"
        rest = "or the needle out a little, then catch again; keep the distance."
    else:
        first = f"Next coat: faster{pace}"
        rest = "or the needle in a little, then catch again. Look for runs now."
    return (f"{first}, {rest}",)


def _pace_words(context: Context, part: str, coat: int | None) -> str:
    """The gun speed that would lay the film asked for, where this coat's readings tell it."""
    target = context.profile.film.wet_um
    if target is None or not readings_of(context.job, part, coat):
        return ""
    if not isinstance(implied_efficiency(context.job, part, coat), Estimate):
        return ""
    basis, _ = basis_of(context.job)
    speed = basis.speed_for(target.middle) if basis is not None else None
    if speed is None:
        return ""
    now = speed_mm_s(context.job)
    was = f" (was {_speed(now, context.system)})" if now is not None else ""
    return f", about {_speed(speed.likely, context.system)}{was}"


def _speed(mm_s: float, system: System) -> str:
    return show(mm_s / MM_PER_M, Kind.SPEED, system)


def dry_line(context: Context, film: FilmInterval) -> tuple[str, ...]:
    """What the film dries to, and on what that rests."""
    solids = context.profile.film.volume_solids_percent
    if not solids:
        return ()
    thinner = thinner_fraction(context.job)
    try:
        low = dry_film_um(film.low_um, solids / 100, thinner or 0.0)
        high = (
            dry_film_um(film.high_um, solids / 100, thinner or 0.0)
            if math.isfinite(film.high_um)
            else math.inf
        )
    except BadInput:
        return ()
    if thinner is None:
        with_thinner = "thinner not counted: the mix is not in the log by volume"
    else:
        with_thinner = f"thinner {thinner * 100:.0f} %"
    ends = f"{show(low, Kind.THICKNESS, context.system, unit=False)} to "
    ends += show(high, Kind.THICKNESS, context.system)
    return (f"dries to {ends} (volume solids {solids:g} %, {with_thinner})",)


def lands_line(context: Context, part: str, coat: int | None) -> tuple[str, ...]:
    """The share that landed by these readings, or what is missing to tell."""
    if not readings_of(context.job, part, coat):
        return ()
    found = implied_efficiency(context.job, part, coat)
    if isinstance(found, Outside):
        return (f"What share landed cannot be told. {found.reason} {found.advice}",)
    lands = f"{found.low * 100:.0f} to {found.high * 100:.0f} %"
    used = transfer_efficiency(context.job)
    carried = (used.low, used.high) == (found.low, found.high)
    return (f"landed on the part: {lands}{', used from here on' if carried else ''}",)
