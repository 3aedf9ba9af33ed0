"""A job that was left open rings on the list of jobs, over a new job, and on another job's bench."""

from __future__ import annotations

from booth.log.events import AlarmAcknowledged
from booth.log.fold import fold
from booth.log.store import log_files, read_log
from booth.screens.bench import Bench
from booth.screens.new_job import NewJob
from tests.screens.test_whole_job import PROFILE, Painter, painter


async def _left_open(p: Painter) -> None:
    """One coat on the left door, ended; then F9."""
    await p.begin()
    await p.go_to("coats")
    await p.press("space")
    await p.pass_time(60)
    await p.press("space")
    await p.pass_time(1)
    await p.press("f9")
    await p.until(lambda: p.screen == "Home" and "Jobs not closed" in p.text)


async def test_it_rings_on_the_list_of_jobs_until_it_is_silenced_there() -> None:
    async with painter() as p:
        await _left_open(p)
        assert "alarm" not in p.heard.sounds
        await p.pass_time(3600)  # flash-off of the bundled profile is 8 min
        assert f"{PROFILE}, left door: ready for coat 2" in p.text
        await p.pass_time(6)
        assert p.heard.sounds.count("alarm") == 2
        await p.press("escape")
        (kept,) = p.kept(AlarmAcknowledged)
        assert kept.alarm.endswith(":ready")
        await p.pass_time(6)
        assert "silences" not in p.text and p.heard.sounds.count("alarm") == 2


async def test_taken_up_again_it_goes_on_in_the_same_log() -> None:
    async with painter() as p:
        await _left_open(p)
        await p.press("enter")
        await p.until(lambda: isinstance(p.app.screen, Bench))
        await p.until(lambda: p.bench.instrument is not None)
        await p.go_to("coats")
        await p.pass_time(3600)
        assert "left door: ready for coat 2" in p.text and f"{PROFILE}, left" not in p.text
        await p.press("escape")
        assert len(p.kept(AlarmAcknowledged)) == 1


async def test_it_rings_over_a_new_job_and_on_its_bench_into_its_own_log() -> None:
    async with painter() as p:
        await _left_open(p)
        row = None
        for _ in range(30):
            row = p.app.screen._row()  # type: ignore[attr-defined]
            if row is not None and row.title == "Shellac sealer":
                break
            await p.press("down")
        await p.press("enter")
        await p.until(lambda: isinstance(p.app.screen, NewJob))
        await p.pass_time(3600)
        assert f"{PROFILE}, left door: ready for coat 2" in p.text
        await p.press("enter")
        await p.until(lambda: isinstance(p.app.screen, Bench))
        await p.until(lambda: p.bench.instrument is not None)
        await p.beat()
        assert f"{PROFILE}, left door: ready for coat 2" in p.text
        await p.press("pageup")
        await p.beat()
        assert "silences" not in p.text
        jobs = [fold(read_log(path).events) for path in log_files(p.places.jobs_dir)]
        assert {job.profile.name: len(job.acknowledged) for job in jobs} == {
            PROFILE: 1,
            "Shellac sealer": 0,
        }
