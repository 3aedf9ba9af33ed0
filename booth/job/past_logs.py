"""The logs of past jobs, as far as they count: the one door to them, and the one place for what does not.

A rehearsal is no job: nothing of it counts but its catches of water, its patterns and its timed passes,
which are true of gun, needle and hand. A job that the painter left out teaches nothing until it is taken in again.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from booth.job.products import products_of
from booth.log.afterwards import left_out
from booth.log.copies import doubles
from booth.log.events import (
    CatchMade,
    GunChanged,
    JobOpened,
    LeftOut,
    PassTimed,
    PatternRead,
    Restored,
    TakenIn,
    Voided,
)
from booth.log.fold import Entry, Job, NoJob, fold
from booth.log.naming import BEGUN
from booth.log.parse import parse
from booth.log.store import log_bytes, log_files
from booth.log.summary import opening_of

#: What of a rehearsal counts, besides its catches of water.
OF_REHEARSAL = (JobOpened, GunChanged, PatternRead, PassTimed, LeftOut, TakenIn, Voided, Restored)
#: What stands in the bytes of every job that was once left out.
LEFT_OUT = b'"left out"'


class PastLog(NamedTuple):
    """A log of a folder: its file, its bytes, what opened the job."""

    path: Path
    data: bytes
    opened: JobOpened

    def products(self) -> tuple[Job, ...]:
        """Every product of the job, as far as it teaches; nothing where it adds up to none."""
        events: Iterable[Entry] = parse(self.data).events
        if self.opened.rehearsal:
            events = filter(of_rehearsal, events)
        try:
            return products_of(fold(events))
        except NoJob:
            return ()


def of_rehearsal(event: Entry) -> bool:
    """Whether an entry of a rehearsal is true of the real job too."""
    if isinstance(event, CatchMade):
        return event.liquid == "water"
    return isinstance(event, OF_REHEARSAL)


def why_left_out(job: Job) -> str | None:
    """Why nothing is to be learnt from a job; None where it counts."""
    return left_out(job.live)


def past_logs(
    folder: Path | None,
    profile_key: str = "",
    gun: str = "",
    since: str = "",
    holding: tuple[bytes, ...] = (),
    rehearsals: bool = False,
    those_left_out: bool = False,
) -> Iterator[PastLog]:
    """Give the jobs of this profile and gun, the latest name first; none without a folder.

    since: of those named by a date, none from before; holding: of what their bytes have to hold one
    at least; rehearsals, those_left_out: whether these are wanted too.
    """
    if folder is None:
        return
    paths = [
        path for path in log_files(folder) if not (BEGUN.match(path.name) and path.name < since)
    ]
    twice = doubles(paths)
    for path in paths:
        if path in twice:
            continue
        try:
            data = log_bytes(path)
        except OSError:
            continue
        if holding and not any(each in data for each in holding):
            continue
        opened = opening_of(data)
        # A job whose opening cannot be read has no profile and no gun to go by.
        keys = ("", *(each.key for each in opened.products)) if opened else ()
        # Which gun it was in the end, what the log adds up to says.
        may_be_it = opened and (gun in ("", opened.gun) or b'"gun changed"' in data)
        if opened is None or profile_key not in keys or not may_be_it:
            continue
        if opened.rehearsal and not rehearsals:
            continue
        found = PastLog(path, data, opened)
        if not those_left_out and LEFT_OUT in data:
            every = found.products()
            if every and why_left_out(every[-1]) is not None:
                continue
        yield found
