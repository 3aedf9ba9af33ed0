"""An alarm reaches the painter on any screen, repeats until acknowledged, and the bell is rung."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from booth.log.events import AlarmAcknowledged
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    begin,
    current,
    fast,
    job,
    kept_of,
    on_step,
    pass_over,
    short_profile,
    write_profile,
)

pytestmark = pytest.mark.terminal

#: 10 min of flash-off are over in little more than a second, the five between two alarms at once.
RATE = 500
RINGS = r"hood: ready for coat 2 since \d\d:\d\d .*Esc or Page Up silences"


def a_coat_is_on(run: Terminal) -> None:
    """One coat on the hood, its flash-off running."""
    begin(run, "Aaa short job", "hood, box")
    pass_over(run)
    on_step(run, "Coats and waits")
    run.press("space")
    run.until("SPRAYING")
    run.press("space")
    run.until("1/3 . WAIT")


def note(run: Terminal) -> None:
    run.press("f2")
    run.until("Enter keeps it")


def help_sheet(run: Terminal) -> None:
    run.press("f1")
    run.until("goes back")


def palette(run: Terminal) -> None:
    run.press("ctrl+p")
    run.until("Search for commands")


def log_screen(run: Terminal) -> None:
    run.press("f4")
    run.until("coat begun|coat 1")
    run.settle()


def other_step(run: Terminal) -> None:
    run.press("enter")
    on_step(run, "Note")


#: Every screen with one of the two keys that silence.
SCREENS = [
    (note, "esc"),
    (help_sheet, "pageup"),
    (palette, "pageup"),
    (log_screen, "esc"),
    (other_step, "pageup"),
]


@pytest.mark.parametrize(
    ("screen", "silencer"), SCREENS, ids=lambda each: str(getattr(each, "__name__", each))
)
def test_it_rings_on_any_screen_until_it_is_silenced(
    home: Path, screen: Callable[[Terminal], None], silencer: str
) -> None:
    write_profile(home, "short", short_profile(("coats", "plain"), closes="200 h"))
    with Terminal(home, rate=fast(RATE)) as run:
        a_coat_is_on(run)
        screen(run)
        run.until(RINGS)
        rung = run.bells
        assert rung >= 1
        run.until(lambda _: run.bells >= rung + 3)
        assert not job(home).acknowledged
        run.press(silencer)
        run.until(lambda text: "silences" not in text)
        (acknowledged,) = kept_of(home, AlarmAcknowledged)
        assert acknowledged.alarm.endswith(":ready")
        run.settle(0.3)
        rung = run.bells
        run.linger(0.5)
        assert run.bells == rung, "silenced is silenced"
        # Silencing did nothing else: what was up is up.
        assert current(run.text) is not None or screen in (log_screen,)
        if screen is note:
            assert "Enter keeps it" in run.text
        elif screen is help_sheet:
            assert "goes back" in run.text


def test_silenced_stays_silenced_after_a_kill(home: Path) -> None:
    write_profile(home, "short", short_profile(("coats", "plain"), closes="200 h"))
    rate = fast(RATE)
    with Terminal(home, rate=rate) as run:
        a_coat_is_on(run)
        run.until(RINGS)
        run.press("pageup")
        run.until(lambda text: "silences" not in text)
        run.kill()
        run.wait()
    with Terminal(home, rate=rate) as run:
        run.until("Jobs not closed")
        run.until("Coating profiles")
        run.press("enter")
        run.until("1/3 . READY")
        run.linger(0.4)
        assert "silences" not in run.text
        assert run.bells == 0


def test_what_rang_while_nothing_ran_rings_at_the_next_start(home: Path) -> None:
    write_profile(home, "short", short_profile(("coats", "plain"), closes="200 h"))
    rate = fast(RATE)
    with Terminal(home, rate=rate) as run:
        a_coat_is_on(run)
        run.kill()
        run.wait()
    with Terminal(home, rate=rate) as run:
        run.until("Coating profiles")
        run.until(r"» .*READY")
        run.press("enter")
        run.until(RINGS)
        run.until(lambda _: run.bells > 0)
