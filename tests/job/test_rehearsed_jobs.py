"""A rehearsal among the jobs of a folder: it teaches water and the pattern, and counts as no job."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from booth.cli.sheet_command import _last
from booth.job.last_choices import tip_last, weighed_last
from booth.job.past import (
    acknowledged,
    last_good,
    last_lesson,
    last_rehearsal,
)
from booth.learnt.past_jobs import PastJobs, coat_times
from booth.log import events as ev
from booth.log.history import history
from booth.log.open_jobs import OpenJobs
from booth.log.store import log_bytes
from booth.log.summary import summarise, summary_of
from booth.words.last_good_words import rehearsed_line
from booth.words.report import jobs_table
from tests.log.logs import PROFILE, caught, closed, moment, opened, quantity, write

EARLY, LATE = "20250614-1200-demo-0001", "20250615-1506-demo-0002"
SAID = ("Needle out.", "Slower.")


def rehearsal(seconds: float = 0.0, **more: object) -> ev.JobOpened:
    return opened(seconds=seconds, rehearsal=True, **{"job": "rehearsed", **more})


def told(*said: str) -> ev.JobClosed:
    return ev.JobClosed(n=0, at=moment(5000), verdict="", to_change=said)


def test_it_teaches_no_settings_no_lesson_no_times_no_choices(tmp_path: Path) -> None:
    grams = quantity(200, "g")
    everything = (
        ev.CautionAcknowledged(n=0, at=moment(10), caution="pressure", words="Pressure."),
        ev.GunChanged(n=0, at=moment(11), gun="A", tip=quantity(1.8, "mm")),
        ev.Poured(n=0, at=moment(12), batch=1, name="clear", amount=grams, wanted=grams),
        ev.AreaAdded(n=0, at=moment(13), shape="area", area=quantity(1, "m2"), part="hood"),
        caught(300, 2.0, "water"),
        ev.CoatBegun(n=0, at=moment(200), part="hood", coat=1),
        ev.CoatEnded(n=0, at=moment(900), part="hood", coat=1),
    )
    # Whatever somebody may say of it later: it stays what it is.
    last = (*everything, closed("good", next_time="slower"))
    write(tmp_path, LATE, rehearsal(gun="A"), *last)
    key, now = PROFILE.key, moment(6000)
    assert last_good(tmp_path, key) is None and last_lesson(tmp_path, key) is None
    assert not coat_times(tmp_path) and not acknowledged(tmp_path, key, now)
    assert weighed_last(tmp_path) is None and tip_last(tmp_path, "A") is None
    # The same as a job: all of these learn from it.
    write(tmp_path, LATE, opened(gun="A"), *last)
    assert last_good(tmp_path, key) is not None and last_lesson(tmp_path, key) is not None
    assert acknowledged(tmp_path, key, now) and weighed_last(tmp_path) is not None
    assert tip_last(tmp_path, "A") is not None


def test_its_catches_of_water_are_kept_as_learnt(tmp_path: Path) -> None:
    write(tmp_path, EARLY, rehearsal(gun="A"), caught(300, 2.0, "water"), told())
    (pair,) = PastJobs(tmp_path).pairs("A", 1.4, "another product")
    assert (pair.turns, pair.delivery_ml_min, pair.liquid) == (2.0, 300, "water")


def test_it_is_listed_as_one_and_has_no_verdict(tmp_path: Path) -> None:
    path = write(tmp_path, LATE, rehearsal(), told(*SAID))
    found = summarise(path)
    assert found == summary_of(path, log_bytes(path))
    assert found.rehearsal and not found.is_open and found.verdict == ""
    assert found.profile_name == "Rehearsal: Demo clear, two-pack"
    table = jobs_table([found], lambda _: "then")
    assert "closed" in table and "Rehearsal: Demo clear" in table
    assert not summarise(write(tmp_path, EARLY, opened(), closed())).rehearsal


def test_the_last_job_is_none_of_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    import sys

    path = write(tmp_path, EARLY, opened(seconds=-9e4), closed())
    write(tmp_path, LATE, rehearsal(), told())
    last = _last(tmp_path, sys.stderr, None)
    assert last is not None and last.path == path and len(history(tmp_path)) == 2


def test_an_open_one_is_offered_where_it_is_asked_for_only(tmp_path: Path) -> None:
    write(tmp_path, EARLY, rehearsal())
    jobs = OpenJobs(tmp_path, "boot 1")
    jobs.look()
    assert not jobs.open_jobs_with(PROFILE.key)
    (found,) = jobs.open_jobs_with(f"rehearsal:{PROFILE.key}")
    assert found.job.opened.rehearsal


# -- what it says to the job that follows ------------------------------------------------------


def test_the_job_that_follows_is_told_what_to_change(tmp_path: Path) -> None:
    write(tmp_path, EARLY, opened(seconds=-9e5), closed())
    write(tmp_path, LATE, rehearsal(gun="A"), told(*SAID))
    for gun in ("A", ""):
        found = last_rehearsal(tmp_path, PROFILE.key, gun)
        assert found is not None and found.closed is not None and found.closed.to_change == SAID
    assert last_rehearsal(tmp_path, PROFILE.key, "B") is None, "another gun"
    assert last_rehearsal(tmp_path, "another product") is None
    assert last_rehearsal(None, PROFILE.key) is None
    assert found is not None
    assert rehearsed_line(found, "2025-06-15") == (
        "Rehearsed with water 2025-06-15, to change first: Needle out. (1 more: read it among past "
        "jobs)"
    )


def test_a_job_since_is_the_newer_lesson_but_not_the_one_at_hand(tmp_path: Path) -> None:
    write(tmp_path, EARLY, rehearsal(), told(*SAID))
    write(tmp_path, LATE, opened(job="at hand"))
    assert last_rehearsal(tmp_path, PROFILE.key) is None
    assert last_rehearsal(tmp_path, PROFILE.key, without="at hand") is not None


def test_one_that_was_not_closed_says_nothing_yet(tmp_path: Path) -> None:
    write(tmp_path, EARLY, rehearsal())
    assert last_rehearsal(tmp_path, PROFILE.key) is None


def test_where_nothing_was_to_change_that_is_said(tmp_path: Path) -> None:
    write(tmp_path, EARLY, rehearsal(), told())
    found = last_rehearsal(tmp_path, PROFILE.key)
    assert found is not None
    said = rehearsed_line(found, "2025-06-15")
    assert said == "Rehearsed with water 2025-06-15: nothing that was measured asked for a change."


def test_of_a_system_each_product_is_asked_for_by_itself(tmp_path: Path) -> None:
    second = msgspec.structs.replace(PROFILE, key="second", name="Second")
    begun = ev.ProductBegun(n=0, at=moment(60), product=2)
    write(tmp_path, EARLY, rehearsal(later=(second,)), begun, told(*SAID))
    for key in (PROFILE.key, "second"):
        found = last_rehearsal(tmp_path, key)
        assert found is not None and found.profile.key == key
        assert rehearsed_line(found, "today").startswith(
            "Rehearsed with water today, to change first"
        )
