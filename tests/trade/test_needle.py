"""The rising curve against scipy's isotonic regression, and what must never be extrapolated."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import optimize

from booth.trade.delivery import needle
from booth.trade.delivery.needle import NeedleCatch
from booth.trade.result import BadInput, Estimate, Outside
from tests.trade.outside import Kind, outside

quarters = st.integers(0, 20).map(lambda quarter: quarter / 4)
catches = st.lists(st.builds(NeedleCatch, quarters, st.floats(1, 400)), min_size=1, max_size=12)


@outside(needle.needle_curve, kind=Kind.LIBRARY, source="scipy.optimize.isotonic_regression")
@given(catches)
def test_the_curve_is_the_isotonic_regression(tried: list[NeedleCatch]) -> None:
    turns = sorted({catch.turns for catch in tried})
    groups = [[c.delivery_ml_min for c in tried if c.turns == t] for t in turns]
    expected = optimize.isotonic_regression(
        [np.mean(group) for group in groups], weights=[len(group) for group in groups]
    ).x
    curve = needle.needle_curve(tried)
    assert [point.turns for point in curve] == turns
    assert [point.delivery_ml_min for point in curve] == pytest.approx(list(expected), rel=1e-9)
    assert [point.count for point in curve] == [len(group) for group in groups]


@outside(
    needle.delivery_at_turns,
    kind=Kind.LIBRARY,
    source="numpy.interp between the points of the curve",
)
@given(catches, st.floats(0, 6))
def test_between_settings_the_line_is_straight_and_beyond_them_there_is_none(
    tried: list[NeedleCatch], turns: float
) -> None:
    curve = needle.needle_curve(tried)
    places = [point.turns for point in curve]
    # Within a hundredth of a setting the setting itself answers.
    assume(all(abs(turns - place) >= 0.01 for place in places))
    found = needle.delivery_at_turns(turns, tried)
    if not places[0] <= turns <= places[-1]:
        assert isinstance(found, Outside)
        return
    assert isinstance(found, Estimate)
    line = np.interp(turns, places, [point.delivery_ml_min for point in curve])
    assert found.likely == pytest.approx(line, rel=1e-9)
    assert found.low <= found.likely <= found.high


def test_at_a_setting_tried_the_catches_themselves_are_the_band() -> None:
    tried = [NeedleCatch(1, 100), NeedleCatch(2, 180), NeedleCatch(2, 200)]
    found = needle.delivery_at_turns(2, tried)
    assert isinstance(found, Estimate)
    assert (found.low, found.likely, found.high) == (180, 190, 200)


@outside(
    needle.turns_for_delivery, kind=Kind.LIBRARY, source="numpy.interp with the axes exchanged"
)
@given(
    st.lists(quarters, min_size=2, max_size=10, unique=True),
    st.lists(st.floats(1, 40), min_size=10, max_size=10),
    st.floats(0, 1),
)
def test_the_turns_to_try_are_the_curve_read_backwards(
    turns: list[float], rises: list[float], share: float
) -> None:
    turns = sorted(turns)
    flows = list(np.cumsum(rises))[: len(turns)]
    tried = [NeedleCatch(t, float(q)) for t, q in zip(turns, flows, strict=True)]
    wanted = float(flows[0] + share * (flows[-1] - flows[0]))
    assume(flows[0] <= wanted <= flows[-1])
    found = needle.turns_for_delivery(wanted, tried)
    assert isinstance(found, Estimate)
    # Reading backwards divides by a rise that may be small: 1e-9 of the turns is far below a knob.
    assert found.likely == pytest.approx(np.interp(wanted, flows, turns), abs=1e-9)
    assert found.low <= found.likely <= found.high
    assert found.low in turns or found.low == found.likely
    assert found.high in turns or found.high == found.likely


@given(catches, st.floats(0.5, 500))
def test_the_delivery_at_the_turns_to_try_is_the_one_wanted(
    tried: list[NeedleCatch], wanted: float
) -> None:
    curve = needle.needle_curve(tried)
    found = needle.turns_for_delivery(wanted, tried)
    if wanted > curve[-1].delivery_ml_min:
        assert isinstance(found, Outside)
        assert f"beyond {curve[-1].turns:g} turns" in found.advice
    elif wanted < curve[0].delivery_ml_min:
        assert isinstance(found, Outside)
        assert f"below {curve[0].turns:g} turns" in found.advice
    else:
        assert isinstance(found, Estimate)
        back = np.interp(found.likely, [p.turns for p in curve], [p.delivery_ml_min for p in curve])
        assert back == pytest.approx(wanted, rel=1e-6)


def test_where_more_turns_give_no_more_the_least_opening_is_taken() -> None:
    tried = [NeedleCatch(1, 100), NeedleCatch(2, 200), NeedleCatch(3, 200)]
    found = needle.turns_for_delivery(200, tried)
    assert isinstance(found, Estimate)
    assert (found.low, found.likely, found.high) == (1, 2, 3)


def test_bad_catches_get_a_sentence() -> None:
    with pytest.raises(BadInput, match="at least one"):
        needle.needle_curve([])
    with pytest.raises(BadInput, match="turns of the needle must be 0"):
        needle.needle_curve([NeedleCatch(-1, 100)])
    with pytest.raises(BadInput, match="delivery wanted must be above 0"):
        needle.turns_for_delivery(0, [NeedleCatch(1, 100)])
