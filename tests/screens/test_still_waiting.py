"""The first screen goes on telling of a job that was closed while something on its parts runs on."""

from __future__ import annotations

from pathlib import Path

from booth.clock import local_day_hhmm
from booth.log import found_jobs
from booth.log.events import AlarmAcknowledged, CoatBegun, CoatEnded, JobClosed, WeatherRead
from booth.log.fold import fold
from booth.moment import Moment, later
from booth.profile.model import Film, Range, Waits
from booth.screens.home_list import STILL
from tests.instruments.at_bench import in_mild_weather
from tests.job.make import one_time, profile
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, a_job, at_app, everything, kept

HOUR = 3600.0
READY = "► can be handled: door since"
ONE_COAT = profile(film=Film(coats=Range(1, 1)), waits=Waits(handle=one_time(14 * HOUR)))


def sprayed(clock: ManualClock, closed_s: float = 600.0, part: str = "door") -> Path:
    """A job whose one coat ended now; it can be handled after 14 hours. It was closed `closed_s` later."""
    now = clock.now()
    (weather,) = in_mild_weather(clock)
    assert isinstance(weather, WeatherRead)
    return a_job(
        now,
        weather,
        CoatBegun(n=0, at=now, part=part, coat=1),
        CoatEnded(n=0, at=now, part=part, coat=1),
        JobClosed(n=0, at=later(now, closed_s), verdict="good"),
        parts=(part,),
        profile=ONE_COAT,
    )


def at_hour(clock: ManualClock, hours: float) -> Moment:
    return later(clock.now(), hours * HOUR)


async def until_heard(desk: AtApp) -> None:
    await desk.until(lambda: "door: can be handled since" in desk.words)


async def test_what_can_be_handled_tomorrow_is_told_with_part_state_and_day() -> None:
    clock = ManualClock()
    sprayed(clock)
    handle = local_day_hhmm(at_hour(clock, 14), clock.now())
    clock.advance(1200)
    async with at_app(size=(100, 30), clock=clock) as desk:
        assert STILL in desk.text and f"can be handled: door {handle}" in desk.words
        assert "silences" not in desk.text
        await desk.press("home")
        assert f"door: can be handled WAIT {handle}" in desk.words
        # Enter reads what was kept.
        assert "read" in desk.key_line
        await desk.press("enter")
        assert desk.screen == "JobReport" and "Parts door" in desk.words
        await desk.press("escape")
        assert desk.screen == "Home"


async def test_it_rings_once_and_the_silencing_is_in_the_closed_log() -> None:
    clock = ManualClock()
    path = sprayed(clock)
    clock.advance(13.9 * HOUR)
    async with at_app(size=(100, 30), clock=clock) as desk:
        await desk.beat()
        assert desk.app.alarms.ringing() == ()
        await desk.pass_time(0.2 * HOUR)
        await until_heard(desk)
        await desk.press("escape")
        assert "silences" not in desk.text
        (heard,) = kept(path, AlarmAcknowledged)
        assert heard.alarm.startswith("handle:")
        assert fold(everything(path)).closed is not None
        await desk.pass_time(60)
        assert desk.app.alarms.ringing() == ()
        await desk.read_anew()
        assert desk.app.alarms.ringing() == () and READY in desk.words
        # A day after the last of it is over it goes.
        await desk.pass_time(24 * HOUR)
        await desk.read_anew()
        assert STILL not in desk.text


async def test_what_was_over_before_the_closing_does_not_ring() -> None:
    clock = ManualClock()
    sprayed(clock, closed_s=14.5 * HOUR)
    clock.advance(15 * HOUR)
    async with at_app(size=(100, 30), clock=clock) as desk:
        await desk.beat()
        assert READY in desk.words and desk.app.alarms.ringing() == ()


async def test_a_job_of_another_machine_is_told_and_does_not_ring() -> None:
    clock = ManualClock()
    path = sprayed(clock)
    before = path.read_bytes()
    clock.reboot(off_s=14.2 * HOUR)
    async with at_app(size=(100, 30), clock=clock) as desk:
        await desk.beat()
        assert READY in desk.words and desk.app.alarms.ringing() == ()
        assert path.read_bytes() == before


async def test_a_job_that_is_closed_in_this_run_is_told_when_the_first_screen_is_up() -> None:
    clock = ManualClock()
    async with at_app(size=(100, 30), clock=clock) as desk:
        assert STILL not in desk.text
        path = sprayed(clock)
        clock.advance(900)
        await desk.app.take_up(desk.app.jobs.take_up(path, clock.now()))
        await desk.settle()
        assert desk.app.jobs.current is not None
        desk.app.jobs.current.record(JobClosed(n=0, at=clock.now(), verdict="good"))
        await desk.app.leave_job()
        await desk.settle()
        assert STILL in desk.text and "can be handled" in desk.text


async def test_only_jobs_closed_lately_are_read_and_no_more_than_so_many(monkeypatch) -> None:  # type: ignore[no-untyped-def]
    clock = ManualClock()
    sprayed(clock, part="old one")
    clock.advance(31 * 24 * HOUR)
    for number in range(3):
        sprayed(clock, part=f"part {number}")
        clock.advance(1000)
    monkeypatch.setattr(found_jobs, "MOST_CLOSED", 2)
    async with at_app(size=(100, 30), clock=clock) as desk:
        closed = [job.parts[0] for _, job in desk.app.jobs.found.closed]
        assert closed == ["part 2", "part 1"]
