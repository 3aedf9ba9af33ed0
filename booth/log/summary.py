"""One job in a line: what a list of jobs says of a log."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

import msgspec
from msgspec.structs import replace

from booth.log.codec import BrokenLine
from booth.log.events import JobClosed, JobOpened
from booth.log.fold import Entry, void_numbers
from booth.log.naming import short_name
from booth.log.parse import LogContent, parse, read_line
from booth.log.store import log_bytes
from booth.moment import Moment


class JobSummary(msgspec.Struct, frozen=True):
    """One job of a list.

    closed: None while it is open; events: entries in the log; broken: lines that are none; fault:
    why the job cannot be opened at all, as a sentence, else empty; longer_name: where another job of
    the folder shares its name.
    """

    path: Path
    job: str = ""
    profile_key: str = ""
    profile_name: str = ""
    parts: tuple[str, ...] = ()
    gun: str = ""
    opened: Moment | None = None
    closed: Moment | None = None
    verdict: str = ""
    events: int = 0
    broken: int = 0
    fault: str = ""
    longer_name: str = ""

    @property
    def name(self) -> str:
        return self.longer_name or short_name(self.path)

    @property
    def is_open(self) -> bool:
        return self.opened is not None and self.closed is None


def summarise(path: Path, longer_name: str = "") -> JobSummary:
    """Give the summary of the log at `path`; a log that cannot be read gets one with its fault."""
    try:
        found = summary_of(path, parse(log_bytes(path)))
    except OSError as fault:
        found = unreadable(path, fault)
    return replace(found, longer_name=longer_name) if longer_name else found


def unreadable(path: Path, fault: OSError) -> JobSummary:
    why = fault.strerror or type(fault).__name__
    return JobSummary(path, fault=f"The file cannot be read: {why}.")


def summary_of(path: Path, content: LogContent) -> JobSummary:
    """Give the summary of what a log holds."""
    broken = len(content.broken) + (content.torn is not None)
    found = JobSummary(path, events=len(content.events), broken=broken, fault=content.fault)
    opened = _opened(content.events)
    if opened is None:
        return found
    void = void_numbers(content.events)
    closings = [
        each for each in content.events if isinstance(each, JobClosed) and each.n not in void
    ]
    closed = closings[-1] if closings else None
    return replace(
        found,
        job=opened.job or path.stem,
        profile_key=opened.profile.key,
        profile_name=opened.profile.name,
        parts=opened.parts,
        gun=opened.gun,
        opened=opened.at,
        closed=closed.at if closed else None,
        verdict=closed.verdict if closed else "",
    )


def opening_of(data: bytes) -> JobOpened | None:
    """Give the event that opens the job, usually the first line; None where there is none."""
    with suppress(BrokenLine):
        first = read_line(data.partition(b"\n")[0])
        if isinstance(first, JobOpened) and first.n == 1:
            return first
    return _opened(parse(data).events)


def _opened(events: Iterable[Entry]) -> JobOpened | None:
    return next((event for event in events if isinstance(event, JobOpened)), None)
