"""The lid closed, the wall clock set: the real program with the kernel's clocks apart from each other."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from booth.log.events import CoatBegun, CoatEnded, EffluxTimed
from booth.moment import elapsed
from tests.terminal.driver import PROGRAM, Terminal
from tests.terminal.painter import (
    begin,
    kept_of,
    log_path,
    on_step,
    pass_over,
    short_profile,
    take_up,
    to_the_coats,
    write_profile,
)

pytestmark = pytest.mark.terminal

HOUR = 3600


def namespaces() -> bool:
    """Whether this machine lets us give a program clocks of its own."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        done = subprocess.run(
            ["unshare", "-T", "--boottime", "100", "true"], capture_output=True, check=False
        )
    except OSError:
        return False
    return done.returncode == 0


apart = pytest.mark.skipif(not namespaces(), reason="may not unshare the time namespace here")


def slept(seconds: int) -> list[str]:
    """The program in a machine whose clock that counts sleep is `seconds` ahead."""
    return ["unshare", "-T", "--boottime", str(seconds), *PROGRAM]


def lay_a_coat(run: Terminal) -> None:
    """Begin the short job, and begin and end its first coat."""
    begin(run, "Aaa short job", "hood")
    to_the_coats(run)
    run.press("space")
    run.until("SPRAYING")
    run.press("space")


@apart
def test_an_hour_with_the_lid_closed_is_an_hour_of_waiting(home: Path) -> None:
    """The wall clock of the test machine stays as it is; the clock that counts sleep goes on."""
    write_profile(
        home, "short", short_profile(("weather", "coats"), flash_off="2 h", closes="30 h")
    )
    with Terminal(home) as run:
        lay_a_coat(run)
        run.until(r"1/3 .*WAIT +(2:00:00|1:59:5\d)")
        run.kill()
        run.wait()
    with Terminal(home, command=slept(HOUR)) as run:
        take_up(run)
        # Half an hour of wall clock would not have moved it: the logged boot is this one.
        run.until(r"1/3 .*WAIT +(1:00:00|59:[3-5]\d)")
    with Terminal(home, command=slept(3 * HOUR)) as run:
        take_up(run)
        run.until(
            r"hood: ready for coat 2 since .*\(1 h\)|hood: ready.*\((59|60) min\)|hood: ready.*\(1 h 1 min\)"
        )


def test_after_a_restart_a_clock_earlier_than_the_log_is_doubted(home: Path) -> None:
    """The log is made that of an earlier boot, whose last entry lies an hour ahead of this clock."""
    write_profile(
        home, "short", short_profile(("weather", "coats"), flash_off="2 h", closes="30 h")
    )
    with Terminal(home) as run:
        lay_a_coat(run)
        run.until("1/3 .*WAIT")
        run.press("f10")
        assert run.wait() == 0
    lines = [json.loads(line) for line in log_path(home).read_text("utf-8").splitlines()]
    for line in lines:
        line["at"]["boot"] = "a boot before this one"
    ahead = {"n": len(lines) + 1, "event": "note", "text": "an hour later"}
    at = lines[-1]["at"]
    ahead["at"] = {**at, "wall": at["wall"] + HOUR, "continuous": at["continuous"] + HOUR}
    text = "".join(json.dumps(line) + "\n" for line in (*lines, ahead))
    log_path(home).write_text(text, "utf-8")
    with Terminal(home) as run:
        take_up(run)
        run.until("CHECK CLOCK")
        run.press("space")
        run.until("clock in doubt")
        time.sleep(0.8)  # closer together they are one press
        run.press("space")
        run.until("SPRAYING")
    begun = kept_of(home, CoatBegun)[-1]
    assert (begun.coat, begun.early_s, begun.doubtful) == (2, 0, True)


def test_stopped_and_gone_on_the_wait_has_gone_on(home: Path) -> None:
    """A program that is held for a while (as a machine asleep holds it) catches up by itself."""
    write_profile(
        home, "short", short_profile(("weather", "coats"), flash_off="1 h", closes="30 h")
    )
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        to_the_coats(run)
        run.press("space")
        run.until("SPRAYING")
        run.hold()
        time.sleep(1.5)
        run.kill(signal.SIGCONT)
        run.press("space")
        run.until("1/3 .*WAIT")
    (begun,), (ended,) = kept_of(home, CoatBegun), kept_of(home, CoatEnded)
    assert elapsed(begun.at, ended.at).seconds >= 1.5


def test_a_key_pressed_while_the_program_is_held_counts_from_when_it_was_read(home: Path) -> None:
    """What this shows: a program that the kernel holds cannot stamp, for its input thread is held too.

    The terminal keeps the key; it is stamped when the program goes on, so the time runs up to then
    and no key is lost. A stall of the drawing alone is another matter: there the input thread goes
    on and stamps at once (see tests/screens/test_key_stamp.py).
    """
    write_profile(home, "short", short_profile(("efflux",)))
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        pass_over(run)
        on_step(run, "Flow cup")
        run.press("space")
        run.until("stop at the first break")
        run.hold()  # a key that is read before all of it stands still is stamped then
        os.write(run.child.child_fd, b" ")
        time.sleep(1.2)
        run.kill(signal.SIGCONT)
        run.until(r"runs \d")
    (timed,) = kept_of(home, EffluxTimed)
    assert timed.seconds >= 1.2
