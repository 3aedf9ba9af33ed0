"""An alarm reaches the painter on any screen, repeats until acknowledged, and the bell is rung."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from booth.log.events import AlarmAcknowledged
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    coated,
    current,
    fast,
    job,
    job_on_disk,
    kept_of,
    now,
    on_step,
    short_profile,
    skipped,
    take_up,
    weather,
)

pytestmark = pytest.mark.terminal

#: 2 min of flash-off are over in a quarter of a second, the five between two alarms at once.
RATE = 500
RINGS = r"ready for coat \d since \d\d:\d\d .*Esc/PgUp silences"
PROFILE = short_profile(("coats", "plain"), flash_off="2 min", closes="200 h", coats=9)


def bench(run: Terminal) -> str:
    return "begin coat"


def own_words(run: Terminal) -> str:
    run.press("f2", "x")
    return "Enter  keep "


def reasons(run: Terminal) -> str:
    run.press("f6")
    return "own words"


def help_sheet(run: Terminal) -> str:
    run.press("f1")
    return "Enter  back"


def palette(run: Terminal) -> str:
    run.press("ctrl+p")
    return "By name"


def log_screen(run: Terminal) -> str:
    run.press("f4")
    return "Log of this job"


#: Every kind of screen with one of the two keys that silence.
SCREENS: list[tuple[Callable[[Terminal], str], str]] = [
    (bench, "esc"),
    (own_words, "esc"),
    (reasons, "pageup"),
    (help_sheet, "pageup"),
    (palette, "pageup"),
    (log_screen, "esc"),
]


def a_coat(run: Terminal, number: int) -> None:
    run.press("space")
    run.until(f"end coat {number}: hood")
    run.press("space")
    run.until(f"{number}/9 .*(WAIT|READY)")


def test_it_rings_on_any_screen_until_it_is_silenced(home: Path) -> None:
    rate = fast(RATE)
    job_on_disk(home, PROFILE, skipped("cautions", now(rate)), weather(now(rate)), at=now(rate))
    with Terminal(home, rate=rate) as run:
        take_up(run)
        for number, (screen, silencer) in enumerate(SCREENS, 1):
            a_coat(run, number)
            up = screen(run)
            run.until(up)
            run.until(RINGS)
            rung = run.bells
            assert rung >= 1
            run.until(lambda _, rung=rung: run.bells >= rung + 3)
            assert len(job(home).acknowledged) == number - 1
            run.press(silencer)
            run.until(lambda text: "silences" not in text)
            acknowledged = kept_of(home, AlarmAcknowledged)
            assert len(acknowledged) == number and acknowledged[-1].alarm.endswith(":ready")
            rung = run.bells
            run.linger(0.1)  # ten times as long as it would take to ring again
            assert run.bells == rung, "silenced is silenced"
            # Silencing did nothing else: what was up is up.
            assert up in run.text
            if screen is not bench:
                run.press("esc")
            run.until(lambda text: current(text) == "Coats and waits" and "begin coat" in text)


def test_silenced_stays_silenced_after_a_kill_and_what_came_due_meanwhile_rings(
    home: Path,
) -> None:
    rate = fast(RATE)
    begun = now(rate)
    job_on_disk(
        home,
        PROFILE,
        skipped("cautions", begun),
        weather(begun),
        *coated("hood", 1, begun),
        parts=("hood", "box"),
        at=begun,
    )
    with Terminal(home, rate=rate) as run:
        take_up(run)
        run.until("hood: ready for coat 2 since .*silences")
        run.press("pageup")
        run.until(lambda text: "silences" not in text)
        run.until("begin coat 1: box")
        run.press("space")
        run.until("end coat 1: box")
        run.press("space")
        run.until("box +1/9 .*(WAIT|READY)")
        run.kill()
        run.wait()
    (silenced,) = kept_of(home, AlarmAcknowledged)
    with Terminal(home, rate=rate) as run:
        run.until("» .*READY|→ .*READY")
        take_up(run)
        on_step(run, "Coats and waits")
        run.until("box: ready for coat 2 since .*silences")
        run.until(lambda _: run.bells > 0)
        assert "hood: ready" not in run.text
        run.press("pageup")
        run.until(lambda text: "silences" not in text)
        rung = run.bells
        run.linger(0.1)  # ten times as long as it would take to ring again
        assert run.bells == rung
    assert kept_of(home, AlarmAcknowledged)[0] == silenced
