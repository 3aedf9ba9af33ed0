"""How much time lies between two moments, whatever was done to the clocks."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.moment import Basis, Moment, elapsed, later

seconds = st.floats(0, 1e7, allow_nan=False)
wall = st.floats(-1e9, 4e9, allow_nan=False)


@given(seconds, wall, wall)
def test_within_one_boot_no_wall_clock_can_change_what_passed(
    passed: float, before: float, after: float
) -> None:
    start = Moment(before, 1000.0, "a")
    now = Moment(after, 1000.0 + passed, "a")
    found = elapsed(start, now)
    assert found.basis is Basis.CONTINUOUS
    assert abs(found.seconds - passed) < 1e-6  # one float addition at 1e7 s costs 2e-9 s


@given(seconds)
def test_after_a_restart_the_wall_clock_is_left(passed: float) -> None:
    found = elapsed(Moment(1e9, 50_000.0, "a"), Moment(1e9 + passed, 3.0, "b"))
    assert found.basis is Basis.WALL
    assert abs(found.seconds - passed) < 1e-6


def test_a_wall_clock_before_the_start_is_doubtful_and_nothing_has_passed() -> None:
    found = elapsed(Moment(1e9, 50_000.0, "a"), Moment(1e9 - 3600, 3.0, "b"))
    assert found.basis is Basis.DOUBTFUL
    assert found.seconds == 0.0


def test_a_continuous_clock_that_ran_backwards_is_not_believed() -> None:
    """The same boot name with a smaller reading: a restored virtual machine. Wall time decides."""
    found = elapsed(Moment(1e9, 500.0, "a"), Moment(1e9 + 60, 400.0, "a"))
    assert found.basis is Basis.WALL
    assert found.seconds == 60.0


@given(seconds, seconds)
def test_later_is_later_by_exactly_that(first: float, second: float) -> None:
    start = Moment(1e9, 100.0, "a")
    both = later(later(start, first), second)
    assert abs(elapsed(start, both).seconds - (first + second)) < 1e-6
