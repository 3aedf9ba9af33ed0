"""What the painter's own catches say about the needle: turns open against delivery.

All catches handed in belong together: one gun, tip, product, viscosity and pressure. Opening the
needle never lowers the delivery, so a rising curve is laid through the catches and nothing is read
beyond their ends.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import BadInput, Estimate, Outside, require

_RULE = (
    "rising curve through your own catches (isotonic regression, straight lines between); "
    "true for the same tip, product, viscosity and pressure only"
)
#: Settings closer than this are one setting [turns]: a knob is not read finer than a hundredth.
SAME_TURNS = 0.01


@dataclass(frozen=True, slots=True)
class NeedleCatch:
    """One catch: turns open from closed [turns], delivery [ml/min]."""

    turns: float
    delivery_ml_min: float


@dataclass(frozen=True, slots=True)
class NeedlePoint:
    """One setting of the curve: turns; delivery_ml_min smoothed; least and most that was caught."""

    turns: float
    delivery_ml_min: float
    least_ml_min: float
    most_ml_min: float
    count: int


def needle_curve(catches: Sequence[NeedleCatch]) -> tuple[NeedlePoint, ...]:
    """Give the closest rising curve through the catches: delivery by turns of the needle.

    Catches at one setting are averaged; neighbours that fall are pooled to their weighted mean until
    nothing falls: the least-squares fit among all curves that never fall.

    Args:
        catches: turns [turns] and delivery [ml/min], each 0 or more; one catch or more.

    Returns: one NeedlePoint a setting, in order of turns.
    Range: holds between the least and the most turns tried, and says nothing beyond.
    Source: isotonic regression by pooling adjacent violators: Ayer, Brunk, Ewing, Reid and
        Silverman, Annals of Mathematical Statistics 26 (1955) 641-647.

    >>> curve = needle_curve([NeedleCatch(1, 90), NeedleCatch(2, 170), NeedleCatch(2.5, 150)])
    >>> [(p.turns, p.delivery_ml_min) for p in curve]
    [(1.0, 90.0), (2.0, 160.0), (2.5, 160.0)]
    """
    if not catches:
        raise BadInput("No catch was given; at least one is needed.")
    checked = sorted(
        (
            require("The turns of the needle", catch.turns, 0.0, unit="turns"),
            require("The delivery", catch.delivery_ml_min, 0.0, unit="ml/min"),
        )
        for catch in catches
    )
    settings: list[tuple[float, list[float]]] = []
    for turns, delivery in checked:
        if settings and turns - settings[-1][0] < SAME_TURNS:
            settings[-1][1].append(delivery)
        else:
            settings.append((turns, [delivery]))
    # A block is [sum of deliveries, number of catches, number of settings].
    blocks: list[tuple[float, int, int]] = []
    for _turns, caught in settings:
        block = (math.fsum(caught), len(caught), 1)
        while blocks and blocks[-1][0] / blocks[-1][1] > block[0] / block[1]:
            last = blocks.pop()
            block = (last[0] + block[0], last[1] + block[1], last[2] + block[2])
        blocks.append(block)
    smooth = [total / count for total, count, width in blocks for _ in range(width)]
    return tuple(
        NeedlePoint(turns, delivery, min(caught), max(caught), len(caught))
        for (turns, caught), delivery in zip(settings, smooth, strict=True)
    )


def delivery_at_turns(turns: float, catches: Sequence[NeedleCatch]) -> Estimate | Outside:
    """Estimate the delivery at a setting of the needle.

    Args:
        turns: turns open [turns], 0 or more.
        catches: the painter's catches, one or more.

    Returns: Estimate [ml/min]: at a setting that was tried, the curve and the least and most caught
        there; between two, the straight line and the two settings' values. Outside beyond them.
    Range: from the least to the most turns tried; beyond, nothing is extrapolated.
    Source: piecewise linear interpolation of the isotonic curve (Ayer et al. 1955).

    >>> delivery_at_turns(1.5, [NeedleCatch(1, 100), NeedleCatch(2, 200)]).likely
    150.0
    """
    require("The turns of the needle", turns, 0.0, unit="turns")
    curve = needle_curve(catches)
    for point in curve:
        if abs(point.turns - turns) < SAME_TURNS:
            fitted = point.delivery_ml_min
            low, high = min(fitted, point.least_ml_min), max(fitted, point.most_ml_min)
            return Estimate(fitted, low, high, "ml/min", _RULE)
    for a, b in itertools.pairwise(curve):
        if a.turns < turns < b.turns:
            share = (turns - a.turns) / (b.turns - a.turns)
            likely = a.delivery_ml_min + share * (b.delivery_ml_min - a.delivery_ml_min)
            return Estimate(likely, a.delivery_ml_min, b.delivery_ml_min, "ml/min", _RULE)
    side = "fewer turns than the fewest" if turns < curve[0].turns else "more turns than the most"
    return Outside(
        f"This is {side} you have caught at.",
        "Catch at this setting: it adds a point here.",
        _RULE,
    )


def turns_for_delivery(wanted_ml_min: float, catches: Sequence[NeedleCatch]) -> Estimate | Outside:
    """Give the turns to try for a wanted delivery.

    Args:
        wanted_ml_min: delivery wanted [ml/min], above 0.
        catches: the painter's catches, one or more.

    Returns: Estimate [turns]: the straight line between the nearest settings that gave less and
        more, which are its low and high. Where several settings give the wanted delivery the least
        opening is taken. Outside, with the way to turn, beyond what was caught.
    Range: from the least to the greatest delivery of the curve; beyond, nothing is extrapolated.
    Source: inverse of the piecewise linear isotonic curve (Ayer et al. 1955).

    >>> tried = [NeedleCatch(1.0, 100), NeedleCatch(2.0, 180)]
    >>> turns_for_delivery(160, tried).likely
    1.75
    >>> print(turns_for_delivery(200, tried).advice)
    Open the needle beyond 2 turns, a quarter turn at a time, and catch again.
    """
    require("The delivery wanted", wanted_ml_min, above=0.0, unit="ml/min")
    curve = needle_curve(catches)
    if wanted_ml_min > curve[-1].delivery_ml_min:
        return Outside(
            "No catch has reached this delivery yet.",
            f"Open the needle beyond {curve[-1].turns:g} turns, a quarter turn at a time, "
            "and catch again.",
            _RULE,
        )
    if wanted_ml_min < curve[0].delivery_ml_min:
        return Outside(
            "Every catch gave more than this.",
            f"Close the needle below {curve[0].turns:g} turns, a quarter turn at a time, "
            "and catch again.",
            _RULE,
        )
    less = [point for point in curve if point.delivery_ml_min < wanted_ml_min]
    reached = curve[len(less)]
    likely = reached.turns
    if less and reached.delivery_ml_min > wanted_ml_min:
        a = less[-1]
        rise = reached.delivery_ml_min - a.delivery_ml_min
        likely = a.turns + (wanted_ml_min - a.delivery_ml_min) / rise * (likely - a.turns)
    more = (point.turns for point in curve if point.delivery_ml_min > wanted_ml_min)
    low = less[-1].turns if less else likely
    return Estimate(likely, low, next(more, curve[-1].turns), "turns", _RULE)
