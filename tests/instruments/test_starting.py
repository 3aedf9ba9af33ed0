"""The next job starts from the last good one; settings that worked become a profile. Keys and files."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from booth.app.app import BoothApp
from booth.clock import ManualClock
from booth.files.places import Places
from booth.job.steps import steps_of
from booth.log.events import AirRead, CatchMade, EffluxTimed, Event, JobClosed, JobOpened, decode
from booth.log.session import Session
from booth.log.store import log_files
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.screens.ask import Ask
from booth.screens.bench import Bench
from booth.screens.new_job import NewJob
from booth.shop.model import Gun, Shop
from booth.units import System
from tests.instruments.at_bench import Silence, at_bench
from tests.job.make import profile, q
from tests.widgets.bench_app import screen_lines

SHOP = Shop(guns=(Gun("blue gun"), Gun("red gun")))


def past_job(clock: ManualClock, gun: str, inlet_kpa: float, verdict: str = "good") -> None:
    """A closed job with this gun: cup, air, two catches."""
    now = clock.now()
    opened = JobOpened(
        n=1, at=now, job=f"past-{gun}-{inlet_kpa:g}", profile=profile(), parts=("door",), gun=gun
    )
    session = Session.begin(Places.standard().jobs_dir, opened)
    for event in (
        EffluxTimed(n=0, at=now, cup="ford-4", seconds=21.5),
        AirRead(n=0, at=now, inlet=q(inlet_kpa, "kPa")),
        caught(now, 155, 1.0),
        caught(now, 255, 2.0),
        JobClosed(n=0, at=now, verdict=verdict, next_time="[b]slower[/b] at the edge"),
    ):
        session.record(event)
    session.close()
    clock.advance(3600)


def caught(now: object, delivery: float, turns: float) -> CatchMade:
    return CatchMade(
        n=0, at=now, seconds=60, amount=q(delivery, "ml"),  # type: ignore[arg-type]
        delivery_ml_min=delivery, turns=q(turns, "turns"),
    )  # fmt: skip


async def test_new_job_shows_the_last_good_settings_of_the_chosen_gun() -> None:
    clock = ManualClock()
    past_job(clock, "blue gun", 190)
    past_job(clock, "red gun", 200)
    past_job(clock, "blue gun", 150, verdict="redo")
    app = BoothApp(clock, Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=(80, 24)) as pilot:
        app.system = System.METRIC
        await pilot.pause()
        app.shop = SHOP
        app.push_screen(NewJob(profile()))
        await pilot.pause()
        text = "\n".join(screen_lines(app))
        assert "Last good with this product and blue gun" in text
        assert "inlet 1.90 bar" in text
        assert "To change this time: [b]slower[/b] at the edge" in text
        await pilot.press("down", "right")
        await pilot.pause()
        text = "\n".join(screen_lines(app))
        assert "and red gun" in text and "inlet 2.00 bar" in text
        await pilot.press("enter")
        await pilot.pause()
    logs = [decode(path.read_bytes().splitlines()[0]) for path in log_files(app.places.jobs_dir)]
    assert sorted(each.gun for each in logs if isinstance(each, JobOpened)) == [
        "blue gun", "blue gun", "red gun", "red gun",
    ]  # fmt: skip


async def test_first_job_shows_no_last_one() -> None:
    app = BoothApp(ManualClock(), Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        app.push_screen(NewJob(profile()))
        await pilot.pause()
        assert "Last good" not in "\n".join(screen_lines(app))


async def test_step_starts_from_the_last_good_setting_until_it_has_its_own() -> None:
    clock = ManualClock()
    past_job(clock, "blue gun", 190)
    app = BoothApp(clock, Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=(100, 30)) as pilot:
        app.system = System.METRIC
        await pilot.pause()
        opened = JobOpened(
            n=1, at=clock.now(), job="new", profile=profile(), parts=("door",), gun="blue gun"
        )
        app.take_up(Session.begin(app.places.jobs_dir, opened))
        await pilot.pause()
        bench = app.screen
        assert isinstance(bench, Bench)
        for key, words in (
            ("air", "last good: inlet 1.90 bar"),
            ("efflux", "last good: 21.5 s in a Ford #4"),
            ("catch", "last good: 255 ml/min, needle 2 turns"),
        ):
            step = next(each for each in steps_of(bench.desk.job) if each.key == key)
            await bench.open_step(step)
            await pilot.pause()
            assert words in "\n".join(screen_lines(app)), key
        # 155 at 1 turn and 255 at 2: halfway lies 205, the middle of 170 to 240 ml/min.
        assert "for 205 ml/min try ~1.5 turns (estimate 1-2)" in "\n".join(screen_lines(app))
        await bench.open_step(next(each for each in steps_of(bench.desk.job) if each.key == "air"))
        await pilot.pause()
        await pilot.press("1", "full_stop", "8", "enter")
        await pilot.pause()
        text = "\n".join(screen_lines(app))
        assert "last good" not in text and "inlet 1.80 bar" in text


def timed(clock: ManualClock) -> Sequence[Event]:
    return (
        EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=21.5),
        AirRead(n=0, at=clock.now(), inlet=q(190, "kPa")),
    )


async def test_settings_are_saved_as_a_profile_under_a_new_name() -> None:
    async with at_bench("result", before=timed) as desk:
        await desk.press("f11")
        await desk.pilot.pause()
        assert isinstance(desk.app.screen, Ask)
        assert "efflux 21.5 s in a Ford #4" in " ".join(desk.text.split())
        await desk.type("Clear, warm")
        await desk.press("enter")
        await desk.pilot.pause()
        path = desk.app.places.own_profiles_dir / "clear-warm.toml"
        answer = read_profile(path)
        assert isinstance(answer, Profile), answer
        assert answer.gun.inlet_kpa is not None and answer.gun.inlet_kpa.holds(190)
        assert "settings from job trial of" in answer.source
        assert answer.demo
        assert "Saved as clear-warm.toml" in desk.text
        assert len(desk.log) == 2  # the job itself holds nothing new


async def test_name_of_the_old_profile_is_refused_and_nothing_is_written() -> None:
    async with at_bench("result", before=timed) as desk:
        await desk.press("f11")
        await desk.pilot.pause()
        await desk.type("Trial clear")
        await desk.press("enter")
        await desk.pilot.pause()
        assert "another name keeps both apart" in desk.text
        assert not list(folder(desk.app).glob("*.toml"))


async def test_folder_that_cannot_be_written_is_said() -> None:
    async with at_bench("result", before=timed) as desk:
        place = folder(desk.app)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text("a file where the folder should be", encoding="utf-8")
        await desk.press("f11")
        await desk.pilot.pause()
        await desk.type("Clear, warm")
        await desk.press("enter")
        await desk.pilot.pause()
        assert "NOT SAVED" in desk.text


async def test_leaving_the_question_saves_nothing() -> None:
    async with at_bench("result", before=timed) as desk:
        await desk.press("f11")
        await desk.pilot.pause()
        await desk.press("escape")
        await desk.pilot.pause()
        assert "Not saved." in desk.text
        assert not folder(desk.app).exists() or not list(folder(desk.app).glob("*.toml"))


async def test_job_without_a_measurement_says_so() -> None:
    async with at_bench("result") as desk:
        await desk.press("f11")
        await desk.pilot.pause()
        assert "Nothing was measured yet" in desk.text


def folder(app: BoothApp) -> Path:
    return app.places.own_profiles_dir
