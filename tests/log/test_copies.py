"""One folder of two laptops: the same job in several files is one job, and what differs is said."""

from __future__ import annotations

import shutil
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.job.past import last_good
from booth.learnt.past_jobs import PastJobs
from booth.log import codec
from booth.log import events as ev
from booth.log.copies import doubles, told_apart
from booth.log.history import find_job, history
from booth.log.open_jobs import OpenJobs
from booth.log.session import Session
from booth.log.store import read_log
from booth.words.report import jobs_table
from tests.log.logs import PROFILE, caught, closed, moment, note, opened, timed, write

#: How tools that keep folders the same name a second copy, and how people do.
NAMES = (
    "20250615-1506-demo-ab12 (1)",
    "20250615-1506-demo-ab12 (conflict copy 2025-06-16)",
    "20250615-1506-demo-ab12.sync-conflict-20250616-101010-ABCDEF",
    "Copy of 20250615-1506-demo-ab12",
    "zzz",
)
NAME = "20250615-1506-demo-ab12"
JOB = (opened(job="demo-ab12"), timed(20), caught(180), closed(next_time="slower"))


def longer(path: Path, *events: ev.Event) -> Path:
    """Let a log grow as it does when it is worked on."""
    n = len(read_log(path).events)
    with path.open("ab") as file:
        for at, event in enumerate(events, n + 1):
            file.write(codec.encode(msgspec.structs.replace(event, n=at)))
    return path


def copy(path: Path, name: str) -> Path:
    return Path(shutil.copyfile(path, path.with_name(f"{name}.jsonl")))


@pytest.mark.parametrize("name", NAMES)
def test_the_same_file_twice_is_one_job(tmp_path: Path, name: str) -> None:
    path = write(tmp_path, NAME, *JOB)
    copy(path, name)
    (one,) = history(tmp_path)
    assert not one.differs and len(one.copies) == 1 and "this file has all of it" in one.copies[0]
    assert [each.path for each in find_job(tmp_path, "demo-ab12")] == [one.path]
    assert one.path in (path, path.with_name("zzz.jsonl")), "the plainer name counts"
    assert len(PastJobs(tmp_path).pairs()) == 1, "a catch is one catch"


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("which", ["the original", "the copy"])
def test_the_longer_one_counts_whichever_it_is(tmp_path: Path, name: str, which: str) -> None:
    path = write(tmp_path, NAME, *JOB[:-1])
    other = copy(path, name)
    grown = longer(path if which == "the original" else other, JOB[-1])
    (one,) = history(tmp_path)
    assert (one.path, one.verdict, one.differs) == (grown, "good", False)
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and found.next_time == "slower"
    assert len(PastJobs(tmp_path).pairs()) == 1
    # And it is not open any more, though a beginning of it is.
    jobs = OpenJobs(tmp_path, "boot 1")
    jobs.look()
    assert jobs.jobs() == ()


def test_where_they_differ_both_are_listed_and_it_is_said(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB[:-1])
    other = copy(path, NAMES[0])
    longer(path, note(0, "on the cart"))
    longer(other, note(0, "on the desk"), JOB[-1])
    found = history(tmp_path)
    assert {each.path for each in found} == {path, other} and all(each.differs for each in found)
    told = {each.path: each.copies[0] for each in found}
    assert other.name in told[path] and path.name in told[other]
    assert all("differ after 3 entries" in each for each in told.values())
    table = jobs_table(found, lambda _: "day")
    assert table.count("differ after 3 entries") == 2 and table.count("demo-ab12") >= 2
    assert len(PastJobs(tmp_path).pairs()) == 1, "the catch before they parted was made once"


def test_of_three_the_beginning_goes_and_the_two_that_differ_stay(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB[:2])
    first, second = copy(path, NAMES[0]), copy(path, NAMES[1])
    longer(first, note(0, "a"))
    longer(second, note(0, "b"))
    apart = told_apart([[path, first, second]])
    assert set(apart.begins) == {path} and set(apart.differs) == {first, second}
    assert {each.path for each in history(tmp_path)} == {first, second}


def test_two_jobs_of_one_moment_are_two(tmp_path: Path) -> None:
    write(tmp_path, NAME, *JOB)
    write(tmp_path, "20250615-1506-demo-cd34", opened(job="demo-cd34"), *JOB[1:])
    assert len(history(tmp_path)) == 2 and not any(each.copies for each in history(tmp_path))
    assert doubles(tmp_path.glob("*.jsonl")) == frozenset()
    assert len(PastJobs(tmp_path).pairs()) == 2


def test_logs_of_two_laptops_are_one_history(tmp_path: Path) -> None:
    there = msgspec.structs.replace(moment(3600), boot="another machine")
    write(tmp_path, NAME, *JOB)
    first = msgspec.structs.replace(opened(job="demo-ef56"), at=there)
    write(tmp_path, "20250615-1606-demo-ef56", first, timed(22), closed())
    assert [each.name for each in history(tmp_path)] == ["demo-ef56", "demo-ab12"]
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and found.figures["efflux"] == 22


def test_a_copy_that_was_cut_off_is_a_beginning(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB)
    other = copy(path, NAMES[0])
    other.write_bytes(path.read_bytes()[:-7])
    (one,) = history(tmp_path)
    assert one.path == path and not one.differs


def test_a_file_that_cannot_be_read_is_no_copy_of_anything(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB)
    (tmp_path / f"{NAMES[0]}.jsonl").mkdir()
    (tmp_path / "junk.jsonl").write_bytes(b"\x00\n")
    found = history(tmp_path)
    assert [each.path for each in found if each.opened] == [path] and len(found) == 3


def test_the_copy_of_a_job_on_the_bench_is_not_open_beside_it(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB[:2])
    jobs = OpenJobs(tmp_path, "boot 1")
    session = jobs.take_up(path)
    copy(path, NAMES[0])
    session.record(note(0, "went on"))
    jobs.look()
    assert [each.path for each in jobs.jobs()] == [path]
    # One that has more than the bench is told, not hidden.
    other = copy(path, NAMES[1])
    longer(other, note(0, "from the other laptop"))
    jobs.look()
    assert {each.path for each in jobs.jobs()} == {path, other}
    jobs.close()


def test_it_is_seen_again_when_one_of_them_has_grown(tmp_path: Path) -> None:
    path = write(tmp_path, NAME, *JOB[:2])
    other = copy(path, NAMES[0])
    jobs = OpenJobs(tmp_path, "boot 1")
    jobs.look()
    assert [each.path for each in jobs.jobs()] == [path]
    longer(other, note(0, "went on there"))
    jobs.look()
    assert [each.path for each in jobs.jobs()] == [other]
    session = Session.resume(path)
    session.record(note(0, "and here"))
    session.close()
    jobs.look()
    assert {each.path for each in jobs.jobs()} == {path, other}
    # Whoever takes one of them up is told.
    (said,) = jobs.take_up(path).news()
    assert other.name in said and "differ after 2 entries" in said
    jobs.close()


@given(
    st.lists(st.sampled_from(["a", "b", "c"]), max_size=5),
    st.lists(st.lists(st.sampled_from(["a", "b", "c"]), max_size=5), min_size=1, max_size=4),
)
def test_nothing_that_was_kept_in_any_file_is_lost(
    tmp_path_factory: pytest.TempPathFactory, first: list[str], others: list[list[str]]
) -> None:
    """Whatever the files hold: every one is a beginning of one that counts."""
    folder = tmp_path_factory.mktemp("copies")
    held = {
        write(folder, f"job {at}", opened(job="x"), *(note(0, text) for text in texts)): texts
        for at, texts in enumerate([first, *others])
    }
    counting = [each.path for each in history(folder)]
    assert counting
    for texts in held.values():
        assert any(held[path][: len(texts)] == texts for path in counting)
    # And none that counts is a beginning of another.
    for path in counting:
        more = [held[each] for each in counting if each != path]
        assert not any(texts[: len(held[path])] == held[path] for texts in more)
    shutil.rmtree(folder)
