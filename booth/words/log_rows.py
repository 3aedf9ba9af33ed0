"""Every entry of a job in words, for a screen or a page to draw. Pure; as long as the log, no longer."""

from __future__ import annotations

from typing import NamedTuple

from booth.log.events import Event, UnknownEvent
from booth.log.fold import Job
from booth.units import System
from booth.words.event_words import teller


class LogRow(NamedTuple):
    """One entry: as it was kept, in words, and whether it no longer counts."""

    event: Event | UnknownEvent
    words: str
    is_void: bool


def log_rows(job: Job, system: System) -> tuple[LogRow, ...]:
    """Give the entries of `job` in the order of its log."""
    told = teller(system, job)
    return tuple(LogRow(event, told(event), event.n in job.void) for event in job.events)
