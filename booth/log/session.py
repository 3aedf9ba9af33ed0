"""A job being worked on: its log on disk and the Job it adds up to, which move together or not at all.

A tool that keeps folders the same, or an editor, puts a copy in the place of the file: where the
copy holds everything that was kept, the job goes on in it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from msgspec.structs import replace

from booth.files.atomic import set_aside
from booth.files.safe_text import visible
from booth.log.codec import encode
from booth.log.errors import LogBusy, NotKept, not_done
from booth.log.events import Event, JobOpened, UnknownEvent, Voided
from booth.log.fold import Entry, Job, NoJob, fold
from booth.log.log_file import Log
from booth.log.store import create_log, open_log
from booth.moment import Moment


class Session:
    """The one writer of one job: an event is on disk before the Job moves, or the Job does not move."""

    def __init__(self, log: Log, events: Iterable[Entry]) -> None:
        self.log = log
        self.job: Job = fold(events)
        self._is_closed = False
        self._given: set[str] = set()

    @classmethod
    def begin(cls, folder: Path, opened: JobOpened) -> Session:
        """Open a new job in `folder`. Raises NotKept where it cannot be written."""
        log = create_log(folder, replace(opened, n=1))
        return cls(log, log.content.events)

    @classmethod
    def resume(cls, path: Path) -> Session:
        """Go on with the job at `path`. Raises LogBusy, NotKept or NoJob."""
        log = open_log(path)
        try:
            if log.content.fault:
                raise NoJob(f"{visible(path.name)}: {log.content.fault}")
            return cls(log, log.content.events)
        except BaseException:
            log.close()
            raise

    def renewed(self) -> Session:
        """Go on with this job from its file, whatever became of that; let go of this one.

        What was kept here and is not in the file any more is set aside beside it, and told.
        Raises as ``resume``.
        """
        kept = self.job.events
        self.log.close()
        try:
            fresh = Session.resume(self.log.path)
        except NoJob as fault:
            raise NoJob(f"{fault} {set_aside_missing(self.log.path, kept)}") from fault
        missing = missing_from(fresh.job.events, kept)
        if missing:
            fresh.log.said.append(set_aside_missing(self.log.path, missing))
        return fresh

    def news(self) -> tuple[str, ...]:
        """Give what was found wrong with the log since it was opened, each sentence once."""
        news = tuple(each for each in dict.fromkeys(self.log.said) if each not in self._given)
        self._given.update(news)
        return news

    def record(self, event: Event) -> Event:
        """Number the event, keep it on disk, then let the Job move; give it as it was kept.

        Where the file is no longer the one that was opened, go on in what has its name, if that
        holds all that was kept. Raises NotKept.
        """
        try:
            kept = self._append(event)
        except NotKept:
            if self._is_closed or self.log.is_in_place:
                raise
            said, self.log = self.log.said, reopened(self.log, self.job.events)
            self.log.said[:0] = said
            self.job = fold(self.log.content.events)
            kept = self._append(event)
        self.job = fold((*self.job.events, kept))
        return kept

    def _append(self, event: Event) -> Event:
        return self.log.append(replace(event, n=self.job.next_n))

    def reopen(self, now: Moment) -> None:
        """Void every closing of the job: two booths may each have closed it. Raises NotKept."""
        while self.job.closed is not None:
            self.record(Voided(n=0, at=now, target=self.job.closed.n))

    def close(self) -> None:
        self._is_closed = True
        self.log.close()


def reopened(log: Log, kept: Sequence[Entry]) -> Log:
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


def missing_from(found: Sequence[Entry], kept: Sequence[Entry]) -> list[Entry]:
    """Give what of `kept` is not among `found`."""
    if list(found[: len(kept)]) == list(kept):
        return []
    there: dict[int, list[Entry]] = {}
    for event in found:
        there.setdefault(event.n, []).append(event)
    return [event for event in kept if event not in there.get(event.n, ())]


def set_aside_missing(path: Path, missing: Sequence[Entry]) -> str:
    """Save entries that are no longer in the log in a file beside it; give the sentence about it."""
    count = f"{len(missing)} entries" if len(missing) > 1 else "An entry"
    said = f"{count} of this job, kept before, can no longer be found in its log"
    try:
        beside = set_aside(path, b"".join(_line(event) for event in missing))
    except OSError as fault:
        return f"{said}. {not_done(path, fault, 'They cannot be set aside')}"
    return f"{said}: set aside in {visible(beside.name)}."


def _line(event: Entry) -> bytes:
    return event.line.encode() + b"\n" if isinstance(event, UnknownEvent) else encode(event)
