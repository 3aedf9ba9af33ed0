"""Logs of earlier versions, kept here as they were written: they stay readable, word for word."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

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
    opening, *entries = data.splitlines(keepends=True)
    assert list(map(codec.encode, content.events[1:])) == entries  # type: ignore[arg-type]
    _holds_all(json.loads(opening), content.events[0])
    job = fold(content.events)
    assert job.closed is not None and job.closed.verdict == verdict and job.void == void
    assert all(map(teller(System.METRIC, job), job.events))


#: What stands elsewhere in an opening of today; single figures are now both ends of a range.
MOVED = {"profile.mix.pot_life": "profile.mix.pot_life.rows.0"}
NOW_RANGES = ("coats", "volume_solids_percent", "overlap_percent", "usual_percent")


def _holds_all(written: dict[str, Any], opened: object) -> None:
    """The opening is in today's shape, all that it said is still there, and there it stays."""
    held = dict(_leaves(json.loads(codec.encode(opened)), ""))  # type: ignore[arg-type]
    said = {path: leaf for path, leaf in _leaves(written, "") if leaf is not None}
    assert len(said) > 60
    for path, leaf in said.items():
        for old, new in MOVED.items():
            path = path.replace(f"{old}.", f"{new}.")
        ends = (".low", ".high") if path.endswith(NOW_RANGES) else ("",)
        assert [held[f"{path}{end}"] for end in ends] == [leaf] * len(ends), path
    assert codec.decode(codec.encode(opened)) == opened  # type: ignore[arg-type]


def _leaves(value: Any, path: str) -> Iterator[tuple[str, Any]]:
    inner = dict(enumerate(value)) if isinstance(value, list) else value
    if not isinstance(inner, dict):
        yield path, value
        return
    for name, each in inner.items():
        yield from _leaves(each, f"{path}.{name}".removeprefix("."))


def test_a_kept_log_is_listed_and_found_by_its_own_name_and_its_log_s() -> None:
    (job,) = history(KEPT)
    assert job.name == "two-pack-clear-2-1-3fa2" and job.job == "2025-06-15-3fa2"
    for named in (job.name, job.job, "3fa2", "left door"):
        assert find_job(KEPT, named) == [job]
    jobs = OpenJobs(KEPT, "boot 1")
    jobs.look()
    assert jobs.jobs() == () and jobs.found.unread == ()
