"""What a wet film means: what to change, what it dries to, what share of the paint landed. Pure."""

from __future__ import annotations

import math

from booth.bench.context import Context
from booth.job.gauge_readings import readings_of
from booth.job.measured import (
    implied_efficiency,
    speed_mm_s,
    thinner_fraction,
    transfer_efficiency,
)
from booth.job.pace_basis import basis_of
from booth.trade.film.film_thickness import dry_film_um
from booth.trade.film.wet_gauge import FilmInterval, Judgement, Verdict
from booth.trade.result import BadInput, Estimate, Outside
from booth.units import Kind, System, show

__all__ = ["change_lines", "dry_line", "lands_line"]

MM_PER_M = 1000.0


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
