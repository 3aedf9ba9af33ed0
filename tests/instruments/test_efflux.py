"""The flow cup: against the profile, in another cup, outside a cup's range, and as keys are pressed."""

from __future__ import annotations

import pytest

from booth.bench.act import Menu
from booth.instruments.efflux import DROPPED, LONGEST_S, efflux_readout
from booth.log.events import (
    BatchMixed,
    EffluxTimed,
    Event,
    StopwatchDropped,
    StopwatchStarted,
    Voided,
)
from booth.profile.model import Efflux as Wanted
from booth.profile.model import Mix, MixPart, Range
from booth.trade.cups.cup_names import cup_named
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of, in_mild_weather
from tests.job.make import at, one_time, profile
from tests.manual_clock import ManualClock

FORD = profile(efflux=Wanted("Ford #4", Range(20, 24)))


@pytest.mark.parametrize(
    ("seconds", "tone", "said"),
    [
        (20.0, Tone.GOOD, "IN RANGE"),
        (24.0, Tone.GOOD, "IN RANGE"),
        (19.0, Tone.CAUTION, "TOO THIN"),
        (25.0, Tone.CAUTION, "TOO THICK"),
    ],
)
def test_the_profiles_own_cup(seconds: float, tone: Tone, said: str) -> None:
    shown = efflux_readout(context_of(profile=FORD), cup_named("ford 4"), seconds)
    assert (shown.tone, shown.word, shown.figure) == (tone, said, f"{seconds:.1f}")
    assert "profile: 20.0 s to 24.0 s in a Ford #4" in shown.lines


def test_another_cup_is_compared_in_equivalent_seconds() -> None:
    # one liquid of 100 mm2/s: 42.6 s in Zahn #2, 30.5 s in Ford #4 (ASTM D4212 10.1, D1200 11.2)
    shown = efflux_readout(context_of(profile=FORD), cup_named("zahn 2"), 42.6)
    assert shown.word == "TOO THICK"
    assert shown.lines[0] == "equals 30.5 s in a Ford #4 (equivalent seconds)"


def test_water_in_a_zahn_2_is_not_converted_and_that_is_the_state() -> None:
    # 17 to 19 s, below the cup's range of 20 to 80 s (ASTM D4212 10.1)
    shown = efflux_readout(context_of(profile=FORD), cup_named("zahn 2"), 18.0)
    assert (shown.tone, shown.word) == (Tone.CAUTION, "OUTSIDE THE CUP")
    text = " ".join(shown.lines)
    assert text.count("18 s is below the 20 s") == 1 and "mm²/s" not in text
    assert "Not comparable with the profile's Ford #4." in shown.lines


def test_a_cup_timed_while_the_mix_still_stands_is_to_be_timed_again() -> None:
    mix = Mix(parts=(MixPart("a", 2), MixPart("b", 1)), induction=one_time(1200))
    stands = profile(efflux=Wanted("Ford #4", Range(20, 24)), mix=mix)

    def mixed(clock: ManualClock) -> tuple[Event, ...]:
        return (*in_mild_weather(clock), BatchMixed(n=0, at=clock.now(), batch=1))

    b = AtBench("efflux", profile=stands, before=mixed)
    said = "Induction for another {}: time it again then."
    b.pass_time(60)
    assert said.format("19 min") in b.text
    b.press("space")
    b.pass_time(22)
    b.press("space")
    assert said.format("19 min") in b.text
    b.pass_time(1200)
    assert "Induction" not in b.text


def test_a_cups_own_correction_is_said() -> None:
    run = EffluxTimed(n=0, at=at(0), cup="ford-4", seconds=30.0, correction=1.05)
    context = context_of(run, profile=FORD)
    shown = efflux_readout(context, cup_named("ford 4"), 31.5)
    assert "the runs times this cup's own correction, 1.05" in shown.lines
    plain = efflux_readout(context_of(profile=FORD), cup_named("ford 4"), 31.5)
    assert not any("correction" in line for line in plain.lines)


def test_space_times_and_the_choice_of_cup_still_has_the_keys() -> None:
    desk = AtBench("efflux", profile=FORD)
    assert desk.marked == "cup"
    desk.press("right")
    chosen = desk.row("cup").given
    assert desk.keys["Space"] == "start"
    desk.press("space")
    assert desk.keys["Space"] == "stop at the first break" and desk.readout.tone is Tone.RUNNING
    desk.pass_time(59.0)
    desk.press("space")
    started, run = desk.log
    assert isinstance(started, StopwatchStarted) and started.what == chosen
    assert isinstance(run, EffluxTimed)
    assert (run.cup, run.seconds) == (chosen, 60.0)
    assert desk.marked == "cup"
    desk.press("right")
    assert desk.row("cup").given != chosen


@pytest.mark.parametrize("key", ["space", "pagedown"])
def test_space_starts_and_stops_with_a_temperature_typed(key: str) -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.fill("liquid", "21")
    assert desk.keys["Space"] == "start"
    desk.press(key)
    assert desk.readout.figure == "0.0" and desk.row("liquid").text == "21"
    desk.pass_time(21.0)
    desk.press(key)
    run = desk.log[-1]
    assert isinstance(run, EffluxTimed) and run.seconds == 22.0
    assert run.liquid_temperature is not None and run.liquid_temperature.value == 21
    assert desk.row("liquid").text == "" and desk.row("liquid").given == run.liquid_temperature


def test_a_temperature_that_is_none_is_said_before_the_cup_runs() -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.fill("liquid", "21psi")
    desk.press("space")
    assert desk.log == [] and desk.said == desk.row("liquid").fault != ""


def test_while_a_run_is_going_neither_digits_nor_enter_do_anything_to_it() -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.press("space")
    desk.type("42")
    desk.press("enter", "backspace")
    assert len(desk.log) == 1 and desk.row("liquid").text == "" and desk.rest == ()
    desk.press("enter")
    assert desk.said == "A stopwatch is running here: Space stops it."


def test_a_run_goes_on_while_the_program_is_away_and_one_that_was_forgotten_is_dropped() -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.press("space")
    desk.open("weather")
    desk.open("efflux")
    desk.pass_time(29.0)
    assert desk.readout.figure == "29.0"
    desk.pass_time(LONGEST_S)
    assert desk.readout.word == "FORGOTTEN" and desk.keys["Space"] == "drop this run"
    desk.press("space")
    assert isinstance(desk.log[-1], StopwatchDropped) and desk.said == DROPPED
    # No run is left to be shown: what is wanted, and nothing measured.
    assert desk.job.runs == () and desk.readout.figure == "20.0-24.0" and desk.readout.wanted


def test_two_presses_of_a_glove_are_one_and_a_held_key_is_none() -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.press("space")
    desk.clock.advance(0.3)
    desk.press_now("space")
    assert [type(each) for each in desk.log] == [StopwatchStarted]
    for _ in range(600):  # held for 20 s
        desk.clock.advance(0.033)
        desk.press_now("space")
    assert [type(each) for each in desk.log] == [StopwatchStarted]


def test_the_cup_that_was_voided_is_named() -> None:
    desk = AtBench("efflux", profile=FORD)
    desk.press("space")
    desk.pass_time(21.0)
    desk.press("space")
    assert desk.keys["Bksp"] == "void: efflux time Ford #4: 22.0 s"
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and desk.job.runs == ()
    assert desk.job.stopwatches == {}  # its stopwatch does not run again


def test_without_a_run_enter_asks_why_it_is_skipped() -> None:
    desk = AtBench("efflux", profile=FORD)
    assert desk.keys["Enter"] == "skip, say why"
    desk.press("enter")
    assert isinstance(desk.rest[0], Menu)
    desk.choose("nothing here to measure with")
    assert desk.job.skipped["efflux"].why == "nothing here to measure with"
    desk.open("efflux")
    desk.fill("liquid", "21")
    desk.press("enter")
    assert desk.rest == () and desk.said == "The temperature goes with a run: Space starts one."


def test_a_digit_on_a_row_that_is_chosen_names_the_row_it_goes_into() -> None:
    b = AtBench("efflux")
    assert b.marked == "cup" and b.keys["0-9"] == "Liquid at"
    b.type("2")
    b.press("up")
    assert b.marked == "cup" and b.keys["0-9"] == "Liquid at"  # also where that row has begun
    b.type("1")
    assert b.row("liquid").text == "21" and "0-9" not in b.keys
