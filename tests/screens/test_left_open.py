"""A job that was left open rings on the list of jobs, over a new job, and on another job's bench."""

from __future__ import annotations

from booth.log.events import AlarmAcknowledged
from booth.log.fold import fold
from booth.log.store import log_files, read_log
from tests.screens.at_app import AtApp, a_job, at_app
from tests.screens.jobs import coated


async def _left_open(at: AtApp) -> None:
    """One coat on the door, ended; then F9."""
    before = coated(at.clock, "door")
    await at.take_up(a_job(before[0].at, *before), "coats")
    await at.press("f9")
    assert at.screen == "Home" and "Jobs not closed" in at.text


async def test_it_rings_on_the_list_of_jobs_until_it_is_silenced_there() -> None:
    async with at_app() as at:
        await _left_open(at)
        assert "go_on" not in at.heard.sounds
        await at.pass_time(3600)  # flash-off is ten minutes
        assert "Trial clear, door: ready for coat 2" in at.text
        await at.pass_time(6)
        assert at.heard.sounds.count("go_on") == 2
        await at.press("escape")
        (kept,) = at.kept(AlarmAcknowledged)
        assert kept.alarm.endswith(":ready")
        await at.pass_time(6)
        assert "silences" not in at.text and at.heard.sounds.count("go_on") == 2


async def test_taken_up_again_it_goes_on_in_the_same_log() -> None:
    async with at_app() as at:
        await _left_open(at)
        await at.press("enter")
        assert at.screen == "BenchScreen"
        await at.open_step("coats")
        await at.pass_time(3600)
        assert "door: ready for coat 2" in at.text and "Trial clear, door" not in at.text
        await at.press("escape")
        assert len(at.kept(AlarmAcknowledged)) == 1


async def test_it_rings_over_a_new_job_and_on_its_bench_into_its_own_log() -> None:
    async with at_app(bundled=True) as at:
        await _left_open(at)
        await at.open("Shellac sealer")
        assert at.screen == "NewJob"
        await at.pass_time(3600)
        assert "Trial clear, door: ready for coat 2" in at.text
        await at.press("enter")
        assert at.screen == "BenchScreen"
        assert "Trial clear, door: ready for coat 2" in at.text
        await at.press("pageup")
        await at.beat()
        assert "silences" not in at.text
        jobs = [fold(read_log(path).events) for path in log_files(at.places.jobs_dir)]
        assert {job.profile.name: len(job.acknowledged) for job in jobs} == {
            "Trial clear": 1,
            "Shellac sealer": 0,
        }
