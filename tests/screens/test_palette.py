"""Everything by name: steps, commands and words of the trade, found by a few letters."""

from __future__ import annotations

import pytest

from booth.app.commands import DEEDS, STEPS, entries
from booth.bench.commands import ANYWHERE, COMMANDS, PAST
from booth.log.events import AlarmAcknowledged, NoteMade
from booth.profile.model import Step
from booth.screens.palette import ASK, NOTHING, SPEAKS, WORDS, narrowed
from booth.words.glossary import TERMS
from tests.job.make import profile
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_app, at_bench
from tests.screens.jobs import coated

HOSTILE = "[/ x [@click=app.quit]y \x1b[2J"


async def _by_name(at: AtApp, words: str) -> None:
    """Open the list, type, take the first that is found."""
    await at.press("ctrl+p")
    assert at.screen == "Palette" and ASK in at.text
    await at.type(words)
    assert f"By name: {words}" in at.text
    await at.press("enter")


async def test_a_step_is_opened_by_its_name() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "weath")
        assert at.step == "weather" and at.stack == ["Home", "BenchScreen"]


async def test_a_step_is_found_by_a_word_of_the_trade_that_it_speaks_of() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "dew mar")
        assert at.step == "weather"


async def test_a_command_of_the_bench_is_done() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "note")
        assert at.screen == "Menu"
        await at.press("enter")
        assert len(at.kept(NoteMade)) == 1


async def test_a_word_is_explained_also_by_one_that_is_not_used_for_it() -> None:
    async with at_bench("coats") as at:
        await _by_name(at, "reducer")
        assert at.screen == "Sheet" and "makes a coating run more easily" in at.text
        await at.press("enter")
        assert at.screen == "BenchScreen"


async def test_it_is_left_with_nothing_done_and_says_where_nothing_is_found() -> None:
    async with at_bench("coats") as at:
        await at.press("ctrl+p")
        await at.type("zzz ")
        assert NOTHING in at.text
        await at.press("enter", "space")
        assert at.screen == "Palette"
        await at.press("backspace", "backspace", "backspace", "backspace", "backspace")
        assert ASK in at.text and at.screen == "Palette"
        await at.press("escape")
        assert at.screen == "BenchScreen" and at.step == "coats"


async def test_steps_stand_first_in_the_order_of_the_job_then_what_can_be_done() -> None:
    async with at_bench("coats") as at:
        found = list(entries(at.app.own_screens[-1]))
        kinds = list(dict.fromkeys(each.heading for each in found))
        assert kinds == [STEPS, DEEDS, WORDS]
        numbers = [int(each.name.split()[0]) for each in found if each.heading == STEPS]
        assert numbers == list(range(1, len(numbers) + 1))
        told = [each.heading for each in narrowed(found, "mix")]
        assert list(dict.fromkeys(told)) == [STEPS, SPEAKS, WORDS]
        assert narrowed(found, "mix")[0].name.endswith("Mix")
        words = [each.name for each in found if each.heading == WORDS]
        assert words == [term.word for term in TERMS]


@pytest.mark.parametrize("screen", ["Home", "BenchScreen"])
async def test_it_holds_every_command_that_works_here_and_none_that_does_not(screen: str) -> None:
    async with at_app() if screen == "Home" else at_bench("coats") as at:
        assert at.screen == screen
        found = {each.name: each for each in entries(at.app.own_screens[-1])}
        for command in COMMANDS:
            here = command.id in ANYWHERE if screen == "Home" else command.id not in PAST
            here = here and command.id != "palette"
            assert (command.word in found) == here, command.id
            assert not here or found[command.word].behind.startswith(command.shown_keys)


async def test_hostile_names_of_steps_are_found_and_drawn() -> None:
    steps = (Step(kind="coats", key="coats", name=HOSTILE), Step(kind="plain", key="b", name="B"))
    async with at_bench("b", profile=profile(steps=steps)) as at:
        await at.press("up", "up")
        assert "[/ x [@clic" in at.text
        await at.press("escape")
        await at.press("ctrl+p")
        await at.type("[/ x")
        assert at.text.count("[/ x") == 2
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
