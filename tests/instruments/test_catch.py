"""The catch: what it comes to, in both systems of units, what it refuses, and as keys are pressed."""

from __future__ import annotations

import pytest

from booth.instruments.catch import delivery_of
from booth.instruments.catch_words import delivery_readout
from booth.log.events import CatchMade, StopwatchDropped, StopwatchStarted
from booth.profile.model import Film, Gun, Range
from booth.units import System
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import profile, q

#: 29.5735295625 ml to the US fluid ounce (NIST Handbook 44, Appendix C)
OZ = 29.5735295625


@pytest.mark.parametrize(("system", "cup"), [(System.US, "20.0 fl oz"), (System.METRIC, "591 ml")])
def test_a_full_cup_at_six_ounces_a_minute_lasts_3_min_20_s(system: System, cup: str) -> None:
    # 20 fl oz / 6 fl oz/min = 3 1/3 min (common practice, no source, for both figures)
    shown = delivery_readout(context_of(system=system), 6 * OZ, "paint", "this catch")
    assert f"a full cup of {cup} lasts 3 min 20 s" in shown.lines


def test_a_weight_becomes_a_volume_by_the_density_of_what_was_caught() -> None:
    dense = context_of(profile=profile(film=Film(coats=Range(1, 1), density_g_ml=1.2)))
    caught = {"amount": q(120, "g"), "seconds": q(30, "s")}
    # 120 g / 1.2 g/ml = 100 ml in half a minute
    assert delivery_of(dense, {**caught, "liquid": "paint"}) == pytest.approx(200.0)
    # IAPWS: water of 20 C weighs 998.207 kg/m3; its digits are the tolerance
    water = delivery_of(dense, {**caught, "liquid": "water"})
    assert water == pytest.approx(120 / 0.998207 * 2, rel=1e-6)
    assert delivery_of(context_of(), {**caught, "liquid": "paint"}) is None


def test_against_the_profile() -> None:
    asked = context_of(profile=profile(gun=Gun(delivery_ml_min=Range(170, 240))))
    words = [delivery_readout(asked, each, "paint", "").word for each in (169, 170, 240, 241)]
    assert words == ["TOO LITTLE", "IN RANGE", "IN RANGE", "TOO MUCH"]
    assert delivery_readout(asked, 200, "water", "").word == "WATER"


def test_a_catch_is_led_in_heard_and_measured() -> None:
    desk = AtBench("catch")
    assert desk.marked == "amount" and desk.keys["Space"] == "start"
    assert [row.key for row in desk.rows.sight] == ["amount", "turns"]
    desk.fill("seconds", "30s")
    desk.press("space")
    assert desk.readout.word == "GET READY" and desk.rows.sight == ()
    for _ in range(33):
        desk.pass_time(1.0)
    assert desk.sounds == ["tick"] * 4 + ["stop"]  # 3, 2, 1, trigger
    assert desk.readout.word == "HOW MUCH?" and desk.readout.figure == "30"
    desk.type("90")
    assert desk.keys["Enter"] == "on: Needle open"
    desk.press("enter", "enter")
    kept = desk.log[-1]
    assert isinstance(kept, CatchMade)
    assert kept.seconds == 30.0 and kept.delivery_ml_min == pytest.approx(180.0)


def test_a_short_catch_ended_early_counts_the_time_that_passed() -> None:
    desk = AtBench("catch")
    caught_for(desk, 20.0)
    desk.type("60ml")
    desk.press("enter", "enter")
    kept = desk.log[-1]
    assert isinstance(kept, CatchMade)
    assert kept.seconds == 20.0 and kept.delivery_ml_min == pytest.approx(180.0)
    assert desk.sounds == ["tick"] * 4  # nobody has to be told to stop who did


def caught_for(desk: AtBench, seconds: float) -> None:
    """Catch, and stop early after so long."""
    desk.press("space")
    for _ in range(int(seconds) + 2):
        desk.pass_time(1.0)
    desk.press("space")


def test_space_starts_although_something_is_typed_and_stops_before_the_trigger() -> None:
    # After one value was typed Space no longer started the catch; Enter then asked why it was skipped.
    desk = AtBench("catch")
    desk.fill("turns", "2")
    assert desk.keys["Space"] == "start"
    desk.press("space")
    assert isinstance(desk.log[-1], StopwatchStarted)
    assert desk.keys["Space"] == "stop"
    desk.press("space")
    assert isinstance(desk.log[-1], StopwatchDropped)
    assert desk.said == "Stopped before the trigger."


def test_the_needle_that_was_typed_before_the_catch_is_still_there_after_it() -> None:
    desk = AtBench("catch")
    desk.fill("turns", "2")
    caught_for(desk, 20.0)
    assert desk.marked == "amount" and desk.row("turns").text == "2"
    assert desk.keys["Space"] == "catch again"
    desk.type("60")
    desk.press("enter", "enter")
    kept = desk.log[-1]
    assert isinstance(kept, CatchMade) and kept.turns is not None and kept.turns.value == 2


def test_a_time_typed_in_the_row_of_the_time_is_kept_with_enter_like_any_row() -> None:
    # 'Catch for', 45 s: the key line said keep, and the mark jumped to the amount.
    desk = AtBench("catch")
    desk.fill("seconds", "45s")
    for word in ("on: Needle open", "on: Inlet", "on: Tip", "on: Caught"):
        assert desk.keys["Enter"] == word
        desk.press("enter")
    assert desk.log == [] and desk.marked == "amount"
    assert desk.said == "Caught: still to be filled."


@pytest.mark.parametrize(
    ("typed", "said"), [("0", "a time above zero"), ("6psi", "measures a pressure")]
)
def test_no_time_starts_no_catch(typed: str, said: str) -> None:
    desk = AtBench("catch")
    desk.fill("seconds", typed)
    desk.press("space")
    desk.pass_time(10.0)
    assert desk.job.stopwatches == {} and desk.log == []
    assert said in desk.said


def test_where_the_disk_is_full_the_time_caught_in_is_not_forgotten() -> None:
    desk = AtBench("catch")
    caught_for(desk, 20.0)
    desk.type("60ml")
    desk.refuses = True
    kept = len(desk.log)
    desk.press("enter", "enter", "enter")
    assert len(desk.log) == kept and desk.row("amount").text == "60ml"
    desk.refuses = False
    desk.pass_time(1.0)
    desk.press("enter")
    last = desk.log[-1]
    assert isinstance(last, CatchMade)
    assert last.seconds == 20.0 and last.delivery_ml_min == pytest.approx(180.0)


def test_a_catch_that_cannot_be_stopped_on_disk_goes_on() -> None:
    desk = AtBench("catch")
    desk.press("space")
    desk.pass_time(10.0)
    desk.refuses = True
    desk.press("space")
    assert desk.readout.word == "TRIGGER"


@pytest.mark.parametrize(
    ("amount", "seconds", "said"),
    [("0", "", "Nothing caught gives no delivery"), ("180", "0", "a time above zero")],
)
def test_what_comes_to_no_delivery_is_not_kept(amount: str, seconds: str, said: str) -> None:
    desk = AtBench("catch")
    if seconds:
        desk.fill("seconds", seconds)
    desk.fill("amount", amount)
    for _ in range(len(desk.rows.sight)):
        desk.press("enter")
    assert desk.log == [] and said in desk.said
    assert desk.row("amount").text == amount  # it stays, to be corrected
    desk.go_to("amount")
    desk.press("backspace")
    desk.type("9")
    assert said not in desk.text


def test_a_catch_that_was_timed_and_not_measured_is_neither_skipped_nor_left() -> None:
    desk = AtBench("catch")
    caught_for(desk, 20.0)
    for _ in range(3):
        desk.press("enter")
        assert desk.bench.step.key == "catch" and desk.rest == ()
    assert desk.said == "20 s were caught: type how much, or Space catches again."
    assert desk.keys["Bksp"] == "void: stopwatch of the catch started, for 1 min"
    desk.press("backspace")
    assert desk.job.stopwatches == {} and desk.keys["Enter"] == "skip, say why"


def test_a_catch_that_was_voided_is_measured_anew_in_the_time_that_passed() -> None:
    desk = AtBench("catch")
    caught_for(desk, 20.0)
    desk.type("600")  # meant was 60
    desk.press("enter", "enter", "backspace")
    assert desk.job.catches == () and desk.readout.word == "HOW MUCH?"
    desk.type("60")
    desk.press("enter", "enter")
    last = desk.log[-1]
    assert isinstance(last, CatchMade) and last.delivery_ml_min == pytest.approx(180.0)


def test_one_backspace_too_many_voids_nothing() -> None:
    desk = AtBench("catch")
    caught_for(desk, 20.0)
    kept = len(desk.log)
    desk.type("6")
    desk.press("backspace", "backspace", "backspace")
    assert len(desk.log) == kept
