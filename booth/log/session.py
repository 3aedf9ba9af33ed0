"""A job being worked on: its log on disk and the Job it adds up to, which move together or not at all."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import msgspec

from booth.files.safe_text import visible
from booth.log.changed_file import missing_from, reopened, set_aside_missing
from booth.log.errors import NotKept, StillWriting
from booth.log.events import Event, JobOpened, UnknownEvent, Voided
from booth.log.fold import Job, NoJob, added, fold
from booth.log.log_file import Log, checked
from booth.log.store import create_log, open_log
from booth.moment import Moment


class Pending:
    """An event on its way to the disk: numbered, known to be writable, not yet said to be kept.

    Where the log had to be opened anew and holds more than was known, writing gives it another number.
    """

    def __init__(self, session: Session, event: Event) -> None:
        self.event = event
        self.is_written = False
        self._session = session

    def write(self) -> None:
        """Bring the event onto the disk. It may take long: it may run in a thread.

        Raises:
            NotKept: it is not on the disk. The event is done with; the session takes the next.
        """
        self._session._write(self)


class Session:
    """The one writer of one job.

    ``record`` is the way in: the event is on disk before the Job moves, and where it cannot be kept
    the Job does not move (NotKept passes through to be shown). Its three steps may be taken apart
    for a slow disk: ``prepare``, then ``write`` of what it gives, in a thread, then ``commit``.
    """

    def __init__(self, log: Log, events: Iterable[Event | UnknownEvent]) -> None:
        self.log = log
        self.job: Job = fold(events)
        self._pending: Pending | None = None
        #: what a log that had to be opened anew holds, until the Job has moved there
        self._found: list[Event | UnknownEvent] | None = None
        self._is_closed = False
        self._told: list[str] = []
        self._given: set[str] = set()

    @classmethod
    def begin(cls, folder: Path, opened: JobOpened) -> Session:
        """Open a new job in `folder`. Raises NotKept where it cannot be written."""
        log = create_log(folder, msgspec.structs.replace(opened, n=1))
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
            fresh.tell([set_aside_missing(self.log.path, missing)])
        return fresh

    # -- what to say of the log ------------------------------------------------------------------

    @property
    def told(self) -> tuple[str, ...]:
        """What was found wrong with the log since it was opened, and what was done about it."""
        return (*self._told, *self.log.said)

    def tell(self, sentences: Iterable[str]) -> None:
        """Have these told with what is wrong with the log."""
        self._told.extend(sentences)

    def news(self) -> tuple[str, ...]:
        """Give what of ``told`` was not given before: each sentence is for the painter once."""
        news = tuple(each for each in self.told if each not in self._given)
        self._given.update(news)
        return news

    # -- keeping ---------------------------------------------------------------------------------

    def record(self, event: Event) -> Event:
        """Number the event, keep it on disk, then let the Job move. Raises NotKept."""
        pending = self.prepare(event)
        pending.write()
        return self.commit(pending)

    def prepare(self, event: Event) -> Pending:
        """Number an event and see that it can be written down. One at a time.

        Raises:
            NotKept: it cannot; StillWriting, while the one before it is neither kept nor refused.
        """
        if self._pending is not None:
            raise StillWriting
        self._catch_up()
        _, numbered = checked(msgspec.structs.replace(event, n=self.job.next_n))
        self._pending = Pending(self, numbered)
        return self._pending

    def commit(self, pending: Pending) -> Event:
        """Let the Job move to an event that is written; give it as it was kept."""
        if pending is not self._pending or not pending.is_written:
            raise ValueError("only what was just written can be committed")
        self._pending = None
        self._catch_up()
        self.job = added(self.job, pending.event)
        return pending.event

    def reopen(self, now: Moment) -> None:
        """Void every closing of the job: two booths may each have closed it. Raises NotKept."""
        while self.job.closed is not None:
            self.record(Voided(n=0, at=now, target=self.job.closed.n))

    def close(self) -> None:
        """Let go of the log, once nothing is being written to it."""
        self._is_closed = True
        self.log.close()

    def _write(self, pending: Pending) -> None:
        if pending is not self._pending or pending.is_written:
            raise ValueError("only what was just prepared can be written, once")
        try:
            try:
                self.log.append(pending.event)
            except NotKept:
                if self._is_closed or self.log.is_in_place:
                    raise
                self._reopen(pending)
                self.log.append(pending.event)
        except BaseException:
            self._pending = None
            raise
        pending.is_written = True

    def _reopen(self, pending: Pending) -> None:
        """The file is no longer the one that was opened: go on where it holds all that was kept."""
        kept = self.job.events if self._found is None else self._found
        said = self.log.said
        self.log = reopened(self.log, kept)
        self._told += said
        self._found = self.log.content.events
        last = max(event.n for event in self._found)
        pending.event = msgspec.structs.replace(pending.event, n=last + 1)

    def _catch_up(self) -> None:
        if self._found is not None:
            self.job, self._found = fold(self._found), None
