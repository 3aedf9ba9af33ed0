"""The fan: against the profile, and as keys are pressed."""

from __future__ import annotations

import pytest

from booth.bench.instrument import rows_at
from booth.forms.form import BLANK
from booth.instruments.fan import Fan
from booth.log.events import FanSet, Voided
from booth.profile.model import Gun, Range
from booth.shop.model import Gun as OwnGun
from booth.shop.model import Shop
from booth.units import System
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, profile, q

ASKED = profile(
    gun=Gun(fan_mm=Range(200, 250), distance_mm=Range(150, 200), overlap_percent=Range(50, 50))
)


@pytest.mark.parametrize(
    ("width", "distance", "tone", "said"),
    [
        (225, None, Tone.GOOD, "IN RANGE"),
        (200, 150, Tone.GOOD, "IN RANGE"),
        (199, 150, Tone.CAUTION, "TOO NARROW"),
        (251, 150, Tone.CAUTION, "TOO WIDE"),
        (225, 140, Tone.CAUTION, "TOO CLOSE"),
        (225, 210, Tone.CAUTION, "TOO FAR"),
        (300, 210, Tone.CAUTION, "TOO WIDE"),
    ],
)
def test_width_and_distance_against_the_profile(
    width: float, distance: float | None, tone: Tone, said: str
) -> None:
    values = {"width": q(width, "mm"), "distance": q(distance, "mm") if distance else None}
    shown = Fan().readout(context_of(profile=ASKED), values)
    assert (shown.tone, shown.word, shown.figure) == (tone, said, f"{width:.0f}")
    assert "profile: 200 to 250 mm at 150 to 200 mm" in shown.lines
    # What to do stands first, wherever something is off.
    assert shown.lines[0].startswith("profile") == (tone is not Tone.CAUTION)


def test_what_is_asked_for_is_the_figure_until_it_is_measured() -> None:
    assert Fan().readout(context_of(profile=ASKED), {}).figure == "200-250"
    inches = Fan().readout(context_of(profile=ASKED, system=System.US), {})
    assert (inches.figure, inches.unit) == ("7.9-9.8", "in")  # 25.4 mm to the inch
    nothing = Fan().readout(context_of(), {})
    assert (nothing.figure, nothing.word, nothing.edge) == ("", "MEASURE", None)


def test_the_step_from_pass_to_pass_is_said() -> None:
    # pitch = fan x (1 - overlap): 250 mm at a half is 125 mm
    shown = Fan().readout(context_of(profile=ASKED), {"width": q(250, "mm")})
    assert shown.lines[1] == "50 % overlap (from the profile): move over 125 mm each pass"


def test_what_was_kept_stands_until_something_is_typed() -> None:
    kept = FanSet(n=0, at=at(0), width=q(240, "mm"), distance=q(300, "mm"))
    context = context_of(kept, profile=ASKED)
    shown = Fan().readout(context, rows_at(Fan(), context, BLANK).values)
    assert (shown.figure, shown.word) == ("240", "TOO FAR")


def test_keys_to_disk_and_back() -> None:
    b = AtBench("fan", profile=ASKED, system=System.US)
    assert b.marked == "width"
    b.type("9.5")
    assert "= 9.5 in = 241 mm" in b.text
    b.press("enter", "enter", "enter")
    (kept,) = b.log
    assert isinstance(kept, FanSet) and kept.width == q(241.3, "mm", "9.5")
    assert kept.distance is None and kept.turns is None
    assert "IN RANGE" in b.text and "9.5 in" in b.text
    b.type("10")
    b.press("down")
    b.type("7 in")
    b.press("down")
    b.type("1 1/2")
    b.press("enter")
    assert isinstance(b.log[-1], FanSet)
    assert b.log[-1].distance == q(177.8, "mm", "7 in")
    assert b.log[-1].turns == q(1.5, "turns", "1 1/2")
    assert "width 10.0 in, open 1.5 turns, distance 7.0 in" in b.text
    b.system = System.METRIC
    assert "width 254 mm, open 1.5 turns, distance 178 mm" in b.text
    b.press("backspace")
    assert isinstance(b.log[-1], Voided)
    assert "241 mm" in b.text and "254 mm" not in b.record[-1]


def test_what_is_typed_after_enter_goes_into_the_next_row() -> None:
    # A newcomer typed 9 Enter 7 Enter and had a fan of 9 in, then one of 7 in.
    b = AtBench("fan", profile=ASKED, system=System.US)
    for text, word in (("9", "on: Distance"), ("7", "on: Fan open")):
        b.type(text)
        assert b.keys["Enter"] == word
        b.press("enter")
    assert b.log == []
    b.press("enter")
    (kept,) = b.log
    assert isinstance(kept, FanSet) and kept.width is not None and kept.distance is not None
    assert (kept.width.typed, kept.distance.typed) == ("9", "7")


def test_nonsense_stays_for_correction_and_nothing_is_kept() -> None:
    b = AtBench("fan", profile=ASKED)
    b.type("0")
    b.press("enter", "enter", "enter")
    assert "A fan has a width above 0" in b.said
    b.go_to("width")
    b.press("backspace")
    b.type("12 psi")
    assert b.keys["Enter"] == "what is wrong here"
    b.press("enter")
    assert b.log == [] and b.marked == "width" and b.said == b.row("width").fault != ""


def test_the_shop_file_says_how_far_the_fan_opens() -> None:
    shop = Shop(guns=(OwnGun("blue [b]", fan_turns=2.5),))
    b = AtBench("fan", profile=ASKED, shop=shop)
    assert "fully open: 2.5 turns (shop file)" in b.text
