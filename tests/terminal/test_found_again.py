"""What runs goes on while the program is gone: waits, the run of a cup, a catch are found again."""

from __future__ import annotations

import re
import time
from pathlib import Path

import pytest

from booth.log.events import (
    CatchMade,
    EffluxTimed,
    StopwatchStarted,
    StopwatchStopped,
)
from booth.log.fold import fold
from booth.log.parse import parse
from booth.moment import elapsed, later
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    coated,
    fast,
    job_on_disk,
    kept,
    kept_of,
    now,
    on_step,
    short_profile,
    skipped,
    take_up,
    weather,
)

pytestmark = pytest.mark.terminal


def test_a_wait_that_began_before_the_start_is_right_and_taking_it_up_adds_nothing(
    home: Path,
) -> None:
    rate = fast(60)
    # 20 of 60 minutes lie behind it: a second of ours is a minute there.
    ended = later(now(rate), -20 * 60)
    profile = short_profile(("coats",), flash_off="1 h", closes="30 h")
    begun = later(ended, -600)
    job_on_disk(
        home,
        profile,
        skipped("cautions", begun),
        weather(begun),
        *coated("hood", 1, ended),
        at=begun,
    )
    before = kept(home)
    with Terminal(home, rate=rate) as run:
        run.until("Jobs not closed")
        # Waits go on while nothing runs, and are shown before a job is taken up.
        run.until("hood.*WAIT")
        take_up(run)
        run.until(r"1/3 .*WAIT +(\d+:\d+)")
        shown = re.search(r"1/3 .*WAIT +(\d+):(\d+)", run.text)
        assert shown is not None
        left = int(shown.group(1)) * 60 + int(shown.group(2))
        real = 3600 - elapsed(ended, now(rate)).seconds
        assert 0 < real < 2400
        # Within what passed since the screen was drawn: a second of ours is a minute there.
        assert real - 1 <= left <= real + 300
        run.press("f10")
        assert run.wait() == 0
    assert kept(home) == before


def test_a_run_of_the_cup_and_a_catch_outlive_the_program(home: Path) -> None:
    """Killed, left with F10, started again: they are found running, and Space gives the true time."""
    factor = 5
    rate = fast(factor)
    begun = now(rate)
    path = job_on_disk(
        home, short_profile(("efflux", "catch", "coats")), skipped("cautions", begun), at=begun
    )
    with Terminal(home, rate=rate) as run:
        take_up(run)
        on_step(run, "Flow cup")
        at_first = time.monotonic()
        run.press("space")
        run.until("stop at the first break")
        _to_the_catch(run)
        run.press("space")
        run.until("stop early")
        run.kill()
        run.wait()
    assert _running(path) == {"cup", "catch"}
    with Terminal(home, rate=rate) as run:
        take_up(run)
        run.until("stop at the first break")
        _to_the_catch(run)
        run.until("stop early")
        run.press("space")
        run.until("caught for")
        run.press("f10")
        assert run.wait() == 0
    assert _running(path) == {"cup", "catch"}
    with Terminal(home, rate=rate) as run:
        take_up(run)
        run.until("stop at the first break")
        run.press("space")
        at_last = time.monotonic()
        run.until(r"runs \d+\.\d +mean")
        run.press("enter")
        on_step(run, "Catch")
        run.until("caught for")
        run.press("250ml", "enter", "enter")
        run.until(r"\d\d:\d\d  .*fl oz")
    assert _running(path) == set()
    cup, catch = kept_of(home, StopwatchStarted)
    (timed,) = kept_of(home, EffluxTimed)
    assert timed.seconds == pytest.approx(elapsed(cup.at, timed.at).seconds, abs=0.006)
    # The true time: between the two presses as they were sent, less how late a key is read.
    assert abs(timed.seconds - factor * (at_last - at_first)) < factor * 0.5
    (stopped,), (caught,) = kept_of(home, StopwatchStopped), kept_of(home, CatchMade)
    # Three seconds of lead-in come before the trigger.
    since = elapsed(catch.at, stopped.at).seconds
    assert stopped.seconds == pytest.approx(since - 3.0, abs=0.006)
    assert (caught.seconds, caught.amount.value) == (stopped.seconds, 250.0)
    assert caught.delivery_ml_min == pytest.approx(250.0 / (caught.seconds / 60))


def _to_the_catch(run: Terminal) -> None:
    """By the list of steps, whatever runs in this one."""
    run.press("up", "down", "enter")
    on_step(run, "Catch")


def _running(path: Path) -> set[str]:
    return set(fold(parse(path.read_bytes()).events).stopwatches)
