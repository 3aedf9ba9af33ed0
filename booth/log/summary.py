"""One job in a line: what a list of jobs says, read fast from the bytes of its log.

Only the first line is read in full; of the others, number, moment and kind. Whatever is unusual
about a log sends it through the full reading, which takes five times as long.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

import msgspec
from msgspec.structs import replace

from booth.log.afterwards import later_verdicts, verdict_now
from booth.log.changes import fitted_of, parts_of
from booth.log.codec import UNREADABLE, BrokenLine, Header
from booth.log.events import (
    FaultSeen,
    GunChanged,
    JobClosed,
    JobOpened,
    JudgedAgain,
    NoteMade,
    PartsChanged,
    ProductBegun,
    Restored,
    Voided,
)
from booth.log.fold import Entry, void_numbers
from booth.log.naming import short_name
from booth.log.parse import MOST_AHEAD, parse, read_line
from booth.log.rack import Rack, in_a_line
from booth.log.store import log_bytes
from booth.log.stretches import stretches_of
from booth.moment import Moment


class JobSummary(msgspec.Struct, frozen=True):
    """One job of a list.

    profile_name: of what it was begun from, a coating system perhaps; closed: None while it is open;
    events: entries in the log; broken: lines that are none; fault: why the job cannot be opened at
    all, as a sentence, else empty; longer_name: where another job of the folder shares its name;
    product: the one it has come to, where it has several; racks: those whose sides are parts; verdict:
    the latest one, first_verdict: that of the closing; id: what the log itself calls the job; copies:
    sentences on other files that hold this job; differs: whether one of them holds something else;
    products: key and name of each that was begun; notes, faults (their keys), said (in words of its
    verdicts), next_time: what can be searched for; rehearsal: whether it was done with
    water, and is no job.
    """

    path: Path
    job: str = ""
    profile_name: str = ""
    parts: tuple[str, ...] = ()
    gun: str = ""
    opened: Moment | None = None
    closed: Moment | None = None
    verdict: str = ""
    first_verdict: str = ""
    id: str = ""
    copies: tuple[str, ...] = ()
    differs: bool = False
    events: int = 0
    broken: int = 0
    fault: str = ""
    longer_name: str = ""
    product: str = ""
    racks: tuple[Rack, ...] = ()
    products: tuple[tuple[str, str], ...] = ()
    notes: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    said: tuple[str, ...] = ()
    next_time: str = ""
    rehearsal: bool = False

    @property
    def sprayed(self) -> str:
        """Its parts in a line, each rack once, with its sides."""
        return in_a_line(self.parts, self.racks)

    @property
    def name(self) -> str:
        return self.longer_name or short_name(self.path)

    @property
    def identity(self) -> tuple[Moment, str, str] | None:
        """What files share that may hold one and the same job; None where there is no job."""
        return None if self.opened is None else (self.opened, self.id, self.profile_name)

    @property
    def is_open(self) -> bool:
        return self.opened is not None and self.closed is None


_heads = msgspec.json.Decoder(Header)
#: The kinds that decide whether a job is closed, its product, parts and gun, and those that are
#: searched: read in full.
_READ = (
    *(Voided, Restored, JobClosed, JudgedAgain, ProductBegun, PartsChanged, GunChanged),
    *(NoteMade, FaultSeen),
)
_DECIDING = {kind.__struct_config__.tag for kind in _READ}


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
    return _quickly(path, data) or _slowly(path, data)


def opening_of(data: bytes) -> JobOpened | None:
    """Give the event that opens the job, usually the first line; None where there is none."""
    return _first_line(data) or _opened(parse(data).events)


def _first_line(data: bytes) -> JobOpened | None:
    try:
        first = read_line(data.partition(b"\n")[0])
    except BrokenLine:
        return None
    return first if isinstance(first, JobOpened) and first.n == 1 else None


def _opened(events: Iterable[Entry]) -> JobOpened | None:
    return next((event for event in events if isinstance(event, JobOpened)), None)


def _quickly(path: Path, data: bytes) -> JobSummary | None:
    opened = _first_line(data)
    if opened is None or not data.endswith(b"\n"):
        return None
    lines = data.split(b"\n")[:-1]
    try:
        heads = _heads.decode_lines(data)
        numbers = [head.n for head in heads]
        if (
            len(heads) != len(lines)
            or numbers != sorted(set(numbers))
            or numbers[-1] > len(numbers) + MOST_AHEAD
        ):
            return None
        deciding = [
            read_line(line)
            for head, line in zip(heads, lines, strict=True)
            if head.event in _DECIDING
        ]
    except UNREADABLE:
        return None
    return _told(JobSummary(path, events=len(heads)), [opened, *deciding])


def _slowly(path: Path, data: bytes) -> JobSummary:
    content = parse(data)
    broken = len(content.broken) + (content.torn is not None)
    found = JobSummary(path, events=len(content.events), broken=broken, fault=content.fault)
    return _told(found, content.events)


def _told(found: JobSummary, events: Sequence[Entry]) -> JobSummary:
    """The summary with what these entries say of the job."""
    opened = _opened(events)
    if opened is None:
        return found
    void = void_numbers(events)
    live = [each for each in events if each.n not in void]
    closings = [each for each in live if isinstance(each, JobClosed)]
    product = stretches_of(live, len(opened.products))[-1].product
    closed = closings[-1] if closings else None
    judged = [each for each in (closed, *later_verdicts(live, closed)) if each is not None]
    next_times = [each.next_time for each in judged if each.next_time.strip()]
    present = parts_of(opened, live)
    return replace(
        found,
        job=opened.job or found.path.stem,
        id=opened.job,
        profile_name=opened.title,
        product=opened.present(product) if opened.later else "",
        parts=present.names,
        racks=present.racks,
        gun=fitted_of(opened, live).gun,
        opened=opened.at,
        closed=closed.at if closed else None,
        verdict=verdict_now(live, closed, closed.verdict) if closed else "",
        first_verdict=closed.verdict if closed else "",
        products=tuple((each.key, each.name) for each in opened.products[:product]),
        notes=tuple(each.text for each in live if isinstance(each, NoteMade)),
        faults=tuple(dict.fromkeys(each.fault for each in live if isinstance(each, FaultSeen))),
        said=tuple(each.words for each in judged if each.words.strip()),
        next_time=next_times[-1] if next_times else "",
        rehearsal=opened.rehearsal,
    )
