"""Made-up logs for the benchmarks. All of it invented."""

from __future__ import annotations

import time
from pathlib import Path

import msgspec

from booth.clock import MachineClock
from booth.log import codec
from booth.log import events as ev
from booth.moment import Moment, later
from booth.profile.steps import steps_for
from tests.job.make import at, opened


def _write(path: Path, events: list[ev.Event]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"".join(codec.encode(event) for event in events))


def eight_clocks(folder: Path) -> None:
    """One open job: eight parts in flash-off, its current step the coats."""
    now = MachineClock().now()
    parts = tuple(f"part {number}" for number in range(1, 9))
    first = msgspec.structs.replace(opened(parts), at=now)
    events: list[ev.Event] = [first]
    for step in steps_for(first.profile):
        if step.kind == "coats":
            break
        events.append(ev.StepDone(n=len(events) + 1, at=now, step=step.key))
    for number, part in enumerate(parts):
        begun = later(now, float(number))
        events.append(ev.CoatBegun(n=len(events) + 1, at=begun, part=part, coat=1))
        events.append(ev.CoatEnded(n=len(events) + 1, at=begun, part=part, coat=1))
    _write(folder / "20260101-0000-eight-0000.jsonl", events)


def thousand_jobs(folder: Path) -> None:
    """A thousand closed jobs of a hundred events."""
    start = Moment(time.time() - 1e7, 1000.0, "old")
    for number in range(1000):
        first = opened()
        first = msgspec.structs.replace(
            first, at=later(start, 60.0 * number), job=f"trial-{number:04x}"
        )
        events: list[ev.Event] = [first]
        for n in range(2, 100):
            events.append(ev.EffluxTimed(n=n, at=at(n), cup="ford-4", seconds=20 + n / 100))
        events.append(ev.JobClosed(n=100, at=at(200), verdict="good"))
        _write(folder / f"20250101-{number:04d}-trial-{number:04x}.jsonl", events)
