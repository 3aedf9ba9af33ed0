"""A job and its log move together or not at all, when the file is changed too."""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import msgspec
import pytest

from booth.log import codec, log_file
from booth.log import events as ev
from booth.log.errors import LogBusy, NotKept
from booth.log.fold import NoJob, fold
from booth.log.session import Session
from booth.log.store import open_log, read_log
from tests.log.logs import closed, moment, note, opened

ROOT = Path(__file__).parents[2]


@pytest.fixture
def session(tmp_path: Path) -> Session:
    """A job of three entries."""
    session = Session.begin(tmp_path / "jobs", opened())
    session.record(note(0, "two"))
    session.record(note(0, "three"))
    return session


def numbers(path: Path) -> list[int]:
    return [event.n for event in read_log(path).events]


def texts(session: Session) -> list[str]:
    return [each.text for each in session.job.notes]


def test_an_entry_is_on_the_disk_and_in_the_job(session: Session) -> None:
    kept = session.record(note(0, "four"))
    assert kept == msgspec.structs.replace(note(0, "four"), n=4)
    assert read_log(session.log.path).events[-1] == kept
    assert texts(session) == ["two", "three", "four"]
    assert session.job == fold(read_log(session.log.path).events)


def test_what_cannot_be_written_down_is_refused(session: Session) -> None:
    with pytest.raises(NotKept, match="cannot be written down"):
        session.record(note(0, "\ud800"))
    session.record(note(0, "four"))
    assert texts(session)[-1] == "four"


def test_a_failed_write_leaves_job_and_file_as_they_were(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, job = session.log.path.read_bytes(), session.job
    for call in ("write", "fsync"):

        def full(*args: object) -> int:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

        with monkeypatch.context() as patched:
            patched.setattr(os, call, full)
            with pytest.raises(NotKept, match="the disk is full"):
                session.record(note(0, "lost"))
        assert session.log.path.read_bytes() == before and session.job is job
    session.record(note(0, "kept"))
    assert texts(session) == ["two", "three", "kept"]
    assert numbers(session.log.path) == [1, 2, 3, 4]


# -- a file that something else changed ------------------------------------------------------------


def copied(path: Path) -> None:
    """What a tool that keeps folders the same does, or an editor that saves."""
    beside = path.with_name("copy")
    shutil.copyfile(path, beside)
    beside.replace(path)


def put_back(path: Path) -> None:
    data = path.read_bytes()
    path.unlink()
    path.write_bytes(data)


def merged(path: Path) -> None:
    """Another booth, on another machine, added an entry to its copy, which came here."""
    more = codec.encode(msgspec.structs.replace(note(0, "theirs"), n=4))
    path.with_name("copy").write_bytes(path.read_bytes() + more)
    path.with_name("copy").replace(path)


def without_a_last_line_end(path: Path) -> None:
    os.truncate(path, path.stat().st_size - 1)


def torn_too(path: Path) -> None:
    path.with_name("copy").write_bytes(path.read_bytes() + b'{"event":"no')
    path.with_name("copy").replace(path)


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be replaced there")
@pytest.mark.parametrize("change", [copied, put_back, merged, without_a_last_line_end, torn_too])
def test_where_the_file_holds_all_that_was_kept_the_job_goes_on_in_it(
    session: Session, change: Callable[[Path], None]
) -> None:
    change(session.log.path)
    kept = session.record(note(0, "after"))
    session.record(note(0, "and on"))
    theirs = ["theirs"] if change is merged else []
    assert texts(session) == ["two", "three", *theirs, "after", "and on"]
    assert kept.n == 4 + len(theirs)
    assert session.job == fold(read_log(session.log.path).events)
    assert read_log(session.log.path).said == []
    with pytest.raises(LogBusy):
        open_log(session.log.path)
    assert any("set aside" in each for each in session.news()) is (change is torn_too)
    assert session.news() == ()


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be replaced there")
def test_a_copy_in_another_order_and_with_numbers_written_otherwise_is_the_same(
    session: Session,
) -> None:
    session.record(ev.CoatBegun(n=0, at=moment(9), part="hood", coat=1, early_s=90))
    session.record(ev.PatternRead(n=0, at=moment(9), shape="even", zones=[1, 2]))  # type: ignore[arg-type]
    path = session.log.path
    first, *others = path.read_bytes().splitlines(keepends=True)
    path.with_name("copy").write_bytes(first + b"".join(reversed(others)))
    path.with_name("copy").replace(path)
    assert session.record(note(0, "after")).n == 6
    assert session.job == fold(read_log(path).events)


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be taken away there")
def test_a_log_that_is_gone_is_gone_on_with_when_it_is_put_back(session: Session) -> None:
    path = session.log.path
    away = path.rename(path.with_name("away"))
    job = session.job
    for _ in range(2):
        with pytest.raises(NotKept, match=r"This entry is NOT kept.*is gone.*Put it back") as said:
            session.record(note(0, "lost"))
        assert "on paper" in str(said.value)
    assert session.job is job and not path.exists()
    away.rename(path)
    session.record(note(0, "kept"))
    assert texts(session) == ["two", "three", "kept"] and numbers(path) == [1, 2, 3, 4]


@pytest.mark.parametrize("left", [0, 10, "one line"])
def test_a_log_that_lost_entries_keeps_nothing_and_says_what_to_do(
    session: Session, left: int | str
) -> None:
    path = session.log.path
    whole = path.read_bytes()
    os.truncate(path, whole.index(b"\n") + 1 if left == "one line" else int(left))
    job = session.job
    lost = 2 if left == "one line" else 3
    for _ in range(2):
        with pytest.raises(NotKept) as said:
            session.record(note(0, "refused"))
        assert f"{lost} of 3 entries that were kept are no longer in it" in str(said.value)
        assert "leave the job and open it again" in str(said.value)
    assert session.job is job
    # The first way that the sentence shows: put the whole file back.
    path.write_bytes(whole)
    session.record(note(0, "kept"))
    assert texts(session) == ["two", "three", "kept"]


def test_the_other_way_that_the_sentence_shows_goes_on_and_sets_the_rest_aside(
    session: Session,
) -> None:
    path = session.log.path
    lines = path.read_bytes().splitlines(keepends=True)
    os.truncate(path, len(lines[0]))
    fresh = session.renewed()
    assert texts(fresh) == []
    (told,) = fresh.news()
    beside = path.with_name(path.stem + ".torn-1")
    assert told.endswith(f"set aside in {beside.name}.") and told.startswith("2 entries")
    assert beside.read_bytes() == b"".join(lines[1:])
    fresh.record(note(0, "on"))
    assert numbers(path) == [1, 2]


def test_an_emptied_log_is_no_job_but_what_was_kept_is_set_aside(session: Session) -> None:
    path = session.log.path
    whole = path.read_bytes()
    os.truncate(path, 0)
    with pytest.raises(NoJob, match=r"3 entries.* set aside in .*\.torn-1\."):
        session.renewed()
    assert path.with_name(path.stem + ".torn-1").read_bytes() == whole


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be replaced there")
def test_a_replaced_log_that_another_booth_opened_says_so(session: Session) -> None:
    copied(session.log.path)
    with (
        open_log(session.log.path),
        pytest.raises(NotKept, match="another booth has the new one open"),
    ):
        session.record(note(0, "lost"))
    session.record(note(0, "kept"))
    assert texts(session)[-1] == "kept"


@pytest.mark.skipif(os.name == "nt", reason="an open file cannot be replaced there")
def test_a_full_disk_after_the_reopening_loses_neither_theirs_nor_ours(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    merged(session.log.path)

    def full(fd: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patched:
        patched.setattr(log_file, "sync", full)
        with pytest.raises(NotKept, match="the disk is full"):
            session.record(note(0, "lost"))
    session.record(note(0, "kept"))
    assert texts(session) == ["two", "three", "theirs", "kept"]
    assert numbers(session.log.path) == [1, 2, 3, 4, 5]


def test_a_closed_session_stays_closed(session: Session) -> None:
    session.close()
    with pytest.raises(NotKept, match="closed"):
        session.record(note(0, "lost"))
    with open_log(session.log.path) as log:
        assert log.content.said == []


def test_reopening_voids_every_closing(session: Session) -> None:
    for verdict in ("good", "redo"):
        session.record(closed(verdict))
    session.reopen(opened().at)
    assert session.job.closed is None and len(session.job.of(ev.Voided)) == 2
