"""What ran when the program ended is found again: a stopwatch is an entry in the log."""

from __future__ import annotations

import io

from booth.cli.log_command import list_jobs, show_job
from booth.log.events import CatchMade, EffluxTimed, NoteMade, StopwatchStarted
from booth.log.store import log_files
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_app, at_bench


async def _take_up_again(at: AtApp, step: str) -> None:
    (path,) = log_files(at.places.jobs_dir)
    await at.take_up(path, step)


async def test_leaving_while_a_stopwatch_runs_loses_nothing() -> None:
    clock = ManualClock()
    async with at_bench("efflux", clock=clock) as at:
        await at.press("space")
        clock.advance(5)
        at.post("f10")
        await at.until(lambda: not at.app.is_running)
        assert len(at.kept(StopwatchStarted)) == 1
    clock.advance(7)
    async with at_app(clock=clock) as at:
        await _take_up_again(at, "efflux")
        assert "stop at the first break" in at.key_line and "12.0" not in at.key_line
        clock.advance(9.5)
        await at.press("space")
        (run,) = at.kept(EffluxTimed)
        assert run.seconds == 21.5


async def test_a_catch_that_was_running_is_found_again_and_can_be_measured() -> None:
    clock = ManualClock()
    async with at_bench("catch", clock=clock) as at:
        await at.press("space")
        await at.pass_time(10)
    clock.advance(20)
    async with at_app(clock=clock) as at:
        await _take_up_again(at, "catch")
        assert "catching" in at.text  # 3 s of lead-in and 27 s of 60 are over
        await at.pass_time(33)
        await at.until(lambda: "caught for" in at.text)
        assert at.heard.sounds[-1] == "signal"
    clock.advance(600)
    async with at_app(clock=clock) as at:
        await _take_up_again(at, "catch")
        assert "HOW MUCH?" in at.words or "caught" in at.text
        await at.type("182 ml")
        await at.press_until("enter", lambda: at.kept(CatchMade))
        (catch,) = at.kept(CatchMade)
        assert (catch.seconds, catch.delivery_ml_min) == (60, 182)


async def test_a_job_has_one_name_in_the_list_the_report_the_log_command_and_on_the_first_screen() -> (
    None
):
    async with at_app(bundled=True, size=(120, 40)) as at:
        await at.open("Two-pack clear")
        await at.press("enter", "f9")
        (path,) = log_files(at.places.jobs_dir)
        name = path.stem.split("-", 2)[2]
        assert name.startswith("two-pack-clear")
        assert f"in the job {name}." in at.words
        await at.open("Past jobs")
        assert any(line.endswith(name) for line in at.lines), at.text
        await at.press("enter")
        assert name in at.lines[0] and f"Job      {name}" in at.text
        listed, shown, faults = io.StringIO(), io.StringIO(), io.StringIO()
        assert list_jobs(at.places.jobs_dir, listed) == 0
        assert name in listed.getvalue()
        assert show_job(name, at.places.jobs_dir, None, shown, faults) == 0
        assert shown.getvalue().startswith(f"Job      {name}\n") and faults.getvalue() == ""


async def test_a_pasted_note_of_several_lines_is_kept_whole() -> None:
    async with at_bench("coats") as at:
        await at.press("f2", "end", "enter")
        await at.paste("left door: run\r\n\n  at the edge \nsand it tomorrow")
        await at.press("enter")
        (note,) = at.kept(NoteMade)
        assert note.text == "left door: run / at the edge / sand it tomorrow"


async def test_a_paste_where_no_text_is_asked_for_presses_nothing() -> None:
    async with at_bench("coats") as at:
        before = at.text
        await at.paste(" \n \nq")
        assert at.text == before
        await at.press("f2")
        await at.paste("pasted before own words were chosen")
        await at.press("escape")
        assert at.kept(NoteMade) == []
