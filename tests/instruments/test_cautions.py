"""The cautions: each is read by itself, whatever key is held, and none can be passed over with Enter."""

from __future__ import annotations

import time
from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest

from booth.clock import local_hhmm
from booth.learnt.past_jobs import PastJobs
from booth.log.events import CautionAcknowledged, Event, JobOpened, StepDone, Voided
from booth.log.session import Session
from booth.moment import Moment
from booth.profile.cautions import cautions_for
from booth.profile.model import Hazard, Profile
from tests.instruments.at_bench import AtBench
from tests.job.make import profile
from tests.manual_clock import ManualClock

EVERY = cautions_for(profile())


@pytest.mark.parametrize("key", ["space", "pagedown", "enter"])
def test_one_key_reads_one_caution_and_keeps_its_words(key: str) -> None:
    desk = AtBench("cautions")
    for number, caution in enumerate(EVERY, 1):
        assert f"{number} of {len(EVERY)}" in desk.text
        assert f"▲ {caution.title}" in desk.text and f"Source: {caution.source}" in desk.text
        assert desk.keys["Enter"] == desk.keys["Space"] == "read and understood"
        desk.pass_time(1)
        desk.press(key)
        kept = desk.log[-1]
        assert isinstance(kept, CautionAcknowledged)
        assert kept.caution == caution.key and kept.words.startswith(f"{caution.title}. ")
        for line in caution.lines:
            assert line in kept.words
    assert len(desk.log) == len(EVERY)
    assert f"All {len(EVERY)} were read" in desk.text and f"√ {EVERY[0].title}" in desk.text


@pytest.mark.parametrize("key", ["space", "pagedown", "enter"])
def test_a_key_that_is_held_down_reads_one(key: str) -> None:
    desk = AtBench("cautions")
    for _ in range(60):
        desk.press_now(key)
        desk.clock.advance(0.03)
    assert len(desk.log) == 1
    desk.pass_time(1)
    desk.press_now(key)
    assert len(desk.log) == 2


@pytest.mark.parametrize("key", ["space", "enter"])
def test_the_key_that_reads_the_last_one_does_not_go_on_while_it_is_held(key: str) -> None:
    desk = AtBench("cautions")
    desk.press(*["space"] * (len(EVERY) - 1))
    desk.pass_time(1)
    for _ in range(60):
        desk.press_now(key)
        desk.clock.advance(0.03)
    assert len(desk.log) == len(EVERY) and desk.bench.step.key == "cautions"
    desk.pass_time(1)
    assert "Space" not in desk.keys and desk.keys["Enter"] == "next step"
    desk.press("enter")
    assert isinstance(desk.log[-1], StepDone) and desk.bench.step.key == "prepare"


def test_void_names_the_caution_shortly_and_shows_it_again() -> None:
    desk = AtBench("cautions")
    desk.press("space")
    assert desk.keys["Bksp"].startswith(f"void: caution acknowledged: {EVERY[0].title}")
    assert len(desk.keys["Bksp"]) < 70
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and f"1 of {len(EVERY)}" in desk.text
    assert desk.said.endswith("Backspace brings it back.")
    desk.press("backspace")
    assert f"2 of {len(EVERY)}" in desk.text


def ago(hours: float) -> Moment:
    now = ManualClock().now()
    return Moment(now.wall - hours * 3600, now.continuous, "an earlier boot")


def went_through(folder: Path, of: Profile, hours: float, *more: Event) -> None:
    """A job of a product so many hours ago, with every caution acknowledged."""
    desk = AtBench("cautions", profile=of)
    desk.press(*["space"] * len(cautions_for(of)))
    at = ago(hours)
    opened = JobOpened(n=1, at=at, job=f"{hours}", profile=of, parts=("lid",))
    session = Session.begin(folder, opened)
    for each in (*desk.log, *more):
        session.record(msgspec.structs.replace(each, at=at))
    session.close()


@pytest.fixture(autouse=True)
def at_greenwich() -> Iterator[None]:
    """The clock of these tests stands at 15:06 UTC: the day began a known while ago."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setenv("TZ", "UTC")
        time.tzset()
        yield
    time.tzset()


def test_what_was_acknowledged_today_for_this_product_is_acknowledged_with_one_key(
    tmp_path: Path,
) -> None:
    went_through(tmp_path, profile(), 5)
    went_through(tmp_path, profile(), 2)
    desk = AtBench("cautions", past=PastJobs(tmp_path))
    assert f"▲ Acknowledged at {local_hhmm(ago(2))}, still hold" in desk.text
    assert all(each.title in desk.text for each in EVERY)
    assert desk.keys["Space"] == desk.keys["Enter"] == "all still hold"
    desk.press("space")
    kept = [each for each in desk.log if isinstance(each, CautionAcknowledged)]
    assert [each.caution for each in kept] == [each.key for each in EVERY] == [*desk.job.cautions]
    assert kept[0].words.startswith(EVERY[0].title) and kept[0].at == desk.clock.now()
    assert f"All {len(EVERY)} were read" in desk.text
    # What is voided of them stands there by itself, and still holds.
    desk.pass_time(1)
    desk.press("backspace")
    assert desk.keys["Space"] == "all still hold" and f"▲ {EVERY[-1].title}" in desk.text


@pytest.mark.parametrize(
    ("of", "hours"),
    [
        (profile(), 16.0),  # yesterday
        (profile(), -1.0),  # the clock was set back since
        (msgspec.structs.replace(profile(), key="another"), 2.0),
    ],
)
def test_on_another_day_or_for_another_product_all_are_gone_through(
    tmp_path: Path, of: Profile, hours: float
) -> None:
    went_through(tmp_path, of, hours)
    desk = AtBench("cautions", past=PastJobs(tmp_path))
    assert f"1 of {len(EVERY)}" in desk.text and desk.keys["Space"] == "read and understood"


def test_a_new_hazard_and_new_words_are_gone_through_by_themselves(tmp_path: Path) -> None:
    old = msgspec.structs.replace(profile(), cautions=("Harms the eyes.",))
    went_through(tmp_path, old, 2)
    now = msgspec.structs.replace(
        old, cautions=("Harms eyes and lungs.",), hazards=(*old.hazards, Hazard.DUST)
    )
    desk = AtBench("cautions", profile=now, past=PastJobs(tmp_path))
    assert "1 of 2" in desk.text and "▲ Dust" in desk.text
    desk.press("space")
    assert "2 of 2" in desk.text and "Harms eyes and lungs." in desk.text
    desk.press("space")
    assert desk.keys["Space"] == "all still hold" and len(desk.log) == 2
    desk.press("space")
    assert len(desk.log) == len(cautions_for(now)) == len(desk.job.cautions)


def test_what_was_voided_or_cannot_be_read_was_not_acknowledged(tmp_path: Path) -> None:
    went_through(tmp_path, profile(), 2, Voided(n=0, at=ago(2), target=2))
    desk = AtBench("cautions", past=PastJobs(tmp_path))
    assert "1 of 1" in desk.text and f"▲ {EVERY[0].title}" in desk.text
    nowhere = AtBench("cautions", past=PastJobs(tmp_path / "gone"))
    assert f"1 of {len(EVERY)}" in nowhere.text
    for path in tmp_path.iterdir():
        path.write_bytes(b"no log\n")
    broken = AtBench("cautions", past=PastJobs(tmp_path))
    assert f"1 of {len(EVERY)}" in broken.text


def test_the_job_at_hand_is_not_its_own_past(tmp_path: Path) -> None:
    went_through(tmp_path, profile(), 2)
    (path,) = tmp_path.iterdir()
    job = Session.resume(path)
    past = PastJobs(tmp_path)
    opened = job.job.opened
    assert past.acknowledged(opened.profile.key, ManualClock().now(), opened.job) == {}
    assert len(past.acknowledged(opened.profile.key, ManualClock().now())) == len(EVERY)
    job.close()
