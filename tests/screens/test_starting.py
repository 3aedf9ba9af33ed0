"""The next job starts from the last good one; settings that worked become a profile. Keys and files."""

from __future__ import annotations

from booth.files.places import Places
from booth.log.events import AirRead, EffluxTimed, Event, JobOpened
from booth.log.store import log_files
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.profile.save import write
from booth.shop.model import Gun, Shop
from booth.units import System
from tests.instruments.test_starting import SHOP, past_job
from tests.job.make import profile, q
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_app, at_bench, kept


async def test_new_job_shows_the_last_good_settings_of_the_chosen_gun() -> None:
    clock = ManualClock()
    past_job(Places.standard().jobs_dir, clock, "blue gun", 190)
    past_job(Places.standard().jobs_dir, clock, "red gun", 200)
    past_job(Places.standard().jobs_dir, clock, "blue gun", 150, verdict="redo")
    own = Places.standard().own_profiles_dir
    own.mkdir(parents=True)
    (own / "trial-clear.toml").write_text(write(profile(), System.METRIC), "utf-8")
    async with at_app(clock=clock, system=System.METRIC) as at:
        at.app.shop = SHOP
        await at.open("Trial clear")
        assert "Last good with this product and blue gun" in at.text
        assert "inlet 1.90 bar" in at.text
        assert "To change this time: [b]slower[/b] at the edge" in at.text
        await at.press("down", "right")
        assert "and red gun" in at.text and "inlet 2.00 bar" in at.text
        await at.press("enter")
        assert at.screen == "BenchScreen"
        logs = log_files(at.places.jobs_dir)
    guns = sorted(each.gun for path in logs for each in kept(path, JobOpened))
    assert guns == ["blue gun", "blue gun", "red gun", "red gun"]


async def test_new_job_shows_the_last_lesson_though_that_job_was_not_good() -> None:
    clock = ManualClock()
    folder = Places.standard().jobs_dir
    past_job(folder, clock, "blue gun", 190)
    past_job(folder, clock, "blue gun", 150, verdict="redo")
    own = Places.standard().own_profiles_dir
    own.mkdir(parents=True)
    (own / "trial-clear.toml").write_text(write(profile(), System.METRIC), "utf-8")
    async with at_app(clock=clock, system=System.METRIC, size=(100, 30)) as at:
        at.app.shop = Shop(guns=(Gun("grey gun"), Gun("blue gun")))
        await at.open("Trial clear")
        assert "(redo): [b]slower[/b] at the edge" in at.words
        # With the grey gun nothing came out good yet: what did, and that it was another gun.
        assert "and blue gun" in at.text and "another gun (then blue gun)" in at.text
        await at.press("down", "right")
        assert "inlet 1.90 bar" in at.text and "another gun" not in at.text


async def test_first_job_shows_no_last_one() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        assert at.screen == "NewJob" and "Last good" not in at.text


async def test_step_starts_from_the_last_good_setting_until_it_has_its_own() -> None:
    clock = ManualClock()
    past_job(Places.standard().jobs_dir, clock, "blue gun", 190)
    async with at_bench(
        "air", clock=clock, system=System.METRIC, size=(100, 30), parts=("door",), gun="blue gun"
    ) as at:
        for key, words in (
            ("efflux", "last good: 21.5 s in a Ford #4"),
            ("catch", "last good: 255 ml/min, needle 2 turns"),
            ("air", "last good: inlet 1.90 bar"),
        ):
            await at.open_step(key)
            assert words in at.text, key
            # 155 at 1 turn and 255 at 2: halfway lies 205, the middle of 170 to 240 ml/min.
            if key == "catch":
                assert "for 205 ml/min try ~1.5 turns (estimate 1-2)" in at.text
        await at.type("1.8")
        while "Enter  on:" in at.key_line:
            await at.press("enter")
        await at.press("enter")
        assert "last good" not in at.text and "inlet 1.80 bar" in at.text


def timed(clock: ManualClock) -> tuple[Event, ...]:
    now = clock.now()
    return (
        EffluxTimed(n=0, at=now, cup="ford-4", seconds=21.5),
        AirRead(n=0, at=now, inlet=q(190, "kPa")),
    )


async def test_settings_are_saved_as_a_profile_under_a_new_name() -> None:
    clock = ManualClock()
    async with at_bench("result", *timed(clock), clock=clock) as at:
        before = len(at.app.jobs.current.job.events)  # type: ignore[union-attr]
        await at.press("f11")
        assert at.screen == "Ask"
        assert "efflux 21.5 s in a Ford #4" in at.words
        await at.type("Clear, warm")
        await at.press("enter")
        answer = read_profile(at.places.own_profiles_dir / "clear-warm.toml")
        assert isinstance(answer, Profile), answer
        assert answer.gun.inlet_kpa is not None and answer.gun.inlet_kpa.holds(190)
        assert "settings from job trial-clear-" in answer.source
        assert answer.demo
        assert "Saved as clear-warm.toml" in at.text
        assert len(at.app.jobs.current.job.events) == before  # type: ignore[union-attr]
        await at.press("f9")
        assert "Clear, warm" in at.text, "it is on the list for the next job"


async def test_name_of_the_old_profile_is_refused_and_nothing_is_written() -> None:
    clock = ManualClock()
    async with at_bench("result", *timed(clock), clock=clock) as at:
        await at.press("f11")
        await at.type("Trial clear")
        await at.press("enter")
        assert "another name keeps both apart" in at.words
        assert not list(at.places.own_profiles_dir.glob("*.toml"))


async def test_folder_that_cannot_be_written_is_said() -> None:
    clock = ManualClock()
    async with at_bench("result", *timed(clock), clock=clock) as at:
        place = at.places.own_profiles_dir
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text("a file where the folder should be", encoding="utf-8")
        await at.press("f11")
        await at.type("Clear, warm")
        await at.press("enter")
        assert "NOT SAVED" in at.text


async def test_leaving_the_question_saves_nothing() -> None:
    clock = ManualClock()
    async with at_bench("result", *timed(clock), clock=clock) as at:
        await at.press("f11", "escape")
        assert at.screen == "BenchScreen" and "Saved" not in at.text
        assert not list(at.places.own_profiles_dir.glob("*.toml"))


async def test_job_without_a_measurement_says_so() -> None:
    async with at_bench("result") as at:
        await at.press("f11")
        assert "Nothing was measured yet" in at.text
