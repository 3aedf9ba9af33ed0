"""The test pattern: what is shown, what is turned, what film it makes."""

from __future__ import annotations

import pytest

from booth.bench.act import Menu
from booth.forms.form import placeholder
from booth.instruments.pattern import (
    film_readout,
    paper_of,
    paper_readout,
    section_of,
    turns_page,
    zones_fault,
)
from booth.job.patterns import SHAPES, Pattern
from booth.log.events import Event, FanSet, PatternRead, Restored, StepDone, Voided
from booth.units import System
from booth.words.shown import Gallery, Paper, Picture, Section, Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, q


def turns(pattern: Pattern, *kept: Event) -> list[tuple[str, str]]:
    return list(turns_page(context_of(*kept), pattern).paragraphs)


def pictures(b: AtBench) -> list[type[Picture]]:
    return [type(each) for each in b.bench.instrument.picture(b.now, b.rows.values)]


def read(shape: str, *zones: float) -> PatternRead:
    return PatternRead(n=0, at=at(0), shape=shape, zones=zones, overlap=q(50, "%"))


@pytest.mark.parametrize("key", [shape.key for shape in SHAPES])
def test_every_shape_is_drawn_and_says_what_to_turn(key: str) -> None:
    pattern = Pattern(key)
    assert paper_of(pattern).films
    shown = paper_readout(context_of(), pattern)
    good = key.startswith("even")
    assert (shown.tone, shown.word) == ((Tone.GOOD, "LEAVE IT") if good else (Tone.CAUTION, "TURN"))
    assert [text[:4] for style, text in turns(pattern) if style == "now"] == ["→ 1 "]


def test_the_mark_moves_on_when_the_same_shape_is_kept_again() -> None:
    again = [read("heavy middle")] * 3
    said = turns(Pattern("heavy middle"), *again)
    assert said[0] == ("now", "→ 3 Close the needle a little, and catch again: less fluid.")
    # What was tried is not lost, and stands where a low window cuts first.
    assert said[-2] == ("done", "√ 1 Open the fan a little.")
    assert [style for style, _ in said] == ["now", "text", "text", "warning", "done", "done"]
    # It never runs out of the list, and another shape starts anew.
    many = turns(Pattern("heavy middle"), *again * 9)
    assert many[0][1].startswith("→ 5 ")
    anew = turns(Pattern("crescent"), *again)
    assert [text[:4] for style, text in anew if style == "now"] == ["→ 1 "]


def test_before_cap_or_tip_are_touched_the_caution_stands_first() -> None:
    for key in ("heavy one end", "crescent", "spitting"):
        style, text = turns(Pattern(key))[0]
        assert style == "warning"
        assert text.startswith("▲ Shut off the air and let the pressure out")
    for shape in SHAPES:  # and a caution stands with every other, too
        assert [style for style, _ in turns(Pattern(shape.key))].count("warning") == 1


def test_evenness_at_the_overlap_of_the_row() -> None:
    # Exact: a parabola half over half is 1.5 to 1 with CV 11.18 %; a top hat is flat there.
    half = {"overlap": q(50, "%")}
    parabola = film_readout(context_of(), half, Pattern("even, tapering"))
    assert (parabola.figure, parabola.unit, parabola.word) == ("1.50", "to 1", "STRIPES")
    assert "varies by 11.2 %" in parabola.lines[0] and "Space takes it" in parabola.lines[0]
    flat = film_readout(context_of(), half, Pattern("even"))
    assert (flat.figure, flat.word, flat.tone) == ("1.00", "EVEN", Tone.GOOD)
    assert "as even as it gets" in flat.lines[0]
    other = film_readout(context_of(), {"overlap": q(30, "%")}, Pattern("even, tapering"))
    assert any("50 % would give 1.50 to 1" in line for line in other.lines)


def test_a_bare_strip_and_an_impossible_overlap_are_said() -> None:
    bare = film_readout(context_of(), {"overlap": q(0, "%")}, Pattern("even, tapering"))
    assert bare.figure == "bare" and bare.tone is Tone.CAUTION
    beyond = film_readout(context_of(), {"overlap": q(200, "%")}, Pattern("even"))
    assert beyond.figure == "" and "0 to 95 %" in beyond.lines[0]
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
    assert zones_fault("353") == "" and zones_fault("3 5,3") == ""
    assert "2 zones" in zones_fault("35")
    assert "Zones are digits" in zones_fault("3a5") and "Every zone is 0" in zones_fault("000")


def test_arrows_choose_the_shape_and_enter_keeps_it() -> None:
    b = AtBench("pattern")
    assert b.marked == "shape" and pictures(b) == [Gallery]
    assert "what does the wet paper show?" in b.text and "both ends" in b.text
    assert b.keys["Enter"] == "skip, say why"
    b.press("enter")  # nothing was read: a measurement asks for a word why
    assert isinstance(b.rest[0], Menu)
    b.press("right", "right", "right")
    assert "heavy in the middle" in b.text and "→ 1 Open the fan a little." in b.text
    assert b.keys["Enter"] == "keep" and b.keys["←→"] == "shape"
    b.press("enter")
    (kept,) = b.log
    assert isinstance(kept, PatternRead)
    assert (kept.shape, kept.zones) == ("heavy middle", ())
    assert kept.overlap is not None and kept.overlap.value == 50
    assert "heavy in the middle" in b.text  # the last one kept stays in sight
    # The same again is a second try: the next thing to turn.
    b.press("right", "right", "right", "enter")
    assert [type(event) for event in b.log] == [PatternRead, PatternRead]
    assert "→ 2 More air" in b.text and "heavy middle, overlap 50 %" in b.record[-1]
    b.press("enter")
    assert isinstance(b.log[-1], StepDone) and b.bench.step.key != "pattern"


def test_another_overlap_for_the_pattern_kept_last() -> None:
    b = AtBench("pattern")
    b.press("right", "right", "enter")
    b.fill("overlap", "60")
    b.press("enter")
    assert b.marked == "width" and len(b.log) == 1  # on to the next row first
    b.press("enter")
    assert [type(event) for event in b.log] == [PatternRead, PatternRead]
    last = b.log[-1]
    assert isinstance(last, PatternRead)
    assert (last.shape, last.overlap) == ("even, tapering", q(60, "%", "60"))


def test_digits_enter_zones_from_the_first_row_on_and_the_key_line_says_so() -> None:
    b = AtBench("pattern")
    assert b.keys["0-9"] == "or zones"
    b.type("3567653")
    assert b.marked == "zones"
    assert "even, by zones" in b.text and pictures(b)[0] is Paper
    b.press("question_mark")  # never part of zones: it asks for help
    assert b.commands == ["help"]
    b.type("nx.-")  # nor are letters: they stay shortcuts
    assert b.row("zones").text == "3567653"
    b.press("enter")
    (kept,) = b.log
    assert isinstance(kept, PatternRead)
    assert (kept.shape, kept.zones) == ("even", (3, 5, 6, 7, 6, 5, 3))
    assert "even, zones 3 5 6 7 6 5 3" in b.text
    b.press("enter")
    assert isinstance(b.log[-1], StepDone)


def test_zones_that_make_no_sense_stay_for_correction() -> None:
    b = AtBench("pattern")
    b.type("35")
    assert "2 zones: it takes 3 to 15 digits" in b.row("zones").fault
    for key in ("enter", "space"):
        b.press(key)
        assert b.said.startswith("2 zones: it takes 3 to 15 digits"), key
        assert b.log == [] and b.row("zones").text == "35" and b.marked == "zones"
    b.type("3")
    assert b.row("zones").fault == ""
    b.press("enter")
    assert len(b.log) == 1


def test_zones_that_make_no_sense_are_not_taken_for_the_pattern_kept_last() -> None:
    b = AtBench("pattern")
    b.press("right", "enter")
    b.type("3")
    assert pictures(b) == [Gallery] and "even, sharp" not in b.text
    b.fill("overlap", "60")
    b.press("enter", "enter")
    assert b.marked == "zones" and len(b.log) == 1
    assert b.said.startswith("1 zone: it takes")


def test_space_takes_the_most_even_overlap_and_the_film_is_shown() -> None:
    b = AtBench("pattern")
    b.press("space")
    assert b.said == "Choose what the paper shows first." and "Space" not in b.keys
    b.press("right", "right")
    assert Section not in pictures(b)
    assert b.keys["Space"] == "most even overlap: 71 %"
    b.press("space")
    assert b.marked == "overlap"
    assert pictures(b) == [Section]
    assert "thickest to thinnest film at 71 % overlap" in b.text
    b.press("enter")
    (kept,) = b.log
    assert isinstance(kept, PatternRead) and kept.overlap == q(71, "%", "71 %")


def test_space_takes_the_most_even_overlap_of_zones_as_well() -> None:
    b = AtBench("pattern")
    b.type("3567653")
    b.press("space")
    assert b.row("zones").text == "3567653" and b.marked == "overlap"
    b.press("enter")
    (kept,) = b.log
    assert isinstance(kept, PatternRead) and len(kept.zones) == 7


def test_a_shape_without_a_film_says_why_there_is_no_most_even_overlap() -> None:
    b = AtBench("pattern")
    b.press("left")  # spitting, the last one
    b.press("space")
    assert b.said.startswith("This shape has no film") and b.row("overlap").text == ""


def test_the_film_is_looked_at_where_its_rows_are_marked() -> None:
    b = AtBench("pattern")
    b.press("right")
    assert pictures(b)[0] is Paper
    assert b.keys["↓"] == "what is assumed"
    for row in ("overlap", "width"):
        b.go_to(row)
        assert pictures(b) == [Section]
    b.go_to("shape")
    assert pictures(b)[0] is Paper


def test_an_overlap_that_hardly_moves_on_is_refused() -> None:
    b = AtBench("pattern")
    b.press("right")
    b.fill("overlap", "99")
    b.press("enter", "enter")
    assert "An overlap is below 95 %" in b.said and b.log == []
    assert b.row("overlap").text == "99"


def test_a_click_on_a_picture_chooses_it_and_backspace_voids() -> None:
    b = AtBench("pattern")
    b.type("35")  # no pattern yet: the pictures are still there to be chosen from
    act = b.bench.instrument.pick(b.now, b.rows, 0)
    assert act is not None
    b.bench.carry_out(act, b.clock.now())
    assert "even, sharp edges" in b.text and pictures(b)[0] is Paper and b.row("zones").text == ""
    assert b.bench.instrument.pick(b.now, b.rows, len(SHAPES)) is None
    b.press("enter")
    assert b.keys["Bksp"] == "void: pattern: even, overlap 50 %"
    b.press("backspace")
    assert isinstance(b.log[-1], Voided) and b.job.patterns == ()
    b.press("backspace")
    assert isinstance(b.log[-1], Restored) and len(b.job.patterns) == 1


def test_backspace_takes_a_shape_back_and_voids_nothing_kept() -> None:
    b = AtBench("pattern")
    b.press("right", "enter", "right", "right")
    b.press("backspace", "backspace")
    assert [type(event) for event in b.log] == [PatternRead]
    assert b.rows.row("shape").given == ""


def test_the_fan_measured_before_is_the_width_offered() -> None:
    fan = FanSet(n=0, at=at(0), width=q(254, "mm"))
    b = AtBench("pattern", before=lambda clock: [fan])
    assert "width" in [row.key for row in b.rows.assumed]
    assert placeholder(b.row("width").field, System.METRIC) == "254 mm"
    assert placeholder(b.row("width").field, System.US) == "10.0 in"
    b.press("right", "enter")
    (kept,) = [event for event in b.log if isinstance(event, PatternRead)]
    assert kept.width is not None and kept.width.value == 254
