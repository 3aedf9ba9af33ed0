"""Several past jobs side by side: one row a fact, and whether they agree in it."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from typing import NamedTuple

from textual.app import ComposeResult
from textual.widgets import Static

from booth.card.beside import jobs_that_fit, laid_out
from booth.card.build import card_of
from booth.card.compare import Agree, Comparison, compared
from booth.clock import local_date, local_hhmm
from booth.forms.key import Key
from booth.log.parse import LogContent
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.base import Deed, Framed
from booth.screens.dialog import Sheet
from booth.screens.job_report import ROWS
from booth.units import System
from booth.widgets.page_view import PageView
from booth.widgets.text import content, put
from booth.words.shown import Page

HELP = (
    "Each column is the card of one job, each row one fact. '<> differs': the jobs do not all say the "
    "same; '-- in some': the others say nothing of it; '= same': all of them say it alike. The times at "
    "which the weather was read and batches were mixed are shown and not compared.",
    "Enter leaves out the rows in which they agree, and brings them back. ← and → move to the jobs that "
    "have no room beside the others. F3 changes the units.",
)
#: How a row is drawn, by whether the jobs agree in it: word and shape say it too.
STYLES = {Agree.SAME: "quiet", Agree.DIFFERS: "now", Agree.LACKING: "text"}
#: The edge of a page, and its scroll bar.
EDGES = 3


class Held(NamedTuple):
    """A job with its log as it was read."""

    job: JobSummary
    log: LogContent


def read_jobs(jobs: Sequence[JobSummary]) -> tuple[Held, ...]:
    """Read the logs of these jobs; one that cannot be read any more is left out."""
    found = []
    for job in jobs:
        with suppress(OSError):
            found.append(Held(job, read_log(job.path)))
    return tuple(found)


class SideBySide(Framed[None]):
    """Scrolls with the arrows, Page Down, Home and End; to further jobs with left and right."""

    LEAVES = ("escape", "f9", "f11", "backspace")

    def __init__(self, held: tuple[Held, ...]) -> None:
        super().__init__(id="side-by-side")
        self.held = held
        self.first = 0
        self.all_rows = True
        self._compared: tuple[System, Comparison] | None = None

    def heading(self) -> str:
        told, fits = self.told, self.fits
        rows = f"{len(told.differing)} of {len(told.rows)} rows differ"
        if fits == len(self.held):
            return f"Side by side  {fits} jobs, {rows}"
        return f"Side by side  jobs {self.first + 1} to {self.first + fits} of {len(self.held)}, {rows}"

    @property
    def told(self) -> Comparison:
        """The jobs compared in the units shown now."""
        system = self.host.system
        if self._compared is None or self._compared[0] != system:
            cards = [
                card_of(log.events, system, local_hhmm, local_date, log.said, job.name)
                for job, log in self.held
            ]
            self._compared = system, compared(cards)
        return self._compared[1]

    @property
    def _width(self) -> int:
        return (self.size.width or self.app.size.width) - EDGES

    @property
    def fits(self) -> int:
        return jobs_that_fit(len(self.held), self._width)

    def body(self) -> ComposeResult:
        yield Static("", id="heads", markup=False)
        yield PageView(id="rows")

    def draw(self, now: Moment) -> None:
        told, fits = self.told, self.fits
        self.first = min(self.first, len(self.held) - fits)
        rows = told.rows if self.all_rows else told.differing
        laid = laid_out(told, rows, self._width, self.first, fits)
        put(self.query_one("#heads", Static), content("\n".join(laid.heads), keep_lines=True))
        page = [(STYLES[agree], line) for agree, lines in laid.rows for line in lines]
        page = [("warning", f"! {each}") for each in told.said] + page
        if not rows:
            page.append(("text", "They agree in every row. Enter shows them all."))
        self.query_one(PageView).show(Page(tuple(page)))
        super().draw(now)

    def deed(self, key: Key) -> Deed | None:
        by = ROWS.get(key.name)
        if by is not None:
            word = "more" if key.name in ("up", "down") else ""
            return Deed(word, lambda: self.query_one(PageView).scroll_by(by))
        if key.name == "enter":
            return Deed("only what differs" if self.all_rows else "all rows", self._turn)
        most = len(self.held) - self.fits
        if key.name in ("left", "right") and most > 0:
            step = 1 if key.name == "right" else -1
            to = min(max(self.first + step, 0), most)
            return Deed("other jobs" if to != self.first else "", lambda: self._move(to))
        return super().deed(key)

    def _turn(self) -> None:
        self.all_rows = not self.all_rows

    def _move(self, to: int) -> None:
        self.first = to

    async def command(self, id: str) -> None:
        if id == "help":
            await self.host.show(Sheet("Side by side", HELP))
        else:
            await super().command(id)
