"""One past job as text: how it came out first, then everything that was kept."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from contextlib import suppress
from typing import TYPE_CHECKING

from textual.app import ComposeResult

from booth.bench.commands import OF_A_JOB
from booth.card.report import report
from booth.clock import local_date, local_hhmm
from booth.forms.key import Key
from booth.log.parse import LogContent
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.base import Deed, Framed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.home import take_up
from booth.screens.look_again import Again
from booth.screens.write_card import write_card_of
from booth.widgets.page_view import PageView
from booth.words.shown import Page

if TYPE_CHECKING:
    from booth.screens.host import Host


async def read_one(
    host: Host, chosen: JobSummary, then: Callable[[object], None] | None = None
) -> None:
    """Show what was kept in a job, or why that cannot be done. then: what follows when it was read."""
    if chosen.opened is None or chosen.fault:
        told = (chosen.fault, f"The file is left as it is: {chosen.path}")
        await host.show(Sheet(chosen.path.name, told))
        return
    try:
        log = read_log(chosen.path)
    except OSError as fault:
        why = fault.strerror or type(fault).__name__
        await host.show(Sheet(chosen.path.name, (f"The file cannot be read: {why}.",)))
        return
    path = chosen.path
    shown = JobReport(chosen, log, lambda: take_up(host, path, host.clock.now()))
    await host.show(shown, then)


#: How far each key scrolls.
ROWS = {
    "up": -2,
    "down": 2,
    "space": 16,
    "pagedown": 16,
    "home": -1_000_000,
    "end": 1_000_000,
}


class JobReport(Framed[None]):
    """Scrolls with the arrows, Page Down, Home and End."""

    WORK = (*OwnScreen.WORK, *OF_A_JOB)
    SHOWS = ("units", "card")
    LEAVES = ("escape", "f9", "backspace")

    def __init__(
        self, summary: JobSummary, log: LogContent, reopen: Callable[[], Awaitable[None]]
    ) -> None:
        super().__init__(id="job-report")
        self.summary = summary
        self.log_content = log
        self.reopen = reopen

    def heading(self) -> str:
        return f"{self.summary.profile_name}  {self.summary.name}"

    def body(self) -> ComposeResult:
        yield PageView(id="report")

    def draw(self, now: Moment) -> None:
        """Draw the job in the units shown now."""
        log, name = self.log_content, self.summary.name
        said = (*self.summary.copies, *log.said)
        text = report(log.events, self.host.system, local_hhmm, local_date, said, name)
        self.query_one(PageView).show(Page((("text", text),)))
        super().draw(now)

    @property
    def _again(self) -> Again:
        return Again(self.host, self.summary, self._read_again)

    def _read_again(self, said: str) -> None:
        self.say(said)
        with suppress(OSError):
            self.log_content = read_log(self.summary.path)
        self.draw(self.host.clock.now())

    def deed(self, key: Key) -> Deed | None:
        by = ROWS.get(key.name)
        if by is not None:
            word = "more" if key.name in ("up", "down") else ""
            return Deed(word, lambda: self.query_one(PageView).scroll_by(by))
        if key.name in ("r", "right"):
            word = "open again" if self.summary.is_open else "reopen"
            return Deed(word if key.name == "right" else "", self.reopen)
        if key.name in ("n", "f2"):
            return Deed("", self._again.note)
        if key.name == "left":
            return Deed("look again", self._again.menu)
        return super().deed(key)

    async def command(self, id: str) -> None:
        if id == "again":
            await self._again.menu()
        elif id == "card":
            await write_card_of(self.host, self.summary)
        else:
            await super().command(id)
