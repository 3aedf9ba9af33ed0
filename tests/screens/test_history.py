"""Past jobs on the screen: the list, one as text, one taken up again, files that cannot be read."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace
from rich.cells import cell_len

from booth.log import events as ev
from booth.log.fold import fold
from booth.log.history import history
from booth.log.session import Session
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.history_rows import job_line
from booth.widgets.lists import lay_out_lines as lay_out
from booth.widgets.rows import strings
from booth.words.shown import Lines
from tests.job.make import q
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job, at_app, everything, kept


@pytest.fixture
def in_june(monkeypatch: pytest.MonkeyPatch) -> None:
    """Local time is the same wherever these tests run."""
    monkeypatch.setattr("booth.screens.history_rows.when", lambda _: "2025-06-15 15:06")


def ago(hours: float) -> Moment:
    """A moment so many hours before the clock of these tests stands."""
    now = ManualClock().now()
    return Moment(now.wall - hours * 3600, now.continuous, "an earlier boot")


def closed(hours: float, verdict: str = "good", **about: str) -> ev.JobClosed:
    return ev.JobClosed(n=0, at=ago(hours), verdict=verdict, **about)


async def test_newest_first_with_verdict_in_a_word_and_a_shape() -> None:
    async with at_app() as at:
        a_job(ago(50), closed(48), parts=("oldest",))
        a_job(ago(20), closed(19, "redo"), parts=("middle",), gun="spot")
        a_job(ago(1), parts=("newest",))
        await at.open("Past jobs")
        rows = [line for line in at.lines if "Trial clear" in line]
        assert ["newest" in rows[0], "middle" in rows[1], "oldest" in rows[2]] == [True] * 3
        assert "» open" in rows[0] and "■ redo" in rows[1] and "√ good" in rows[2]
        assert rows[1].endswith("spot")
        assert at.lines[0].startswith(" Past jobs  3")


async def test_an_empty_folder_says_so() -> None:
    async with at_app() as at:
        await at.open("Past jobs")
        assert "none yet" in at.lines[0]
        await at.press("enter", "right", "f6", "f11", "f12", "down")
        assert at.screen == "History"
        await at.press("escape")
        assert at.screen == "Home"


async def test_enter_shows_the_job_as_text_in_the_units_asked_for() -> None:
    async with at_app() as at:
        air = ev.AirRead(n=0, at=ago(2), inlet=q(200, "kPa"))
        path = a_job(ago(3), air, closed(1, next_time="a bit less air"))
        before = path.read_bytes()
        await at.open("Past jobs")
        await at.press("enter")
        assert at.screen == "JobReport"
        assert "inlet 29 psi" in at.text
        await at.press("u")
        assert "inlet 2.00 bar" in at.text
        await at.press("end")
        assert "next time: a bit less air" in at.text
        await at.press("escape")
        assert at.screen == "History"
        assert path.read_bytes() == before


async def test_the_report_scrolls_by_lines_and_pages() -> None:
    async with at_app() as at:
        notes = [ev.NoteMade(n=0, at=ago(2), text=f"note {number:02}") for number in range(60)]
        a_job(ago(3), *notes, closed(1))
        await at.open("Past jobs")
        await at.press("enter")
        # How it came out stands first, then the log.
        assert "Verdict" in at.text and "note 01" in at.text and "note 59" not in at.text
        await at.press("end")
        assert "note 59" in at.text and "Verdict" not in at.text
        await at.press("home", "pagedown")
        assert "note 15" in at.text and "Verdict" not in at.text
        await at.press("pagedown")
        assert "note 30" in at.text and "note 01" not in at.text
        await at.press("home")
        assert "Verdict" in at.text
        await at.press("down")
        assert "note 01" in at.text and at.lines[1] != at.lines[2]


async def test_right_reopens_a_closed_job_by_voiding_its_closing() -> None:
    async with at_app() as at:
        path = a_job(ago(3), ev.NoteMade(n=0, at=ago(2), text="kept"), closed(1))
        lines_before = path.read_bytes()
        await at.open("Past jobs")
        await at.press("right")
        assert at.screen == "BenchScreen"
        events = everything(path)
        assert path.read_bytes().startswith(lines_before), "nothing is erased"
        assert isinstance(events[-1], ev.Voided) and events[-1].target == 3
        assert fold(events).closed is None
        (summary,) = history(at.places.jobs_dir)
        assert summary.is_open
        # Leaving the bench leads to the list of jobs, not back to the past.
        await at.press("f9")
        assert at.stack == ["Home"]


async def test_r_in_the_report_reopens_too() -> None:
    async with at_app() as at:
        path = a_job(ago(3), closed(1))
        await at.open("Past jobs")
        await at.press("enter", "r")
        assert at.screen == "BenchScreen"
        assert fold(everything(path)).closed is None


async def test_an_open_job_is_taken_up_as_it_is() -> None:
    async with at_app() as at:
        path = a_job(ago(3))
        before = path.read_bytes()
        await at.open("Past jobs")
        assert "open again" in at.lines[-1]
        await at.press("right")
        assert at.screen == "BenchScreen"
        assert path.read_bytes() == before


async def test_a_double_press_does_a_thing_once() -> None:
    async with at_app() as at:
        path = a_job(ago(3), closed(1))
        await at.open("Past jobs")
        at.post("enter", "enter")  # both before the first has been dealt with
        await at.settle()
        assert at.stack == ["Home", "History", "JobReport"]
        await at.press("escape")
        at.post("right", "right")
        await at.settle()
        assert at.stack[:2] == ["Home", "BenchScreen"], "the second one is the bench's"
        assert len(kept(path, ev.Voided)) == 1


async def test_a_job_open_in_another_booth_is_refused_with_a_sentence() -> None:
    async with at_app() as at:
        path = a_job(ago(3), closed(1))
        other = Session.resume(path)
        try:
            await at.open("Past jobs")
            await at.press("right")
            assert at.screen == "Sheet" and "open in another booth" in at.words
            await at.press("escape")
            assert at.screen == "History"
        finally:
            other.close()
        assert fold(everything(path)).closed is not None


async def test_files_that_cannot_be_read_stand_last_with_why() -> None:
    async with at_app() as at:
        a_job(ago(3), closed(1))
        folder = at.places.jobs_dir
        (folder / "20990101-0000-x-0001.jsonl").write_bytes(b"[/ x \x1b[2J\n")
        (folder / "20990101-0000-x-0002.jsonl").mkdir()
        await at.open("Past jobs")
        assert at.lines[0].startswith(" Past jobs  3")
        assert "Trial clear" in at.lines[1]
        assert "No line of it opens a job" in at.text and "cannot be read" in at.text
        await at.press("end", "enter")
        assert at.screen == "Sheet" and "left as it is" in at.words
        await at.press("escape", "right")
        assert at.screen == "Sheet", "what is no job cannot be taken up"


async def test_broken_lines_are_told_in_the_list_and_in_the_report() -> None:
    async with at_app(size=(100, 24)) as at:
        path = a_job(ago(3), closed(1))
        path.write_bytes(path.read_bytes() + b"no entry\n")
        await at.open("Past jobs")
        assert "1 broken line" in at.text
        await at.press("enter")
        assert "!" in at.lines[1], at.text


async def test_jobs_are_found_by_words() -> None:
    async with at_app() as at:
        a_job(ago(50), closed(48), parts=("left door",))
        a_job(ago(20), closed(19, "redo"), parts=("hood",))
        a_job(ago(9), closed(8), parts=("hood",))
        await at.open("Past jobs")
        await at.type("Hood redo")
        rows = [line for line in at.lines if "Trial clear" in line]
        assert len(rows) == 1 and "redo" in rows[0] and "1 of 3" in at.lines[0]
        await at.press("escape")
        assert at.screen == "History" and "1 of 3" not in at.lines[0]
        assert len([line for line in at.lines if "Trial clear" in line]) == 3
        await at.press("escape")
        assert at.screen == "Home"


async def test_hostile_text_is_drawn_as_it_stands() -> None:
    async with at_app() as at:
        a_job(ago(3), ev.NoteMade(n=0, at=ago(2), text="[/ y \x1b[2J"), closed(1), parts=("[/ x",))
        await at.open("Past jobs")
        assert "[/ x" in at.text
        await at.press("enter")
        assert "[/ y ␛[2J" in at.text


async def test_a_narrower_window_cuts_the_rows_and_not_the_jobs() -> None:
    async with at_app(size=(120, 24)) as at:
        a_job(ago(3), closed(1), parts=("a part with a rather long name to cut off somewhere",))
        await at.open("Past jobs")
        assert "somewhere" in at.text
        await at.pilot.resize_terminal(60, 18)
        await at.beat()
        (row,) = [line for line in at.lines if "2025-06" in line]
        assert row.endswith("a part …"), "cut between two words"
        assert "a part with a rather long name to cut off somewhere" in at.words, "all of it below"


async def test_the_first_screen_leads_here() -> None:
    async with at_app() as at:
        await at.pick("Past jobs")
        await at.press("enter")
        assert at.screen == "History"


SUMMARY = JobSummary(Path("a.jsonl"), "a", "Clear", ("door",), "spot", ago(3), ago(2), "good", 9)


@pytest.mark.parametrize("width", [1, 20, 30, 60, 76, 196])
def test_a_line_is_never_wider_than_its_room(in_june: None, width: int) -> None:
    broken = JobSummary(Path("x" * 300), fault="広い" * 90)
    lines = tuple(job_line(each) for each in (SUMMARY, broken))
    assert [cell_len(row) for row in strings(lay_out(Lines(lines), width, 2))] == [width, width]


def test_what_is_wrong_with_a_log_is_seen_in_the_narrowest_list(in_june: None) -> None:
    line = job_line(replace(SUMMARY, broken=2, parts=("a long name for a part",) * 3))
    (row,) = strings(lay_out(Lines((line,)), 60, 1))
    assert "2 broken lines" in row and row.startswith("→ 2025-06-15 15:06")


@pytest.mark.parametrize("way", [("f2",), ("enter", "f2"), ("enter", "n")])
async def test_a_note_the_next_morning_leaves_a_closed_job_closed(way: tuple[str, ...]) -> None:
    async with at_app() as at:
        path = a_job(ago(20), closed(19))
        before = path.read_bytes()
        await at.open("Past jobs")
        if way[0] == "enter":
            await at.press("enter")
            assert "look again" in at.lines[-1]
        await at.press(way[-1])
        assert at.screen == "Ask" and "How does it look now?" in at.text
        await at.type("dull over the filler")
        await at.press("enter")
        assert path.read_bytes().startswith(before), "nothing is erased"
        (note,) = kept(path, ev.NoteMade)
        assert note.text == "dull over the filler"
        assert fold(everything(path)).closed is not None
        if way[0] == "enter":
            assert at.screen == "JobReport" and "note: dull over the filler" in at.text
        else:
            assert at.screen == "History" and "Noted." in at.text
        # Left without a word, nothing is kept.
        await at.press(way[-1], "escape")
        assert len(kept(path, ev.NoteMade)) == 1


async def test_a_note_for_a_job_open_in_another_booth_is_not_lost_without_a_word() -> None:
    async with at_app() as at:
        path = a_job(ago(3), closed(1))
        other = Session.resume(path)
        try:
            await at.open("Past jobs")
            await at.press("f2")
            await at.type("good")
            await at.press("enter")
            assert at.screen == "Sheet" and "open in another booth" in at.words
            assert "The note: good" in at.words
        finally:
            other.close()
        assert kept(path, ev.NoteMade) == []


async def test_a_second_verdict_counts_and_both_are_told_without_a_letter() -> None:
    async with at_app(size=(100, 30)) as at:
        path = a_job(ago(20), closed(19), parts=("hood", "[/ x"))
        before = path.read_bytes()
        await at.open("Past jobs")
        await at.press("enter", "left")
        assert at.screen == "Menu" and "a second verdict" in at.text
        await at.press("enter")
        assert at.screen == "JudgeAgain"
        await at.press("right", "right", "enter")
        await at.type("dust")
        await at.press("enter")
        await at.type("wet the floor")
        await at.press("enter")
        assert path.read_bytes().startswith(before), "nothing is erased"
        (judged,) = kept(path, ev.JudgedAgain)
        assert (judged.verdict, judged.words, judged.next_time) == (
            "usable",
            "dust",
            "wet the floor",
        )
        assert at.screen == "JobReport" and "Kept." in at.text
        await at.press("escape")
        await at.until(lambda: "was good" in at.text)
        (row,) = [line for line in at.lines if "Trial clear" in line]
        assert "usable" in row and "was good" in row
        assert fold(everything(path)).closed is not None
        await at.type("usable")
        assert "1 of 1" in at.lines[0]


async def test_faults_and_polish_of_a_closed_job_are_kept_behind_its_closing() -> None:
    async with at_app(size=(100, 30)) as at:
        path = a_job(ago(20), closed(19), parts=("hood", "[/ x"))
        before = path.read_bytes()
        await at.open("Past jobs")
        await at.press("ctrl+y")
        await at.pick("a fault seen since")
        await at.press("enter")
        await at.pick("dust")
        await at.press("enter")
        assert "On which part?" in at.text
        await at.pick("[/ x")
        await at.press("enter")
        assert at.screen == "History"
        await at.press("ctrl+y")
        await at.pick("polished")
        await at.press("enter", "enter")
        await at.press("ctrl+y", "escape")
        assert path.read_bytes().startswith(before), "nothing is erased"
        (fault,), (work,) = kept(path, ev.FaultSeen), kept(path, ev.FinishedLater)
        assert (fault.fault, fault.part) == ("dust", "[/ x")
        assert (work.work, work.part) == ("polished", "")
        assert fold(everything(path)).closed is not None


async def test_a_copy_is_one_job_and_one_that_differs_is_said_to() -> None:
    async with at_app(size=(120, 30)) as at:
        path = a_job(ago(20), closed(19), parts=("hood",))
        other = path.with_name(f"{path.stem} (1).jsonl")
        other.write_bytes(path.read_bytes())
        await at.open("Past jobs")
        assert len([line for line in at.lines if "Trial clear" in line]) == 1
        await at.press("escape")
        for which, text in ((path, "here"), (other, "there")):
            session = Session.resume(which)
            session.record(ev.NoteMade(n=0, at=ago(1), text=text))
            session.close()
        await at.open("Past jobs")
        rows = [line for line in at.lines if "Trial clear" in line]
        assert len(rows) == 2 and all("differs from a copy" in row for row in rows)
        await at.press("enter")
        assert "differ after 2 entries" in at.words


async def test_an_empty_second_look_and_an_open_job_keep_no_verdict() -> None:
    async with at_app() as at:
        path, under_way = a_job(ago(20), closed(19)), a_job(ago(1), parts=("sill",))
        await at.open("Past jobs")
        await at.press("ctrl+y")
        assert at.screen == "Ask", "an open job takes a note; its verdict is its step Result"
        await at.press("escape", "down", "ctrl+y", "enter", "enter", "enter", "enter")
        assert at.screen == "JudgeAgain" and "Choose a verdict" in at.words
        await at.press("escape")
        assert kept(path, ev.JudgedAgain) == kept(under_way, ev.JudgedAgain) == []


async def test_a_second_verdict_that_cannot_be_kept_is_told_in_full() -> None:
    async with at_app() as at:
        path = a_job(ago(3), closed(1))
        await at.open("Past jobs")
        other = Session.resume(path)
        try:
            await at.press("ctrl+y", "enter", "right", "enter", "enter")
            await at.type("less air")
            await at.press("enter")
            assert at.screen == "Sheet" and "NOT KEPT" in at.words
            assert "good, next time: less air" in at.words
        finally:
            other.close()
        assert kept(path, ev.JudgedAgain) == []
