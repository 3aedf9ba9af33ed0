"""The result: what stands there before the verdict, and how the job is closed."""

from __future__ import annotations

import pytest

from booth.bench.act import CloseJob
from booth.log.events import CoatBegun, CoatEnded, Event, FaultSeen, JobClosed, StepDone
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench
from tests.job.make import at


@pytest.mark.parametrize(
    ("parts", "coats", "said", "label"),
    [
        (("door",), 0, "0 coats", "laid on 1 part"),
        (("door",), 1, "1 coat", "laid on 1 part"),
        (("door", "hood"), 2, "2 coats", "laid on 2 parts"),
    ],
)
def test_coats_and_parts_are_counted(
    parts: tuple[str, ...], coats: int, said: str, label: str
) -> None:
    kept: list[Event] = []
    for number in range(coats):
        kept.append(CoatBegun(n=0, at=at(number * 60), part="door", coat=number + 1))
        kept.append(CoatEnded(n=0, at=at(number * 60 + 30), part="door", coat=number + 1))
    desk = AtBench("result", parts=parts, before=lambda clock: kept)
    shown = desk.readout
    assert (f"{shown.figure} {shown.unit}", shown.label) == (said, label)
    desk.press("right")
    assert f"{said} on {label.removeprefix('laid on ')}" in desk.readout.lines


def test_nothing_is_called_good_by_enter_alone() -> None:
    desk = AtBench("result")
    assert desk.marked == "verdict"
    desk.press("enter", "enter", "enter")
    assert desk.log == []
    assert desk.said == "Verdict: choose with ← →." and desk.marked == "verdict"
    desk.press("right", "enter", "enter")
    assert desk.keys["Enter"] == "close the job"
    desk.press("enter")
    (done, closed) = desk.log
    assert isinstance(done, StepDone) and isinstance(closed, JobClosed)
    assert closed.verdict == "good" and CloseJob() in desk.rest


def test_words_without_a_verdict_stay_and_lead_to_it() -> None:
    desk = AtBench("result")
    desk.fill("words", "dust on the hood")
    desk.press("enter")
    desk.type("slower 2")
    assert desk.keys["Enter"] == "on: Verdict"
    desk.press("enter")
    assert desk.marked == "verdict" and desk.log == []
    desk.press("right", "right", "enter", "enter", "enter")
    closed = desk.log[-1]
    assert isinstance(closed, JobClosed)
    assert (closed.verdict, closed.words, closed.next_time) == (
        "usable",
        "dust on the hood",
        "slower 2",
    )


def test_where_nothing_can_be_kept_the_job_stays_open() -> None:
    desk = AtBench("result")
    desk.press("right", "enter", "enter")
    desk.refuses = True
    desk.press("enter")
    assert desk.rest == () and desk.rows.row("verdict").given == "good"


def test_backspace_takes_a_verdict_back_and_voids_nothing() -> None:
    desk = AtBench("result", before=lambda clock: [JobClosed(n=0, at=clock.now(), verdict="redo")])
    desk.press("right")
    assert desk.keys["Bksp"] == "erase"
    desk.press("backspace", "backspace")
    assert desk.rows.row("verdict").given == "" and len(desk.log) == 1


def test_the_faults_that_were_seen_are_told() -> None:
    seen = FaultSeen(n=0, at=at(0), fault="runs", part="door")
    desk = AtBench("result", before=lambda clock: [seen])
    assert "faults seen: runs" in desk.readout.lines
    assert desk.readout.tone is Tone.PLAIN
    assert "faults seen: none noted" in AtBench("result").readout.lines
