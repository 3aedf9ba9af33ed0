"""What runs, what is over, what is heard: a catch and the bar of the pace at a given now."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.job.stopwatches import Sweeping, catching, heard, passing_s, sweeping
from booth.log.events import StopwatchStarted, StopwatchStopped
from booth.log.fold import Stopwatch
from tests.job.make import at


def catch(lead_in_s: float = 3.0, window_s: float = 60.0) -> dict[str, Stopwatch]:
    started = StopwatchStarted(
        n=2, at=at(0), stopwatch="catch", lead_in_s=lead_in_s, window_s=window_s
    )
    return {"catch": Stopwatch(started)}


def bar(what: str = "sound", pass_s: float | None = 2.0) -> dict[str, Stopwatch]:
    started = StopwatchStarted(n=2, at=at(0), stopwatch="pace", what=what, window_s=pass_s)
    return {"pace": Stopwatch(started)}


def sounds(watches: dict[str, Stopwatch], until_s: float, step_s: float = 0.1) -> list[str]:
    """All that is heard from the start on, a step at a time."""
    steps = round(until_s / step_s)
    return [
        sound
        for step in range(steps)
        for sound in heard(watches, at(step * step_s), at((step + 1) * step_s))
    ]


def test_a_catch_ticks_down_and_stops() -> None:
    # 3, 2, 1 and the trigger, then the end after 3 + 10 s.
    assert sounds(catch(window_s=10.0), 14.0) == ["tick"] * 4 + ["stop"]
    assert heard(catch(window_s=10.0), at(12.9), at(13.1)) == ("stop",)


def test_a_catch_that_was_stopped_is_silent() -> None:
    (watch,) = catch(window_s=10.0).values()
    stopped = StopwatchStopped(n=3, at=at(8), stopwatch="catch", seconds=5.0)
    watches = {"catch": Stopwatch(watch.started, stopped)}
    assert sounds(watches, 14.0) == [] and catching(watches, at(8)) is None


@pytest.mark.parametrize(
    ("seconds", "number", "turned"),
    [(0.0, 1, False), (1.9, 1, False), (2.0, 2, True), (2.3, 2, False), (7.9, 4, False)],
)
def test_the_bar_goes_there_and_back(seconds: float, number: int, turned: bool) -> None:
    found = sweeping(bar(), at(seconds))
    assert found is not None and (found.number, found.turned) == (number, turned)
    assert found.elapsed_s == pytest.approx(seconds)


@pytest.mark.parametrize(
    ("seconds", "place"),
    [(0.0, 0.0), (0.5, 0.25), (2.0, 1.0), (3.5, 0.25), (4.0, 0.0), (-1.0, 0.0)],
)
def test_where_the_gun_should_be(seconds: float, place: float) -> None:
    found = sweeping(bar(), at(seconds))
    assert found is not None and found.place == pytest.approx(place)


@given(st.floats(0, 1e5), st.floats(0.1, 60))
def test_two_passes_bring_it_back(elapsed_s: float, pass_s: float) -> None:
    # A float of 1e5 s is exact to 1.5e-11 s: 1e-6 of a pass of 0.1 s is far above it.
    one, other = Sweeping(pass_s, elapsed_s), Sweeping(pass_s, elapsed_s + 2 * pass_s)
    assert other.place == pytest.approx(one.place, abs=1e-6)


@given(st.floats(0, 1e5), st.floats(0.1, 60), st.floats(0, 0.05))
def test_it_never_leaps(elapsed_s: float, pass_s: float, later_s: float) -> None:
    one, other = Sweeping(pass_s, elapsed_s), Sweeping(pass_s, elapsed_s + later_s)
    assert abs(other.place - one.place) <= later_s / pass_s + 1e-6


def test_every_turn_of_the_bar_is_heard_once() -> None:
    assert sounds(bar(), 8.1, step_s=0.05) == ["tick"] * 4
    assert heard(bar(), at(0.5), at(1.5)) == ()
    # Nobody looked for a while: one tick, not one for each turn that was missed.
    assert heard(bar(), at(1.0), at(61.0)) == ("tick",)


def test_a_silent_bar_and_one_that_was_forgotten_are_not_heard() -> None:
    assert sounds(bar("silent"), 8.1) == []
    assert sweeping(bar(), at(1799)) is not None
    assert sweeping(bar(), at(1801)) is None
    assert heard(bar(), at(1801), at(1809)) == ()


@pytest.mark.parametrize("pass_s", [None, 0.0, -1.0])
def test_a_bar_without_a_time_is_none(pass_s: float | None) -> None:
    assert sweeping(bar(pass_s=pass_s), at(1)) is None
    assert heard(bar(pass_s=pass_s), at(0), at(10)) == ()


def test_a_pass_goes_on_until_it_is_forgotten() -> None:
    watches = {"pass": Stopwatch(StopwatchStarted(n=2, at=at(0), stopwatch="pass", what="2 m"))}
    assert passing_s({}, at(5)) is None
    assert passing_s(watches, at(5)) == 5.0
    assert passing_s(watches, at(121)) is None
