"""Sleep, a clock that is set, a restart: what the waits on the screen do. The jobs start from events."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.log.events import ClockNoticed
from booth.units import System
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job, at_app, at_bench
from tests.screens.jobs import coated

# Flash-off of the trial profile: 600 s.


async def test_the_lid_closed_for_an_hour_counts_and_is_noted() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood", ago_s=60), clock=clock) as at:
        await at.beat()
        clock.sleep(3600)
        await at.beat()
        (noticed,) = at.kept(ClockNoticed)
        assert (noticed.slept_s, noticed.stepped_s) == (3600, 0)
        # Ready 600 s after the coat; 60 + 3600 s have passed.
        assert "ready for coat 2" in at.lines[0] and "(51 min)" in at.lines[0]


@pytest.mark.parametrize("step_s", [3600.0, -3600.0, 86_400.0])
async def test_a_wall_clock_that_is_set_moves_no_wait_and_is_noted(step_s: float) -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood", ago_s=60), clock=clock) as at:
        await at.press("down")
        await at.beat()
        assert "9:00" in at.text
        clock.step_wall(step_s)
        await at.beat()
        (noticed,) = at.kept(ClockNoticed)
        assert (noticed.slept_s, noticed.stepped_s) == (0, step_s)
        assert "9:00" in at.text and "ready for" not in at.text
        await at.pass_time(539)
        assert "0:01" in at.text and at.heard.sounds == []
        await at.pass_time(1)
        assert at.heard.sounds == ["go_on"]


async def test_after_a_restart_of_the_machine_the_wall_clock_decides() -> None:
    clock = ManualClock()
    path = a_job(clock.now(), *coated(clock, "hood"))
    async with at_app(size=(120, 30), clock=clock) as at:
        clock.reboot(off_s=200, up_s=40)
        await at.beat()
        # 600 s less the 240 s that the machine was off and starting.
        assert "hood WAIT 6:00" in at.words
        await at.take_up(path, "coats")
        await at.press("down")
        assert "6:00" in at.text
        await at.pass_time(360)
        assert "hood: ready for coat 2" in at.lines[0]


async def test_the_clocks_of_the_first_screen_tick() -> None:
    clock = ManualClock()
    a_job(clock.now(), *coated(clock, "hood"))
    async with at_app(size=(120, 30), clock=clock) as at:
        assert "hood WAIT 10:00" in at.words
        await at.pass_time(61)
        assert "hood WAIT 8:59" in at.words


async def test_units_and_theme_change_anywhere_and_are_remembered(own_home: Path) -> None:
    async with at_bench("weather") as at:
        theme = at.app.theme
        await at.press("f3", "f7")
        assert at.app.theme != theme
        await at.press("f2", "x", "f3")
        assert at.screen == "Ask" and at.app.system is System.US
        await at.press("f3")
        await at.press("escape")
        changed = at.app.theme
    text = (own_home / "booth" / "preferences.toml").read_text("utf-8")
    assert 'units = "metric"' in text and f'theme = "{changed}"' in text
