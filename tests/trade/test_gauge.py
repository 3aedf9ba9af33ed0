"""Notch gauge: the standard's example teeth, and verdicts checked against every film they allow."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film import wet_gauge
from booth.trade.film.wet_gauge import FilmInterval, Verdict
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

teeth = st.sampled_from([25 * step for step in range(21)])
readings = st.lists(
    st.tuples(teeth, teeth).filter(lambda pair: pair[0] < pair[1]).map(lambda p: FilmInterval(*p)),
    min_size=1,
    max_size=9,
)


def test_teeth_are_those_of_the_example_gauge_of_astm_d4414_7_1_2() -> None:
    steps = dict(zip(wet_gauge.TEETH_MIL[1:], np.diff(wet_gauge.TEETH_MIL), strict=True))
    assert wet_gauge.TEETH_MIL[0] == 0.5
    for tooth, step in steps.items():
        expected = 0.5 if tooth <= 6 else 1 if tooth <= 10 else 2 if tooth <= 30 else 5
        assert step == expected, tooth


@outside(
    wet_gauge.film_between_teeth,
    kind=Kind.COPIED,
    source="ASTM D4414; Organic Finishing Guidebook 2012-13: between the highest coated notch and "
    "the next uncoated notch",
)
def test_the_film_lies_between_the_last_wet_and_the_first_dry_tooth() -> None:
    assert wet_gauge.film_between_teeth(75, 100) == FilmInterval(75, 100)
    assert wet_gauge.film_between_teeth(None, 25) == FilmInterval(0, 25)
    assert wet_gauge.film_between_teeth(750, None) == FilmInterval(750, math.inf)


@given(st.floats(0.1, 1500))
def test_any_film_lies_in_the_interval_its_teeth_give(film_um: float) -> None:
    sizes = [mil * 25.4 for mil in wet_gauge.TEETH_MIL]
    wet = [size for size in sizes if size <= film_um]
    dry = [size for size in sizes if size > film_um]
    read = wet_gauge.film_between_teeth(max(wet, default=None), min(dry, default=None))
    assert read.low_um <= film_um <= read.high_um


@outside(
    wet_gauge.film_statistics,
    kind=Kind.SIMULATION,
    source="IEEE 1788 interval arithmetic: numpy means of films drawn at random from the intervals",
)
@given(readings, st.integers(0, 2**32 - 1))
def test_the_mean_of_any_films_in_the_intervals_lies_in_the_mean_interval(
    own: list[FilmInterval], seed: int
) -> None:
    found = wet_gauge.film_statistics(own)
    lows, highs = np.array([r.low_um for r in own]), np.array([r.high_um for r in own])
    assert (found.mean.low_um, found.mean.high_um) == pytest.approx((lows.mean(), highs.mean()))
    draws = np.random.default_rng(seed).uniform(lows, highs, size=(50, len(own)))
    means, spreads = draws.mean(axis=1), np.ptp(draws, axis=1)
    assert found.mean.low_um - 1e-9 <= means.min() <= means.max() <= found.mean.high_um + 1e-9
    assert found.everywhere.low_um <= draws.min() <= draws.max() <= found.everywhere.high_um
    assert found.spread_least_um <= spreads.min() + 1e-9
    assert spreads.max() <= found.spread_most_um + 1e-9


def test_a_reading_without_an_upper_end_leaves_the_mean_without_one() -> None:
    found = wet_gauge.film_statistics([FilmInterval(75, 100), FilmInterval(100, math.inf)])
    assert found.mean == FilmInterval(87.5, math.inf)


@outside(
    wet_gauge.judge_film,
    kind=Kind.SIMULATION,
    source="by enumeration: the verdict on every film that the two teeth of ASTM D4414 allow",
)
@given(teeth, teeth, teeth, teeth)
def test_a_verdict_is_given_only_when_every_possible_film_has_it(
    a: int, b: int, low: int, high: int
) -> None:
    a, b = sorted((a, b))
    low, high = sorted((low, high))
    # From the wetted tooth up to, not at, the dry one; 1 um steps see every end, all on 25 um.
    possible = {
        Verdict.TOO_THIN if film < low else Verdict.TOO_THICK if film > high else Verdict.IN_RANGE
        for film in ([a] if a == b else np.arange(a, b, 0.5))
    }
    found = wet_gauge.judge_film(FilmInterval(a, b), low, high)
    assert set(found.possible) == possible
    if len(possible) == 1:
        assert {found.verdict} == possible
    else:
        assert found.verdict is Verdict.CANNOT_TELL
    assert found.sentence.endswith(".")


def test_a_target_with_one_end_and_a_film_with_one_end() -> None:
    assert wet_gauge.judge_film(FilmInterval(75, 100), 60, None).verdict is Verdict.IN_RANGE
    assert wet_gauge.judge_film(FilmInterval(75, 100), None, 70).verdict is Verdict.TOO_THICK
    assert wet_gauge.judge_film(FilmInterval(75, math.inf), 60, 120).verdict is Verdict.CANNOT_TELL
    assert wet_gauge.judge_film(FilmInterval(150, math.inf), 60, 120).verdict is Verdict.TOO_THICK


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: wet_gauge.film_between_teeth(None, None), "Give the last tooth"),
        (lambda: wet_gauge.film_between_teeth(100, 75), "first dry tooth must be above 100 um"),
        (lambda: wet_gauge.film_between_teeth(0, 75), "last wetted tooth must be above 0"),
        (lambda: FilmInterval(100, 75), "upper end of the film must be 100 um or more"),
        (lambda: FilmInterval(0, math.nan), "upper end"),
        (lambda: wet_gauge.film_statistics([]), "at least one"),
        (lambda: wet_gauge.judge_film(FilmInterval(1, 2), None, None), "nothing to compare"),
        (lambda: wet_gauge.judge_film(FilmInterval(1, 2), 80, 60), "greatest film asked for"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
