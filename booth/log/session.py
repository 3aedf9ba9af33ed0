"""A job being worked on: its log on disk and the Job it adds up to, which move together or not at all."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import msgspec

from booth.log.events import Event, JobOpened, UnknownEvent
from booth.log.fold import Job, fold
from booth.log.store import Log, create_log, open_log


class Session:
    """The one writer of one job.

    ``record`` is the only way in: the event is on disk before the Job moves, and where it cannot be
    kept the Job does not move (NotKept from the store passes through to be shown).
    """

    def __init__(self, log: Log, events: Iterable[Event | UnknownEvent]) -> None:
        self.log = log
        self._events = list(events)
        self.job: Job = fold(self._events)

    @classmethod
    def begin(cls, folder: Path, opened: JobOpened) -> Session:
        """Open a new job in `folder`. Raises NotKept where it cannot be written."""
        first = msgspec.structs.replace(opened, n=1)
        return cls(create_log(folder, first), [first])

    @classmethod
    def resume(cls, path: Path) -> Session:
        """Go on with the job at `path`. Raises LogBusy, NotKept, NoJob or OSError."""
        log = open_log(path)
        try:
            return cls(log, log.content.events)
        except BaseException:
            log.close()
            raise

    @property
    def told(self) -> tuple[str, ...]:
        """What was found wrong with the log when it was opened, and what was done about it."""
        return tuple(self.log.said)

    def record(self, event: Event) -> Event:
        """Number the event, keep it on disk, then let the Job move. Raises NotKept."""
        numbered = msgspec.structs.replace(event, n=self.job.next_n)
        self.log.append(numbered)
        self._events.append(numbered)
        self.job = fold(self._events)
        return numbered

    def close(self) -> None:
        """Let go of the log."""
        self.log.close()
