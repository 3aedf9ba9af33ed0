"""Lists of jobs: fast, and no file stops the others."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.clock import local_date
from booth.job.past import last_good
from booth.learnt.past_jobs import PastJobs
from booth.log import codec, naming
from booth.log import events as ev
from booth.log import summary as summary_module
from booth.log.history import find_job, history
from booth.log.naming import short_name
from booth.log.parse import parse
from booth.log.store import create_log, read_log
from booth.log.summary import opening_of, summary_of
from tests.log.logs import (
    PROFILE,
    caught,
    closed,
    moment,
    opened,
    restored,
    some_events,
    timed,
    unfinished,
    voided,
    write,
)

NAME = Path("20250615-1506-demo-ab12.jsonl")


def test_a_list_of_jobs_newest_first(tmp_path: Path) -> None:
    old = write(tmp_path, "20250601-1200-demo-0001", opened(seconds=-9e5, gun="A"), closed("redo"))
    new = write(tmp_path, "20250615-1506-demo-0002", opened(job="second"), timed(22))
    # Its name says otherwise: the opening decides.
    mid = write(tmp_path, "zzz-renamed-0003", opened(seconds=-100), closed("good", 77))
    found = history(tmp_path)
    assert [each.path for each in found] == [new, mid, old]
    first, second, last = found
    assert (first.job, first.opened, first.closed, first.is_open) == (
        "second",
        moment(0),
        None,
        True,
    )
    assert first.profile_name == PROFILE.name
    assert (first.parts, first.events, first.verdict) == (("hood", "door"), 2, "")
    assert (second.verdict, second.closed) == ("good", moment(77))
    assert (last.gun, last.verdict, last.is_open) == ("A", "redo", False)
    assert [each.path for each in unfinished(tmp_path)] == [new]


def test_a_closing_that_was_voided_leaves_the_job_open(tmp_path: Path) -> None:
    path = write(tmp_path, "a-0001", opened(), closed(), voided(2))
    assert [each.path for each in unfinished(tmp_path)] == [path]
    write(tmp_path, "a-0001", opened(), closed(), voided(2), restored(2))
    assert unfinished(tmp_path) == []
    write(tmp_path, "a-0001", opened(), closed("redo"), voided(2), closed("usable"))
    assert history(tmp_path)[0].verdict == "usable"


def test_what_cannot_be_read_stands_last_and_stops_nothing(tmp_path: Path) -> None:
    good = write(tmp_path, "20250615-1506-demo-0001", opened())
    (tmp_path / "empty.jsonl").write_bytes(b"")
    (tmp_path / "junk.jsonl").write_bytes(os.urandom(5000))
    (tmp_path / "nul.jsonl").write_bytes(b"\0" * 4096)
    (tmp_path / "folder.jsonl").mkdir()
    (tmp_path / "dangling.jsonl").symlink_to(tmp_path / "nowhere")
    write(tmp_path, "headless", timed(22))
    (tmp_path / "other.txt").write_text("no log")
    (tmp_path / "20250615-1506-demo-0001.torn-1").write_bytes(b"torn")
    if hasattr(os, "mkfifo"):
        os.mkfifo(tmp_path / "pipe.jsonl")
    found = history(tmp_path)
    assert found[0].path == good and found[0].fault == ""
    faults = {each.path.name: each.fault for each in found[1:]}
    assert faults["empty.jsonl"].startswith("There is nothing in the file")
    assert faults["nul.jsonl"].startswith("There is nothing in the file")
    assert faults["junk.jsonl"] == faults["headless.jsonl"] == "No line of it opens a job."
    assert faults["folder.jsonl"] == "The file cannot be read: it is not a file."
    assert faults["dangling.jsonl"].startswith("The file cannot be read: ")
    assert "other.txt" not in faults and len(faults) == (7 if hasattr(os, "mkfifo") else 6)
    assert {each.path.name for each in unfinished(tmp_path)} == {good.name, *faults}
    assert last_good(tmp_path, PROFILE.key) is None
    assert [*PastJobs(tmp_path).pairs()] == []


def test_no_folder_is_no_jobs(tmp_path: Path) -> None:
    assert history(tmp_path / "none") == unfinished(tmp_path / "none") == []
    assert last_good(tmp_path / "none", "x") is None


def test_a_damaged_log_is_summed_up_by_what_is_whole(tmp_path: Path) -> None:
    path = write(tmp_path, "a-0001", opened(), timed(20), timed(21), closed())
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(lines[0] + b"rubbish\n" + lines[2] + lines[3] + b'{"torn')
    found = history(tmp_path)[0]
    assert (found.events, found.broken, found.verdict, found.fault) == (3, 2, "good", "")
    path.write_bytes(b"\xef\xbb\xbf" + b"".join(lines))
    assert history(tmp_path)[0].verdict == "good"
    assert last_good(tmp_path, PROFILE.key) is not None


@given(
    st.lists(
        st.one_of(
            some_events,
            st.builds(closed, st.sampled_from(["good", "usable", "redo"])),
            st.builds(voided, st.integers(1, 9)),
            st.builds(restored, st.integers(1, 9)),
        ),
        max_size=8,
    )
)
def test_the_fast_reading_says_what_the_full_one_says(events: list[ev.Event]) -> None:
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2)]
    data = b"".join(map(codec.encode, [opened(), *numbered]))
    assert summary_of(NAME, data) == summary_module._slowly(NAME, data)
    assert summary_of(NAME, data).broken == 0
    assert opening_of(data) == opened()


@given(st.binary(max_size=60), st.integers(0, 400))
def test_any_bytes_are_summed_up_without_raising(junk: bytes, place: int) -> None:
    data = codec.encode(opened()) + codec.encode(msgspec.structs.replace(closed(), n=2))
    damaged = data[:place] + junk + data[place:]
    found = summary_of(NAME, damaged)
    assert (found.opened is None) == bool(found.fault)
    assert found.events <= len(parse(damaged).events) + damaged.count(b"\n")


def found(folder: Path, named: str) -> list[Path]:
    return [job.path for job in find_job(folder, named)]


def test_a_job_is_found_by_path_name_end_or_job(tmp_path: Path) -> None:
    one = write(tmp_path, "20250615-1506-demo-ab12", opened(job="blue door"))
    two = write(tmp_path, "20250615-1507-demo-cd34", opened(job="20250615-1507-demo-cd34"))
    assert found(tmp_path, str(one)) == [one]
    assert found(tmp_path, one.name) == found(tmp_path, one.stem) == [one]
    assert found(tmp_path, "ab12") == found(tmp_path, "blue door") == [one]
    assert found(tmp_path, "20250615-1507") == [two]
    assert found(tmp_path, "20250615") == [two, one]
    assert found(tmp_path, "none") == found(tmp_path, "") == []


def test_a_job_is_found_by_any_piece_of_its_name_its_date_or_a_part(tmp_path: Path) -> None:
    one = write(tmp_path, "20250615-1506-two-pack-clear-3fa2", opened(parts=("Tank", "left door")))
    two = write(
        tmp_path, "20250701-0900-two-pack-clear-77b0", opened(seconds=15e5, parts=("door",))
    )
    three = write(tmp_path, "20250702-0900-shellac-3fb1", opened(seconds=16e5, parts=("stool",)))
    for named in ("two-pack-clear-3fa2", "Two-Pack-Clear-3FA2", "3fa2", " 3fa2 ", "tank", "left"):
        assert found(tmp_path, named) == [one], named
    assert found(tmp_path, "door") == [two], "a part of this name comes before a piece of one"
    assert found(tmp_path, "3f") == [three, one]
    assert found(tmp_path, "two-pack") == found(tmp_path, "pack") == [two, one]
    assert found(tmp_path, "shellac") == [three]
    for path in (one, two, three):
        (date,) = [local_date(each.opened) for each in history(tmp_path) if each.path == path]  # type: ignore[arg-type]
        assert found(tmp_path, date) == [path]
    assert found(tmp_path, local_date(moment(16e5))[:7]) == [three, two]


@pytest.mark.parametrize(
    "named", ["x" * 5000, "a\0b", "\0", ".", "/", "..", "\ud800", "%s", "[", " ", "\n", "~", "*"]
)
def test_whatever_is_typed_finds_nothing_and_raises_nothing(tmp_path: Path, named: str) -> None:
    write(tmp_path, "shellac", opened())
    (tmp_path / "folder").mkdir()
    assert found(tmp_path, named) == []
    assert found(tmp_path, str(tmp_path / "folder")) == []


def test_a_name_is_its_own_in_the_folder_and_the_same_everywhere(tmp_path: Path) -> None:
    write(tmp_path, "20250615-1506-demo-ab12", opened())
    write(tmp_path, "20250616-1506-demo-ab12", opened(seconds=9))
    write(tmp_path, "20250616-1506-demo-cd34", opened(seconds=-9))
    write(tmp_path, "renamed by hand", opened(seconds=-99))
    (tmp_path / "20250101-0000-junk-0001.jsonl").write_bytes(b"junk")
    names = [job.name for job in history(tmp_path)]
    assert names == [
        "20250616-1506-demo-ab12",
        "20250615-1506-demo-ab12",
        "demo-cd34",
        "renamed by hand",
        "junk-0001",
    ]
    for name in names:
        assert [job.name for job in find_job(tmp_path, name)] == [name]


def test_a_new_job_gets_a_mark_that_no_other_of_its_name_has(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    marks = iter(["ab12", "ab12", "ab12", "cd34"])
    monkeypatch.setattr(naming.secrets, "token_hex", lambda count: next(marks))
    with create_log(tmp_path, opened()) as first:
        assert short_name(first.path) == "demo-clear-two-pack-ab12"
    with create_log(tmp_path, opened(seconds=9e6)) as second:
        assert short_name(second.path) == "demo-clear-two-pack-cd34"


def test_a_job_that_was_given_no_name_is_named_like_its_log(tmp_path: Path) -> None:
    with create_log(tmp_path, opened(job="")) as log:
        (event,) = read_log(log.path).events
        assert isinstance(event, ev.JobOpened)
        assert event.job == short_name(log.path) == history(tmp_path)[0].name
        assert [job.path for job in find_job(tmp_path, event.job)] == [log.path]


def test_a_log_with_nothing_unusual_takes_the_fast_reading(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write(tmp_path, "20250615-1506-demo-0001", opened(), *([caught(150)] * 98), closed())

    def never(path: Path, data: bytes) -> None:
        raise AssertionError(f"{path} went through the full reading")

    monkeypatch.setattr(summary_module, "_slowly", never)
    assert history(tmp_path)[0].events == 100
