"""The air: pressed keys, what the screen says, what is on disk; compressor by hand arithmetic."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
import pytest

from booth.bench.act import Context, Menu
from booth.instruments.air import Air, compressor_lines
from booth.log.events import AirRead, Event, Restored, StepSkipped, Voided
from booth.log.fold import fold
from booth.profile.model import Gun as GunSettings
from booth.profile.model import Range
from booth.shop.model import Compressor, Gun, Shop
from booth.units import System
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import profile, q
from tests.manual_clock import ManualClock

COMPRESSOR = Compressor(receiver_l=90, flow_l_min=200, cut_in_kpa=600, cut_out_kpa=800)
SHOP = Shop(guns=(Gun("blue", air_l_min=340),), compressor=COMPRESSOR)


def with_gun(context: Context, gun: str = "blue") -> Context:
    """The context of a job that is done with this gun."""
    opened = msgspec.structs.replace(context.job.opened, gun=gun)
    job = fold([opened, *context.job.events[1:]])
    return Context(job, context.now, context.system, context.step, context.shop)


@pytest.mark.parametrize(
    ("kpa", "tone", "word", "way"),
    [
        (195.0, Tone.GOOD, "IN RANGE", "profile: 1.80 to 2.10 bar"),
        (150.0, Tone.CAUTION, "LOW, TURN UP", "Regulator up by 0.30 bar or more"),
        (240.0, Tone.CAUTION, "HIGH, TURN DOWN", "Regulator down by 0.30 bar or more"),
    ],
)
def test_inlet_says_where_it_stands_and_which_way_to_turn(
    kpa: float, tone: Tone, word: str, way: str
) -> None:
    readout = Air().readout(context_of(step="air"), {"inlet": q(kpa, "kPa")})
    assert (readout.tone, readout.word) == (tone, word)
    assert way in " ".join(readout.lines[:2])
    assert readout.figure == f"{kpa / 100:.2f}"


def test_nothing_read_yet_shows_what_is_asked_for() -> None:
    readout = Air().readout(context_of(step="air"), {})
    assert (readout.figure, readout.unit) == ("1.80-2.10", "bar")
    assert readout.tone is Tone.PLAIN
    bare = Air().readout(context_of(step="air", profile=profile(gun=GunSettings())), {})
    assert (bare.figure, bare.edge, bare.band) == ("", None, None)
    assert "names no pressure" in bare.lines[0]


def test_profile_without_a_range_judges_nothing() -> None:
    bare = context_of(step="air", profile=profile(gun=GunSettings()))
    readout = Air().readout(bare, {"inlet": q(195.0, "kPa")})
    assert (readout.tone, readout.word) == (Tone.PLAIN, "")


@pytest.mark.parametrize(
    ("cap_psi", "said"),
    [
        (9.0, "Within the 0.1 to 10 psi"),
        (14.0, "conventional one"),
        (None, "at most 10 psi at the air cap"),
    ],
)
def test_cap_of_hvlp_is_held_against_ten_psi(cap_psi: float | None, said: str) -> None:
    # 0.1 to 10 psig at the air cap: 40 CFR 63.11180 (recalled), 63.801.
    hvlp = context_of(step="air", profile=profile(gun=GunSettings(hvlp=True)), system=System.US)
    values = {"inlet": q(190.0, "kPa")}
    if cap_psi is not None:
        values["cap"] = q(cap_psi * 6.894757, "kPa")
    assert any(said in line for line in Air().readout(hvlp, values).lines)


def test_conventional_gun_is_not_lectured_on_hvlp() -> None:
    assert not any("HVLP" in line for line in Air().readout(context_of(step="air"), {}).lines)


def test_an_hvlp_profile_does_not_make_a_conventional_gun_one() -> None:
    asked = profile(gun=GunSettings(hvlp=True))
    lines = Air().readout(with_gun(context_of(step="air", shop=SHOP, profile=asked)), {}).lines
    assert any("this one is none" in line for line in lines)
    assert not any("at most, the inlet more" in line for line in lines)


def test_compressor_in_words() -> None:
    lines = compressor_lines(with_gun(context_of(step="air", shop=SHOP)), None)
    # Boyle by hand, one atmosphere 101.325 kPa: the receiver has to hold 330 kPa for the least inlet
    # of 180. 90 l from the cut-in of 600 to 330 kPa give 239.8 l, against 140 l/min more than is
    # supplied: 102.8 s, 73.4 s where the air cools, said as less rather than more.
    # 90 l from 330 to 800 kPa are 417.5 l: 125.2 s at 200 l/min, said as more rather than less.
    assert lines[0] == "Spray 70 s at most, then wait about 2.5 min (estimate)."
    # From full 31.35 s more on the receiver alone: 134.1 s, 95.8 s where the air cools.
    assert lines[1] == (
        "From a full receiver 1.5 min; the receiver has to hold 3.30 bar for 1.80 bar at the gun "
        "(estimate)."
    )
    # 200 of 340 l/min are 58.8 %.
    assert lines[2] == "In short bursts about 35 s of each minute (estimate)."
    assert lines[3] == "the gun uses 340 l/min, the compressor gives 200 l/min while it runs"


def test_a_compressor_that_keeps_up_is_still_held_against_its_duty() -> None:
    large = msgspec.structs.replace(COMPRESSOR, flow_l_min=340)
    shop = msgspec.structs.replace(SHOP, compressor=large)
    lines = compressor_lines(with_gun(context_of(step="air", shop=shop)), None)
    assert "runs 100 % of the time" in lines[0] and "rated duty is not in the shop file" in lines[0]
    assert "for ever" not in " ".join(lines)


@pytest.mark.parametrize(
    ("compressor", "said"),
    [
        (
            msgspec.structs.replace(COMPRESSOR, cut_out_kpa=150, cut_in_kpa=120),
            "The compressor stops at 1.50 bar, and the receiver has to hold 3.30 bar",
        ),
        (msgspec.structs.replace(COMPRESSOR, flow_l_min=0), "must be above 0"),
        (msgspec.structs.replace(COMPRESSOR, receiver_l=0), "must be above 0"),
        (None, "add compressor and gun to the shop file"),
    ],
)
def test_what_a_compressor_cannot_do_is_said(compressor: Compressor | None, said: str) -> None:
    shop = msgspec.structs.replace(SHOP, compressor=compressor)
    lines = compressor_lines(with_gun(context_of(step="air", shop=shop)), None)
    assert any(said in line for line in lines)


def test_profile_without_a_least_takes_what_is_set() -> None:
    context = with_gun(context_of(step="air", shop=SHOP, profile=profile(gun=GunSettings())))
    assert "for 1.90 bar at the gun" in " ".join(compressor_lines(context, q(190.0, "kPa")))
    assert "read the inlet first" in compressor_lines(context, None)[0]


def test_a_short_time_is_said_to_the_second() -> None:
    # 640 kPa at the inlet take 790 in the receiver: 90 l from 800 give 8.88 l, 1.57 s at 340 l/min,
    # 1.12 s where the air cools. The compressor starts at 600 only.
    asked = profile(gun=GunSettings(inlet_kpa=Range(640, 650)))
    tight = with_gun(context_of(step="air", shop=SHOP, profile=asked))
    assert compressor_lines(tight, None)[0] == (
        "From a full receiver spray 1 s at most, then stop."
    )


def test_reading_is_typed_seen_and_kept() -> None:
    desk = AtBench("air", shop=SHOP)
    assert desk.marked == "inlet"
    assert (desk.readout.figure, desk.readout.label) == (
        "1.80-2.10",
        "inlet asked for, trigger pulled",
    )
    desk.type("1.5")
    assert desk.readout.word == "LOW, TURN UP" and desk.keys["Enter"] == "keep"
    desk.press("enter")
    (read,) = desk.log
    assert isinstance(read, AirRead)
    assert (read.inlet.value, read.inlet.typed, read.cap) == (pytest.approx(150.0), "1.5", None)
    assert "inlet 1.50 bar" in desk.text
    desk.system = System.US
    assert "inlet 22 psi" in desk.text
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and desk.said.startswith("Voided: air: inlet 22 psi.")
    assert desk.readout.label == "inlet asked for, trigger pulled"
    desk.press("backspace")
    assert isinstance(desk.log[-1], Restored) and len(desk.job.airs) == 1


def test_erasing_one_character_too_many_voids_nothing() -> None:
    desk = AtBench("air")
    desk.type("2")
    desk.press("enter")
    desk.type("71")
    desk.press("backspace", "backspace", "backspace")
    assert len(desk.log) == 1


def test_most_never_touch_cap_and_fan() -> None:
    desk = AtBench("air")
    assert [row.key for row in desk.rows.sight] == ["inlet"]
    assert [row.key for row in desk.rows.assumed] == ["cap", "fan"]
    assert desk.keys["↓"] == "what is assumed"


def test_cap_above_the_inlet_is_refused_and_stays_for_correction() -> None:
    desk = AtBench("air", system=System.US)
    desk.type("28")
    desk.press("down")
    assert desk.marked == "cap"
    desk.type("40")
    assert desk.keys["Enter"] == "on: Fan open"
    desk.press("enter", "enter")
    assert desk.log == []
    assert "cannot be" in desk.text
    assert desk.row("cap").text == "40"


def test_no_pressure_is_no_reading() -> None:
    desk = AtBench("air")
    desk.type("0")
    desk.press("enter")
    assert desk.log == [] and "open the air, pull the trigger" in desk.said


def test_an_untouched_reading_is_passed_over_with_a_reason_only() -> None:
    desk = AtBench("air")
    desk.press("enter")
    assert [type(each) for each in desk.rest] == [Menu] and desk.log == []
    desk.choose("nothing here to measure with")
    (skipped,) = desk.log
    assert isinstance(skipped, StepSkipped) and desk.bench.step.key != "air"


def test_range_of_another_profile_and_last_reading_stay_after_coming_back() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return (AirRead(n=0, at=clock.now(), inlet=q(195, "kPa"), fan_turns=q(1.5, "turns")),)

    other = profile(gun=GunSettings(inlet_kpa=Range(150, 180)))
    desk = AtBench("air", before=before, profile=other)
    assert desk.readout.word == "HIGH, TURN DOWN"
    assert "fan open 1.5 turns" in desk.text
    desk.press("enter")
    assert desk.bench.step.key != "air"
