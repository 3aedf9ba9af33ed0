"""The scale of a field: where the wanted band lies on it, and where the edge of a value stands."""

from __future__ import annotations

import pytest

from booth.instruments.figures import LEAST_EDGE, asked_for, gauge
from booth.profile.model import Range
from booth.units import Kind, System
from tests.instruments.at_bench import context_of

SPANS = (Range(20, 23), Range(None, 60), Range(3, None), Range(15, 15), Range(0, 10), Range(-5, 5))


@pytest.mark.parametrize("span", SPANS)
@pytest.mark.parametrize("value", [-40.0, 0.0, 3.0, 15.0, 21.5, 23.0, 60.0, 400.0])
def test_the_edge_is_in_the_band_just_where_the_value_is(span: Range, value: float) -> None:
    edge, band = gauge(System.METRIC, value, span, Kind.TIME)
    assert edge is not None and band is not None and LEAST_EDGE <= edge <= 1 - LEAST_EDGE
    low = -1.0 if band.low is None else band.low
    high = 2.0 if band.high is None else band.high
    if span.low == span.high:  # one figure is drawn as a narrow bar about it
        assert not span.holds(value) or low < edge < high
    else:
        assert (low - 1e-9 <= edge <= high + 1e-9) == span.holds(value)


def test_ends_are_told_in_digits_in_the_units_shown() -> None:
    _, band = gauge(System.METRIC, None, Range(180, 210), Kind.PRESSURE)
    assert band is not None and (band.low_words, band.high_words) == ("1.80", "2.10")
    assert band.note == "bar  wanted"


def test_nothing_wanted_is_no_scale_and_nothing_measured_is_no_edge() -> None:
    assert gauge(System.METRIC, 5.0, None, Kind.TIME) == (None, None)
    edge, band = gauge(System.METRIC, None, Range(20, 23), Kind.TIME)
    assert edge is None and band is not None


def test_an_empty_step_shows_the_band_alone_and_what_to_do() -> None:
    shown = asked_for(context_of(), Range(20, 23), Kind.TIME, "", "", ("do this",), "Ford #4")
    assert (shown.figure, shown.wanted, shown.edge, shown.word) == (
        "20.0-23.0",
        True,
        None,
        "MEASURE",
    )
    bare = asked_for(context_of(), None, Kind.TIME, "", "none given", (), "Ford #4")
    assert (bare.figure, bare.band, bare.lines) == ("", None, ("none given",))
