"""With gloves on: arrows, Space, Enter, Backspace and function keys do for everything."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.bench.menus import NOTES, OWN_WORDS, REASONS
from booth.log.events import (
    CatchMade,
    CautionAcknowledged,
    CoatBegun,
    CoatEnded,
    NoteMade,
    Poured,
    Restored,
    StepSkipped,
    StopwatchStarted,
    TouchTried,
    Voided,
)
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.units import System
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_bench
from tests.screens.jobs import coated

PROFILES = Path(__file__).parents[2] / "profiles"

# -- notes and reasons ---------------------------------------------------------------------------


async def test_a_note_without_a_letter() -> None:
    async with at_bench("coats") as at:
        await at.press("f2", "down", "down", "enter")
        assert [note.text for note in at.kept(NoteMade)] == [NOTES[2]]
        assert at.screen == "BenchScreen" and "Noted." in at.text
        await at.press("f2", "escape")
        assert len(at.kept(NoteMade)) == 1


async def test_the_arrow_to_the_right_leads_to_every_command() -> None:
    async with at_bench("coats") as at:
        await at.press("right")
        assert at.screen == "Menu"
        for words in ("Write a note", "Skip this step", "Leave the bench"):
            assert words in at.text
        await at.press("end")
        assert "Leave the program" in at.text
        await at.press("home")
        await at.pick("Write a note")
        await at.press("space", "space")
        assert [note.text for note in at.kept(NoteMade)] == [NOTES[0]]


async def test_a_step_is_skipped_with_a_reason_from_the_list() -> None:
    async with at_bench("weather") as at:
        await at.press("enter")  # on an untouched form
        assert at.screen == "Menu" and all(reason in at.text for reason in REASONS)
        await at.press("down", "enter")
        (skipped,) = at.kept(StepSkipped)
        assert (skipped.step, skipped.why) == ("weather", REASONS[1])
        assert at.step == "fresh-air"


@pytest.mark.parametrize("way", ["the last line", "just typing"])
async def test_a_step_is_skipped_with_ones_own_words(way: str) -> None:
    async with at_bench("weather") as at:
        await at.press("f6")
        if way == "the last line":
            await at.press("end", "enter")
        await at.type("no gauge in the shop")
        assert at.screen == "Ask"
        await at.press("enter")
        assert [each.why for each in at.kept(StepSkipped)] == ["no gauge in the shop"]
        assert at.step == "fresh-air"


async def test_ones_own_words_are_needed_and_escape_skips_nothing() -> None:
    async with at_bench("weather") as at:
        await at.press("f6", "end")
        assert OWN_WORDS in at.text
        await at.press("enter", "enter")
        assert at.screen == "Ask" and "needed" in at.text
        await at.press("escape")
        assert at.step == "weather" and at.kept(StepSkipped) == []


# -- measuring -----------------------------------------------------------------------------------


@pytest.mark.parametrize("result", ["dry", "tacky", "wet"])
async def test_a_touch_test_from_the_menu(result: str) -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood", ago_s=400), clock=clock) as at:
        await at.press("down", "right")
        await at.pick(f"hood: touched {result}")
        await at.press("enter")
        (tried,) = at.kept(TouchTried)
        assert (tried.part, tried.result) == ("hood", result)


async def test_a_weight_is_said_with_the_arrow() -> None:
    clock = ManualClock()
    now = clock.now()
    started = StopwatchStarted(n=0, at=now, stopwatch="catch", lead_in_s=3.0, window_s=60.0)
    clock.advance(64)
    async with at_bench("catch", started, clock=clock, system=System.METRIC) as at:
        await at.type("182")
        assert "= 182 ml" in at.text and "unit" in at.key_line
        await at.press("right")
        assert "182 g" in at.text
        await at.press_until("enter", lambda: at.kept(CatchMade))
        (catch,) = at.kept(CatchMade)
        assert (catch.amount.value, catch.amount.unit, catch.seconds) == (182, "g", 60)


async def test_a_batch_is_poured_by_weight_without_a_letter() -> None:
    bundled = read_profile(PROFILES / "two-pack-clear.toml")  # it says the densities
    assert isinstance(bundled, Profile)
    async with at_bench("mix", system=System.METRIC, profile=bundled) as at:
        await at.type("300")
        await at.press("down")  # opens what is assumed
        await at.press_until("down", lambda: at.marked == "by")
        await at.press("right")
        await at.press_until("enter", lambda: at.marked == "scale")
        await at.press("space")
        (poured,) = at.kept(Poured)
        assert (poured.name, poured.amount.unit) == ("clear", "g")


# -- a glove is heavy ----------------------------------------------------------------------------


async def test_space_held_on_the_cautions_acknowledges_one() -> None:
    async with at_bench("cautions") as at:
        for _ in range(40):  # a key that is held repeats about thirty times a second
            await at.press_now("space")
            at.clock.advance(0.033)
        assert len(at.kept(CautionAcknowledged)) == 1
        await at.press("space")
        assert len(at.kept(CautionAcknowledged)) == 2


@pytest.mark.parametrize("gap_s", [0.06, 0.3])
async def test_two_presses_of_a_bouncing_foot_switch_begin_a_coat_and_end_none(
    gap_s: float,
) -> None:
    async with at_bench("coats") as at:
        await at.press_now("space")
        at.clock.advance(gap_s)
        await at.press_now("space")
        assert len(at.kept(CoatBegun)) == 1 and at.kept(CoatEnded) == []


async def test_one_backspace_too_many_voids_nothing_and_a_void_is_brought_back() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood"), clock=clock) as at:
        await at.press("down", "backspace")
        assert "Voided: coat 1 on hood ended" in at.text
        await at.press("backspace")
        assert len(at.kept(Voided)) == len(at.kept(Restored)) == 1
        await at.open_step("weather")
        await at.type("71")
        await at.press("backspace", "backspace", "backspace")
        assert len(at.kept(Voided)) == 1


async def test_home_to_bench_and_back_with_arrows_enter_and_function_keys() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood"), clock=clock) as at:
        await at.press("f9")
        assert at.screen == "Home"
        await at.press("enter")
        assert at.screen == "BenchScreen"
        await at.press("f4", "f9")
        assert at.screen == "BenchScreen"
