"""One past job as text, over the whole window."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.widgets import Static

from booth.clock import local_date, local_hhmm
from booth.log.store import LogContent
from booth.log.summary import JobSummary
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.screens.reopen import take_up_again
from booth.units import System
from booth.widgets.quiet_line import put
from booth.widgets.text import content
from booth.words.report import report


class JobReport(OwnScreen[None]):
    """Scrolls with the arrows and the page keys."""

    BINDINGS = [
        Binding("escape,enter,f9", "leave", "back", show=False),
        Binding("r", "reopen", "reopen", show=False),
    ]
    AUTO_FOCUS = "VerticalScroll"

    def __init__(self, summary: JobSummary, log: LogContent) -> None:
        super().__init__(id="job-report")
        self.summary = summary
        self.log_content = log
        self._system: System | None = None

    def compose(self) -> ComposeResult:
        yield Static(content(self.summary.profile_name), id="name", markup=False)
        with VerticalScroll(id="report"):
            yield Static("", id="report-text", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw()

    def draw(self, now: object = None) -> None:
        """Draw the job in the units shown now."""
        again = "take up again" if self.summary.is_open else "reopen"
        keys = (("Esc", "back"), ("↑↓", "more"), ("r", again), ("u", "units"))
        put(self.query_one("#keys", Static), key_line(keys, self.size.width))
        if self._system == self.app.system:
            return
        self._system = System(self.app.system)
        text = report(
            self.log_content.events, self._system, local_hhmm, local_date, self.log_content.said
        )
        self.query_one("#report-text", Static).update(content(text, keep_lines=True))

    def action_reopen(self) -> None:
        """Take the job up again."""
        if self.is_active:
            take_up_again(self.app, self.summary.path)  # type: ignore[arg-type]

    def action_leave(self) -> None:
        """Back to the list."""
        self.dismiss(None)
