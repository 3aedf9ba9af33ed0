"""Everything by name: commands and steps, found by a few letters, whatever a profile calls them."""

from __future__ import annotations

import pytest
from textual.command import CommandPalette

from booth.bench.commands import ANYWHERE, COMMANDS, PAST
from booth.log.events import AlarmAcknowledged, NoteMade
from booth.profile.model import Step
from tests.job.make import profile
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_app, at_bench
from tests.screens.jobs import coated

HOSTILE = "[/ x [@click=app.quit]y \x1b[2J"


async def _by_name(at: AtApp, words: str) -> None:
    """Open the palette, type, take the first that is found."""
    await at.press("ctrl+p")
    assert isinstance(at.app.screen, CommandPalette)
    await at.type(words)
    await at.until(lambda: at.text.count(words) > 1)
    await at.press("down", "enter")
    await at.until(lambda: not isinstance(at.app.screen, CommandPalette))
    await at.settle()


async def test_a_step_is_opened_by_its_name() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "step: Weather")
        assert at.step == "weather" and at.stack == ["Home", "BenchScreen"]


async def test_a_command_of_the_bench_is_done_in_its_turn() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "note (n")
        assert at.screen == "Menu"
        await at.press("enter")
        assert len(at.kept(NoteMade)) == 1


@pytest.mark.parametrize("screen", ["Home", "BenchScreen"])
async def test_it_holds_every_command_that_works_here_and_none_that_does_not(screen: str) -> None:
    async with at_app() if screen == "Home" else at_bench("coats") as at:
        assert at.screen == screen
        titles = [each.title for each in at.app.get_system_commands(at.app.screen)]
        for command in COMMANDS:
            there = any(title.startswith(f"{command.word} (") for title in titles)
            here = command.id in ANYWHERE if screen == "Home" else command.id not in PAST
            assert there == here, command.id
        assert any(title.startswith("step: ") for title in titles) == (screen != "Home")


async def test_hostile_names_of_steps_are_found_and_drawn() -> None:
    steps = (Step(kind="coats", key="coats", name=HOSTILE), Step(kind="plain", key="b", name="B"))
    async with at_bench("b", profile=profile(steps=steps)) as at:
        await at.press("up", "up")
        assert "[/ x [@clic" in at.text
        await at.press("escape")
        await at.press("ctrl+p")
        await at.type("step")
        await at.until(lambda: "(/ x" in at.text)
        assert "\x1b" not in at.text
        await at.press("escape")


async def test_an_alarm_rings_over_it_too_and_it_can_be_left() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock) as at:
        await at.press("ctrl+p")
        await at.pass_time(700)  # flash-off of the trial profile: 600 s
        assert "ready for coat 2" in at.text
        await at.press("escape")
        assert len(at.kept(AlarmAcknowledged)) == 1 and at.screen != "BenchScreen"
        await at.pass_time(5)
        await at.press("escape")
        await at.until(lambda: at.screen == "BenchScreen")
