"""Told to leave, put aside, resized: the terminal is given back as it was found, the log is whole."""

from __future__ import annotations

import os
import re
import signal
import sys
import time
from pathlib import Path

import pytest

from booth.log.events import CautionAcknowledged, EffluxTimed
from tests.terminal.driver import BRISK, Terminal
from tests.terminal.painter import (
    begin,
    current,
    kept,
    kept_of,
    on_step,
    pass_over,
    read_a_caution,
    short_profile,
    write_profile,
)

pytestmark = pytest.mark.terminal

PROFILE = short_profile(("cautions", "efflux", "coats"))


def left_as_found(raw: bytes) -> None:
    """The alternate screen left, the cursor shown, no reports of the mouse asked for any more."""
    assert raw.count(b"\x1b[?1049h") == raw.count(b"\x1b[?1049l") >= 1
    assert raw.rindex(b"\x1b[?1049l") > raw.rindex(b"\x1b[?1049h")
    assert raw.rindex(b"\x1b[?25h") > raw.rindex(b"\x1b[?25l")
    for mode in (b"1000", b"1003", b"1006", b"2004"):
        on, off = b"\x1b[?" + mode + b"h", b"\x1b[?" + mode + b"l"
        assert on not in raw or raw.rindex(off) > raw.rindex(on), mode


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP])
def test_told_to_leave_it_gives_the_terminal_back(home: Path, number: signal.Signals) -> None:
    write_profile(home, "short", PROFILE)
    with Terminal(home) as run:
        before = run.modes()
        assert all(before), "a shell's terminal echoes and edits"
        begin(run, "Aaa short job", "hood")
        assert not any(run.modes())
        read_a_caution(run)
        run.kill(number)
        assert run.wait() == 128 + number
        assert run.modes() == before
        left_as_found(bytes(run.raw))
        assert b"Traceback" not in run.raw
    assert len(kept_of(home, CautionAcknowledged)) == 1


@pytest.mark.parametrize(
    ("number", "delays"), [(signal.SIGINT, (0.0, 0.01, 0.04)), (signal.SIGTERM, (0.0, 0.005, 0.02))]
)
def test_told_to_leave_while_it_starts_it_gives_the_terminal_back(
    home: Path, number: signal.Signals, delays: tuple[float, ...]
) -> None:
    """At the first byte that it draws: the terminal is half set up, no screen is there yet."""
    for delay in delays:
        with Terminal(home) as run:
            before = run.modes()
            while not run.raw:
                run.pump(0.001)
            time.sleep(delay)
            run.kill(number)
            assert run.wait() == 128 + number
            assert run.modes() == before
            left_as_found(bytes(run.raw))
            assert b"Traceback" not in run.raw


#: Says so as soon as it minds Ctrl+C itself: before that it is Python's own start.
MINDED = """
import signal, sys
whole = signal.signal
def minded(*what):
    whole(*what)
    signal.signal = whole
    print("minded", flush=True)
signal.signal = minded
from booth.cli.command import main
sys.exit(main([]))
"""


def test_interrupted_before_anything_is_drawn_it_says_nothing(home: Path) -> None:
    with Terminal(home, command=[sys.executable, "-c", MINDED]) as run:
        run.until("minded")
        run.press("\x03")  # the terminal is not raw yet: the kernel makes a signal of it
        assert run.wait() == 128 + signal.SIGINT
        assert bytes(run.raw).replace(b"^C", b"") == b"minded\r\n"


def test_quit_gives_the_terminal_back(home: Path) -> None:
    with Terminal(home) as run:
        before = run.modes()
        run.until("Coating profiles")
        run.press("f10")
        assert run.wait() == 0
        assert run.modes() == before
        left_as_found(bytes(run.raw))


def test_the_window_is_closed_over_its_head(home: Path) -> None:
    """The terminal itself goes away: no process stays behind, the log is whole."""
    write_profile(home, "short", PROFILE)
    run = Terminal(home)
    begin(run, "Aaa short job", "hood")
    read_a_caution(run)
    pid = run.pid
    run.child.ptyproc.fileobj.close()  # the master's end: the kernel sends SIGHUP
    end = time.monotonic() + 10
    while time.monotonic() < end:
        gone, _ = os.waitpid(pid, os.WNOHANG)
        if gone:
            break
        time.sleep(0.02)
    else:
        os.kill(pid, signal.SIGKILL)
        os.waitpid(pid, 0)
        raise AssertionError("it stayed without a terminal")
    events = kept(home)
    assert [event.n for event in events] == [1, 2]


def test_put_aside_with_ctrl_z_and_back_the_screen_is_whole_again(home: Path) -> None:
    write_profile(home, "short", PROFILE)
    with Terminal(home, rate=BRISK) as run:
        begin(run, "Aaa short job", "hood")
        run.settle()
        before = run.text
        assert "read and understood" in before
        run.press("ctrl+z")
        assert _stopped(run)
        run.drain()
        assert all(run.modes()), "the shell has its terminal back"
        # What a shell would do meanwhile: write over everything.
        run.screen.reset()
        run.kill(signal.SIGCONT)
        run.until("read and understood")
        run.settle()
        assert run.text == before
        assert not any(run.modes())
        read_a_caution(run)
        run.press("f10")
        assert run.wait() == 0
        left = bytes(run.raw)
        assert left.rindex(b"\x1b[?1049l") > left.rindex(b"\x1b[?1049h")


def _stopped(run: Terminal) -> bool:
    """Whether the kernel says that the program is stopped."""
    stat = Path(f"/proc/{run.pid}/stat")
    if not stat.exists():
        pytest.skip("this system does not tell a stopped process")
    end = time.monotonic() + 10
    while time.monotonic() < end:
        run.pump()
        if stat.read_text().rpartition(")")[2].split()[0] == "T":
            return True
    return False


def test_a_window_too_small_says_what_it_needs_and_the_clock_goes_on(home: Path) -> None:
    write_profile(home, "short", PROFILE)
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        pass_over(run)
        on_step(run, "Flow cup")
        run.settle()
        whole = run.text
        run.press("space")
        run.until("stop at the first break")
        run.resize(15, 40)
        run.until("This window is 40 x 15")
        run.until(r"58 x 18")
        run.until("clocks go on")
        run.linger(1.0)
        run.resize(24, 80)
        run.until(lambda text: current(text) == "Flow cup" and "This window" not in text)
        run.until("stop at the first break")
        run.press("space")
        run.until("runs ")
        (timed,) = kept_of(home, EffluxTimed)
        assert 1.0 <= timed.seconds < 25
        assert re.search(rf"runs {timed.seconds:.1f}\b", run.text)
        before = whole.splitlines()[0][:-5]  # but for the time of day
        run.until(lambda text: text.splitlines()[0][:-5] == before)
        # Space at the small size would have stopped it too; from one size to another and back
        # with nothing running nothing is lost either.
        for rows, columns in ((1, 1), (3, 200), (60, 20), (24, 80)):
            run.resize(rows, columns)
            run.settle()
        run.until(lambda text: current(text) == "Flow cup" and re.search(r"runs \d", text))
