"""Reads what past jobs show, each log once for all that is asked; in a thread too. Nothing here is
read before it is asked for."""

from __future__ import annotations

import threading
from collections.abc import Iterable
from functools import cached_property
from pathlib import Path
from typing import Any

import msgspec

from booth.job.measured import known
from booth.job.past_logs import PastLog, past_logs, why_left_out
from booth.learnt import delivery, water
from booth.learnt.delivery import Caught
from booth.learnt.observation import Observation
from booth.learnt.subjects import BY_KEY, SUBJECTS

#: So many jobs teach a subject, the latest: the habits of today, and a draw that waits for them is
#: not noticed (this program's own choice).
ENOUGH_JOBS = 250
CATCHES = "catches"
#: What is read of a log: the tags of which it has to hold one, and what then makes of it what it shows.
SOURCES: dict[str, tuple[tuple[bytes, ...], Any]] = {
    CATCHES: (delivery.TAGS, delivery.catches_of),
    **{each.key: (each.tags, each.observe) for each in SUBJECTS if each.observe is not None},
}


class Reading:
    """What the jobs of a folder show."""

    def __init__(self, folder: Path | None) -> None:
        self.folder = folder
        self._lock = threading.Lock()
        self._found: dict[str, tuple[Any, ...]] = {}

    def read(self, *sources: str) -> None:
        """Read these sources, all of them where none is named, as far as they were not read yet."""
        with self._lock:
            wanted = [each for each in sources or SOURCES if each not in self._found]
            if wanted:
                self._found |= read(self.folder, wanted)

    def _is_read(self, source: str) -> bool:
        """Whether a source was read; it is now, unless a thread is at it: nobody waits for that."""
        if source not in self._found and not self._lock.locked():
            self.read(source)
        return source in self._found

    def caught(self) -> tuple[Caught, ...]:
        """The catches that say how far the needle was open; none while they are being read."""
        return self._found[CATCHES] if self._is_read(CATCHES) else ()

    def observations(self, subject: str) -> tuple[Observation, ...]:
        """What the jobs show of a subject, the latest first, those left out with it; nothing while it
        is being read in a thread."""
        if BY_KEY[subject].observe is None and self._is_read(CATCHES):
            return self._of_catches[subject]
        return self._found[subject] if subject in SOURCES and self._is_read(subject) else ()

    @cached_property
    def _of_catches(self) -> dict[str, tuple[Observation, ...]]:
        caught = self._found[CATCHES]
        return {"delivery": delivery.deliveries(caught), "water": water.ratios(caught)}


def read(folder: Path | None, sources: Iterable[str]) -> dict[str, tuple[Any, ...]]:
    """Read the logs of a folder once for several sources."""
    found: dict[str, list[Any]] = {each: [] for each in sources}
    jobs = dict.fromkeys(found, 0)
    tags = tuple({tag for each in found for tag in SOURCES[each][0]})
    for log in past_logs(folder, holding=tags, rehearsals=True, those_left_out=True):
        lacking = [each for each in found if jobs[each] < ENOUGH_JOBS]
        of_use = [each for each in lacking if any(tag in log.data for tag in SOURCES[each][0])]
        if not lacking:
            break
        products = log.products() if of_use else ()
        for each in of_use if products else ():
            # A figure that cannot be one: the job teaches nothing of it.
            seen = known(SOURCES[each][1], products) or ()
            jobs[each] += bool(seen)
            found[each] += [_of(log, one, why_left_out(products[-1])) for one in seen]
    return {each: tuple(seen) for each, seen in found.items()}


def _of(log: PastLog, seen: Any, reason: str | None) -> Any:
    """What a job shows, with whose it is."""
    whose = {"job": log.opened.job, "file": log.path.name, "rehearsal": log.opened.rehearsal}
    return msgspec.structs.replace(seen, left_out=reason, **whose)
