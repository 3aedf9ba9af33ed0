"""Overlapping passes against exact facts that can be proved by hand, and against numpy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from numpy.polynomial.legendre import leggauss
from scipy import optimize

from booth.trade.pattern import overlap
from booth.trade.pattern.fan_profile import NAMES, FanProfile, profile_by_name, profile_from_zones
from booth.trade.pattern.overlap_numerics import GAUSS_12
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

names = st.sampled_from(NAMES)
overlaps = st.floats(0.0, 0.9)
#: Sums of a few floats of the size of 1: rounding, nothing else.
FLAT = 1e-9
#: Extremes beside a jump are read 4e-9 of a fan width away from it; slopes reach some 20 per fan.
EXTREME = 1e-6


def lattice(profile: FanProfile, o: float, places: np.ndarray, alternating: bool) -> np.ndarray:
    """The film by plain summation over more passes than can reach, with numpy."""
    pitch = 1 - o
    first = math.floor((places.min() - 1) / pitch)
    last = math.ceil((places.max() + 1) / pitch)
    film = np.zeros_like(places)
    for k in range(first, last + 1):
        across = places - k * pitch
        if alternating and k % 2:
            across = -across
        film += np.vectorize(profile, otypes=[float])(across)
    return film * pitch


def test_the_places_and_weights_of_the_quadrature() -> None:
    """Against numpy.polynomial.legendre.leggauss; half of the fifteenth decimal, and a last digit."""
    both = [(side * node, weight) for node, weight in GAUSS_12 for side in (-1, 1)]
    for ours, theirs in zip(sorted(both), zip(*leggauss(12), strict=True), strict=True):
        assert ours == pytest.approx(theirs, abs=1e-15, rel=0)


@outside(
    overlap.evenness,
    overlap.film_at,
    kind=Kind.THEOREM,
    source="theorem: translates of a triangle sum to a constant at 1 - 1/(2n), of a top hat at "
    "1 - 1/n, of cosine squared at 1/2, 2/3, 3/4 (provable by hand)",
)
@pytest.mark.parametrize(
    ("name", "o"),
    [
        *(("triangle", o) for o in (1 / 2, 3 / 4, 1 - 1 / 6, 1 - 1 / 8)),
        *(("cosine squared", o) for o in (1 / 2, 2 / 3, 3 / 4)),
        *(("even", 1 - 1 / n) for n in (1, 2, 3, 4, 5, 6, 7, 10)),
    ],
)
def test_where_the_film_is_flat(name: str, o: float) -> None:
    profile = profile_by_name(name)
    found = overlap.evenness(profile, o)
    assert found.max_over_min == pytest.approx(1.0, abs=FLAT)
    assert found.cv == pytest.approx(0.0, abs=FLAT)
    for place in np.linspace(-1, 1, 41):
        assert overlap.film_at(profile, o, place) == pytest.approx(1.0, abs=FLAT)


@outside(
    overlap.evenness,
    kind=Kind.THEOREM,
    source="provable by hand: a parabola at 50 % has max/min 3/2 and CV sqrt(1/80) = 11.18 %",
)
def test_a_parabola_at_50_percent_is_not_flat() -> None:
    found = overlap.evenness(profile_by_name("parabola"), 0.5)
    assert found.max_over_min == pytest.approx(1.5, abs=EXTREME)
    assert (found.lowest, found.highest) == pytest.approx((0.75, 1.125), abs=EXTREME)
    assert found.cv == pytest.approx(math.sqrt(1 / 80), rel=1e-12)
    assert found.cv == pytest.approx(0.1118, abs=5e-5)


@outside(
    overlap.evenness,
    kind=Kind.THEOREM,
    source="provable by hand: a top hat with 1/pitch = N + f has CV sqrt(f (1 - f)) / (N + f) and "
    "max/min (N + 1)/N",
)
@given(st.integers(1, 6), st.floats(0.05, 0.95))
def test_a_top_hat_between_its_flat_overlaps(whole: int, part: float) -> None:
    found = overlap.evenness(profile_by_name("even"), 1 - 1 / (whole + part))
    assert found.max_over_min == pytest.approx((whole + 1) / whole, rel=FLAT)
    assert found.cv == pytest.approx(math.sqrt(part * (1 - part)) / (whole + part), rel=1e-6)


@outside(
    overlap.most_even_overlap,
    kind=Kind.LIBRARY,
    source="scipy.optimize on two parabolas: least variance at an overlap of 0.301, CV 5.33 %",
)
def test_the_best_overlap_of_a_parabola_below_55_percent() -> None:
    best = overlap.most_even_overlap(profile_by_name("parabola"), high=0.55)
    assert 0.29 <= best.overlap_fraction <= 0.31
    assert best.overlap_fraction == pytest.approx(0.301, abs=5e-4)
    assert best.evenness.cv == pytest.approx(0.0533, abs=5e-5)
    # The study prints the variance to one figure, of its own panel with edges: same size.
    assert best.evenness.cv**2 == pytest.approx(0.0025, abs=0.0005)

    def variance(o: float) -> float:
        pitch = 1 - o  # below 50 %: two parabolas over o, one over the rest
        x = (np.arange(200_000) + 0.5) / 200_000 * pitch - 0.5
        film = 1.5 * (1 - 4 * x**2)
        film += np.where(x < 0.5 - pitch, 1.5 * (1 - 4 * (x + pitch) ** 2), 0.0)
        return float(np.var(film * pitch))

    theirs = optimize.minimize_scalar(variance, bounds=(0.2, 0.45), method="bounded")
    assert best.overlap_fraction == pytest.approx(theirs.x, abs=1e-4)
    assert best.evenness.cv == pytest.approx(math.sqrt(theirs.fun), rel=1e-5)


@pytest.mark.parametrize(
    ("name", "low", "high", "best"),
    [
        ("triangle", 0.25, 0.75, 0.5),  # 0.75 is as flat, with twice the passes
        ("cosine squared", 0.25, 0.75, 0.5),
        ("cosine squared", 0.55, 0.75, 2 / 3),
        ("even", 0.25, 0.75, 0.5),
        ("even", 0.55, 0.7, 2 / 3),
        ("even", 0.0, 0.4, 0.0),
    ],
)
def test_of_overlaps_that_are_equally_even_the_one_with_the_fewest_passes(
    name: str, low: float, high: float, best: float
) -> None:
    found = overlap.most_even_overlap(profile_by_name(name), low, high)
    # A smooth minimum is found to about the root of EQUALLY_EVEN over its curvature.
    assert found.overlap_fraction == pytest.approx(best, abs=2e-6)
    assert found.evenness.cv < 1e-5


@settings(max_examples=25, deadline=None)
@given(names, st.floats(0.2, 0.5), st.floats(0.5, 0.8), st.booleans(), st.floats(0, 1))
@example("bell", 0.2734375, 0.6745402312210292, False, 0.0)  # the last step, rounded up
def test_no_overlap_within_the_limits_is_more_even(
    name: str, low: float, high: float, alternating: bool, share: float
) -> None:
    profile = profile_by_name(name)
    best = overlap.most_even_overlap(profile, low, high, alternating)
    assert low <= best.overlap_fraction <= high
    other = overlap.evenness(profile, low + share * (high - low), alternating)
    assert best.evenness.cv <= other.cv + 2 * overlap.EQUALLY_EVEN


@outside(
    overlap.film_at,
    overlap.evenness,
    kind=Kind.SIMULATION,
    source="plain summation over a lattice of passes with numpy",
)
@settings(deadline=None)
@given(names.filter(lambda name: name != "even"), overlaps, st.booleans())
def test_the_film_and_its_scatter_agree_with_plain_summation(
    name: str, o: float, alternating: bool
) -> None:
    """All but the top hat: its strips may be narrower than a sample, and it has its own test."""
    profile = profile_by_name(name)
    period = (1 - o) * (2 if alternating else 1)
    places = (np.arange(4000) + 0.5) / 4000 * period
    film = lattice(profile, o, places, alternating)
    for index in range(0, 4000, 199):
        ours = overlap.film_at(profile, o, places[index], alternating)
        assert ours == pytest.approx(film[index], abs=1e-9)
    found = overlap.evenness(profile, o, alternating)
    # The invariance: the mean film is that of the pitch, for any profile. Midpoints of 4000 strips
    # are right to 1e-6 but for the bell's jumps of 0.027 at its edges, four a period at most: each
    # may be misplaced by half a strip; the square of a film of 2.4 jumps by 2 x 2.4 x 0.027.
    assert film.mean() == pytest.approx(1.0, abs=1.5e-5)
    assert found.cv**2 == pytest.approx(film.var(), abs=7e-5)
    assert found.lowest <= film.min() + 1e-9
    assert found.highest >= film.max() - 1e-9
    # Samples lie within half a strip, 0.00025 fans, of the extremes; the steepest slope is 23.7 a
    # fan, at the edge of the split pattern: (1 - u2)(1 + 14 u2) / 2.533 at u = 1.
    # The bell's jump can make a ledge narrower than a strip, with one edge or two upon it.
    ledge = 2 * profile.inside(0.5)
    assert found.lowest >= film.min() - 0.006 - ledge
    assert found.highest <= film.max() + 0.006 + ledge


@settings(deadline=None)
@given(
    st.lists(st.integers(0, 9), min_size=3, max_size=9).filter(any),
    st.floats(0.0, 0.8),
    st.booleans(),
    st.booleans(),
)
def test_the_mean_film_does_not_depend_on_the_pattern(
    zones: list[int], o: float, steps: bool, alternating: bool
) -> None:
    profile = profile_from_zones(zones, steps)
    period = (1 - o) * (2 if alternating else 1)
    places = (np.arange(2000) + 0.5) / 2000 * period
    mean = np.mean([overlap.film_at(profile, o, place, alternating) for place in places])
    # Each of up to some 20 jumps may fall within a strip of 1/2000; the films jump by up to 9.
    assert mean == pytest.approx(1.0, abs=0.02)
    found = overlap.evenness(profile, o, alternating)
    assert found.lowest <= 1 + FLAT
    assert found.highest >= 1 - FLAT


@given(st.sampled_from(["even", "triangle", "parabola", "cosine squared", "bell"]), overlaps)
def test_turning_a_symmetric_fan_changes_nothing(name: str, o: float) -> None:
    profile = profile_by_name(name)
    straight, turned = overlap.evenness(profile, o), overlap.evenness(profile, o, True)
    assert turned.cv == pytest.approx(straight.cv, abs=1e-9)
    assert turned.highest == pytest.approx(straight.highest, abs=EXTREME)


def test_turning_a_lopsided_fan_puts_heavy_beside_heavy() -> None:
    profile = profile_by_name("heavy one end")
    straight, turned = overlap.evenness(profile, 0.5), overlap.evenness(profile, 0.5, True)
    assert turned.cv > straight.cv
    # Halfway between a pass and its turned neighbour both have the same place of the fan.
    assert overlap.film_at(profile, 0.5, 0.25, True) == pytest.approx(2 * profile(0.25) * 0.5)


def test_a_strip_left_bare_is_infinitely_uneven() -> None:
    bare = overlap.evenness(profile_from_zones([0, 9, 0], steps=True), 0.25)
    assert bare.lowest == 0.0
    assert bare.max_over_min == math.inf
    assert math.isfinite(bare.cv)
    # Edge to edge, a fan that tapers to nothing leaves the seam bare, be it ever so narrow.
    for name in ("triangle", "parabola", "heavy both ends"):
        assert overlap.evenness(profile_by_name(name), 0.0).max_over_min == math.inf


@outside(
    overlap.steady_part,
    kind=Kind.SIMULATION,
    source="by enumeration: passes counted over the painted width",
)
@given(overlaps, st.integers(1, 12), st.floats(0.001, 0.999))
def test_the_steady_part_has_all_its_passes_and_the_rest_has_not(
    o: float, passes: int, share: float
) -> None:
    pitch = 1 - o
    width = (passes - 1) * pitch + 1
    place = share * width
    covering = [k for k in range(-40, 60) if k * pitch < place < k * pitch + 1]
    complete = all(0 <= k < passes for k in covering)
    part = overlap.steady_part(o, passes)
    if part is None:
        assert not complete
    elif part[0] + FLAT < share < part[1] - FLAT:
        assert complete
    elif not part[0] - FLAT <= share <= part[1] + FLAT:
        assert not complete


@outside(
    overlap.steady_part,
    kind=Kind.SIMULATION,
    source="a panel of a hundred thousand places with numpy: those under as many passes as an "
    "endless row "
    "of them would lay",
)
@pytest.mark.parametrize(("o", "passes"), [(0.5, 4), (0.25, 3), (2 / 3, 6), (0.0, 2)])
def test_the_steady_part_by_counting_every_place(o: float, passes: int) -> None:
    pitch = 1 - o
    width = (passes - 1) * pitch + 1
    places = (np.arange(100_000) + 0.5) / 100_000 * width
    own, endless = (
        sum((places > k * pitch) & (places < k * pitch + 1) for k in row)
        for row in (range(passes), range(-9, passes + 9))
    )
    steady = places[own == endless] / width
    part = overlap.steady_part(o, passes)
    assert part is not None
    # Half a place at either end.
    assert part == pytest.approx((steady.min(), steady.max()), abs=2e-5)


@outside(
    overlap.film_section,
    kind=Kind.SIMULATION,
    source="conservation of volume: the section of n passes holds n fans; plain summation by numpy",
)
@settings(deadline=None)
@given(names, st.floats(0, 0.9), st.integers(1, 7), st.booleans())
def test_a_section_holds_what_its_passes_laid(
    name: str, o: float, passes: int, alternating: bool
) -> None:
    profile = profile_by_name(name)
    section = overlap.film_section(profile, o, passes, 1000, alternating)
    width = (passes - 1) * (1 - o) + 1
    shares = np.array([share for share, _ in section])
    film = np.array([each for _, each in section])
    assert np.all(np.diff(shares) > 0)
    assert 0 < shares[0] < shares[-1] < 1
    # Film over the mean film, 1/pitch of a pass's own: n passes hold n x pitch. A jump within a
    # strip of 1/1000 of the width costs up to that share of it, at two edges a pass.
    laid = film.mean() * width
    assert laid == pytest.approx(passes * (1 - o), abs=2e-3 * passes * width * (1 - o) + 1e-6)
    steady = overlap.steady_part(o, passes)
    if steady is not None:
        inside = (shares > steady[0] + 1e-6) & (shares < steady[1] - 1e-6)
        places = shares[inside] * width - 0.5
        if places.size:
            expected = lattice(profile, o, places, alternating)
            assert film[inside] == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda p: overlap.evenness(p, 50), "overlap must be 0.95 or less; 50 was given"),
        (lambda p: overlap.film_at(p, -0.1, 0), "overlap must be 0 or more"),
        (lambda p: overlap.film_at(p, 0.5, math.nan), "finite"),
        (lambda p: overlap.most_even_overlap(p, 0.7, 0.3), "lies below the least"),
        (lambda p: overlap.most_even_overlap(p, 0.3, 1.0), "greatest overlap to consider"),
        (lambda p: overlap.steady_part(0.5, 0), "number of passes must be 1"),
        (lambda p: overlap.film_section(p, 0.5, samples=0), "number of points must be 1"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call(profile_by_name("parabola"))
