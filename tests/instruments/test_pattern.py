"""The test pattern: what is shown, what is turned, what film it makes."""

from __future__ import annotations

import re

import pytest

from booth.instruments.pattern.words import (
    film_readout,
    paper_of,
    paper_readout,
    section_of,
    turns_content,
    zones_fault,
)
from booth.job.patterns import SHAPES, Pattern
from booth.log.events import FanSet, PatternRead, StepDone
from booth.screens.sheet import Sheet
from booth.units import System
from booth.widgets.film_plot import FilmPlot
from booth.widgets.spray_paper import SprayPaper
from booth.words.tone import Tone
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import at, q


def read(shape: str, *zones: float) -> PatternRead:
    return PatternRead(n=0, at=at(0), shape=shape, zones=zones, overlap=q(50, "%"))


@pytest.mark.parametrize("key", [shape.key for shape in SHAPES])
def test_every_shape_is_drawn_and_says_what_to_turn(key: str) -> None:
    pattern = Pattern(key)
    assert paper_of(pattern).films
    shown = paper_readout(context_of(), pattern)
    good = key.startswith("even")
    assert (shown.tone, shown.word) == ((Tone.GOOD, "LEAVE IT") if good else (Tone.CAUTION, "TURN"))
    assert "→ 1 " in turns_content(context_of(), pattern).plain


def test_the_mark_moves_on_when_the_same_shape_is_kept_again() -> None:
    again = [read("heavy middle")] * 3
    text = turns_content(context_of(*again), Pattern("heavy middle")).plain
    assert "→ 3 Close the needle" in text and "  1 Open the fan" in text
    short = turns_content(context_of(*again), Pattern("heavy middle"), room=False).plain
    assert short.startswith("→ 3 ")
    # It never runs out of the list, and another shape starts anew.
    many = turns_content(context_of(*again * 9), Pattern("heavy middle")).plain
    assert "→ 5 " in many
    assert "→ 1 " in turns_content(context_of(*again), Pattern("crescent")).plain


def test_before_cap_or_tip_are_touched_the_caution_stands_first() -> None:
    for room in (True, False):
        for key in ("heavy one end", "crescent", "spitting"):
            text = turns_content(context_of(), Pattern(key), room).plain
            assert text.startswith("▲ Shut off the air and let the pressure out")


def test_evenness_at_the_overlap_of_the_row() -> None:
    # Exact: a parabola half over half is 1.5 to 1 with CV 11.18 %; a top hat is flat there.
    half = {"overlap": q(50, "%")}
    parabola = film_readout(context_of(), half, Pattern("even, tapering"))
    assert (parabola.figure, parabola.unit, parabola.word) == ("1.50", "to 1", "STRIPES")
    assert "CV 11.2 %" in parabola.lines[0] and "Space takes it" in parabola.lines[0]
    flat = film_readout(context_of(), half, Pattern("even"))
    assert (flat.figure, flat.word, flat.tone) == ("1.00", "EVEN", Tone.GOOD)
    assert "as even as it gets" in flat.lines[0]
    other = film_readout(context_of(), {"overlap": q(30, "%")}, Pattern("even, tapering"))
    assert any("50 % would give 1.50 to 1" in line for line in other.lines)


def test_a_bare_strip_and_an_impossible_overlap_are_said() -> None:
    bare = film_readout(context_of(), {"overlap": q(0, "%")}, Pattern("even, tapering"))
    assert bare.figure == "bare" and bare.tone is Tone.CAUTION
    beyond = film_readout(context_of(), {"overlap": q(200, "%")}, Pattern("even"))
    assert beyond.figure == "–" and "0 to 95 %" in beyond.lines[0]
    none = film_readout(context_of(), {"overlap": q(50, "%")}, Pattern("crescent"))
    assert "no profile" in none.lines[0]
    assert section_of(context_of(), {"overlap": q(200, "%")}, Pattern("even")).samples == ()


def test_the_section_is_as_wide_as_the_passes_in_the_painters_units() -> None:
    # Five fans of 250 mm, each half over the one before: 250 + 4 x 125 = 750 mm = 29.5 in, six
    # passes (three fans deep everywhere): 250 + 5 x 125 = 875 mm = 34.4 in.
    values = {"overlap": q(50, "%"), "width": q(250, "mm")}
    mm = section_of(context_of(), values, Pattern("even"))
    assert (mm.samples[-1][0], mm.unit) == (875, "mm")
    inch = section_of(context_of(system=System.US), values, Pattern("even"))
    assert (inch.samples[-1][0], inch.unit) == (34.4, "in")
    assert section_of(context_of(), {"overlap": q(50, "%")}, Pattern("even")).unit == "fans"


def test_zones_that_are_none_say_why() -> None:
    assert zones_fault({}) == "" and zones_fault({"zones": "353"}) == ""
    assert "2 zones" in zones_fault({"zones": "35"})


async def test_arrows_choose_the_shape_and_enter_keeps_it() -> None:
    async with at_bench("pattern", size=(80, 24)) as b:
        assert b.focused_row == "shape"
        assert "what does the wet paper show?" in b.text and "both ends" in b.text
        await b.press("enter")  # nothing was read: a measurement asks for a word why
        assert "A word why" in b.text
        await b.press("escape")
        await b.press("right", "right", "right")
        assert "HEAVY IN THE MIDDLE" in b.text and "→ 1 Open the fan a little." in b.text
        await b.press("enter")
        (kept,) = b.log
        assert isinstance(kept, PatternRead)
        assert (kept.shape, kept.zones) == ("heavy middle", ())
        assert kept.overlap is not None and kept.overlap.value == 50
        # The same again is a second try: the next thing to turn.
        await b.press("right", "right", "right", "enter")
        assert [type(event) for event in b.log] == [PatternRead, PatternRead]
        assert "→ 2 More air" in b.text
        await b.press("enter")
        assert isinstance(b.log[-1], StepDone) and b.bench.step.key != "pattern"


async def test_another_overlap_for_the_pattern_kept_last() -> None:
    async with at_bench("pattern") as b:
        await b.press("right", "right", "enter", "down", "down")
        await b.type("60")
        await b.press("enter")
        assert [type(event) for event in b.log] == [PatternRead, PatternRead]
        last = b.log[-1]
        assert isinstance(last, PatternRead)
        assert (last.shape, last.overlap) == ("even, tapering", q(60, "%", "60"))


async def test_digits_enter_zones_wherever_the_focus_is() -> None:
    async with at_bench("pattern") as b:
        await b.type("3567653")
        assert b.focused_row == "zones"
        assert "EVEN, BY ZONES" in b.text
        await b.press("question_mark")  # never part of zones: it asks for help
        assert isinstance(b.app.screen, Sheet)
        await b.press("escape")
        await b.press("enter")
        (kept,) = b.log
        assert isinstance(kept, PatternRead)
        assert (kept.shape, kept.zones) == ("even", (3, 5, 6, 7, 6, 5, 3))
        assert "even 3567653" in b.text
        await b.press("enter")
        assert isinstance(b.log[-1], StepDone)


async def test_zones_that_make_no_sense_stay_for_correction() -> None:
    async with at_bench("pattern") as b:
        await b.type("35")
        await b.press("enter")
        assert "2 zones: it takes 3 to 15 digits" in b.text
        assert b.log == []
        await b.type("3")
        await b.press("enter")
        assert len(b.log) == 1


async def test_space_takes_the_most_even_overlap_and_the_film_is_shown() -> None:
    async with at_bench("pattern", size=(80, 24)) as b:
        await b.press("space")
        assert "Choose what the paper shows first." in b.text
        await b.press("right", "right")
        assert not b.bench.query_one(FilmPlot).display
        await b.press("space")
        assert b.focused_row == "overlap"
        assert b.bench.query_one(FilmPlot).display
        assert not b.bench.query_one(SprayPaper).display
        assert "thickest to thinnest film at 71 % overlap" in b.text
        await b.press("enter")
        (kept,) = b.log
        assert isinstance(kept, PatternRead) and kept.overlap == q(71, "%", "71 %")


async def test_an_overlap_that_hardly_moves_on_is_refused() -> None:
    async with at_bench("pattern") as b:
        await b.press("right", "down", "down")
        await b.type("99")
        await b.press("enter")
        assert "An overlap is below 95 %" in b.text and b.log == []


async def test_a_click_on_a_picture_chooses_it_and_backspace_voids() -> None:
    async with at_bench("pattern", size=(100, 30)) as b:
        paper = b.bench.query_one(SprayPaper)
        assert await b.pilot.click(SprayPaper, offset=(3, 2))
        assert "EVEN, SHARP EDGES" in b.text and paper.paper.films
        await b.press("enter", "backspace")
        assert type(b.log[-1]).__name__ == "Voided"


async def test_the_fan_measured_before_is_the_width_offered() -> None:
    fan = FanSet(n=0, at=at(0), width=q(254, "mm"))
    async with at_bench("pattern", before=lambda clock: [fan]) as b:
        assert "254 mm" in b.text
        b.app.action_units()
        await b.pilot.pause()
        assert "10.0 in" in b.text


def test_a_long_turn_goes_on_under_its_own_words() -> None:
    for width in (30, 52, 70):
        rows = turns_content(context_of(), Pattern("heavy both ends"), width=width).plain.split(
            "\n"
        )
        assert all(len(row) <= width for row in rows)
        for row in rows:
            # A number, the caution's mark, or set in as far as the words above it.
            assert re.match(r"(→ |  )\d \S|▲ \S| {2}(  )?\S", row), row
    long = turns_content(context_of(), Pattern("heavy both ends")).plain
    assert " ".join(long.split()) == " ".join(
        turns_content(context_of(), Pattern("heavy both ends"), width=30).plain.split()
    )
