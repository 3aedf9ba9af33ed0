"""The numerics behind ``overlap``: the film of endless passes, its variance and its extremes.

Lengths in fan widths, films in mean films. Plain Python, so that nothing heavy is imported.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable

from booth.trade.pattern.fan_profile import HALF, FanProfile

__all__: list[str] = []

#: Places and weights of Gauss-Legendre quadrature with twelve points on [-1, 1], each place on both
#: sides of the middle: Abramowitz and Stegun, table 25.4 (from memory; the tests take it from
#: numpy).
GAUSS_12 = (
    (0.125233408511469, 0.249147045813403),
    (0.367831498998180, 0.233492536538355),
    (0.587317954286617, 0.203167426723066),
    (0.769902674194305, 0.160078328543346),
    (0.904117256370475, 0.106939325995319),
    (0.981560634246719, 0.047175336386512),
)
#: It is exact for polynomials up to degree 23; the bell and the heavy middle are smooth enough for
#: it on pieces no wider than this, in fan widths.
WIDEST_PIECE = 0.25
EXTREME_SAMPLES = 24
#: Places closer than this are one place: it covers the rounding of k x pitch.
SAME_PLACE = 1e-9
CLOSE_ENOUGH = 1e-7
_GOLDEN = (math.sqrt(5.0) - 1.0) / 2.0


def film_of_passes(profile: FanProfile, pitch: float, place: float, alternating: bool) -> float:
    """Film at `place` from endless passes at k x pitch, in mean films."""
    first = math.ceil((place - HALF) / pitch - SAME_PLACE)
    last = math.floor((place + HALF) / pitch + SAME_PLACE)
    total = 0.0
    for k in range(first, last + 1):
        across = place - k * pitch
        total += profile(-across if alternating and k % 2 else across)
    return total * pitch


def smooth_pieces(
    profile: FanProfile, pitch: float, alternating: bool
) -> list[tuple[float, float]]:
    """Cut one period of the film into pieces within which it is smooth."""
    period = 2.0 * pitch if alternating else pitch
    places = [each % period for each in profile.breaks]
    if alternating:
        places += [(pitch - each) % period for each in profile.breaks]
    cuts = [0.0]
    for place in sorted(places):
        if place - cuts[-1] > SAME_PLACE and period - place > SAME_PLACE:
            cuts.append(place)
    cuts.append(period)
    return list(itertools.pairwise(cuts))


def unevenness(profile: FanProfile, pitch: float, alternating: bool) -> float:
    """Give the standard deviation of the steady film over its mean, which is 1."""
    pieces = smooth_pieces(profile, pitch, alternating)
    total = 0.0
    for a, b in pieces:
        parts = math.ceil((b - a) / WIDEST_PIECE)
        half = (b - a) / parts / 2.0
        for part in range(parts):
            middle = a + (2 * part + 1) * half
            for node, weight in GAUSS_12:
                for place in (middle - half * node, middle + half * node):
                    film = film_of_passes(profile, pitch, place, alternating)
                    total += weight * half * (film - 1.0) ** 2
    return math.sqrt(total / pieces[-1][1])


def least_place(compute: Callable[[float], float], a: float, b: float) -> float:
    """Golden section: the place of the least value of `compute` between a and b."""
    x1, x2 = b - _GOLDEN * (b - a), a + _GOLDEN * (b - a)
    y1, y2 = compute(x1), compute(x2)
    while b - a > CLOSE_ENOUGH:
        if y1 <= y2:
            b, x2, y2 = x2, x1, y1
            x1 = b - _GOLDEN * (b - a)
            y1 = compute(x1)
        else:
            a, x1, y1 = x1, x2, y2
            x2 = a + _GOLDEN * (b - a)
            y2 = compute(x2)
    return x1 if y1 <= y2 else x2


def least_value(compute: Callable[[float], float], a: float, b: float) -> float:
    """Least value of `compute`, smooth on [a, b] but perhaps not beyond its ends."""
    # At a jump the film is the mean of both sides, which is never an extreme by itself.
    at_ends = min(compute(a), compute(b))
    a, b = a + 4.0 * SAME_PLACE, b - 4.0 * SAME_PLACE
    step = (b - a) / EXTREME_SAMPLES
    places = [a + index * step for index in range(EXTREME_SAMPLES)] + [b]
    values = [compute(place) for place in places]
    best = values.index(min(values))
    left, right = places[max(0, best - 1)], places[min(EXTREME_SAMPLES, best + 1)]
    return min(at_ends, values[best], compute(least_place(compute, left, right)))
