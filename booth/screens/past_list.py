"""The list of past jobs without its screen: which are wanted, which are marked, what their rows say."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from booth.screens.history_rows import Rows, about_job, job_line
from booth.words.job_search import Searched, Wanted, found_in, matching, nothing_found
from booth.words.shown import PickLine


class PastList:
    """every: all jobs; found: those that are wanted, in the order of the list; marked: logs, in the order
    in which they were marked; picked: the place among those found."""

    def __init__(self) -> None:
        self.every: tuple[Searched, ...] = ()
        self.found: tuple[Searched, ...] = ()
        self.wanted = Wanted()
        self.marked: tuple[Path, ...] = ()
        self.picked = 0
        self._rows: Sequence[PickLine] = ()
        self._width = 0

    @property
    def chosen(self) -> Searched | None:
        return self.found[self.picked] if self.picked < len(self.found) else None

    def put(self, every: tuple[Searched, ...]) -> None:
        """These are all jobs now."""
        self.every = every
        self.want(self.wanted)

    def want(self, wanted: Wanted) -> None:
        """List the jobs that are wanted; the picked one stays picked."""
        chosen, self.wanted = self.chosen, wanted
        self.found, self._width = matching(self.every, wanted), 0
        paths = [each.job.path for each in self.found] if chosen is not None else []
        self.picked = paths.index(chosen.job.path) if chosen and chosen.job.path in paths else 0

    def mark(self, marked: tuple[Path, ...]) -> None:
        """Let these be the marked jobs."""
        self.marked, self._width = marked, 0

    def step(self, by: int) -> int:
        """The place so many further on, as far as there are jobs."""
        return min(max(self.picked + by, 0), max(len(self.found) - 1, 0))

    def rows(self, width: int) -> Sequence[PickLine]:
        """The rows for a window so wide; each is made when it comes in sight."""
        if self._width != width:
            self._width = width
            self._rows = Rows(self.found, self._line)
        return self._rows

    def _line(self, each: Searched) -> PickLine:
        place = self.marked.index(each.job.path) + 1 if each.job.path in self.marked else 0
        mark = f"#{place} " if place else "   " if self.marked else ""
        places = found_in(each, self.wanted.asked) if self.wanted.asked else ()
        return job_line(each.job, self._width, places, mark)

    def about(self, width: int) -> tuple[str, ...]:
        """What is to be said under the list."""
        if self.chosen is not None:
            return about_job(self.chosen, self.wanted.asked, self.rows(width)[self.picked])
        return (nothing_found(self.every, self.wanted),) if self.wanted.in_words else ()

    def heading(self, has_read: bool) -> str:
        """How many there are, and which are wanted."""
        every, wanted = len(self.every), self.wanted.in_words
        if not every:
            return "Past jobs: none yet" if has_read else "Past jobs: reading the logs"
        found = f"{len(self.found)} of {every}  {wanted}" if wanted else f"{every}"
        hint = "" if wanted else "  type a word to find some"
        return f"Past jobs  {found}{hint if has_read else '  still reading the logs'}"
