"""A key that is held, pressed twice, or pressed while the disk is slow does what was meant, once."""

from __future__ import annotations

import sys
import time
from pathlib import Path

import pytest

from booth.bench.model import BOUNCE_S
from booth.log.events import AlarmAcknowledged, CoatBegun, CoatEnded, NoteMade
from tests.terminal.driver import KEYS, Terminal
from tests.terminal.painter import (
    fast,
    job_on_disk,
    kept,
    kept_of,
    now,
    short_profile,
    skipped,
    take_up,
    weather,
)

pytestmark = pytest.mark.terminal

SYNC_S = 0.2
#: A keyboard repeats a key that is held after half a second, thirty times a second.
DELAY_S, REPEAT_S = 0.5, 1 / 30


def at_the_coats(run: Terminal) -> None:
    take_up(run)
    run.until("Space  begin coat 1: hood")


@pytest.fixture
def coats(home: Path) -> Path:
    """The home of a job that has come to its coats."""
    profile = short_profile(("coats",), coats=9, flash_off="2 s", closes="200 h")
    job_on_disk(home, profile, skipped("cautions", now()), weather(now()))
    return home


def test_a_note_typed_at_once_while_the_disk_is_slow_is_whole_and_begins_no_coat(
    coats: Path,
) -> None:
    slow = [sys.executable, "-m", "tests.terminal.slow_disk", str(SYNC_S)]
    wanted = [f"note {number}: a run, low left, 2 in" for number in range(4)]
    with Terminal(coats, command=slow, rate=fast(4)) as run:
        at_the_coats(run)
        for number, text in enumerate(wanted):
            run.linger(0.3)  # an alarm that has only just come up takes no Space
            assert f"Space  {_what(number)}: hood" in run.text
            run.press("space")
            pressed = time.monotonic()
            # At once, while the disk keeps what Space did.
            run.send(KEYS["f2"] + text + KEYS["enter"])
            following = f"Space  {_what(number + 1)}: hood"
            run.until(lambda shown, key=following: key in shown and "Noted" in shown)
            assert time.monotonic() - pressed > 2 * SYNC_S, "the disk is slow"
        assert [each.text for each in kept_of(coats, NoteMade)] == wanted
        assert len(kept_of(coats, CoatBegun)) == len(kept_of(coats, CoatEnded)) == 2
        # The Space that begins the second coat answers the alarm that calls for it.
        others = [each for each in kept(coats) if not isinstance(each, AlarmAcknowledged)]
        assert len(others) == 3 + 4 * 2, "nothing else came of the keys"


def _what(number: int) -> str:
    """What the press of this number does, from 0."""
    return f"{'end' if number % 2 else 'begin'} coat {number // 2 + 1}"


def test_a_space_that_is_held_or_bounces_is_one_press(coats: Path) -> None:
    with Terminal(coats) as run:
        at_the_coats(run)
        _hold(run, 1.2)
        _only(run, coats, begun=1, ended=0)
        _twice(run, 0.06)
        _only(run, coats, begun=1, ended=1)
        _twice(run, 0.3)
        _only(run, coats, begun=2, ended=1)


def _hold(run: Terminal, seconds: float) -> None:
    """Hold Space down, as a keyboard sends it."""
    first = time.monotonic()
    run.send(" ")
    at = DELAY_S
    while at < seconds:
        run.linger(first + at - time.monotonic())
        run.send(" ")
        at += REPEAT_S


def _twice(run: Terminal, apart_s: float) -> None:
    run.linger(BOUNCE_S + 0.05)  # the press before it was another one
    run.send(" ")
    run.linger(apart_s)
    run.send(" ")


def _only(run: Terminal, home: Path, begun: int, ended: int) -> None:
    """So many coats were begun and ended by now, on the screen and in the log."""
    what = "begin" if begun == ended else "end"
    run.until(f"Space  {what} coat {ended + 1}: hood")
    run.linger(0.2)
    assert (len(kept_of(home, CoatBegun)), len(kept_of(home, CoatEnded))) == (begun, ended)
