"""Lists that are ticked line by line, each for itself; at the end of cleaning no batch rings any more."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.log.events import BatchFinished, BatchMixed, Event, LineTicked, StepDone, Voided
from booth.profile.model import Care, Step
from booth.profile.steps import DEFAULT_STEPS
from booth.words.shown import Page
from tests.instruments.at_bench import AtBench
from tests.job.make import profile, q
from tests.manual_clock import ManualClock

TWO_LISTS = profile(
    steps=(
        Step(key="masking", kind="clean", name="Unmask", how=("Pull the tape.", "Look.")),
        Step(key="clean", kind="clean", name="Clean the gun", how=("Empty the cup.", "Rinse.")),
    )
)


def mixed(clock: ManualClock) -> Sequence[Event]:
    return [BatchMixed(n=0, at=clock.now(), batch=1, total=q(500, "ml"))]


def page(desk: AtBench) -> Page:
    (found,) = desk.bench.instrument.picture(desk.now, desk.rows.values)
    assert isinstance(found, Page)
    return found


@pytest.mark.parametrize("key", ["space", "enter"])
def test_every_line_is_ticked_by_itself_and_batches_are_finished_at_the_end(key: str) -> None:
    desk = AtBench("clean", before=mixed)
    lines = desk.bench.step.how
    for number, line in enumerate(lines):
        styles = [style for style, _ in page(desk).paragraphs]
        rest = len(lines) - number - 1
        assert styles == ["done"] * number + ["now"] + ["text"] * rest
        assert f"→ {line}" in desk.text and desk.keys["Enter"] == "tick this line"
        desk.pass_time(1)
        desk.press(key)
        kept = desk.log[-1]
        assert isinstance(kept, LineTicked) and (kept.step, kept.line) == ("clean", line)
    assert f"√ {lines[0]}" in desk.text
    desk.pass_time(1)
    assert desk.keys["Enter"] == "next step" and "Space" not in desk.keys
    desk.press("enter")
    assert [type(each) for each in desk.log[-2:]] == [BatchFinished, StepDone]
    desk.open("clean")
    desk.pass_time(1)
    desk.press("enter")  # done again: nothing is finished or written twice
    assert [type(each) for each in desk.log[-2:]] == [BatchFinished, StepDone]


@pytest.mark.parametrize("key", ["space", "enter"])
def test_a_key_that_is_held_down_ticks_one(key: str) -> None:
    desk = AtBench("clean")
    for _ in range(60):
        desk.press_now(key)
        desk.clock.advance(0.03)
    assert len(desk.log) == 1


def test_backspace_voids_a_tick_of_this_list_only() -> None:
    desk = AtBench("masking", profile=TWO_LISTS)
    desk.press("space")
    desk.open("clean")
    assert "Bksp" not in desk.keys
    desk.press("backspace")
    assert len(desk.log) == 1
    desk.press("space")
    assert desk.keys["Bksp"] == "void: done: Empty the cup."
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and "→ Empty the cup." in desk.text


def test_where_nothing_can_be_kept_the_list_is_not_left() -> None:
    desk = AtBench("clean", before=mixed)
    desk.press(*["space"] * len(desk.bench.step.how))
    kept = len(desk.log)
    desk.refuses = True
    desk.pass_time(1)
    desk.press("enter")
    assert desk.bench.step.key == "clean" and len(desk.log) == kept


def test_the_usual_list_has_lines_to_tick() -> None:
    (usual,) = (step for step in DEFAULT_STEPS if step.kind == "clean")
    assert len(usual.how) > 3


def test_preparing_is_ticked_line_by_line() -> None:
    desk = AtBench("prepare", before=mixed)
    lines = desk.bench.step.how
    assert lines[0].startswith("Drain the receiver") and desk.keys["Enter"] == "next step"
    desk.press(*["space"] * len(lines))
    assert [each.line for each in desk.job.ticked] == list(lines)
    desk.pass_time(1)
    desk.press("enter")
    assert [type(each) for each in desk.log[-2:]] == [LineTicked, StepDone]  # the batch goes on
    assert desk.bench.step.key == "weather"


def test_after_care_goes_on_with_lines_left_for_later_days() -> None:
    desk = AtBench("after")
    desk.press("space")
    assert desk.keys["Enter"] == "next step" and desk.keys["Space"] == "tick this line"
    desk.press("enter")
    assert isinstance(desk.log[-1], StepDone) and desk.bench.step.key == "faults"
    desk.open("after")
    assert "√ Unmask" in desk.text and "→ Handle it" in desk.text
    desk.press("space", "space", "space")
    assert desk.keys["Enter"] == "next step" and "Next morning" in desk.job.ticked[-1].line


def test_what_the_profile_says_of_them_stands_in_their_lines() -> None:
    said = profile(
        preparation=Care(abrade="P400, wet.", tack_off="a tack cloth"),
        after=Care(unmask="while it is soft"),
    )
    assert "→ Drain" in AtBench("prepare", profile=said).text
    lines = AtBench("prepare", profile=said).bench.step.how
    assert lines[2] == "Abrade: P400, wet." and lines[4] == "Tack off: a tack cloth."
    assert lines[1] == AtBench("prepare").bench.step.how[1]
    assert AtBench("after", profile=said).bench.step.how[0] == "Unmask: while it is soft."
