"""Observations and what they come to: one a job, bounds taken as bounds, too few said to be too few."""

from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.learnt.observation import NO_END, Observation, learnt_of, of_one_job
from booth.trade.observations.median_band import MedianBand, median_band
from booth.units import System
from booth.words.learnt_words import band, in_short, multiple, plot, wait_line
from tests.job.make import at


def seen(low: float, high: float | None = None, job: str = "a", **more: object) -> Observation:
    """An observation of one group."""
    high = low if high is None else high
    made = Observation(("clear",), ("Clear",), low, high, at(0), job=job, file=f"{job}.jsonl")
    return replace(made, **more)


def band_of(*found: Observation) -> tuple[float | None, float | None]:
    learnt = learnt_of("waits", None, found)
    assert learnt is not None
    return learnt.low, learnt.high


def test_readings_of_one_job_are_one_observation() -> None:
    (one,) = of_one_job([seen(1.0), seen(1.2), seen(5.0)])
    assert (one.low, one.high, one.count) == (1.2, 1.2, 3)
    # Of a reading that nothing bounds from above and one that is bounded, nothing bounds the middle.
    (two,) = of_one_job([seen(1.0, NO_END), seen(1.2, 1.4)])
    assert (two.low, two.high) == (1.1, NO_END)
    other = replace(seen(2.0), group=("lacquer",))
    assert len(of_one_job([seen(1.0), other])) == 2


@given(
    st.lists(
        st.tuples(st.floats(0.1, 9), st.floats(0, 3), st.floats(0, 3)), min_size=3, max_size=25
    )
)
def test_the_band_of_bounds_holds_the_band_of_what_they_bound(
    drawn: list[tuple[float, float, float]],
) -> None:
    """Whatever the true figures were, between their bounds, their own band lies within this one."""
    found = [seen(max(true - below, 0.0), true + above) for true, below, above in drawn]
    exact = median_band([true for true, _, _ in drawn])
    low, high = band_of(*found)
    assert isinstance(exact, MedianBand) and high is not None
    assert (low or 0.0) <= exact.middle_low + 1e-9 and high >= exact.middle_high - 1e-9


def test_a_side_that_nothing_bounds_stays_open() -> None:
    dry = [seen(0.0, each) for each in (1.1, 1.2, 1.3)]
    assert band_of(*dry) == (None, 1.3)
    wet = [seen(each, NO_END) for each in (1.1, 1.2, 1.3)]
    assert band_of(*wet) == (1.1, None)
    for found, said in ((dry, "at most 1.3"), (wet, "at least 1.1")):
        learnt = learnt_of("waits", None, found)
        assert learnt is not None and learnt.middle is None
        assert in_short(learnt, System.METRIC) == f"{said}, 75 % sure, 3 waits"


def test_of_fewer_than_three_nothing_is_said_but_that() -> None:
    assert learnt_of("waits", None, []) is None
    two = learnt_of("waits", None, [seen(1.2), seen(1.3)])
    assert two is not None and (two.low, two.high, two.middle) == (None, None, None)
    assert in_short(two, System.METRIC) == "2 waits: too few to tell, 3 jobs are needed"
    assert wait_line(two, System.METRIC) == ()


def test_a_job_left_out_counts_no_more_and_is_told() -> None:
    out = seen(9.0, job="b", left_out="a trial")
    learnt = learnt_of("waits", None, [seen(1.0), seen(1.1), out, seen(1.2)])
    assert learnt is not None and (learnt.low, learnt.high) == (1.0, 1.2)
    assert learnt.without == ((out, "a trial"),)
    # Left out without a word it is left out all the same.
    silent = learnt_of("waits", None, [seen(1.0, left_out="")])
    assert silent is not None and not silent.observations and silent.without[0][1]


@pytest.mark.parametrize(
    ("value", "up", "said"),
    [(1.23, None, "1.2"), (1.21, True, "1.3"), (1.29, False, "1.2"), (0.745, False, "0.74")],
)
def test_a_multiple_is_rounded_to_its_careful_side(
    value: float, up: bool | None, said: str
) -> None:
    assert multiple(value, up) == said


@given(st.floats(0.01, 500))
def test_rounded_outwards_it_still_holds_what_it_held(value: float) -> None:
    assert float(multiple(value, up=False)) <= value * (1 + 1e-5)
    assert float(multiple(value, up=True)) >= value * (1 - 1e-5)


def test_longer_than_counted_says_test_later_and_nothing_earlier() -> None:
    longer = learnt_of("waits", None, [seen(each) for each in (1.2, 1.3, 1.4, 1.25, 1.35, 1.5)])
    (line,) = wait_line(longer, System.METRIC)
    assert line == "in this shop 1.2 to 1.5 times this wait, 6 waits; it took longer: test later"
    shorter = learnt_of("waits", None, [seen(each) for each in (0.7, 0.8, 0.9, 0.75, 0.85, 0.6)])
    (line,) = wait_line(shorter, System.METRIC)
    assert line == "in this shop 0.60 to 0.90 times this wait, 6 waits"


def test_the_plot_has_a_line_a_job_and_the_band_beneath() -> None:
    drawn = random.Random(4)
    found = [seen(drawn.uniform(1, 2), job=str(each)) for each in range(7)]
    learnt = learnt_of("waits", None, found)
    assert learnt is not None
    lines = plot(found, learnt, 30, System.METRIC)
    assert len(lines) == 7 + 2 and all(line.count("●") == 1 for line in lines[:7])
    first = min(range(7), key=lambda each: found[each].low)
    last = max(range(7), key=lambda each: found[each].low)
    assert lines[first].index("●") == 0 and lines[last].index("●") == 29
    assert lines[7].strip("▔ ") == "" and "▔" in lines[7]
    assert plot(found[:1], replace(learnt, low=None, high=None), 30, System.METRIC) == []
    assert band(learnt, System.METRIC)
