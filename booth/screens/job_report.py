"""One past job as text, over the whole window."""

from __future__ import annotations

from collections.abc import Awaitable, Callable

from textual.app import ComposeResult
from textual.widgets import Static

from booth.clock import local_date, local_hhmm
from booth.forms.key import Key
from booth.log.parse import LogContent
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.widgets.page_view import PageView
from booth.widgets.text import content
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


class JobReport(OwnScreen[None]):
    """Scrolls with the arrows, Page Down, Home and End."""

    SHOWS = ("units",)

    def __init__(
        self, summary: JobSummary, log: LogContent, reopen: Callable[[], Awaitable[None]]
    ) -> None:
        super().__init__(id="job-report")
        self.summary = summary
        self.log_content = log
        self.reopen = reopen

    def compose(self) -> ComposeResult:
        title = f"{self.summary.profile_name}  {self.summary.name}"
        yield Static(content(title), id="name", markup=False)
        yield PageView(id="report")
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())

    def draw(self, now: Moment) -> None:
        """Draw the job in the units shown now."""
        log, name = self.log_content, self.summary.name
        text = report(log.events, self.host.system, local_hhmm, local_date, log.said, name)
        self.query_one(PageView).show(Page((("text", text),)))
        self.draw_keys()

    def deed(self, key: Key) -> Deed | None:
        by = ROWS.get(key.name)
        if by is not None:
            word = "more" if key.name == "down" else ""
            return Deed(word, lambda: self.query_one(PageView).scroll_by(by))
        if key.name in ("escape", "f9", "backspace"):  # a second Enter leaves what the first opened
            return Deed("back" if key.name == "escape" else "", self.close)
        if key.name in ("r", "right"):
            word = "take up again" if self.summary.is_open else "reopen"
            return Deed(word if key.name == "right" else "", self.reopen)
        return None
