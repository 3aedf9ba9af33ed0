"""The jobs in the logs of a folder, read without the writer's lock, and read again when a file changed."""

from __future__ import annotations

import os
import threading
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import msgspec
from msgspec.structs import replace

from booth.log.copies import Apart, groups_by, told_apart
from booth.log.fold import Job, fold
from booth.log.kept_summaries import read_summaries, write_summaries
from booth.log.naming import longer_names, short_name
from booth.log.parse import parse
from booth.log.store import log_bytes, log_files
from booth.log.summary import JobSummary, summary_of, unreadable

#: So many of the jobs that were closed last are read in full.
MOST_CLOSED = 40
#: Where so many logs had to be read, what a list says of them is kept for the next start.
WORTH_KEEPING = 200
#: While many are read, what was found is given out after so many.
AT_A_TIME = 250


class _Found(msgspec.Struct, frozen=True):
    """A log as it was read when its file had this stamp. job: what it adds up to, while open or asked
    for."""

    stamp: tuple[int, ...]
    summary: JobSummary
    job: Job | None = None


class FoundJobs:
    """What was found when the folder was last looked at. kept: the file in which it is kept what a list
    says of many jobs, if anywhere."""

    def __init__(self, folder: Path, kept: Path | None = None) -> None:
        self._folder = folder
        self._kept = kept
        self._found: Mapping[Path, _Found] = {}
        #: how many logs were left unread when the folder was last looked at
        self.unseen = 0
        self._looking = threading.Lock()
        self._longer: Mapping[Path, str] = {}
        self._run_on: tuple[Path, ...] = ()
        self._apart = Apart()
        self._compared: tuple[tuple[Path, tuple[int, ...]], ...] = ()

    def look(self, passing_over: Callable[[Path], bool], most: int | None = None) -> None:
        """Read the folder anew: of its files, only those that changed. May run in a thread.

        most: where given, no more than so many files are read, those with the latest names; the
        rest is left for another look (see ``unseen``). Nothing is read then while another thread
        reads: it finds the same.
        """
        if not self._looking.acquire(blocking=most is None):
            return
        try:
            self._look(passing_over, most)
        finally:
            self._looking.release()

    @property
    def is_looking(self) -> bool:
        """Whether the folder is being read this moment."""
        return self._looking.locked()

    def _look(self, passing_over: Callable[[Path], bool], most: int | None) -> None:
        paths = log_files(self._folder)
        before = self._found or self._from_file(paths)
        found: dict[Path, _Found] = {}
        read: dict[Path, _Found] = {}
        count = unseen = 0
        for path in paths:
            if passing_over(path):
                continue
            stamp = _stamp(path)
            known = before.get(path)
            if known and known.stamp == stamp:
                found[path] = known
            elif most is not None and count >= most:
                unseen += 1
            else:
                found[path] = read[path] = _read(path, stamp)
                count += 1
            if len(read) >= AT_A_TIME:
                self._found, read = {**self._found, **read}, {}
        # Some job may have moved on while this was read.
        found |= {path: each for path, each in self._found.items() if before.get(path) is not each}
        self._compare(found)
        self._longer, self._found, self.unseen = longer_names(paths), found, unseen
        if self._kept is not None and count >= WORTH_KEEPING:
            write_summaries(self._kept, ((each.stamp, each.summary) for each in found.values()))

    def _from_file(self, paths: Iterable[Path]) -> Mapping[Path, _Found]:
        kept = read_summaries(self._kept, paths) if self._kept is not None else {}
        return {path: _Found(stamp, summary) for path, (stamp, summary) in kept.items()}

    def summaries(self, others: Iterable[JobSummary] = ()) -> list[JobSummary]:
        """Every job once, the newest first; what cannot be read stands last. Rehearsals are among them,
        and say so.

        others: of logs that were passed over.
        """
        found = [*(each.summary for each in self._found.values()), *others]
        told = [self._told(each) for each in found if each.path not in self._apart.begins]
        return sorted(
            told,
            key=lambda job: (1, 0.0) if job.opened is None else (0, -job.opened.wall),
        )

    def _told(self, summary: JobSummary) -> JobSummary:
        """A summary with what there is to say of it beside the others of the folder."""
        longer, copies = self._longer.get(summary.path, ""), self._apart.words(summary.path)
        if not longer and not copies:
            return summary
        differs = summary.path in self._apart.differs
        return replace(summary, longer_name=longer, copies=copies, differs=differs)

    def _compare(self, found: Mapping[Path, _Found]) -> None:
        """See which files are copies or beginnings of others; again only where one of them changed."""
        groups = groups_by((each.summary.identity, path) for path, each in found.items())
        compared = tuple((path, found[path].stamp) for group in groups for path in group)
        if compared != self._compared:
            self._compared, self._apart = compared, told_apart(groups)

    def differs(self, path: Path) -> tuple[str, ...]:
        """What is to be said of a log where another file of the folder holds the same job otherwise."""
        return (self._apart.differs[path],) if path in self._apart.differs else ()

    @property
    def open(self) -> tuple[tuple[Path, Job], ...]:
        """The open jobs, the newest first."""
        jobs = [
            (path, each.job)
            for path, each in self._found.items()
            if each.job is not None and each.job.closed is None and path not in self._apart.begins
        ]
        return tuple(sorted(jobs, key=lambda each: -each[1].opened.at.wall))

    def read_closed(self, after_s: float, runs_on: Callable[[Job], bool]) -> None:
        """Read the jobs that were closed after a wall time [s], each file once; ``closed`` gives those
        that run on."""
        lately = [
            (path, each)
            for path, each in self._found.items()
            if each.summary.closed is not None
            and each.summary.closed.wall > after_s
            and path not in self._apart.begins
        ]
        lately.sort(key=lambda each: -each[1].summary.closed.wall if each[1].summary.closed else 0)
        read = {
            path: each if each.job is not None else replace(each, job=_job(path))
            for path, each in lately[:MOST_CLOSED]
        }
        self._found = {**self._found, **read}
        self._run_on = tuple(path for path, each in read.items() if each.job and runs_on(each.job))

    @property
    def closed(self) -> tuple[tuple[Path, Job], ...]:
        """The closed jobs that ran on when they were read last, the last closed first."""
        found = ((path, self._found.get(path)) for path in self._run_on)
        return tuple((p, e.job) for p, e in found if e and e.job and e.job.closed is not None)

    @property
    def unread(self) -> tuple[JobSummary, ...]:
        """The logs that hold no job which can be opened, each with its fault."""
        return tuple(each.summary for each in self._found.values() if each.summary.fault)

    def name(self, path: Path) -> str:
        return self._longer.get(path) or short_name(path)

    def moved_on(self, path: Path, job: Job) -> None:
        """Take `job` for what the log at `path` holds, until its file is read again."""
        seen = self._found.get(path)
        if seen is not None:
            self._found = {**self._found, path: replace(seen, job=job)}


def _read(path: Path, stamp: tuple[int, ...]) -> _Found:
    try:
        data = log_bytes(path)
    except OSError as fault:
        return _Found(stamp, unreadable(path, fault))
    summary = summary_of(path, data)
    return _Found(stamp, summary, _folded(data) if summary.is_open else None)


def _job(path: Path) -> Job | None:
    try:
        return _folded(log_bytes(path))
    except OSError:
        return None


def _folded(data: bytes) -> Job | None:
    content = parse(data)
    return None if content.fault else fold(content.events)


def _stamp(path: Path) -> tuple[int, ...]:
    """Give what changes when a file does; nothing where there is none."""
    try:
        found = os.stat(path)
    except OSError:
        return ()
    return found.st_mtime_ns, found.st_size, found.st_ino
