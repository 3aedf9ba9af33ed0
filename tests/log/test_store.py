"""Logs on the disk: kept before it is said, refused in sentences, mended, never glued."""

from __future__ import annotations

import errno
import os
import re
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.files import atomic
from booth.log import codec, lock, log_file
from booth.log import events as ev
from booth.log.history import history
from booth.log.naming import new_stems
from booth.log.store import LogBusy, NotKept, create_log, log_files, open_log, read_log
from booth.moment import Moment
from booth.profile.model import Film, Profile, Range
from tests.log.logs import moment, note, opened, some_events


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """A log of three entries, closed."""
    with create_log(tmp_path, opened()) as log:
        log.append(note(2))
        log.append(note(3))
        return log.path


def numbers(path: Path) -> list[int]:
    return [event.n for event in read_log(path).events]


def test_a_log_is_made_in_a_new_folder_by_date_and_profile(tmp_path: Path) -> None:
    folder = tmp_path / "a" / "b"
    with create_log(folder, opened()) as log:
        # `date -u -d @1750000000` says 2025-06-15 15:06:40
        assert log.path.name.startswith("20250615-1506-demo-clear-two-pack-")
        assert log.path.suffix == ".jsonl"
        assert len(log.path.stem.rpartition("-")[2]) == 4
        assert log.content.events == [opened()]
        assert log.said == []
        assert read_log(log.path).events == [opened()]  # on the disk already
    with create_log(folder, opened()) as second:
        assert second.path != log.path
    assert sorted(log_files(folder)) == sorted([log.path, second.path])


@pytest.mark.parametrize("name", ["../../up", "\x1b[2J", "a" * 400, "Ärger/\\:*?", "漆", "con"])
def test_no_profile_name_leaves_the_folder(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "jobs"
    profile = Profile(key="k", name=name, source="invented", film=Film(coats=Range(1, 1)))
    with create_log(folder, opened(profile=profile)) as log:
        assert log.path.parent == folder
        assert log.path.name.isascii() and len(log.path.name) < 80
        assert read_log(log.path).events[0].profile.name == name  # type: ignore[union-attr]


@pytest.mark.parametrize("name", ["", "a" * 500])
def test_nor_does_one_that_no_profile_can_have(tmp_path: Path, name: str) -> None:
    assert re.fullmatch(r"[a-z0-9-]{1,80}", next(new_stems(moment(0), name, [])))
    profile = Profile(key="k", name=name, source="invented", film=Film(coats=Range(1, 1)))
    with pytest.raises(NotKept, match=r"The job cannot be begun: profile\.name: found"):
        create_log(tmp_path / "jobs", opened(profile=profile))
    assert not (tmp_path / "jobs").exists()


def test_a_clock_gone_wild_still_gives_a_name(tmp_path: Path) -> None:
    wild = opened()
    wild = msgspec.structs.replace(wild, at=Moment(1e300, 0, "b"))
    with create_log(tmp_path, wild) as log:
        assert log.path.name.startswith("00000000-0000-")


def test_going_on_adds_to_what_is_there(path: Path) -> None:
    with open_log(path) as log:
        assert [event.n for event in log.content.events] == [1, 2, 3]
        log.append(note(4))
    assert numbers(path) == [1, 2, 3, 4]
    assert path.read_bytes().count(b"\n") == 4


@settings(max_examples=40, deadline=None)
@given(st.lists(some_events, max_size=6))
def test_what_is_appended_reads_back_equal(events: list[ev.Event]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        events = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2)]
        with create_log(Path(folder), opened()) as log:
            for event in events:
                log.append(event)
            assert read_log(log.path).events == [opened(), *events]


def test_every_append_is_synced_before_it_returns(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    order: list[str] = []
    write, fsync = os.write, os.fsync
    monkeypatch.setattr(os, "write", lambda fd, data: (order.append("write"), write(fd, data))[1])
    monkeypatch.setattr(os, "fsync", lambda fd: (order.append("fsync"), fsync(fd))[1])
    with open_log(path) as log:
        log.append(note(4))
    assert order == ["write", "fsync"]
    order.clear()
    with create_log(path.parent, opened()):
        assert order == ["write", "fsync", "fsync"]  # the file's, then the folder's


def test_cut_at_every_byte_it_is_mended_and_goes_on(path: Path) -> None:
    data = path.read_bytes()
    lines = data.splitlines(keepends=True)
    for length in range(len(data)):
        cut = path.with_name(f"cut-{length}.jsonl")
        cut.write_bytes(data[:length])
        tail = data[:length].rpartition(b"\n")[2]
        complete = bool(tail) and tail + b"\n" in lines
        kept = data[:length].count(b"\n") + complete
        with open_log(cut) as log:
            assert [event.n for event in log.content.events] == [1, 2, 3][:kept]
            log.append(note(9))
        after = cut.read_bytes()
        assert after == b"".join(lines[:kept]) + codec.encode(note(9))
        torn = cut.with_name(f"cut-{length}.torn-1")
        if tail and not complete:
            assert torn.read_bytes() == tail
            assert log.said[-1] == f"What was cut off is set aside in {torn.name}."
        else:
            assert not torn.exists()
            assert log.said == (["The last entry lacked its line end, which is added."] * complete)


def test_nul_bytes_of_a_power_cut_are_mended(path: Path) -> None:
    whole = path.read_bytes()
    path.write_bytes(whole + b"\0" * 1000)
    with open_log(path) as log:
        log.append(note(4))
    assert path.read_bytes() == whole + codec.encode(note(4))
    assert path.with_name(path.stem + ".torn-1").read_bytes() == b"\0" * 1000
    path.write_bytes(whole.rstrip(b"\n") + b"\0" * 50)
    with open_log(path) as log:
        log.append(note(4))
    assert path.read_bytes() == whole + codec.encode(note(4))


def test_a_second_torn_end_does_not_overwrite_the_first(path: Path) -> None:
    for number, tail in enumerate([b'{"event":"no', b'{"eve', b'{"eve'], 1):
        with path.open("ab") as file:
            file.write(tail)
        with open_log(path) as log:
            assert log.content.torn == tail
        beside = sorted(each.name for each in path.parent.glob("*.torn-*"))
        assert beside == [f"{path.stem}.torn-{n}" for n in range(1, min(number, 2) + 1)]
    assert path.with_name(path.stem + ".torn-1").read_bytes() == b'{"event":"no'


def test_reading_changes_nothing_and_needs_no_lock(path: Path) -> None:
    with path.open("ab") as file:
        file.write(b'{"torn')
    before = path.read_bytes()
    with open_log(path):
        mended = path.read_bytes()
        assert read_log(path).torn is None
    path.write_bytes(before)
    assert read_log(path).torn == b'{"torn'
    assert path.read_bytes() == before
    assert mended == before.removesuffix(b'{"torn')


def test_broken_lines_stay_in_place(path: Path) -> None:
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(lines[0] + b"rubbish \xff\x00\n" + b"".join(lines[1:]))
    with open_log(path) as log:
        assert [number for number, _ in log.content.broken] == [2]
        log.append(note(4))
    assert b"rubbish \xff\x00\n" in path.read_bytes()
    assert numbers(path) == [1, 2, 3, 4]


def test_a_second_writer_is_refused_with_a_sentence(path: Path) -> None:
    with open_log(path):
        with pytest.raises(LogBusy, match="is open in another booth") as refused:
            open_log(path)
        assert path.stem in str(refused.value)
        assert numbers(path) == [1, 2, 3]  # reading goes on
    with open_log(path) as log:
        log.append(note(4))


def test_a_new_log_is_locked_too(tmp_path: Path) -> None:
    with create_log(tmp_path, opened()) as log, pytest.raises(LogBusy):
        open_log(log.path)


def test_a_disk_without_locks_is_said(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_locks(fd: int) -> None:
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(lock, "_lock", no_locks)
    with open_log(path) as log:
        assert any("has no locks" in sentence for sentence in log.said)
        log.append(note(4))
    assert numbers(path) == [1, 2, 3, 4]


@contextmanager
def failing(
    monkeypatch: pytest.MonkeyPatch, call: str, number: int, take: int = 0
) -> Iterator[None]:
    """Let `os.<call>` fail with this error number; a write takes `take` bytes first."""
    real = os.write

    def fail(fd: int, *args: object) -> int:
        if call == "write" and take:
            return real(fd, args[0][:take])  # type: ignore[index]
        raise OSError(number, os.strerror(number))

    with monkeypatch.context() as patched:
        patched.setattr(os, call, fail)
        yield


FAULTS = [
    ("write", errno.ENOSPC, 0, "the disk is full"),
    ("write", errno.ENOSPC, 1, "the disk is full"),
    ("write", errno.ENOSPC, 25, "the disk is full"),
    ("write", errno.EIO, 0, "the disk reports a fault"),
    ("write", errno.EROFS, 0, "the disk is write-protected"),
    ("write", errno.EDQUOT, 0, "share of the disk is used up"),
    ("write", errno.ENXIO, 0, "the system says: "),
    ("fsync", errno.EIO, 0, "the disk reports a fault"),
    ("fsync", errno.ENOSPC, 0, "the disk is full"),
]


@pytest.mark.parametrize(("call", "number", "take", "why"), FAULTS)
def test_what_is_not_kept_is_said_and_nothing_of_it_stays(
    path: Path, monkeypatch: pytest.MonkeyPatch, call: str, number: int, take: int, why: str
) -> None:
    before = path.read_bytes()
    with open_log(path) as log:
        for _ in range(2):
            with (
                failing(monkeypatch, call, number, take),
                pytest.raises(NotKept, match="NOT kept") as refused,
            ):
                log.append(note(4, "lost"))
            assert why in str(refused.value) and "enter it again" in str(refused.value)
            assert path.read_bytes() == before
        log.append(note(4, "kept"))
    assert read_log(path).events[3:] == [note(4, "kept")]
    assert read_log(path).said == []


def test_half_a_line_that_cannot_be_cut_off_is_never_glued_to_the_next(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with open_log(path) as log:
        with failing(monkeypatch, "ftruncate", errno.EPERM):
            with failing(monkeypatch, "write", 0, take=20), pytest.raises(NotKept):
                log.append(note(4, "lost"))
            log.append(note(4, "kept"))
            log.append(note(5, "kept too"))
        content = read_log(path)
        assert content.events[3:] == [note(4, "kept"), note(5, "kept too")]
        assert [line for line, _ in content.broken] == [4]


def test_half_a_line_is_cut_off_as_soon_as_that_works(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = path.read_bytes()
    with open_log(path) as log:
        with (
            failing(monkeypatch, "ftruncate", errno.EIO),
            failing(monkeypatch, "write", 0, take=20),
            pytest.raises(NotKept),
        ):
            log.append(note(4, "lost"))
        assert len(path.read_bytes()) == len(before) + 20
        log.append(note(4, "kept"))
    assert path.read_bytes() == before + codec.encode(note(4, "kept"))


def test_a_whole_line_that_was_refused_and_cannot_be_cut_off_stops_the_next(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Were the next one added behind it, an entry that the painter was told is lost would count."""
    before = path.read_bytes()
    with open_log(path) as log:
        with failing(monkeypatch, "ftruncate", errno.EIO):
            with failing(monkeypatch, "fsync", errno.EIO), pytest.raises(NotKept):
                log.append(note(4, "refused"))
            with pytest.raises(NotKept, match="the disk reports a fault"):
                log.append(note(4, "next"))
        log.append(note(4, "next"))
    assert path.read_bytes() == before + codec.encode(note(4, "next"))


def test_an_interrupt_in_the_middle_leaves_nothing(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = path.read_bytes()

    def interrupted(fd: int) -> None:
        raise KeyboardInterrupt

    with open_log(path) as log:
        with monkeypatch.context() as patched:
            patched.setattr(log_file, "sync", interrupted)
            with pytest.raises(KeyboardInterrupt):
                log.append(note(4, "not recorded"))
        assert path.read_bytes() == before
        log.append(note(4, "recorded"))
    assert read_log(path).events[3:] == [note(4, "recorded")]


@pytest.mark.parametrize("added", [b"somebody wrote this", b"somebody wrote this\n"])
def test_what_an_editor_added_meanwhile_is_not_glued_nor_cut(path: Path, added: bytes) -> None:
    with open_log(path) as log:
        with path.open("ab") as file:
            file.write(added)
        log.append(note(4))
        log.append(note(5))
    assert added.strip() in path.read_bytes()
    assert numbers(path) == [1, 2, 3, 4, 5]
    assert [line for line, _ in read_log(path).broken] == [4]


@pytest.mark.parametrize("how", ["deleted", "moved", "replaced", "folder gone"])
def test_a_log_taken_away_while_open_keeps_nothing_and_says_so(path: Path, how: str) -> None:
    if os.name == "nt":
        pytest.skip("an open file cannot be taken away there")
    with open_log(path) as log:
        if how == "deleted":
            path.unlink()
        elif how == "replaced":
            other = path.with_name("other")
            other.write_bytes(path.read_bytes())
            other.replace(path)
        elif how == "moved":
            path.rename(path.with_name("elsewhere.jsonl"))
        else:
            path.parent.rename(path.parent.with_name("gone"))
        with pytest.raises(NotKept, match="moved, replaced, deleted or cut short"):
            log.append(note(4))


def test_a_log_cut_short_while_open_keeps_nothing_and_says_so(path: Path) -> None:
    with open_log(path) as log:
        os.truncate(path, 10)
        with pytest.raises(NotKept, match="moved, replaced, deleted or cut short"):
            log.append(note(4))
    assert path.stat().st_size == 10


def test_a_torn_end_that_cannot_be_set_aside_yet_is_set_aside_later(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole = path.read_bytes()
    with path.open("ab") as file:
        file.write(b'{"torn')
    with failing(monkeypatch, "write", errno.ENOSPC):
        log = open_log(path)
        assert any("cannot be mended yet: the disk is full" in line for line in log.said)
        with pytest.raises(NotKept, match="the disk is full"):
            log.append(note(4))
        assert path.read_bytes() == whole + b'{"torn'
    assert list(path.parent.glob("*.torn-*")) == []
    with log:
        log.append(note(4))
    assert path.read_bytes() == whole + codec.encode(note(4))
    assert path.with_name(path.stem + ".torn-1").read_bytes() == b'{"torn'


@pytest.mark.parametrize(
    "event",
    [
        note(4, "\ud800"),
        ev.NoteMade(n=4, at=Moment(float("nan"), 0, "b"), text=""),
        ev.EffluxTimed(n=4, at=moment(), cup="c", seconds=float("inf")),
        ev.NoteMade(n=10**30, at=moment(), text=""),
        ev.NoteMade(n=4, at=moment(), text=3),  # type: ignore[arg-type]
    ],
    ids=["surrogate", "nan", "inf", "number", "type"],
)
def test_what_would_not_read_back_is_refused(path: Path, event: ev.Event) -> None:
    before = path.read_bytes()
    with open_log(path) as log, pytest.raises(NotKept, match="NOT kept"):
        log.append(event)
    assert path.read_bytes() == before


def test_a_closed_log_refuses(path: Path) -> None:
    log = open_log(path)
    log.close()
    log.close()
    with pytest.raises(NotKept, match="closed"):
        log.append(note(4))


def test_a_job_that_cannot_be_begun_leaves_no_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for call, number in (("write", errno.ENOSPC), ("fsync", errno.EIO), ("open", errno.EROFS)):
        with (
            failing(monkeypatch, call, number),
            pytest.raises(NotKept, match="The job cannot be begun: the disk "),
        ):
            create_log(tmp_path, opened())
        assert list(tmp_path.iterdir()) == []
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(NotKept, match="a file stands where the folder should be"):
        create_log(tmp_path / "file", opened())


@pytest.mark.parametrize("data", [b"", b"\0" * 4096, b"\n"])
def test_a_log_that_there_is_nothing_in_is_told_with_what_to_do(
    tmp_path: Path, data: bytes
) -> None:
    (tmp_path / "20250615-1506-demo-0001.jsonl").write_bytes(data)
    (told,) = history(tmp_path)
    assert "Nothing is lost when it is deleted" in told.fault


def test_a_log_that_there_is_something_in_is_never_called_empty(path: Path) -> None:
    for data in (path.read_bytes(), b"x", b"\xff\n"):
        path.write_bytes(data)
        assert "Nothing is lost" not in history(path.parent)[0].fault


@contextmanager
def nobody() -> Iterator[None]:
    """Root may write anywhere: act as an account that may not, where we are root."""
    if os.geteuid() != 0:
        yield
        return
    os.seteuid(65534)
    try:
        yield
    finally:
        os.seteuid(0)


@pytest.mark.skipif(not hasattr(os, "geteuid"), reason="accounts of POSIX")
def test_a_folder_and_a_log_that_may_only_be_read() -> None:
    with tempfile.TemporaryDirectory() as above:  # pytest's own is closed to other accounts
        os.chmod(above, 0o755)
        folder = Path(above) / "jobs"
        with create_log(folder, opened()) as log:
            path = log.path
        os.chmod(path, 0o444)
        os.chmod(folder, 0o555)
        try:
            with nobody():
                with pytest.raises(NotKept, match="begun: this account may not write there"):
                    create_log(folder, opened())
                with pytest.raises(NotKept, match="only read: this account may not write there"):
                    open_log(path)
                assert read_log(path).events == [opened()]
        finally:
            os.chmod(folder, 0o755)


@pytest.mark.parametrize("number", [errno.EACCES, errno.EROFS])
def test_a_log_that_may_only_be_read_says_so(
    path: Path, monkeypatch: pytest.MonkeyPatch, number: int
) -> None:
    with failing(monkeypatch, "open", number), pytest.raises(NotKept, match="only read: ") as said:
        open_log(path)
    assert "NOT kept" not in str(said.value)


def test_what_is_no_file_is_refused_without_waiting(tmp_path: Path) -> None:
    folder = tmp_path / "folder.jsonl"
    folder.mkdir()
    with pytest.raises(NotKept, match="it is not a file"):
        open_log(folder)
    with pytest.raises(NotKept, match="is gone"):
        open_log(tmp_path / "none.jsonl")
    if hasattr(os, "mkfifo"):
        os.mkfifo(tmp_path / "pipe.jsonl")
        with pytest.raises(NotKept):
            open_log(tmp_path / "pipe.jsonl")
        with pytest.raises(OSError, match="not a file"):
            read_log(tmp_path / "pipe.jsonl")


def test_a_name_shows_when_its_job_began(tmp_path: Path) -> None:
    with create_log(tmp_path, opened(seconds=3600)) as log:
        when = datetime.strptime(log.path.name[:13], "%Y%m%d-%H%M").replace(tzinfo=UTC)
    assert 0 <= moment(3600).wall - when.timestamp() < 60


def test_set_aside_reuses_what_an_interrupted_mend_left(path: Path) -> None:
    first = atomic.set_aside(path, b"tail")
    assert atomic.set_aside(path, b"tail") == first
    assert atomic.set_aside(path, b"other") != first
