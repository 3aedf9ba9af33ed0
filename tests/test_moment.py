"""How much time lies between two moments, whatever was done to the clocks."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.moment import Basis, Elapsed, Moment, boots_of, elapsed, later
from tests.manual_clock import ManualClock

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


# -- what a log proves -----------------------------------------------------------------------------

HOUR = 3600.0


def moments(*written: tuple[str, float, float]) -> list[Moment]:
    """Boot, continuous and wall reading [h] of what was written down, in its order."""
    return [Moment(1e9 + wall * HOUR, ran * HOUR, boot) for boot, ran, wall in written]


@pytest.mark.parametrize(
    ("written", "now", "basis", "hours"),
    [
        # the first is the start of the wait
        pytest.param([("a", 9, 0)], ("a", 11, 99), Basis.CONTINUOUS, 2, id="same boot"),
        pytest.param([("a", 9, 0)], ("b", 0, 2), Basis.WALL, 2, id="restarted"),
        pytest.param([("a", 9, 0)], ("b", 0, -1), Basis.DOUBTFUL, 0, id="before the start"),
        pytest.param(
            [("a", 9, 0), ("a", 12, 3)], ("b", 0, 2), Basis.DOUBTFUL, 3, id="before a later entry"
        ),
        pytest.param(
            [("a", 9, 0), ("a", 12, 3)], ("b", 0, 4), Basis.WALL, 4, id="after the last entry"
        ),
        pytest.param(
            [("a", 9, 0), ("a", 10, 6)], ("b", 0, 8), Basis.WALL, 3, id="set forward before it"
        ),
        pytest.param(
            [("a", 9, 5), ("a", 10, 1)], ("b", 0, 2), Basis.WALL, 2, id="set back before it"
        ),
        pytest.param(
            [("a", 9, 0), ("b", 1, 5)], ("c", 0, 4), Basis.DOUBTFUL, 0, id="before another boot's"
        ),
        pytest.param(
            [("a", 9, 0), ("b", 1, 5), ("b", 3, 7)],
            ("c", 0, 6),
            Basis.DOUBTFUL,
            2,
            id="what ran in between has passed",
        ),
        pytest.param(
            [("a", 9, 0), ("b", 1, 5)],
            ("b", 4, 2),
            Basis.DOUBTFUL,
            3,
            id="set back since, by more than can be",
        ),
        pytest.param(
            [("a", 9, 0), ("b", 1, 5)], ("b", 2, 2), Basis.WALL, 2, id="set back since, as may be"
        ),
        pytest.param(
            [("a", 9, 0), ("b", 0, -50)],
            ("b", 1, 3),
            Basis.WALL,
            3,
            id="an empty battery, set right since",
        ),
        pytest.param(
            [("a", 9, 0), ("b", 0, -50)], ("b", 1, -49), Basis.DOUBTFUL, 1, id="an empty battery"
        ),
        pytest.param(
            [("a", 9, 0), ("b", 5, 1), ("a", 11, 2)],
            ("b", 7, 3),
            Basis.WALL,
            3,
            id="another laptop, and back",
        ),
    ],
)
def test_a_wall_clock_earlier_than_what_the_log_has_is_doubtful(
    written: list[tuple[str, float, float]],
    now: tuple[str, float, float],
    basis: Basis,
    hours: float,
) -> None:
    log = moments(*written)
    (present,) = moments(now)
    found = elapsed(log[0], present, boots_of(log))
    assert found == Elapsed(hours * HOUR, basis)


def test_a_press_that_is_dated_before_the_entry_above_it_proves_nothing() -> None:
    log = moments(("a", 9, 0), ("a", 10, 1), ("a", 9.9, 0.9), ("b", 1, 5), ("b", 0.9, 4.9))
    (now,) = moments(("b", 2, 6))
    assert elapsed(log[0], now, boots_of(log)) == Elapsed(6 * HOUR, Basis.WALL)


def test_a_clock_that_is_slewed_is_not_called_wrong() -> None:
    """Ten hours slewed by 100 millionths lose 3.6 s: more than this restart took."""
    log = moments(("a", 9, 0), ("b", 0, 3 / HOUR))
    now = Moment(log[0].wall + 10 * HOUR - 0.6, 10 * HOUR, "b")
    assert elapsed(log[0], now, boots_of(log)).basis is Basis.WALL


#: What may befall a machine: it runs, sleeps, is restarted, has its clock set; a line is written.
happenings = st.lists(
    st.one_of(
        st.tuples(st.just("advance"), st.integers(1, 20_000)),
        st.tuples(st.just("sleep"), st.integers(1, 20_000)),
        st.tuples(st.just("reboot"), st.integers(20, 20_000)),
        st.tuples(st.just("step_wall"), st.integers(-100_000, 100_000)),
        st.tuples(st.just("write"), st.just(0)),
    ),
    max_size=25,
)


@given(happenings)
def test_whatever_befalls_the_machine_the_time_is_right_or_doubtful(
    befalls: list[tuple[str, int]],
) -> None:
    clock = ManualClock()
    log, truth, wrong = [clock.now()], 0.0, 0.0
    errors = [0.0]  # of the wall clock, at each line of the log
    for what, by in befalls:
        if what == "write":
            log.append(clock.now())
            errors.append(wrong)
        else:
            getattr(clock, what)(by)
            truth += 0 if what == "step_wall" else by + (10 if what == "reboot" else 0)
            wrong += by if what == "step_wall" else 0
    now = clock.now()
    found = elapsed(log[0], now, boots_of(log))
    if now.boot == log[0].boot:
        assert found == Elapsed(truth, Basis.CONTINUOUS)
        return
    last_of = {each.boot: each for each in log if each.boot != now.boot}
    if any(now.wall < each.wall for each in last_of.values()):
        assert found.basis is Basis.DOUBTFUL
    if found.basis is Basis.DOUBTFUL:
        assert found.seconds <= truth, "no more than is proven"
    else:
        own = max(at for at, each in enumerate(log) if each.boot == log[0].boot)
        assert abs(found.seconds - truth) <= max(abs(wrong - errors[own]), 0.001)
    if not any(errors) and not wrong:
        assert found == Elapsed(truth, Basis.WALL)
