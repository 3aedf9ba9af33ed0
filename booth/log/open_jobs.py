"""The jobs that are open: the one on the bench, those left open in this run, those found on disk.

What is only listed, or rings, is read without the writer's lock: another booth can take it up at any
time. The lock is taken when a job is taken up and while an alarm is acknowledged; and, for a moment, to
see whether a job that was open in another booth still is.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path

import msgspec

from booth.log.copies import is_beginning
from booth.log.errors import LogBusy, NotKept
from booth.log.events import Event, JobOpened
from booth.log.fold import Job, NoJob
from booth.log.found_jobs import FoundJobs
from booth.log.session import Session
from booth.log.store import is_free
from booth.log.summary import JobSummary, summarise
from booth.moment import Moment


class OpenJob(msgspec.Struct, frozen=True):
    """One open job. session: where it is held here; rings: whether its alarms are for this booth.

    A job last written to before this machine was started is another machine's, or old: listed only.
    """

    path: Path
    name: str
    job: Job
    session: Session | None = None
    rings: bool = True


class OpenJobs:
    """All open jobs of a folder. boot: the machine's present start; kept: see ``FoundJobs``.

    ``look`` reads the disk and may run in a thread; ``jobs`` gives what was seen then.
    """

    def __init__(self, folder: Path, boot: str, kept: Path | None = None) -> None:
        self.current: Session | None = None
        #: those on disk; also the logs that hold no job which can be opened (``found.unread``)
        self.found = FoundJobs(folder, kept)
        self._folder = folder
        self._boot = boot
        #: those held here, by the real path: the one on the bench, and those left open in this run
        self._held: dict[str, Session] = {}
        #: jobs that were found open in another booth, or that may not be written to here
        self._elsewhere: frozenset[Path] = frozenset()
        #: what was said of a log that was open here for a moment only
        self._told: dict[str, tuple[str, ...]] = {}

    # -- on the bench ----------------------------------------------------------------------------

    def begin(self, opened: JobOpened) -> Session:
        return self._put_up(Session.begin(self._folder, opened))

    def take_up(self, path: Path, reopened_at: Moment | None = None) -> Session:
        """Put the job at `path` on the bench, from its file where that is not as it was left.

        reopened_at: where given, the closing of a closed job is voided.

        Raises:
            LogBusy: it is open in another booth.
            NotKept: its log cannot be opened for writing.
            NoJob: the file holds no job that can be opened.
        """
        session = self._open(path)
        if reopened_at is not None:
            try:
                session.reopen(reopened_at)
            except BaseException:
                if session not in self.sessions:
                    session.close()
                raise
        return self._put_up(session)

    def leave(self) -> None:
        """Clear the bench: an open job is kept, a closed one is let go."""
        session, self.current = self.current, None
        if session is None:
            return
        real = _real(session.log.path)
        del self._held[real]
        if session.job.closed is None:
            self._held[real] = session
        else:
            session.close()
            self.found.moved_on(session.log.path, session.job)

    def close(self) -> None:
        """Let go of every log."""
        for session in self.sessions:
            session.close()
        self.current, self._held = None, {}

    @property
    def sessions(self) -> tuple[Session, ...]:
        """Those held here: the one on the bench first, then those left open in this run."""
        return tuple(sorted(self._held.values(), key=lambda each: each is not self.current))

    def _open(self, path: Path) -> Session:
        real = _real(path)
        known = self._held.get(real)
        if known is None:
            session = Session.resume(path)
            session.log.said += (*self._told.pop(real, ()), *self.found.differs(path))
            return session
        if known.log.is_in_place:
            return known
        fresh = self._held[real] = known.renewed()
        self.current = fresh if self.current is known else self.current
        return fresh

    def _put_up(self, session: Session) -> Session:
        if session is not self.current:
            self.leave()
            self._held[_real(session.log.path)] = self.current = session
        return session

    # -- on the disk -----------------------------------------------------------------------------

    def look(self, most: int | None = None) -> None:
        """Read the folder anew, see ``FoundJobs.look``. May run in a thread."""
        held = frozenset(self._held)
        self.found.look(lambda path: bool(held) and _real(path) in held, most)
        self._elsewhere = frozenset(path for path in self._elsewhere if not is_free(path))

    def jobs(self, closed: bool = False) -> tuple[OpenJob, ...]:
        """Give the open jobs: on the bench, left in this run, then those on disk, newest first; or,
        of those on disk, the closed ones that run on."""
        own = [
            OpenJob(each.log.path, self.found.name(each.log.path), each.job, each)
            for each in self.sessions
            if each.job.closed is None and not closed
        ]
        found = [
            OpenJob(
                path,
                self.found.name(path),
                job,
                rings=job.events[-1].at.boot == self._boot and path not in self._elsewhere,
            )
            for path, job in (self.found.closed if closed else self.found.open)
            if _real(path) not in self._held and not _is_of_one(self.sessions, job)
        ]
        return (*own, *found)

    def open_jobs_with(self, key: str) -> tuple[OpenJob, ...]:
        """Give the open jobs begun from a coating profile or system, the one last written to first."""
        found = [each for each in self.jobs() if each.job.opened.begun_from == key]
        return tuple(sorted(found, key=lambda each: -each.job.events[-1].at.wall))

    def acknowledge(self, path: Path, event: Event) -> bool:
        """Keep the event that silences an alarm in the log at `path`; NotKept where that fails.

        False where another booth has that job open, or it may not be written to here: its alarms
        are no longer for this booth.
        """
        try:
            session = self._held.get(_real(path)) or Session.resume(path)
        except (LogBusy, NotKept, NoJob):
            self._elsewhere |= {path}
            return False
        self._keep_in(session, path, event)
        return True

    def keep(self, path: Path, event: Event) -> None:
        """Keep an event in the log at `path`, open or closed. Raises as ``take_up``."""
        self._keep_in(self._held.get(_real(path)) or Session.resume(path), path, event)

    def _keep_in(self, session: Session, path: Path, event: Event) -> None:
        """Keep an event; a log that was opened for it alone is let go of again."""
        if session in self.sessions:
            session.record(event)
            return
        try:
            session.record(event)
        finally:
            session.close()
            real = _real(path)
            self._told[real] = (*self._told.get(real, ()), *session.news())
        self.found.moved_on(path, session.job)


def summaries(jobs: OpenJobs) -> list[JobSummary]:
    """Every job of the folder as a list tells it, those held here as their files are now."""
    return jobs.found.summaries([summarise(each.log.path) for each in jobs.sessions])


def _is_of_one(sessions: Iterable[Session], job: Job) -> bool:
    """Whether a job is a copy, or the beginning, of one of those held here."""
    return any(
        each.job.opened == job.opened and is_beginning(job.events, each.job.events)
        for each in sessions
    )


def _real(path: Path) -> str:
    return os.path.realpath(path)
