"""A rack and its sides have one name in every list of jobs."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from booth.job.plan_line import as_one
from booth.job.schedule import Block, Span
from booth.log.codec import encode
from booth.log.events import JobOpened, PartsChanged
from booth.log.fold import fold
from booth.log.rack import MOST_SIDES, Rack, in_a_line, named_once
from booth.log.summary import summary_of
from booth.screens.history_rows import job_line, ready
from booth.screens.home_list import glance
from booth.words.job_search import Wanted, matching
from booth.words.report import jobs_table
from tests.instruments.at_bench import AtBench, in_mild_weather
from tests.instruments.test_changes import DOORS, TWO_COATS
from tests.instruments.test_plan import line_of
from tests.job.make import at, profile

OPENED = JobOpened(
    n=1, at=at(0), job="doors", profile=profile(), parts=(*DOORS.names, "hood"), racks=DOORS.racks
)


def test_one_name_with_its_sides() -> None:
    assert named_once((*DOORS.names, "hood"), DOORS.racks) == ("24 doors, both sides", "hood")
    assert in_a_line((*DOORS.names, "hood"), DOORS.racks) == "24 doors, both sides; hood"
    assert in_a_line(("hood", "fender"), ()) == "hood, fender"
    # A side that left the job is not told, and a rack of one side has nothing to say of it.
    assert in_a_line(("doors: side 2",), DOORS.racks) == "24 doors, side 2"
    assert in_a_line(("rails",), (Rack("rails", 8),)) == "8 rails"
    box = Rack("boxes", 3, 6)
    assert in_a_line(box.parts, (box,)) == "3 boxes, all 6 sides"


def test_a_rack_that_nobody_has_is_passed_over() -> None:
    absurd = Rack("doors", 2, 10**12)
    assert not absurd.is_real and Rack("doors", 2, MOST_SIDES).is_real
    assert in_a_line(("door",), (absurd,)) == "door"


def test_lists_of_jobs_say_it_once(tmp_path: Path) -> None:
    log = tmp_path / "20250615-1506-doors.jsonl"
    log.write_bytes(encode(OPENED) + b"\n")
    (first, *_) = glance(tmp_path, ())
    assert first.title == "Trial clear: 24 doors, both sides; hood"
    summary = summary_of(log, log.read_bytes())
    assert "24 doors, both sides; hood" in job_line(summary).name
    assert "24 doors, both sides; hood" in jobs_table([summary], lambda moment: "")
    # It is found by either name.
    every = ready((summary,))
    assert matching(every, Wanted("both sides")) == matching(every, Wanted("side 2")) == every


def test_a_side_that_was_dropped_is_not_said_any_more() -> None:
    dropped = PartsChanged(n=2, at=at(1), drop=("doors: side 1",))
    present = fold([OPENED, dropped]).present
    assert in_a_line(*present) == "24 doors, side 2; hood"


def test_the_plan_has_one_row_for_it_with_every_coat() -> None:
    b = AtBench(
        "plan", profile=TWO_COATS, before=in_mild_weather, parts=DOORS.names, racks=DOORS.racks
    )
    row = line_of(b).rows[0]
    assert row.name == "24 doors, both sides"
    assert [each.text for each in row.blocks if each.text] == ["1", "1", "2", "2"]
    ends = [(each.start_s, each.end_s) for each in row.blocks]
    assert all(end <= start for (_, end), (start, _) in pairwise(ends))


def test_between_the_coats_the_row_tells_the_side_that_holds_it_up() -> None:
    blocks = (
        Block("1", 1, Span.SPRAYED, 0, 10),
        Block("2", 1, Span.SPRAYED, 10, 20),
        Block("1", 1, Span.WAIT, 10, 25),
        Block("1", 1, Span.READY, 25, 40),
        Block("2", 1, Span.WAIT, 20, 35),
        Block("2", 1, Span.READY, 35, 45),
        Block("1", 2, Span.SPRAY, 40, 50),
    )
    told = [(each.span, each.start_s, each.end_s) for each in as_one(blocks)]
    assert told == [
        (Span.SPRAYED, 0, 10),
        (Span.SPRAYED, 10, 20),
        (Span.WAIT, 20, 35),
        (Span.READY, 35, 40),
        (Span.SPRAY, 40, 50),
    ]
