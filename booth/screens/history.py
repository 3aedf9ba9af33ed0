"""Past jobs, the newest first: read one as text, or take it up again."""

from __future__ import annotations

from textual import work
from textual.app import ComposeResult
from textual.binding import Binding
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option
from textual.worker import get_current_worker

from booth.clock import local_date, local_hhmm
from booth.log.history import history
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.ask import Ask
from booth.screens.base import OwnScreen
from booth.screens.history_rows import job_line, matching
from booth.screens.job_report import JobReport
from booth.screens.keyline import key_line
from booth.screens.reopen import take_up_again
from booth.screens.sheet import Sheet
from booth.widgets.quiet_line import put
from booth.widgets.text import content

HELP = (
    "Every job whose log lies in the folder below, closed or not; files that cannot be read stand "
    "last, each with why, and are left as they are.",
    "Enter shows a job as text. r takes it up again: the closing of a closed job is voided, nothing "
    "is erased. f or / finds jobs by words: a date, a verdict, a coating, a part, a gun.",
)


class History(OwnScreen[None]):
    """The list. It is read off the event loop, so that it opens at once however long it is."""

    BINDINGS = [
        Binding("escape,f9", "leave", "back", show=False),
        Binding("r", "reopen", "reopen", show=False),
        Binding("slash,f", "find", "find", show=False),
        Binding("question_mark,f1", "help", "help", show=False),
    ]
    AUTO_FOCUS = "OptionList"

    def __init__(self) -> None:
        super().__init__(id="history")
        self.summaries: tuple[JobSummary, ...] = ()
        self.listed: tuple[JobSummary, ...] = ()
        self.asked = ""
        self.has_read = False
        self._width = 0

    def compose(self) -> ComposeResult:
        yield Static("Past jobs", id="name", markup=False)
        yield OptionList(id="rows")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw()
        self.read_again()

    @work(thread=True, exclusive=True, group="history")
    def read_again(self) -> None:
        """Read all logs anew, in a thread."""
        worker = get_current_worker()
        found = tuple(history(self.app.places.jobs_dir))
        if not worker.is_cancelled:
            self.app.call_from_thread(self._show, found)

    def _show(self, found: tuple[JobSummary, ...]) -> None:
        self.summaries, self.has_read = found, True
        if self.is_mounted:
            self._put()

    @staticmethod
    def _when(moment: Moment) -> str:
        return f"{local_date(moment)} {local_hhmm(moment)}"

    def _put(self) -> None:
        """Put the jobs asked for on the list; the highlight stays on its job."""
        shown = self.query_one(OptionList)
        chosen = self._chosen
        self._width = self.size.width
        # The list has a cell of padding at either side and a bar to scroll by.
        room = max(10, self._width - 4)
        self.listed = matching(self.summaries, self.asked, self._when)
        shown.clear_options()
        shown.add_options([Option(job_line(each, self._when, room)) for each in self.listed])
        paths = [each.path for each in self.listed]
        if paths:
            at = chosen.path if chosen is not None else None
            shown.highlighted = paths.index(at) if at in paths else 0
        self.draw()

    @property
    def _chosen(self) -> JobSummary | None:
        at = self.query_one(OptionList).highlighted
        return self.listed[at] if at is not None and at < len(self.listed) else None

    def draw(self, now: object = None) -> None:
        """Draw the heading and the keys; the rows only where the window has another width."""
        if self.has_read and self._width != self.size.width:
            self._put()
            return
        count = f"{len(self.listed)} of {len(self.summaries)}" if self.asked else (
            f"{len(self.summaries)}" if self.summaries else ""
        )  # fmt: skip
        said = f"Past jobs  {count}" if self.has_read else "Past jobs: reading the logs"
        if self.has_read and not self.summaries:
            said = "Past jobs: none yet"
        if self.asked:
            said += f"  with: {self.asked}"
        put(self.query_one("#name", Static), content(said))
        chosen = self._chosen
        again = "take up again" if chosen is not None and chosen.is_open else "reopen"
        keys = (
            ("Enter", "read"), ("↑↓", "choose"), ("r", again), ("f", "find"), ("Esc", "back"),
            ("?", "help"),
        )  # fmt: skip
        put(self.query_one("#keys", Static), key_line(keys, self.size.width))

    def on_option_list_option_highlighted(self) -> None:
        self.draw()

    def on_option_list_option_selected(self) -> None:
        chosen = self._chosen
        # A glove presses twice: the second press is not for this screen any more.
        if chosen is None or not self.is_active or self._is_unreadable(chosen):
            return
        try:
            log = read_log(chosen.path)
        except OSError as fault:
            why = fault.strerror or type(fault).__name__
            self.app.push_screen(Sheet(chosen.path.name, (f"The file cannot be read: {why}.",)))
            return
        self.app.push_screen(JobReport(chosen, log))

    def _is_unreadable(self, summary: JobSummary) -> bool:
        """Show why a file is no job, if it is none."""
        if summary.opened is not None:
            return False
        told = (summary.fault, f"The file is left as it is: {summary.path}")
        self.app.push_screen(Sheet(summary.path.name, told))
        return True

    def action_reopen(self) -> None:
        """Take the chosen job up again."""
        chosen = self._chosen
        if chosen is not None and self.is_active and not self._is_unreadable(chosen):
            take_up_again(self.app, chosen.path)  # type: ignore[arg-type]

    def action_find(self) -> None:
        """Ask for words; no word shows all jobs."""

        def found(asked: str | None) -> None:
            self.asked = asked or ""
            self._put()

        why = "A date, a verdict, a coating, a part, a gun. No word shows all jobs."
        self.app.push_screen(Ask("Which jobs?", why), found)

    def action_help(self) -> None:
        """What this is."""
        self.app.push_screen(Sheet("Past jobs", (*HELP, str(self.app.places.jobs_dir))))

    def action_leave(self) -> None:
        """Back; where only some jobs are listed, first to all of them."""
        if self.asked:
            self.asked = ""
            self._put()
        else:
            self.dismiss(None)
