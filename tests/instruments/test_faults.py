"""Faults: picked with the arrows, kept once, and their causes read against the job's own figures."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.bench.act import Menu, Scroll
from booth.instruments.faults import KINDS, causes_page, reading_words, strongest
from booth.job.diagnosis import Diagnosis
from booth.log.events import (
    AirRead,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    Event,
    FaultAnswered,
    FaultSeen,
    FilmRead,
    Restored,
    StepDone,
    Voided,
)
from booth.trade.faults.evidence import _GAUGES, Evidence, Reading
from booth.trade.faults.fault_table import FAULTS, Fault
from booth.trade.faults.questions import QUESTIONS
from booth.trade.faults.ranked_causes import RankedCause, Standing, next_question, rank_causes
from booth.units import System
from booth.words.shown import Lines, Tone
from tests.instruments.at_bench import AtBench
from tests.job.make import q
from tests.manual_clock import ManualClock


def heavy(clock: ManualClock) -> Sequence[Event]:
    """A thin mix laid too heavily on the door, at a good pressure."""
    now = clock.now()
    return (
        EffluxTimed(n=0, at=now, cup="ford-4", seconds=17.0),
        AirRead(n=0, at=now, inlet=q(195, "kPa")),
        CoatBegun(n=0, at=now, part="door", coat=1),
        CoatEnded(n=0, at=now, part="door", coat=1),
        FilmRead(
            n=0, at=now, part="door", last_wetted=q(100, "um"), first_dry=q(125, "um"), coat=1
        ),
    )


def list_of(desk: AtBench) -> Lines:
    """The list that stands there."""
    (found,) = (
        each
        for each in desk.bench.instrument.picture(desk.now, desk.rows.values)
        if isinstance(each, Lines)
    )
    return found


def told(fault: Fault, causes: tuple[RankedCause, ...], system: System) -> str:
    """All lines of the causes as one text."""
    found = Diagnosis(causes, next_question(causes))
    return "\n".join(text for _, text in causes_page(fault, "", found, system).paragraphs)


HEAVY = Evidence(wet_um=100.0, wet_high_um=60.0, efflux_s=17.0, efflux_low_s=20.0)


@pytest.mark.parametrize(
    ("read", "us", "metric"),
    [
        (
            Reading("wet film", 101.6, 50.8, "um", "above"),
            "wet film 4.0 mil, above 2.0 mil (profile)",
            "wet film 102 µm, above 51 µm (profile)",
        ),
        (
            Reading("efflux time", 17.0, 20.0, "s", "below"),
            "efflux time 17.0 s, below 20.0 s (profile)",
            "efflux time 17.0 s, below 20.0 s (profile)",
        ),
        (
            Reading("coat laid early by", 320.0, 0.0, "s", "above"),
            "coat laid early by 5 min 20 s",
            "coat laid early by 5 min 20 s",
        ),
        (
            Reading("overlap", 0.3, 0.5, "1", "below"),
            "overlap 30 %, below 50 % (profile)",
            "overlap 30 %, below 50 % (profile)",
        ),
        (
            Reading("air", 15.0, 20.0, "C", "below", "a handbook"),
            "air 59 °F, below 68 °F (a handbook)",
            "air 15.0 °C, below 20.0 °C (a handbook)",
        ),
    ],
)
def test_figure_is_told_in_the_units_shown(read: Reading, us: str, metric: str) -> None:
    assert reading_words(read, System.US) == us
    assert reading_words(read, System.METRIC) == metric


def test_every_figure_of_the_evidence_has_a_kind() -> None:
    assert {gauge.unit for gauge in _GAUGES.values()} <= {*KINDS, "s"}


@pytest.mark.parametrize("key", list(FAULTS))
def test_nothing_is_claimed_without_a_figure(key: str) -> None:
    causes = rank_causes(key, Evidence())
    assert strongest(causes, System.US) is None
    text = told(FAULTS[key], causes, System.US)
    assert text.split("\n")[3] == "Nothing measured in this job points to a cause."
    assert FAULTS[key].film in text


def test_strongest_cause_is_the_large_figure_with_its_limit() -> None:
    readout = strongest(rank_causes("runs", HEAVY), System.METRIC)
    assert readout is not None
    assert (readout.figure, readout.unit, readout.tone) == ("100", "µm", Tone.CAUTION)
    assert readout.word == "ABOVE 60 µm"
    assert "Too much was laid" in readout.label


def test_every_cause_is_told_with_its_figure_or_as_open() -> None:
    causes = rank_causes("runs", HEAVY)
    text = told(FAULTS["runs"], causes, System.METRIC)
    for each in causes:
        assert each.cause.words in text
        for read in (*each.figures_for, *each.figures_against):
            assert reading_words(read, System.METRIC) in text
    places = [text.index(f"{n}  {each.cause.words}") for n, each in enumerate(causes, 1)]
    assert places == sorted(places) and len({each.standing for each in causes}) == 2
    for each in causes:
        if each.standing is Standing.OPEN:  # with how usual it is, and what would settle it
            assert f"nothing measured. {QUESTIONS[each.cause.key].words}" in text


def test_thinner_that_nobody_measured_is_noted_without_a_number() -> None:
    causes = rank_causes("runs", Evidence(thinner_unmeasured=True))
    readout = strongest(causes, System.US)
    assert readout is not None
    assert (readout.figure, readout.word) == ("", "THINNER WENT IN UNMEASURED")


@pytest.mark.parametrize("key", ["enter", "space", "pagedown"])
def test_fault_that_is_seen_is_kept_and_its_causes_are_shown(key: str) -> None:
    desk = AtBench("faults", before=heavy)
    kept = len(desk.log)
    desk.press("right", "down")
    assert desk.keys["Enter"] == desk.keys["Space"] == "seen: runs and sags, door"
    desk.press(key)
    event = desk.log[-1]
    assert isinstance(event, FaultSeen)
    assert (event.fault, event.part) == ("runs", "door")
    readout = desk.readout
    assert (readout.whose, readout.figure, readout.word) == ("runs and sags", "edges?", "ANSWER")
    assert "? Does it show on thick edges" in desk.text
    assert "runs and sags, door" in desk.text and "wet film 100 µm, above 60 µm" in desk.text
    desk.system = System.US
    assert "above 2.4 mil" in desk.text
    desk.press("space")
    assert "√ seen: door" in desk.text
    desk.pass_time(1)
    assert desk.keys["Enter"] == "causes of runs and sags"
    desk.press(key)
    assert len(desk.log) == kept + 1  # once for each part
    assert desk.readout.figure == "edges?"


def test_while_the_causes_are_read_arrows_scroll_and_enter_goes_on() -> None:
    desk = AtBench("faults", before=heavy)
    desk.press("down", "enter")
    assert "against it: " in desk.text and "1  Too much was laid in one coat." in desk.text
    assert desk.keys["↑↓"] == "read on" and desk.keys["Enter"] == "next step"
    desk.press("down")
    assert desk.rest == (Scroll(2),)
    desk.press("up")
    assert desk.rest == (Scroll(-2),)
    desk.press("space")
    assert list_of(desk).picked == 1
    desk.pass_time(1)
    desk.press("space")
    desk.pass_time(1)
    desk.press("enter")
    assert isinstance(desk.log[-1], StepDone)


def answered(desk: AtBench) -> list[tuple[str, str, str, str]]:
    live = desk.job.of(FaultAnswered)
    return [(each.fault, each.part, each.question, each.answer) for each in live]


def test_an_answer_is_kept_and_ranks_the_causes_anew() -> None:
    desk = AtBench("faults")
    desk.press("right", *["down"] * (list(FAULTS).index("fisheyes") + 1), "enter")
    assert "? Did the next panel, wiped with cleaner, show it too?" in desk.text
    assert "1  Silicone, wax, oil or grease on the surface." in desk.text
    assert desk.row("answer to wiped").field.label == "Answer"
    desk.press("right")
    assert desk.keys["Enter"] == "keep" and desk.log[-1] == desk.job.faults[-1]
    desk.press("enter")
    assert answered(desk) == [("fisheyes", "door", "wiped", "yes")]
    assert "1  Oil or water in the air line." in desk.text
    assert "for it, as answered: Did the next panel" in desk.text
    # After that the next one, and an answer to it is its own.
    assert "? Does the line, blown on white paper for a minute" in desk.text
    assert "answer to wiped" not in [row.key for row in desk.rows.every]
    desk.pass_time(1)
    desk.press("right", "right", "enter")
    assert answered(desk)[-1] == ("fisheyes", "door", "line-dirt", "no")
    # On another part nothing was answered.
    desk.press("space", "right", "enter")
    assert "fisheyes, hood" in desk.text and "? Did the next panel" in desk.text


def test_an_answer_is_taken_back_before_the_fault_is_and_goes_with_it() -> None:
    desk = AtBench("faults")
    desk.press("down", "enter", "right", "enter")
    assert answered(desk) == [("runs", "", "wet-high", "yes")]
    assert desk.keys["Bksp"].startswith("void: runs: Does the gauge")
    desk.press("backspace")
    assert answered(desk) == [] and desk.job.faults
    desk.press("backspace")
    assert len(answered(desk)) == 1
    desk.press("space")
    desk.press("backspace")
    assert answered(desk) == [] and not desk.job.faults
    desk.press("backspace")
    assert len(answered(desk)) == 1 and desk.job.faults


def test_who_cannot_tell_is_asked_something_else_and_nothing_moves() -> None:
    desk = AtBench("faults")
    desk.press("down", "enter")
    before = [line for line in desk.text.split("\n") if line[:1].isdigit()]
    desk.press("left", "enter")  # round to the last choice
    assert answered(desk) == [("runs", "", "wet-high", "cannot tell")]
    assert [line for line in desk.text.split("\n") if line[:1].isdigit()] == before
    assert "? Does the gauge" not in desk.text


def test_where_nothing_is_left_to_ask_arrows_lead_back_and_to_everything_else() -> None:
    desk = AtBench("faults")
    desk.press("down", "enter")
    for _ in range(80):
        if not any(row.key.startswith("answer") for row in desk.rows.every):
            break
        desk.press("right", "right", "right", "enter")
        desk.pass_time(1)
    lines = desk.text.split("\n")
    assert not any(line.startswith("? ") and line.endswith("?") for line in lines)
    desk.press("right")
    assert isinstance(desk.rest[0], Menu)
    desk.press("left")
    assert list_of(desk).picked == 1


def test_enter_held_down_does_not_go_past_the_causes() -> None:
    desk = AtBench("faults", before=heavy)
    desk.press("down")
    for _ in range(40):
        desk.press("enter")
        desk.clock.advance(0.03)
    assert isinstance(desk.log[-1], FaultSeen) and desk.bench.step.key == "faults"


def test_no_fault_goes_on_with_one_key() -> None:
    desk = AtBench("faults")
    assert "no fault seen: go on" in desk.text and "Space" not in desk.keys
    desk.press("space")
    assert desk.log == [] and desk.said == "Arrows pick what is seen; Enter goes on."
    desk.press("enter")
    assert [type(each) for each in desk.log] == [StepDone]
    assert desk.bench.step.key == "result"


def test_void_takes_the_fault_back_and_closes_its_causes() -> None:
    desk = AtBench("faults", before=heavy)
    desk.press("down", "down", "enter")
    assert desk.job.faults and "orange peel, any part" in desk.text
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided)
    assert desk.said == "Voided: fault seen: orange-peel. Backspace brings it back."
    assert not desk.job.faults
    assert "no fault seen: go on" in desk.text
    desk.press("backspace")
    assert isinstance(desk.log[-1], Restored) and desk.job.faults


def test_backspace_voids_what_was_seen_on_the_chosen_part() -> None:
    desk = AtBench("faults", before=heavy)
    desk.press("right", "down", "enter", "space")  # runs on the door
    desk.press("right", "down", "enter", "space")  # another on the hood
    desk.press("left")
    assert desk.keys["Bksp"] == "void: fault seen on door: runs"
    desk.press("backspace")
    assert [each.part for each in desk.job.faults] == ["hood"]


def test_up_from_the_first_line_leads_to_the_steps() -> None:
    desk = AtBench("faults")
    desk.press("down", "up", "up")
    assert desk.bench.picked == "faults"


def test_a_click_picks_and_a_second_one_takes() -> None:
    desk = AtBench("faults", before=heavy)
    for _ in range(2):
        act = desk.bench.instrument.pick(desk.now, desk.rows, 2)
        assert act is not None
        desk.bench.carry_out(act, desk.clock.now())
    event = desk.log[-1]
    assert isinstance(event, FaultSeen)
    assert event.fault == list(FAULTS)[1]
    assert desk.bench.instrument.pick(desk.now, desk.rows, 99) is None


def test_hostile_part_name_is_text_and_can_be_chosen() -> None:
    name = "[bold]x[/ \x1b[2J"
    desk = AtBench("faults", parts=(name,))
    desk.press("right")
    assert f"◂ {name} ▸" in desk.text  # made plain where it meets the screen
    desk.press("down", "enter")
    assert f"runs and sags, {name}" in desk.text
