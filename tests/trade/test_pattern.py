"""Fan profiles against the distributions of scipy, whose densities they are."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from booth.trade.pattern import fan_profile
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

zones = st.lists(st.integers(0, 9), min_size=3, max_size=15).filter(any)
place = st.floats(-0.499, 0.499)

#: Density of scipy on the fan from -0.5 to 0.5; a mean of 1 over a width of 1 is a density.
DENSITIES = {
    "even": stats.uniform(-0.5, 1),
    "triangle": stats.triang(0.5, -0.5, 1),
    "parabola": stats.beta(2, 2, -0.5, 1),
    "cosine squared": stats.cosine(0, 1 / (2 * math.pi)),
    "bell": stats.truncnorm(-3, 3, 0, 1 / 6),
    "heavy middle": stats.beta(9, 9, -0.5, 1),
    "heavy one end": stats.beta(4, 2, -0.5, 1),
}


def mean_over_fan(profile: fan_profile.FanProfile) -> float:
    """Mean of a profile over the fan, piece by piece between its breaks."""
    return sum(
        integrate.fixed_quad(np.vectorize(profile), a, b, n=40)[0]
        for a, b in zip(profile.breaks, profile.breaks[1:], strict=False)
    )


@outside(
    fan_profile.profile_by_name,
    kind=Kind.LIBRARY,
    source="scipy.stats: uniform, triang, beta, cosine, truncnorm densities",
)
@pytest.mark.parametrize("name", DENSITIES)
def test_profiles_are_the_densities_they_are_named_after(name: str) -> None:
    profile = fan_profile.profile_by_name(name)
    for x in np.linspace(-0.499, 0.499, 57):
        assert profile(x) == pytest.approx(DENSITIES[name].pdf(x), rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("name", fan_profile.NAMES)
def test_every_profile_has_mean_1_is_never_negative_and_ends_at_the_edge(name: str) -> None:
    profile = fan_profile.profile_by_name(name)
    assert mean_over_fan(profile) == pytest.approx(1.0, abs=1e-10)
    assert min(profile(x) for x in np.linspace(-0.5, 0.5, 301)) >= 0
    assert profile(0.501) == profile(-0.501) == 0.0


def test_heavy_both_ends_has_a_quarter_of_its_peaks_in_the_middle() -> None:
    """(1 - u2)(1 + 14 u2) has its peaks at u2 = 13/28, by its derivative."""
    profile = fan_profile.profile_by_name("heavy both ends")
    peak = math.sqrt(13 / 28) / 2
    assert profile(peak) == pytest.approx(max(profile(x) for x in np.linspace(0, 0.5, 9999)))
    assert profile(0) / profile(peak) == pytest.approx(1 / ((15 / 28) * 7.5), rel=1e-12)
    assert profile(0) / profile(peak) == pytest.approx(0.25, abs=0.002)


def test_at_an_edge_that_jumps_the_mean_of_both_sides_counts() -> None:
    assert fan_profile.profile_by_name("even")(0.5) == 0.5
    assert fan_profile.profile_by_name("even")(-0.5) == 0.5


@outside(
    fan_profile.profile_from_zones,
    kind=Kind.LIBRARY,
    source="numpy.interp between the middles of the zones; numpy.mean of steps",
)
@given(zones, place)
def test_zones_are_interpolated_as_numpy_does(heavy: list[int], x: float) -> None:
    count = len(heavy)
    middles = (np.arange(count) + 0.5) / count - 0.5
    lines = fan_profile.profile_from_zones(heavy)
    outline = np.interp([-0.5, *middles, 0.5], middles, heavy)
    mean = integrate.trapezoid(outline, [-0.5, *middles, 0.5])
    assert lines(x) == pytest.approx(np.interp(x, middles, heavy) / mean, rel=1e-9, abs=1e-9)
    assert mean_over_fan(lines) == pytest.approx(1.0, abs=1e-9)
    steps = fan_profile.profile_from_zones(heavy, steps=True)
    for middle, zone in zip(middles, heavy, strict=True):
        assert steps(middle) == pytest.approx(zone / np.mean(heavy))
    assert mean_over_fan(steps) == pytest.approx(1.0, abs=1e-9)


@given(zones, st.floats(0.1, 1.0), place)
def test_only_the_proportions_of_the_zones_count(heavy: list[int], scale: float, x: float) -> None:
    for steps in (False, True):
        one = fan_profile.profile_from_zones(heavy, steps)
        other = fan_profile.profile_from_zones([zone * scale for zone in heavy], steps)
        assert other(x) == pytest.approx(one(x), rel=1e-9, abs=1e-9)


def test_between_two_steps_the_mean_of_both_counts() -> None:
    steps = fan_profile.profile_from_zones([2, 4, 6, 4, 2], steps=True)
    assert steps(-0.3) == pytest.approx((2 + 4) / 2 / 3.6)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: fan_profile.profile_by_name("banana"), "no fan profile 'banana'; there are even"),
        (lambda: fan_profile.profile_from_zones([1, 2]), "3 to 15 zones; 2 were given"),
        (lambda: fan_profile.profile_from_zones([0, 0, 0]), "Every zone is 0"),
        (lambda: fan_profile.profile_from_zones([1, 10, 1]), "must be 9 or less; 10 was given"),
        (lambda: fan_profile.profile_from_zones([1, math.nan, 1]), "finite"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
