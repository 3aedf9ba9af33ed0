"""The middle of observations and its band, against scipy and against chance itself."""

from __future__ import annotations

import math
import random
from statistics import median

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from booth.trade.observations.median_band import MedianBand, median_band
from booth.trade.result import BadInput, Outside
from tests.trade.outside import Kind, outside

values = st.lists(st.floats(-1e6, 1e6), min_size=3, max_size=60)


@outside(
    median_band,
    kind=Kind.LIBRARY,
    source="scipy.stats.quantile_test, confidence interval of the median; scipy.stats.binom",
)
@given(values, st.sampled_from([0.8, 0.9, 0.95, 0.99]))
def test_the_band_is_the_one_of_the_quantile_test(found: list[float], wanted: float) -> None:
    band = median_band(found, wanted)
    assert isinstance(band, MedianBand)
    ends = stats.quantile_test(found, q=0, p=0.5).confidence_interval(wanted)
    if math.isnan(ends.low) or math.isnan(ends.high):
        # So few that scipy gives no end: all of them, and what that comes to.
        assert (band.middle_low, band.middle_high) == (min(found), max(found))
        assert band.covers_fraction < wanted
        depth = 1
    else:
        assert (band.middle_low, band.middle_high) == (ends.low, ends.high)
        assert band.covers_fraction >= wanted - 1e-12
        depth = int(stats.binom.ppf((1 - wanted) / 2, len(found), 0.5))
    covers = 1 - 2 * stats.binom.cdf(depth - 1, len(found), 0.5)
    assert band.covers_fraction == pytest.approx(covers, abs=1e-12)
    assert band.median == pytest.approx(stats.scoreatpercentile(found, 50), rel=1e-12, abs=1e-9)


@outside(
    median_band,
    kind=Kind.SIMULATION,
    source="drawn from skewed and heavy-tailed distributions of known median",
)
@pytest.mark.parametrize("count", [3, 6, 9, 20])
def test_it_holds_the_true_middle_as_often_as_it_says(count: int) -> None:
    drawn, tries = random.Random(count), 2000
    held = covers = 0.0
    for _ in range(tries):
        band = median_band([drawn.lognormvariate(0.0, 0.8) for _ in range(count)])
        assert isinstance(band, MedianBand)
        held += band.middle_low <= 1.0 <= band.middle_high
        covers = band.covers_fraction
    # Exact for a continuous distribution: the share held is binomial; four of its standard
    # deviations are missed by chance once in 16,000.
    assert held / tries == pytest.approx(covers, abs=4 * math.sqrt(covers * (1 - covers) / tries))


@given(values)
def test_one_wild_observation_leaves_it_among_the_others(found: list[float]) -> None:
    band = median_band(found)
    assert isinstance(band, MedianBand)
    assert band.middle_low <= band.median <= band.middle_high
    assert band.median == median(found) and band.count == len(found)
    wild = median_band([*sorted(found)[:-1], 1e9])
    assert isinstance(wild, MedianBand) and wild.middle_low == band.middle_low


@pytest.mark.parametrize("found", [[], [1.0], [1.0, 2.0]])
def test_under_three_there_is_no_band(found: list[float]) -> None:
    none = median_band(found)
    assert isinstance(none, Outside) and f"There are {len(found)} observations" in none.reason


def test_what_is_no_number_and_no_confidence_is_refused() -> None:
    with pytest.raises(BadInput, match="An observation"):
        median_band([1.0, 2.0, math.inf])
    with pytest.raises(BadInput, match="confidence"):
        median_band([1.0, 2.0, 3.0], 0.1)
