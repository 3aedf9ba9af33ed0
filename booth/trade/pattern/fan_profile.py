"""Profiles across the fan: how the film of one pass is spread from one edge to the other.

A profile is a function of the place across the fan, from -0.5 (one edge) to 0.5 (the other), whose
mean over the fan is 1. The named ones are model shapes; a pattern seen on paper can be entered in
zones. What several passes make of a profile is in ``overlap``, what to turn in ``pattern_reading``.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from booth.trade.result import BadInput, require

#: At an edge where a profile jumps, the mean of both sides counts; so close is 'at the edge'.
AT_EDGE = 1e-9
HALF = 0.5


@dataclass(frozen=True, slots=True)
class FanProfile:
    """A profile across the fan, called with a place in fan widths: ``profile(0.0)`` is the middle.

    name; inside: the film at a place within the fan, its mean over the fan being 1; breaks: places
    from -0.5 to 0.5, both included, between which `inside` is smooth; fact: the formula.
    """

    name: str
    inside: Callable[[float], float]
    breaks: tuple[float, ...]
    fact: str

    def __call__(self, place: float) -> float:
        """Give the film at `place` [fan widths from the middle]; 0 outside of the fan."""
        beyond = abs(place) - HALF
        if beyond > AT_EDGE:
            return 0.0
        film = self.inside(max(-HALF, min(HALF, place)))
        return film if beyond < -AT_EDGE else film / 2.0


_EDGES = (-HALF, HALF)

#: Bell: the fan is this many standard deviations wide (a convention of this model).
BELL_WIDTH_IN_SIGMA = 6.0
_BELL_INSIDE = math.erf(BELL_WIDTH_IN_SIGMA / 2.0 / math.sqrt(2.0))
_BELL_PEAK = BELL_WIDTH_IN_SIGMA / math.sqrt(2.0 * math.pi) / _BELL_INSIDE
#: Heavy middle: power of (1 - u^2), u from -1 to 1; its mean is the product 2k/(2k + 1).
HEAVY_MIDDLE_POWER = 8
_HEAVY_MIDDLE_MEAN = math.prod(2.0 * k / (2.0 * k + 1.0) for k in range(1, HEAVY_MIDDLE_POWER + 1))
#: Heavy both ends: weight m of u^2 in (1 - u^2)(1 + m u^2): the middle gets a quarter of the ends.
SPLIT_WEIGHT = 14.0
_SPLIT_MEAN = 2.0 / 3.0 + SPLIT_WEIGHT * 2.0 / 15.0
#: Heavy one end: mean of (1 - u)(1 + u)^3.
_ONE_END_MEAN = 4.0 / 5.0


def _bell(place: float) -> float:
    return _BELL_PEAK * math.exp(-((BELL_WIDTH_IN_SIGMA * place) ** 2) / 2.0)


def _heavy_middle(place: float) -> float:
    return (1.0 - 4.0 * place**2) ** HEAVY_MIDDLE_POWER / _HEAVY_MIDDLE_MEAN


def _heavy_both_ends(place: float) -> float:
    square = 4.0 * place**2
    return (1.0 - square) * (1.0 + SPLIT_WEIGHT * square) / _SPLIT_MEAN


def _heavy_one_end(place: float) -> float:
    u = 2.0 * place
    return (1.0 - u) * (1.0 + u) ** 3 / _ONE_END_MEAN


_MODELS = (
    FanProfile("even", lambda place: 1.0, _EDGES, "1 from edge to edge (top hat)"),
    FanProfile(
        "triangle",
        lambda place: 2.0 - 4.0 * abs(place),
        (-HALF, 0.0, HALF),
        "2 (1 - 2|x|)",
    ),
    FanProfile("parabola", lambda place: 1.5 - 6.0 * place**2, _EDGES, "1.5 (1 - 4 x^2)"),
    FanProfile(
        "cosine squared",
        lambda place: 2.0 * math.cos(math.pi * place) ** 2,
        _EDGES,
        "2 cos^2(pi x)",
    ),
    FanProfile("bell", _bell, _EDGES, "normal curve cut off at 3 standard deviations"),
    FanProfile("heavy middle", _heavy_middle, _EDGES, "(1 - 4 x^2)^8, scaled to mean 1"),
    FanProfile(
        "heavy both ends", _heavy_both_ends, _EDGES, "(1 - u^2)(1 + 14 u^2), u = 2x, scaled"
    ),
    FanProfile("heavy one end", _heavy_one_end, _EDGES, "(1 - u)(1 + u)^3, u = 2x, scaled"),
)
_BY_NAME = {model.name: model for model in _MODELS}
#: Names of the model profiles, from even to lopsided.
NAMES: tuple[str, ...] = tuple(_BY_NAME)


def profile_by_name(name: str) -> FanProfile:
    """Give a model profile by its name.

    Args:
        name: one of NAMES.

    Returns: FanProfile [1], mean 1 over the fan.
    Range: models. A real fan is none of them exactly: enter what the paper shows in zones. A
        crescent is a bend of the pattern, not a profile across it, so it has no model.
    Source: top hat, triangle, parabola, raised cosine, truncated normal and beta densities, as in
        any table of distributions; parabola and beta are the usual models of a paint gun's deposit.
        Their choice for the faulty patterns is this project's.

    >>> profile_by_name("parabola")(0.0)
    1.5
    """
    if name not in _BY_NAME:
        raise BadInput(f"There is no fan profile {name!r}; there are {', '.join(NAMES)}.")
    return _BY_NAME[name]


#: Fewest and most zones that an eye can tell apart across a fan (common practice, no source).
ZONES = (3, 15)
#: The scale on which a zone is entered: 0 nothing, 9 the heaviest.
ZONE_SCALE = (0.0, 9.0)


def profile_from_zones(zones: Sequence[float], steps: bool = False) -> FanProfile:
    """Make a profile of what was seen in equal zones across the fan.

    Args:
        zones: how heavy each zone looks, from one edge to the other [1], 0 to 9 each, 3 to 15
            zones; only their proportions count.
        steps: each zone is of one thickness; otherwise lines between the middles of the zones.

    Returns: FanProfile [1], mean 1 over the fan.
    Range: what an eye sees on paper is a rough measure of film; so is all that follows from it.
    Source: piecewise constant and piecewise linear interpolation; reading a pattern in zones is
        common practice, no source.

    >>> profile = profile_from_zones([2, 4, 6, 4, 2], steps=True)
    >>> [round(profile(place), 3) for place in (-0.4, 0.0, 0.4)]
    [0.556, 1.667, 0.556]
    """
    count = len(zones)
    if not ZONES[0] <= count <= ZONES[1]:
        raise BadInput(
            f"A pattern is entered in {ZONES[0]} to {ZONES[1]} zones; {count} were given."
        )
    heavy = [require("A zone of the pattern", zone, *ZONE_SCALE) for zone in zones]
    if not any(heavy):
        raise BadInput("Every zone is 0: there is no pattern to work with.")
    width = 1.0 / count
    middles = [-HALF + (index + 0.5) * width for index in range(count)]
    if steps:
        mean = math.fsum(heavy) / count

        def inside(place: float) -> float:
            position = (place + HALF) / width
            edge = round(position)
            if abs(position - edge) < AT_EDGE and 0 < edge < count:
                return (heavy[edge - 1] + heavy[edge]) / 2.0 / mean
            return heavy[min(count - 1, max(0, math.floor(position)))] / mean

        breaks = (*(-HALF + index * width for index in range(count)), HALF)
        return FanProfile("zones", inside, breaks, "steps between zones entered by eye")

    between = math.fsum((a + b) / 2.0 for a, b in itertools.pairwise(heavy)) * width
    mean = between + (heavy[0] + heavy[-1]) / 2.0 * width

    def inside_lines(place: float) -> float:
        position = min(max((place - middles[0]) / width, 0.0), count - 1.0)
        left = min(int(position), count - 2)
        share = position - left
        return (heavy[left] * (1.0 - share) + heavy[left + 1] * share) / mean

    return FanProfile(
        "zones", inside_lines, (-HALF, *middles, HALF), "lines between zones entered by eye"
    )
