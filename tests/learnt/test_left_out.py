"""A year of invented logs on the disk: what is read of it, jobs left out, rehearsals; all in one place."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from msgspec.structs import replace

from booth.job.past import acknowledged, last_good, last_lesson
from booth.learnt import reading
from booth.learnt.past_jobs import PastJobs
from booth.learnt.subjects import SUBJECTS
from booth.log import events as ev
from booth.log.codec import encode
from booth.log.session import Session
from booth.moment import later
from tests.invented_year import GUNS, PRODUCT, Kind, Truth, events_of, through_session, write_year

KEY = PRODUCT.key


def append(path: Path, *events: ev.Event) -> None:
    """Keep entries behind what a log holds, through the program's own Session."""
    session = Session.resume(path)
    for each in events:
        session.record(replace(each, n=0))
    session.close()


@pytest.fixture(scope="module")
def year(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("year")
    write_year(folder, jobs=60)
    return folder


def test_a_year_teaches_every_subject_with_its_count(year: Path) -> None:
    found = PastJobs(year).all_learnt()
    assert {each.subject for each in found} == {each.key for each in SUBJECTS}
    by_group = {(each.subject, *each.group): each for each in found}
    # Of 60 jobs every tenth is a rehearsal, which never counts as a job.
    assert len(by_group["waits", KEY].observations) == 54
    assert len(by_group["coats",].observations) == 54 and by_group["coats",].readings == 4 * 54
    assert not any(each.rehearsal for each in by_group["waits", KEY].observations)
    own = by_group["pace", GUNS[1], KEY].observations
    assert len(own) == 30 and sum(each.rehearsal for each in own) == 6


def test_a_job_left_out_changes_what_is_learnt_and_comes_back(tmp_path: Path) -> None:
    truth = Truth(recovery_s=60.0)
    drawn = random.Random(2)
    paths = [through_session(tmp_path, events_of(truth, drawn, day)) for day in range(3)]
    odd = through_session(tmp_path, events_of(Truth(recovery_s=600.0), drawn, 3))
    group = ("50", "600", "800")

    def fills() -> tuple[int, float | None]:
        found = PastJobs(tmp_path).learnt("recovery", group)
        assert found is not None
        return len(found.observations), found.high

    count, high = fills()
    assert count == 4 and high is not None and high > 300
    at = later(events_of(truth, drawn)[-1].at, 9e6)
    append(odd, ev.LeftOut(n=0, at=at, reason="a trial"))
    count, high = fills()
    assert count == 3 and high is not None and high < 100
    found = PastJobs(tmp_path).learnt("recovery", group)
    assert found is not None and [why for _, why in found.without] == ["a trial"]
    append(odd, ev.TakenIn(n=0, at=at))
    assert fills()[0] == 4
    # The closing stays where it was, and the log is one that reads well.
    assert b'"job closed"' in odd.read_bytes() and len(paths) == 3


def test_what_was_left_out_is_no_last_good_one_either(tmp_path: Path) -> None:
    drawn = random.Random(3)
    first = events_of(Truth(), drawn, 0)
    second = events_of(Truth(), drawn, 1)
    second[-1] = replace(second[-1], next_time="less thinner")
    through_session(tmp_path, first)
    path = through_session(tmp_path, second)
    latest = last_good(tmp_path, KEY)
    assert latest is not None and latest.opened.wall == second[0].at.wall
    assert last_lesson(tmp_path, KEY) is not None
    append(path, ev.LeftOut(n=0, at=second[-1].at, reason="a trial"))
    latest = last_good(tmp_path, KEY)
    assert latest is not None and latest.opened.wall == first[0].at.wall
    assert last_lesson(tmp_path, KEY) is None


def test_a_voided_leaving_out_leaves_nothing_out(tmp_path: Path) -> None:
    events = events_of(Truth(), random.Random(3))
    path = through_session(tmp_path, events)
    out = ev.LeftOut(n=0, at=events[-1].at, reason="a trial")
    append(path, out, ev.Voided(n=0, at=events[-1].at, target=len(events) + 1))
    assert last_good(tmp_path, KEY) is not None


def test_a_rehearsal_is_no_job_but_its_water_is_water(tmp_path: Path) -> None:
    drawn, rehearsed = random.Random(5), Kind(GUNS[0], rehearsal=True)
    events = events_of(Truth(), drawn, 0, rehearsed)
    read = ev.CautionAcknowledged(n=0, at=events[0].at, caution="isocyanate", words="Air-fed mask.")
    events[-1:-1] = [read]
    events[-1] = replace(events[-1], next_time="slower")
    through_session(tmp_path, events)
    past = PastJobs(tmp_path)
    assert last_good(tmp_path, KEY) is None and last_lesson(tmp_path, KEY) is None
    assert acknowledged(tmp_path, KEY, events[0].at) == {}
    assert past.coat_times() == () and past.weighed_last() is None
    assert [each.liquid for each in past.pairs()] == ["water"]
    # The hand is the same with water.
    (pace,) = past.all_learnt()
    assert pace.subject == "pace" and pace.observations[0].rehearsal
    # A job that caught the coating at that setting, and no water, is held against the rehearsal's.
    job = [e for e in events_of(Truth(), drawn, 1) if not _is_water(e)]
    through_session(tmp_path, job)
    (ratio,) = PastJobs(tmp_path).reading.observations("water")
    assert ratio.told == ("water of a rehearsal",) and not ratio.rehearsal
    assert 0.5 < ratio.low < 1.0


def _is_water(event: ev.Event) -> bool:
    return isinstance(event, ev.CatchMade) and event.liquid == "water"


def test_the_job_at_hand_does_not_teach_itself(year: Path) -> None:
    past = PastJobs(year)
    every, others = past.learnt("waits", (KEY,)), past.learnt("waits", (KEY,), without="job-003")
    assert every is not None and others is not None
    assert len(every.observations) == len(others.observations) + 1


def test_catches_of_another_viscosity_are_marked_and_do_not_count(year: Path) -> None:
    past, group = PastJobs(year), (GUNS[0], "1.4", KEY, "2")
    alike = past.learnt("delivery", group)
    assert alike is not None
    seconds = sorted(each.cup_s or 0.0 for each in alike.observations)
    cup = alike.observations[0].cup
    thick = past.learnt("delivery", group, cup=cup, cup_s=2 * seconds[-1])
    assert thick is not None and not thick.observations
    assert {why for _, why in thick.without} == {"another viscosity"}


def test_a_log_is_read_when_it_is_asked_for_and_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_year(tmp_path, jobs=4)
    asked: list[tuple[str, ...]] = []
    real = reading.read
    monkeypatch.setattr(reading, "read", lambda f, s: asked.append(tuple(s)) or real(f, s))
    past = PastJobs(tmp_path)
    assert asked == []
    past.learnt("waits", (KEY,))
    past.learnt("waits", ("other",))
    past.pairs()
    past.pairs("grey gun")
    past.all_learnt()
    past.all_learnt()
    assert asked == [("waits",), ("catches",), ("lands", "coats", "thinner", "pace", "recovery")]


def test_logs_that_hold_nothing_of_it_are_not_read_in_full(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_year(tmp_path, jobs=3)
    bare = [each for each in events_of(Truth(), random.Random(1), 9) if "touch" not in _tag(each)]
    (tmp_path / "20250110-1000-bare-0001.jsonl").write_bytes(b"".join(map(encode, bare)))
    folded: list[str] = []
    real = reading.PastLog.products
    monkeypatch.setattr(
        reading.PastLog, "products", lambda log: folded.append(log.path.name) or real(log)
    )
    PastJobs(tmp_path).learnt("waits", (KEY,))
    assert len(folded) == 3 and not any("bare" in name for name in folded)


def _tag(event: ev.Event) -> str:
    return str(type(event).__struct_config__.tag)


def test_enough_jobs_are_enough(year: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reading, "ENOUGH_JOBS", 5)
    found = PastJobs(year).learnt("waits", (KEY,))
    assert found is not None and len(found.observations) == 5
    assert max(each.at.wall for each in found.observations) == found.observations[0].at.wall


def test_no_folder_and_an_unreadable_log_teach_nothing(tmp_path: Path) -> None:
    assert PastJobs().all_learnt() == () and PastJobs(tmp_path / "gone").all_learnt() == ()
    (tmp_path / "20250110-1000-odd-0001.jsonl").write_bytes(b'{"touch tried" "catch made"\n\x00')
    assert PastJobs(tmp_path).all_learnt() == ()
