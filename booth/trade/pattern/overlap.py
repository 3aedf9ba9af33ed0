"""The film of overlapping passes: profiles side by side at a pitch, and how even they come out.

Lengths are in fan widths, films in mean films: 1 is the mean film of the steady part, which depends
on the pitch alone and not on the profile (see mean_wet_film_um).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from booth.trade.pattern.fan_profile import HALF, FanProfile
from booth.trade.pattern.overlap_numerics import (
    SAME_PLACE,
    film_of_passes,
    least_place,
    least_value,
    smooth_pieces,
    unevenness,
)
from booth.trade.result import BadInput, _count, require

#: Overlaps between which a hand can work (common practice, no source): below, a wandering pass
#: leaves a gap; above, the passes get too many.
PRACTICAL = (0.25, 0.75)
#: Two overlaps whose unevenness differs by less are equally even: the smaller one is taken, which
#: has fewer passes.
EQUALLY_EVEN = 1e-6
#: Step of the search; minima between are then closed in on.
SEARCH_STEP = 0.005
MOST_OVERLAP = 0.95
#: More passes, or more points of a section, than these are a slip of the finger.
MOST_PASSES = 10_000
MOST_SAMPLES = 10_000
#: A film thinner than this share of the mean is none: the seam between tapering fans is bare.
BARE = 1e-6


@dataclass(frozen=True, slots=True)
class Evenness:
    """How even the steady film is: highest over lowest film (infinite where a strip is left bare);
    cv, the standard deviation over the mean; lowest and highest film over the mean [all 1]."""

    max_over_min: float
    cv: float
    lowest: float
    highest: float


@dataclass(frozen=True, slots=True)
class OverlapChoice:
    """An overlap [1] and the evenness it gives."""

    overlap_fraction: float
    evenness: Evenness


def _overlap(overlap_fraction: float) -> float:
    return require("The overlap", overlap_fraction, 0.0, MOST_OVERLAP)


def film_at(
    profile: FanProfile, overlap_fraction: float, place: float, alternating: bool = False
) -> float:
    """Give the film at a place across endless overlapping passes.

    Args:
        profile: profile across the fan.
        overlap_fraction: overlap of the passes [1], 0 to 0.95.
        place: distance from the middle of one pass [fan widths], any.
        alternating: the fan is turned end for end on every second pass.

    Returns: film over the mean film [1].
    Range: steady part, straight parallel passes at one pitch and speed. A hand that goes to and fro
        does not turn the fan; turning the gun or the part between passes does.
    Source: superposition of equal deposits; its mean over a pitch is that of the profile, for any
        profile (sum over a lattice of translates).

    >>> from booth.trade.pattern.fan_profile import profile_by_name
    >>> film_at(profile_by_name("triangle"), 0.5, 0.123)
    1.0
    """
    _overlap(overlap_fraction)
    require("The place across the passes", place)
    return film_of_passes(profile, 1.0 - overlap_fraction, place, alternating)


def evenness(profile: FanProfile, overlap_fraction: float, alternating: bool = False) -> Evenness:
    """Give how even the film of overlapping passes is.

    Args:
        profile: profile across the fan.
        overlap_fraction: overlap of the passes [1], 0 to 0.95.
        alternating: the fan is turned end for end on every second pass.

    Returns: Evenness [1]: max/min and coefficient of variation over the steady part.
    Range: steady part of straight parallel passes; a hand's own wandering comes on top, and wet
        paint levels some of it out.
    Source: superposition of equal deposits; integrals by Gauss-Legendre quadrature between the
        places where the film is not smooth. 50 % overlap is usual: MIL-HDBK-1110 (now UFC 3-190-06)
        9.6.8.

    >>> from booth.trade.pattern.fan_profile import profile_by_name
    >>> even = evenness(profile_by_name("parabola"), 0.5)
    >>> round(even.max_over_min, 4), round(even.cv, 4)
    (1.5, 0.1118)
    """
    pitch = 1.0 - _overlap(overlap_fraction)

    def film(place: float) -> float:
        return film_of_passes(profile, pitch, place, alternating)

    pieces = smooth_pieces(profile, pitch, alternating)
    lowest = min(least_value(film, a, b) for a, b in pieces)
    highest = max(-least_value(lambda place: -film(place), a, b) for a, b in pieces)
    ratio = highest / lowest if lowest > BARE else math.inf
    return Evenness(ratio, unevenness(profile, pitch, alternating), lowest, highest)


def most_even_overlap(
    profile: FanProfile,
    low: float = PRACTICAL[0],
    high: float = PRACTICAL[1],
    alternating: bool = False,
) -> OverlapChoice:
    """Give the overlap between practical limits at which the film is most even.

    Most even means the least coefficient of variation. Of overlaps that are equally even the
    smallest is taken, for it has the fewest passes.

    Args:
        profile: profile across the fan.
        low: least overlap to consider [1], 0 to 0.95.
        high: greatest overlap to consider [1], not below low, to 0.95.
        alternating: the fan is turned end for end on every second pass.

    Returns: OverlapChoice [1].
    Range: as for evenness. For most profiles a large overlap is more even than a small one; narrow
        `high` to see the best with fewer passes.
    Source: least variance over the overlap; a parabola below 55 % overlap has it at 0.301.

    >>> from booth.trade.pattern.fan_profile import profile_by_name
    >>> round(most_even_overlap(profile_by_name("parabola"), high=0.55).overlap_fraction, 3)
    0.301
    """
    require("The least overlap to consider", low, 0.0, MOST_OVERLAP)
    require("The greatest overlap to consider", high, 0.0, MOST_OVERLAP)
    if high < low:
        raise BadInput(
            f"The greatest overlap to consider, {high:g}, lies below the least, {low:g}."
        )

    def cv_at(overlap: float) -> float:
        return unevenness(profile, 1.0 - overlap, alternating)

    steps = max(1, math.ceil((high - low) / SEARCH_STEP))
    grid = [min(high, low + (high - low) * index / steps) for index in range(steps + 1)]
    values = [cv_at(overlap) for overlap in grid]
    found = list(zip(values, grid, strict=True))
    for index, value in enumerate(values):
        left, right = max(0, index - 1), min(steps, index + 1)
        if value <= values[left] and value <= values[right]:
            overlap = least_place(cv_at, grid[left], grid[right])
            found.append((cv_at(overlap), overlap))
    # Where passes meet edge on edge the film can be flat at 1 - 1/n exactly, which no search hits.
    meeting = [1.0 - 1.0 / n for n in range(1, round(1.0 / (1.0 - MOST_OVERLAP)) + 1)]
    found += [(cv_at(each), each) for each in meeting if low <= each <= high]
    best = min(value for value, _ in found)
    tied = [(round(each, 6), value, each) for value, each in found if value <= best + EQUALLY_EVEN]
    overlap = min(tied)[2]
    return OverlapChoice(overlap, evenness(profile, overlap, alternating))


def steady_part(overlap_fraction: float, passes: int) -> tuple[float, float] | None:
    """Give the part of the painted width that has its full number of passes.

    Args:
        overlap_fraction: overlap of the passes [1], 0 to 0.95.
        passes: number of passes, 1 to 10,000.

    Returns: from and to, as shares of the painted width [1]; None where the passes are too few.
    Range: straight parallel passes at one pitch.
    Source: geometry of equal strips at equal pitch.

    >>> steady_part(0.5, 4)  # 4 passes, half over half: 2.5 fans wide, 1.5 of them steady
    (0.2, 0.8)
    """
    pitch = 1.0 - _overlap(overlap_fraction)
    _count("The number of passes", passes, 1, MOST_PASSES)
    width = (passes - 1) * pitch + 1.0
    start, end = 1.0 - pitch, passes * pitch
    if end < start - SAME_PLACE:
        return None
    return start / width, max(start, end) / width


def film_section(
    profile: FanProfile,
    overlap_fraction: float,
    passes: int = 5,
    samples: int = 200,
    alternating: bool = False,
) -> list[tuple[float, float]]:
    """Give a section through the film of some passes, edges and all, for a plot.

    Args:
        profile: profile across the fan.
        overlap_fraction: overlap of the passes [1], 0 to 0.95.
        passes: number of passes, 1 to 10,000.
        samples: number of points, 1 to 10,000; each stands in the middle of an equal strip.
        alternating: the fan is turned end for end on every second pass.

    Returns: pairs of the place, as a share of the painted width [1], and the film over the mean
        film of the steady part [1].
    Range: as for film_at; towards the two edges the film tapers off.
    Source: superposition of equal deposits.

    >>> from booth.trade.pattern.fan_profile import profile_by_name
    >>> film_section(profile_by_name("even"), 0.5, passes=2, samples=3)
    [(0.16666666666666666, 0.5), (0.5, 1.0), (0.8333333333333334, 0.5)]
    """
    pitch = 1.0 - _overlap(overlap_fraction)
    passes = _count("The number of passes", passes, 1, MOST_PASSES)
    samples = _count("The number of points", samples, 1, MOST_SAMPLES)
    width = (passes - 1) * pitch + 1.0
    section = []
    for index in range(samples):
        share = (index + 0.5) / samples
        place = share * width - HALF
        film = 0.0
        for k in range(passes):
            across = place - k * pitch
            film += profile(-across if alternating and k % 2 else across)
        section.append((share, film * pitch))
    return section
