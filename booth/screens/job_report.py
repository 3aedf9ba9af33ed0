"""One past job as text, over the whole window."""

from __future__ import annotations

from collections.abc import Awaitable, Callable

from textual.app import ComposeResult

from booth.clock import local_date, local_hhmm
from booth.forms.key import Key
from booth.log.parse import LogContent
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.base import Deed, Framed
from booth.widgets.page_view import PageView
from booth.words.report import report
from booth.words.shown import Page

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

    SHOWS = ("units",)
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
        text = report(log.events, self.host.system, local_hhmm, local_date, log.said, name)
        self.query_one(PageView).show(Page((("text", text),)))
        super().draw(now)

    def deed(self, key: Key) -> Deed | None:
        by = ROWS.get(key.name)
        if by is not None:
            word = "more" if key.name in ("up", "down") else ""
            return Deed(word, lambda: self.query_one(PageView).scroll_by(by))
        if key.name in ("r", "right"):
            word = "take up again" if self.summary.is_open else "reopen"
            return Deed(word if key.name == "right" else "", self.reopen)
        return super().deed(key)
