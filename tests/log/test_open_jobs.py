"""The jobs that are open: held here, left, found on disk; what rings, and who may write."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
import pytest

from booth.log import events as ev
from booth.log import found_jobs as module
from booth.log.errors import LogBusy, NotKept
from booth.log.fold import NoJob, fold
from booth.log.open_jobs import OpenJobs
from booth.log.session import Session
from booth.log.store import open_log, read_log
from booth.moment import Moment
from tests.log.logs import PROFILE, closed, moment, note, opened, write

BOOT = moment().boot
SILENCED = ev.AlarmAcknowledged(n=0, at=moment(900), alarm="coat:3:ready")


@pytest.fixture
def jobs(tmp_path: Path) -> OpenJobs:
    return OpenJobs(tmp_path, BOOT)


def coated(folder: Path, name: str, seconds: float = 0, boot: str = BOOT, **more: object) -> Path:
    """An open job with a coat that ended."""
    at = msgspec.structs.replace(moment(seconds + 400), boot=boot)
    first = msgspec.structs.replace(opened(seconds=seconds, **{"job": name, **more}), at=at)
    begun = ev.CoatBegun(n=0, at=at, part="hood", coat=1)
    return write(folder, name, first, begun, ev.CoatEnded(n=0, at=at, part="hood", coat=1))


def paths(jobs: OpenJobs) -> list[Path]:
    return [each.path for each in jobs.jobs()]


def test_what_is_found_on_disk_is_listed_without_its_lock(jobs: OpenJobs, tmp_path: Path) -> None:
    old = coated(tmp_path, "20250601-1200-demo-0001", seconds=-9e5)
    new = coated(tmp_path, "20250615-1506-demo-0002")
    write(tmp_path, "20250610-1200-demo-0003", opened(), closed())
    (tmp_path / "junk.jsonl").write_bytes(b"junk\n")
    assert jobs.jobs() == () and jobs.found.unread == ()
    jobs.look()
    assert paths(jobs) == [new, old]
    assert [each.name for each in jobs.jobs()] == ["demo-0002", "demo-0001"]
    assert all(each.session is None and each.rings for each in jobs.jobs())
    assert jobs.jobs()[0].job == fold(read_log(new).events)
    (unread,) = jobs.found.unread
    assert unread.path.name == "junk.jsonl" and unread.fault
    # Another booth can take any of them up.
    for path in (old, new):
        open_log(path).close()


def test_a_job_that_was_not_written_to_since_this_start_is_listed_but_does_not_ring(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    here = coated(tmp_path, "a-0001")
    there = coated(tmp_path, "b-0002", boot="another machine")
    jobs.look()
    assert {each.path: each.rings for each in jobs.jobs()} == {here: True, there: False}
    # Taken up here, it is this booth's.
    jobs.take_up(there)
    assert jobs.jobs()[0].path == there and jobs.jobs()[0].rings


def test_only_files_that_changed_are_read_again(
    jobs: OpenJobs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one, two = coated(tmp_path, "a-0001"), coated(tmp_path, "b-0002")
    jobs.look()
    read: list[Path] = []
    log_bytes = module.log_bytes

    def noted(path: Path) -> bytes:
        read.append(path)
        return log_bytes(path)

    monkeypatch.setattr(module, "log_bytes", noted)
    jobs.look()
    assert read == []
    with open_log(two) as log:
        log.append(msgspec.structs.replace(SILENCED, n=4))
    jobs.look()
    assert read == [two]
    assert {each.path: len(each.job.events) for each in jobs.jobs()} == {one: 3, two: 4}
    with open_log(one) as log:
        log.append(msgspec.structs.replace(closed(), n=4))
    jobs.look()
    assert paths(jobs) == [two]
    two.unlink()
    jobs.look()
    assert paths(jobs) == []


def test_the_one_on_the_bench_comes_first_and_is_locked(jobs: OpenJobs, tmp_path: Path) -> None:
    begun = jobs.begin(opened())
    found = coated(tmp_path, "a-0001")
    jobs.look()
    assert jobs.current is begun
    assert paths(jobs) == [begun.log.path, found]
    taken = jobs.take_up(found)
    assert jobs.current is taken and jobs.sessions == (taken, begun)
    assert [each.session for each in jobs.jobs()] == [taken, begun]
    for path in (found, begun.log.path):
        with pytest.raises(LogBusy):
            open_log(path)
    # Back again: the session that was left, not another.
    assert jobs.take_up(begun.log.path) is begun
    assert jobs.sessions == (begun, taken)
    assert jobs.take_up(begun.log.path) is begun
    jobs.close()
    assert jobs.sessions == ()
    for path in (found, begun.log.path):
        open_log(path).close()


def test_a_job_left_open_is_kept_and_a_closed_one_is_let_go(jobs: OpenJobs) -> None:
    session = jobs.begin(opened())
    jobs.leave()
    jobs.leave()
    assert jobs.current is None and jobs.sessions == (session,)
    jobs.take_up(session.log.path)
    session.record(closed())
    assert jobs.jobs() == ()
    jobs.leave()
    assert jobs.sessions == ()
    open_log(session.log.path).close()


def test_a_job_found_open_and_closed_here_is_open_no_more(jobs: OpenJobs, tmp_path: Path) -> None:
    path = coated(tmp_path, "a-0001")
    jobs.look()
    jobs.take_up(path).record(closed())
    jobs.leave()
    assert jobs.jobs() == ()
    jobs.look()
    assert jobs.jobs() == ()


def test_a_job_that_is_open_elsewhere_is_refused_and_the_bench_stays(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    here = jobs.begin(opened())
    there = coated(tmp_path, "a-0001")
    with open_log(there):
        with pytest.raises(LogBusy):
            jobs.take_up(there)
        with pytest.raises(LogBusy):
            jobs.take_up(there, moment())
    (tmp_path / "junk.jsonl").write_bytes(b"junk\n")
    with pytest.raises(NoJob):
        jobs.take_up(tmp_path / "junk.jsonl")
    with pytest.raises(NotKept):
        jobs.take_up(tmp_path / "none.jsonl")
    assert jobs.current is here and jobs.sessions == (here,)
    assert jobs.take_up(there).log.path == there


def test_a_closed_job_is_reopened_by_voiding_its_closings(
    jobs: OpenJobs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = write(tmp_path, "a-0001", opened(), closed(), closed("redo"))

    def refuse(self: Session, event: ev.Event) -> ev.Event:
        raise NotKept("full")

    with monkeypatch.context() as patched:
        patched.setattr(Session, "record", refuse)
        with pytest.raises(NotKept):
            jobs.take_up(path, moment())
    open_log(path).close()  # let go of, not held in the dark
    session = jobs.take_up(path, moment(9000))
    assert jobs.current is session and session.job.closed is None
    assert [each.target for each in session.job.of(ev.Voided)] == [3, 2]


# -- what rings ------------------------------------------------------------------------------------


def test_an_alarm_is_silenced_in_the_log_of_its_job_wherever_that_is(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    current, kept = jobs.begin(opened()), coated(tmp_path, "a-0001")
    jobs.take_up(kept)
    jobs.take_up(current.log.path)
    found = coated(tmp_path, "b-0002")
    jobs.look()
    for path in (current.log.path, kept, found):
        assert jobs.acknowledge(path, SILENCED)
        assert isinstance(read_log(path).events[-1], ev.AlarmAcknowledged)
    assert all(SILENCED.alarm in each.job.acknowledged for each in jobs.jobs())
    assert [each.session is None for each in jobs.jobs()] == [False, False, True]
    open_log(found).close()  # open for that moment only


def test_what_is_open_elsewhere_rings_there_until_it_no_longer_is(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    path = coated(tmp_path, "a-0001")
    jobs.look()
    with open_log(path):
        assert not jobs.acknowledge(path, SILENCED)
        assert [each.rings for each in jobs.jobs()] == [False]
        jobs.look()
        assert [each.rings for each in jobs.jobs()] == [False]
    jobs.look()
    assert [each.rings for each in jobs.jobs()] == [True]
    assert jobs.acknowledge(path, SILENCED)


def test_a_log_that_may_only_be_read_can_still_be_silenced_here(
    jobs: OpenJobs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = coated(tmp_path, "a-0001")
    jobs.look()

    def read_only(path: Path, *more: int) -> int:
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as patched:
        patched.setattr(os, "open", read_only)
        assert not jobs.acknowledge(path, SILENCED)
        jobs.look()
        assert [each.rings for each in jobs.jobs()] == [False]


def test_what_cannot_be_kept_is_said(
    jobs: OpenJobs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = coated(tmp_path, "a-0001")
    jobs.look()

    def full(self: Session, event: ev.Event) -> ev.Event:
        raise NotKept("The disk is full.")

    with monkeypatch.context() as patched:
        patched.setattr(Session, "record", full)
        with pytest.raises(NotKept, match="full"):
            jobs.acknowledge(path, SILENCED)
    assert jobs.jobs()[0].rings
    open_log(path).close()


def test_what_was_set_aside_meanwhile_is_told_when_the_job_is_taken_up(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    path = coated(tmp_path, "a-0001")
    with path.open("ab") as file:
        file.write(b'{"n":4,"torn')
    jobs.look()
    assert jobs.acknowledge(path, SILENCED)
    session = jobs.take_up(path)
    news = session.news()
    assert any("cut off" in each for each in news) and any("set aside" in each for each in news)
    jobs.leave()
    assert jobs.take_up(path).news() == (), "told once"


def test_silencing_while_the_folder_is_read_is_not_forgotten(
    jobs: OpenJobs, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = coated(tmp_path, "a-0001")
    monkeypatch.setattr(module, "_stamp", lambda path: (0,))
    jobs.look()

    def meanwhile(folder: Path) -> list[Path]:
        assert jobs.acknowledge(path, SILENCED)
        return [path]

    # What another thread may do while this one reads.
    monkeypatch.setattr(module, "log_files", meanwhile)
    jobs.look()
    assert SILENCED.alarm in jobs.jobs()[0].job.acknowledged


# -- a file that something else changed ------------------------------------------------------------


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be replaced there")
@pytest.mark.parametrize("how", ["replaced", "shortened", "put back", "emptied"])
def test_leave_the_job_and_open_it_again_is_true(jobs: OpenJobs, how: str) -> None:
    session = jobs.begin(opened())
    session.record(note(0, "two"))
    path = session.log.path
    whole = path.read_bytes()
    first = whole.index(b"\n") + 1
    if how == "replaced":
        path.with_name("copy").write_bytes(whole[:first])
        path.with_name("copy").replace(path)
    elif how == "shortened":
        os.truncate(path, first)
    else:
        path.unlink()
        if how == "put back":
            path.write_bytes(whole)
        else:
            path.write_bytes(b"")
    jobs.leave()
    if how == "emptied":
        with pytest.raises(NoJob, match="set aside"):
            jobs.take_up(path)
        path.write_bytes(whole)
    fresh = jobs.take_up(path)
    assert fresh is jobs.current and jobs.sessions == (fresh,) and fresh is not session
    fresh.record(note(0, "after"))
    kept = ["after"] if how in ("replaced", "shortened") else ["two", "after"]
    assert [each.text for each in fresh.job.notes] == kept
    assert fresh.job == fold(read_log(path).events)
    assert bool([each for each in fresh.news() if "set aside" in each]) is (
        how in ("replaced", "shortened")
    )


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be taken away there")
def test_a_kept_job_whose_file_is_gone_is_taken_up_when_it_is_back(jobs: OpenJobs) -> None:
    session = jobs.begin(opened())
    path = session.log.path
    jobs.leave()
    away = path.rename(path.with_name("away"))
    for _ in range(2):
        with pytest.raises(NotKept, match="is gone"):
            jobs.take_up(path)
    assert len(jobs.jobs()) == 1
    away.rename(path)
    assert jobs.take_up(path).record(note(0)).n == 2
    assert len(jobs.sessions) == 1


# -- the job of one profile ------------------------------------------------------------------------


def test_the_open_jobs_of_a_profile_the_last_written_to_first(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    other = msgspec.structs.replace(PROFILE, key="other")
    one = coated(tmp_path, "20250601-1200-demo-0001", seconds=-500)
    two = coated(tmp_path, "20250601-1200-demo-0002", seconds=-900)
    coated(tmp_path, "20250601-1200-other-0003", profile=other)
    write(tmp_path, "20250601-1200-demo-0004", opened(), closed())
    jobs.look()
    assert [each.path for each in jobs.open_jobs_with(PROFILE.key)] == [one, two]
    jobs.take_up(two).record(msgspec.structs.replace(note(0), at=Moment(2e9, 5000, BOOT)))
    assert [each.path for each in jobs.open_jobs_with(PROFILE.key)] == [two, one]
    assert jobs.open_jobs_with("none") == ()


def test_an_entry_is_kept_in_a_job_open_or_closed_without_taking_it_up(
    jobs: OpenJobs, tmp_path: Path
) -> None:
    over = write(tmp_path, "20250615-1506-demo-0001", opened(), closed())
    left = coated(tmp_path, "20250615-1507-demo-0002")
    held = jobs.take_up(left)
    jobs.leave()
    for path in (over, left):
        jobs.keep(path, note(0))
        assert isinstance(read_log(path).events[-1], ev.NoteMade)
    assert fold(read_log(over).events).closed is not None and jobs.current is None
    # The closed one was let go of; the one left open in this run is held as before.
    open_log(over).close()
    assert held.job.notes and jobs.sessions == (held,)
    jobs.close()
    other = open_log(left)
    with pytest.raises(LogBusy):
        jobs.keep(left, note(0))
    other.close()
