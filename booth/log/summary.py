"""One job in a line: what a list of jobs says, read fast from the bytes of its log.

Only the first line is read in full; of the others, number, moment and kind. Whatever is unusual
about a log sends it through the full reading, which takes five times as long.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

import msgspec

from booth.log.codec import BrokenLine
from booth.log.events import Event, JobClosed, JobOpened, UnknownEvent
from booth.log.fold import void_numbers
from booth.log.naming import short_name
from booth.log.parse import MOST_AHEAD, holds_nothing, parse, read_line
from booth.log.store import log_bytes
from booth.moment import Moment


@dataclass(frozen=True, slots=True)
class JobSummary:
    """One job of a list.

    closed: None while it is open; events: entries in the log; broken: lines that are none; fault:
    why the job cannot be opened at all, as a sentence, else empty; longer_name: where another job of
    the folder shares its name; is_empty: there is nothing in the file (see ``store.clear_away``).
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
    is_empty: bool = False

    @property
    def name(self) -> str:
        return self.longer_name or short_name(self.path)

    @property
    def is_open(self) -> bool:
        return self.opened is not None and self.closed is None


class _Head(msgspec.Struct, gc=False):
    """What a list needs of any event."""

    event: str
    n: int
    at: Moment
    target: int = 0
    verdict: str = ""


_heads = msgspec.json.Decoder(_Head)
_CLOSED = JobClosed.__struct_config__.tag


def summarise(path: Path, longer_name: str = "") -> JobSummary:
    """Give the summary of the log at `path`; a log that cannot be read gets one with its fault."""
    try:
        found = summary_of(path, log_bytes(path))
    except OSError as fault:
        found = unreadable(path, fault)
    return replace(found, longer_name=longer_name) if longer_name else found


def unreadable(path: Path, fault: OSError) -> JobSummary:
    """Give the summary of a file that cannot be read."""
    why = fault.strerror or type(fault).__name__
    return JobSummary(path, fault=f"The file cannot be read: {why}.")


def summary_of(path: Path, data: bytes) -> JobSummary:
    """Give the summary of a log's bytes. Never raises."""
    if not data.endswith(b"\n"):
        return _slowly(path, data)
    try:
        opened = read_line(data[: data.index(b"\n")])
        heads = _heads.decode_lines(data)
    except (BrokenLine, ValueError, ArithmeticError, RecursionError):
        return _slowly(path, data)
    if not isinstance(opened, JobOpened) or opened.n != 1:
        return _slowly(path, data)
    numbers = [head.n for head in heads]
    if len(heads) != data.count(b"\n") or not (
        numbers == [*range(1, len(numbers) + 1)] or _ascend(numbers)
    ):
        return _slowly(path, data)
    void: set[int] = set()
    for head in heads:
        if head.event == "voided":
            void.add(head.target)
        elif head.event == "restored":
            void.discard(head.target)
    closed = [head for head in heads if head.event == _CLOSED and head.n not in void]
    return _summary(path, opened, closed[-1] if closed else None, len(heads), 0)


def _ascend(numbers: list[int]) -> bool:
    return numbers == sorted(set(numbers)) and numbers[-1] <= len(numbers) + MOST_AHEAD


def opening_of(data: bytes) -> JobOpened | None:
    """Give the event that opens the job, usually the first line; None where there is none."""
    try:
        first = read_line(data.partition(b"\n")[0])
    except BrokenLine:
        first = None
    if isinstance(first, JobOpened) and first.n == 1:
        return first
    return _opened(parse(data).events)


def _opened(events: Iterable[Event | UnknownEvent]) -> JobOpened | None:
    return next((event for event in events if isinstance(event, JobOpened)), None)


def _slowly(path: Path, data: bytes) -> JobSummary:
    content = parse(data)
    broken = len(content.broken) + (content.torn is not None)
    opened = _opened(content.events)
    if opened is None:
        return JobSummary(
            path,
            events=len(content.events),
            broken=broken,
            fault=content.fault,
            is_empty=holds_nothing(data),
        )
    return _summary(path, opened, _closing(content.events), len(content.events), broken)


def _closing(events: Iterable[Event | UnknownEvent]) -> JobClosed | None:
    events = list(events)
    void = void_numbers(events)
    closed = [each for each in events if isinstance(each, JobClosed) and each.n not in void]
    return closed[-1] if closed else None


def _summary(
    path: Path, opened: JobOpened, closed: _Head | JobClosed | None, events: int, broken: int
) -> JobSummary:
    return JobSummary(
        path=path,
        job=opened.job or path.stem,
        profile_key=opened.profile.key,
        profile_name=opened.profile.name,
        parts=opened.parts,
        gun=opened.gun,
        opened=opened.at,
        closed=closed.at if closed else None,
        verdict=closed.verdict if closed else "",
        events=events,
        broken=broken,
    )
