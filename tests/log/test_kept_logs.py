"""Logs of earlier versions, kept here as they were written: they stay readable, word for word."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.log import codec
from booth.log.fold import fold
from booth.log.history import find_job, history
from booth.log.open_jobs import OpenJobs
from booth.log.parse import parse
from booth.units import System
from booth.words.event_words import teller

KEPT = Path(__file__).with_name("kept")
#: What is known of each: entries, kinds of them, verdict, what is voided.
LOGS = {"20250615-1506-two-pack-clear-2-1-3fa2.jsonl": (40, 33, "good", {6})}


def test_every_kept_log_is_known() -> None:
    assert {path.name for path in KEPT.iterdir()} == set(LOGS)


@pytest.mark.parametrize("name", LOGS)
def test_a_kept_log_reads_with_nothing_to_say_and_nothing_lost(name: str) -> None:
    count, kinds, verdict, void = LOGS[name]
    data = (KEPT / name).read_bytes()
    content = parse(data)
    assert (content.said, content.fault, len(content.events)) == ([], "", count)
    assert len({type(event) for event in content.events}) == kinds
    assert b"".join(map(codec.encode, content.events)) == data  # type: ignore[arg-type]
    job = fold(content.events)
    assert job.closed is not None and job.closed.verdict == verdict and job.void == void
    assert all(map(teller(System.METRIC, job), job.events))


def test_a_kept_log_is_listed_and_found_by_its_own_name_and_its_log_s() -> None:
    (job,) = history(KEPT)
    assert job.name == "two-pack-clear-2-1-3fa2" and job.job == "2025-06-15-3fa2"
    for named in (job.name, job.job, "3fa2", "left door"):
        assert find_job(KEPT, named) == [job]
    jobs = OpenJobs(KEPT, "boot 1")
    jobs.look()
    assert jobs.jobs() == () and jobs.found.unread == ()
