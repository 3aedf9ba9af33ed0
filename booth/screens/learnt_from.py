"""The jobs that one thing was learnt from: what each showed; leave a job out, or take it in again."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from booth.clock import local_date
from booth.files.safe_text import visible
from booth.forms.key import Key
from booth.learnt.observation import Learnt, Observation
from booth.learnt.subjects import BY_KEY
from booth.log.errors import LogBusy, NotKept
from booth.log.events import Event, LeftOut, TakenIn
from booth.log.fold import NoJob
from booth.moment import Moment
from booth.screens.ask import Ask
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.list_screen import Listed, ListScreen
from booth.screens.menu import Menu, Taken
from booth.units import System
from booth.words.learnt_words import observation_line, plot, summary, title
from booth.words.shown import PickLine

COUNTS, OUT = "Counts", "Left out"
OWN_WORDS = "another reason…"
WHY = "Nothing is learnt from that job, and its settings are no last good ones. It can be taken in again."
PLOT = "A line a job, the latest first; beneath them the band:"
#: What a line of the plot takes at most, and the least that is still one [cells].
MOST_CELLS, LEAST_CELLS = 48, 16
#: So many lines of the plot, the latest jobs.
MOST_LINES = 30


def about_lines(learnt: Learnt, system: System, width: int) -> tuple[str, ...]:
    """What it comes to, and where there is room a plot of its jobs."""
    cells = min(width - 3, MOST_CELLS)
    shown = (
        plot(learnt.observations[:MOST_LINES], learnt, cells, system)
        if cells >= LEAST_CELLS
        else []
    )
    return (*summary(learnt, system), *(["", PLOT, *shown] if shown else []))


@dataclass(frozen=True)
class One:
    """A job of the list, and why it does not count."""

    seen: Observation
    reason: str = ""


class LearntFrom(ListScreen[None, One]):
    """One line a job, the latest first. again: gives what is learnt anew, from the logs."""

    WORK = tuple(each for each in OwnScreen.WORK if each != "learnt")

    def __init__(self, learnt: Learnt, again: Callable[[], Learnt | None]) -> None:
        super().__init__(id="learnt-from")
        self.learnt = learnt
        self.again = again
        self._put(learnt)

    def _put(self, learnt: Learnt) -> None:
        chosen = self.chosen
        self.learnt = learnt
        rows = [(COUNTS, One(each)) for each in learnt.observations]
        rows += [(OUT, One(each, reason)) for each, reason in learnt.without]
        self.listed = Listed((heading, one.seen.file, one) for heading, one in rows)
        self.picked = self.listed.line(chosen.seen.file if chosen is not None else None)

    def heading(self) -> str:
        return f"{BY_KEY[self.learnt.subject].title}: {title(self.learnt, self.host.system)}"

    def line(self, item: One, now: Moment) -> PickLine:
        said = observation_line(item.seen, self.learnt, self.host.system, local_date)
        behind = visible(item.reason or item.seen.job)
        return PickLine(said, behind, must=True, mark="×" if item.reason else "")

    def about(self, now: Moment) -> tuple[str, ...]:
        return about_lines(self.learnt, self.host.system, self._page.size.width)

    def enter(self) -> Deed | None:
        chosen = self.chosen
        if chosen is None:
            return None
        if chosen.seen.left_out is None:
            return Deed("leave this job out", lambda: self._leave_out(chosen))
        return Deed("take it in again", lambda: self._keep(chosen, _taken_in))

    def deed(self, key: Key) -> Deed | None:
        if key.name == "backspace":
            return Deed("", self.leave)
        return super().deed(key)

    async def _leave_out(self, chosen: One) -> None:
        """Ask for the reason, then keep it."""
        reasons = (*LeftOut.REASONS, OWN_WORDS)

        async def taken(found: Taken | None) -> None:
            if found is None:
                return
            if found.line < len(LeftOut.REASONS):
                await self._keep(chosen, _left_out(reasons[found.line]))
                return

            async def said(text: str | None) -> None:
                if text is not None:
                    await self._keep(chosen, _left_out(text))

            await self.host.show(
                Ask("Why is it left out?", WHY, needed=True, text=found.typed), said
            )

        lines = tuple(PickLine(each, must=True) for each in reasons)
        await self.host.show(Menu("Left out: why?", lines, len(reasons) - 1), taken)

    async def _keep(self, chosen: One, event: Callable[[Moment], Event]) -> None:
        """Keep it behind the closing of that job; on the disk first."""
        path = self.host.places.jobs_dir / chosen.seen.file
        try:
            self.host.jobs.keep(path, event(self.host.clock.now()))
        except (LogBusy, NotKept, NoJob, OSError) as fault:
            await self.host.show(Sheet("NOT KEPT", (str(fault),), grave=True))
            return
        found = self.again()
        if found is None:
            await self.close()
            return
        self._put(found)
        self.draw(self.host.clock.now())
        self.say("Kept in the log of that job.")


def _left_out(reason: str) -> Callable[[Moment], Event]:
    return lambda now: LeftOut(n=0, at=now, reason=reason)


def _taken_in(now: Moment) -> Event:
    return TakenIn(n=0, at=now)
