"""What lists say of jobs, kept for the next start: it saves reading, and is never the truth."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
import pytest

from booth.log import found_jobs as module
from booth.log import kept_summaries
from booth.log.found_jobs import FoundJobs
from booth.log.history import history
from booth.log.open_jobs import OpenJobs, summaries
from tests.log.logs import closed, note, opened, write


@pytest.fixture(autouse=True)
def worth_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """Four logs are worth keeping."""
    monkeypatch.setattr(module, "WORTH_KEEPING", 4)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    jobs = tmp_path / "jobs"
    jobs.mkdir()
    for number in range(5):
        write(
            jobs,
            f"2025061{number}-1506-demo-000{number}",
            opened(job=f"demo-000{number}", seconds=number * 60.0),
            note(0, f"lot {number}"),
            closed("good", next_time="slower"),
        )
    return jobs


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The logs that were read."""
    names: list[str] = []
    log_bytes = module.log_bytes

    def noted(path: Path) -> bytes:
        names.append(path.name)
        return log_bytes(path)

    monkeypatch.setattr(module, "log_bytes", noted)
    return names


def test_the_next_start_reads_no_log_that_did_not_change(
    folder: Path, tmp_path: Path, read: list[str]
) -> None:
    kept = tmp_path / "kept"
    first = history(folder, kept)
    assert len(read) == 5 and kept.is_file()
    read.clear()
    assert history(folder, kept) == first == history(folder)
    assert len(read) == 5, "without the file all of them are read"
    assert first[0].notes == ("lot 4",) and first[0].next_time == "slower"


def test_a_log_that_changed_is_read_and_an_open_one_always(
    folder: Path, tmp_path: Path, read: list[str]
) -> None:
    kept = tmp_path / "kept"
    write(folder, "20250620-1506-demo-0009", opened(job="open"))
    history(folder, kept)
    read.clear()
    path = write(folder, "20250612-1506-demo-0002", opened(seconds=120.0), note(0), closed("redo"))
    found = {each.path: each.verdict for each in history(folder, kept)}
    assert found[path] == "redo"
    assert set(read) == {path.name, "20250620-1506-demo-0009.jsonl"}


def test_the_same_size_with_another_time_is_read_too(
    folder: Path, tmp_path: Path, read: list[str]
) -> None:
    kept = tmp_path / "kept"
    history(folder, kept)
    path = folder / "20250612-1506-demo-0002.jsonl"
    path.write_bytes(path.read_bytes().replace(b'"good"', b'"redo"'))
    stamp = path.stat()
    os.utime(path, ns=(stamp.st_atime_ns, stamp.st_mtime_ns + 1_000_000))
    read.clear()
    assert [each.verdict for each in history(folder, kept)].count("redo") == 1
    assert read == [path.name]


@pytest.mark.parametrize("what", ["emptied", "junk", "another version", "a folder", "cut off"])
def test_a_file_that_cannot_be_used_counts_for_nothing(
    folder: Path, tmp_path: Path, read: list[str], what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept = tmp_path / "kept"
    whole = history(folder, kept)
    if what == "another version":
        monkeypatch.setattr(kept_summaries, "_FORM", "of tomorrow")
    elif what == "a folder":
        kept.unlink()
        kept.mkdir()
    else:
        content = kept.read_bytes()
        kept.write_bytes({"emptied": b"", "junk": os.urandom(500)}.get(what, content[:-7]))
    read.clear()
    assert history(folder, kept) == whole
    assert len(read) == 5
    if what != "a folder":
        read.clear()
        assert history(folder, kept) == whole and read == [], "it was written anew"


def test_it_may_be_deleted_and_a_log_that_is_gone_is_gone(folder: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    history(folder, kept)
    (folder / "20250612-1506-demo-0002.jsonl").unlink()
    assert len(history(folder, kept)) == 4
    kept.unlink()
    assert len(history(folder, kept)) == 4


def test_the_folder_may_move(folder: Path, tmp_path: Path, read: list[str]) -> None:
    kept = tmp_path / "kept"
    history(folder, kept)
    moved = folder.rename(tmp_path / "elsewhere")
    read.clear()
    assert {each.path.parent for each in history(moved, kept)} == {moved} and read == []


def test_a_few_logs_are_not_worth_it(folder: Path, tmp_path: Path) -> None:
    for path in list(folder.iterdir())[:2]:
        path.unlink()
    history(folder, tmp_path / "kept")
    assert not (tmp_path / "kept").exists()


def test_where_it_cannot_be_written_nothing_stops(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert len(history(folder, tmp_path / "file" / "kept")) == 5


def test_the_latest_are_read_first_and_the_rest_by_another_look(
    folder: Path, read: list[str]
) -> None:
    found = FoundJobs(folder)
    found.look(lambda _: False, 2)
    assert read == ["20250614-1506-demo-0004.jsonl", "20250613-1506-demo-0003.jsonl"]
    assert len(found.summaries()) == 2 and found.unseen == 3
    found.look(lambda _: False)
    assert len(read) == 5 and found.unseen == 0 and len(found.summaries()) == 5


def test_what_was_found_is_given_out_while_more_is_read(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(module, "AT_A_TIME", 2)
    found, seen = FoundJobs(folder), []
    stamp = module._stamp

    def looked(path: Path) -> tuple[int, ...]:
        seen.append(len(found.summaries()))
        return stamp(path)

    monkeypatch.setattr(module, "_stamp", looked)
    found.look(lambda _: False)
    assert seen == [0, 0, 2, 2, 4] and len(found.summaries()) == 5


def test_a_rehearsal_is_listed_as_one(folder: Path, tmp_path: Path) -> None:
    write(folder, "20250701-1506-demo-000a", opened(job="water", rehearsal=True), closed())
    for _ in range(2):  # read, and kept
        found = history(folder, tmp_path / "kept")
        assert [each.job for each in found if each.rehearsal] == ["water"] and len(found) == 6


def test_a_job_held_here_is_listed_as_its_file_is_now(folder: Path) -> None:
    jobs = OpenJobs(folder, "boot 1")
    session = jobs.begin(opened(job=""))
    try:
        jobs.look()
        session.record(note(0, "just now"))
        (own,) = [each for each in summaries(jobs) if each.path == session.log.path]
        assert own.notes == ("just now",) and own.is_open
        assert len(summaries(jobs)) == 6
    finally:
        jobs.close()


def test_every_field_of_a_summary_comes_back(folder: Path, tmp_path: Path) -> None:
    kept = tmp_path / "kept"
    before = {each.path: msgspec.structs.asdict(each) for each in history(folder, kept)}
    after = {each.path: msgspec.structs.asdict(each) for each in history(folder, kept)}
    assert before == after
