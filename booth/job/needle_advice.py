"""What past catches teach this one: turns to try, and paint from water. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import fmean
from typing import NamedTuple

from booth.job.measured import compare, known, mean_delivery_ml_min
from booth.log.fold import Job
from booth.shop.model import Gun
from booth.trade.delivery.needle import NeedleCatch, turns_for_delivery
from booth.trade.delivery.water import WaterPaintPair, paint_from_water
from booth.trade.result import Estimate
from booth.units import Kind, System, show
from booth.units.sentences import in_units

#: Turns closer than this are the same setting of the needle: an eighth of a turn is the least a hand
#: sets again (common practice, no source).
SAME_TURNS = 0.06


class CatchPair(NamedTuple):
    """One catch at a known needle setting."""

    turns: float
    delivery_ml_min: float
    liquid: str


def fully_open(gun: Gun | None, turns: float | None) -> bool:
    """Whether the needle stands at the end of its travel, as far as the shop file tells."""
    travel = gun.needle_turns if gun is not None else None
    return travel is not None and turns is not None and turns > travel - SAME_TURNS


def catch_pairs(job: Job, past: Sequence[CatchPair] = ()) -> list[CatchPair]:
    """Give turns and delivery of this job's catches, then those of past ones."""
    told = [(each, each.turns.value) for each in job.catches if each.turns is not None]
    return [*(CatchPair(turns, e.delivery_ml_min, e.liquid) for e, turns in told), *past]


def turns_words(
    job: Job, pairs: Sequence[CatchPair], system: System, gun: Gun | None = None
) -> str:
    """Give the turns to try for the delivery the profile asks for, by the painter's own catches.

    Of the coating itself. Empty where the coating was caught in range, where no range is asked for,
    where no catch says its turns, or where the needle would have to open beyond its travel.
    """
    span = job.profile.gun.delivery_ml_min
    tried = [NeedleCatch(e.turns, e.delivery_ml_min) for e in pairs if e.liquid == "paint"]
    mean = mean_delivery_ml_min(job, "paint")
    if span is None or not tried or (mean is not None and compare(mean, span) == "in"):
        return ""
    found = known(turns_for_delivery, span.middle, tried)
    if found is None:
        return ""  # a catch of nothing at all
    asked = show(span.middle, Kind.DELIVERY, system)
    if not isinstance(found, Estimate):
        most = max(tried, key=lambda each: each.turns)
        if most.delivery_ml_min < span.middle and fully_open(gun, most.turns):
            return ""
        return f"for {asked}: {in_units(found.advice, system)}"
    likely = show(found.likely, Kind.TURNS, system)
    return f"for {asked} try ~{likely} (estimate {_ends(found, Kind.TURNS, system)})"


def paint_words(job: Job, pairs: Sequence[CatchPair], system: System) -> str:
    """Give the delivery of the coating that the last catch of water stands for, by own pairs alone.

    Empty where the last catch was not of water, or where no setting was caught with both.
    """
    water = mean_delivery_ml_min(job, "water")
    if water is None or water <= 0 or job.catches[-1].liquid != "water":
        return ""
    found = known(paint_from_water, water, water_paint_pairs(pairs))
    if not isinstance(found, Estimate):
        return ""
    likely = show(found.likely, Kind.DELIVERY, system)
    return f"as coating ~{likely} (estimate {_ends(found, Kind.DELIVERY, system)})"


def water_paint_pairs(pairs: Sequence[CatchPair]) -> list[WaterPaintPair]:
    """Pair the catches of water and of the coating that were made at one setting, their means."""
    settings: list[tuple[float, dict[str, list[float]]]] = []
    for each in sorted(pairs, key=lambda pair: pair.turns):
        if each.delivery_ml_min <= 0:
            continue
        if not settings or each.turns - settings[-1][0] >= SAME_TURNS:
            settings.append((each.turns, {}))
        settings[-1][1].setdefault(each.liquid, []).append(each.delivery_ml_min)
    both = [found for _, found in settings if found.keys() >= {"water", "paint"}]
    return [WaterPaintPair(fmean(found["water"]), fmean(found["paint"])) for found in both]


def _ends(found: Estimate, kind: Kind, system: System) -> str:
    low, high = (show(end, kind, system, unit=False) for end in (found.low, found.high))
    return low if low == high else f"{low}-{high}"
