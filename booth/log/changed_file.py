"""A log that something else replaced, shortened or took away while its job was open.

A tool that keeps folders the same, or an editor, puts a copy in the place of a file: where the copy
holds everything that was kept, the job goes on in it.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from booth.files.atomic import set_aside
from booth.files.safe_text import visible
from booth.log.codec import encode
from booth.log.errors import LogBusy, NotKept, not_opened
from booth.log.events import Event, UnknownEvent
from booth.log.log_file import Log
from booth.log.store import open_log

Entries = Sequence[Event | UnknownEvent]


def reopened(log: Log, kept: Entries) -> Log:
    """Close the log and open its file anew, if that holds all of `kept`, in any order, or more.

    Raises:
        NotKept: it does not, or cannot be opened; the entry that was to be kept is not.
    """
    log.close()
    what = "This entry is NOT kept"
    shown = visible(str(log.path))
    try:
        fresh = open_log(log.path)
    except LogBusy:
        raise NotKept(
            f"{what}: the log {shown} was replaced, and another booth has the new one open. Go on "
            "with the job there; or close it there, then enter this again."
        ) from None
    except NotKept as fault:
        raise NotKept(f"{what}. {fault} Note it on paper until then.") from fault
    missing = missing_from(fresh.content.events, kept)
    if missing:
        fresh.close()
        raise NotKept(
            f"{what}: something else changed the log {shown}: {len(missing)} of {len(kept)} entries "
            "that were kept are no longer in it. Put the whole file back and enter it again; or "
            "leave the job and open it again to go on from what the file holds: what it lacks is "
            "set aside beside it. Note it on paper until then."
        )
    return fresh


def missing_from(found: Entries, kept: Entries) -> list[Event | UnknownEvent]:
    """Give what of `kept` is not among `found`."""
    if list(found[: len(kept)]) == list(kept):
        return []
    there: dict[int, list[Event | UnknownEvent]] = {}
    for event in found:
        there.setdefault(event.n, []).append(event)
    return [event for event in kept if event not in there.get(event.n, ())]


def set_aside_missing(path: Path, missing: Entries) -> str:
    """Save entries that are no longer in the log in a file beside it; give the sentence about it."""
    count = f"{len(missing)} entries" if len(missing) > 1 else "An entry"
    said = f"{count} of this job, kept before, can no longer be found in its log"
    try:
        beside = set_aside(path, b"".join(_line(event) for event in missing))
    except OSError as fault:
        return f"{said}. {not_opened(path, fault, 'They cannot be set aside')}"
    return f"{said}: set aside in {visible(beside.name)}."


def _line(event: Event | UnknownEvent) -> bytes:
    return event.line.encode() + b"\n" if isinstance(event, UnknownEvent) else encode(event)
