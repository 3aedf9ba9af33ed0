"""What was measured job after job with one product: its mean, its limits, and which job lay outside."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.widgets import Static

from booth.clock import local_date
from booth.forms.key import Key
from booth.job.series import MOST_JOBS, Figure, Series, gathered, series_of
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.dialog import Sheet
from booth.screens.job_report import read_one
from booth.screens.list_screen import Listed, ListScreen
from booth.widgets.lists import PickList
from booth.widgets.run_chart import RunChartView
from booth.widgets.text import content, put
from booth.words.series_words import (
    RULE,
    chart_of,
    figure_line,
    jobs,
    outside_lines,
    series_line,
)
from booth.words.shown import PickLine

HELP = (
    "Every job of one product that is listed, the oldest at the left: each line above the picture is a "
    "figure that was measured, with its mean and the limits that it usually stays within.",
    RULE,
    "Of several parts, and of several runs of the cup, a job counts once, by their mean. Parts that "
    "differ take different times: search for one part first (its name, in the list of past jobs), and "
    "only those jobs are held against each other. F5 in that list keeps to one gun.",
    "↑ and ↓ choose the figure, ← and → walk from job to job, Enter reads the job.",
)
#: The list takes so much of the window at most.
MOST_SHARE = 0.4
NOTHING = (
    "Nothing was measured in these jobs that could be held against each other: cup, catch, film, waits "
    "and coats are, where a job keeps them."
)


class Repeatability(ListScreen[None, Series]):
    """It is read in a thread: a hundred jobs in full."""

    BESIDE = False
    LEAVES = ("escape", "f9", "f12", "backspace")

    def __init__(
        self, listed: Sequence[JobSummary], product: tuple[str, str], gun: str = ""
    ) -> None:
        super().__init__(id="repeatability")
        self.jobs = {job.path: job for job in listed[:MOST_JOBS]}
        self.left_out = len(listed) - len(self.jobs)
        self.product, self.gun = product, gun
        self.has_read = False
        self.series: tuple[Series, ...] = ()
        self._at: int | None = None

    def body(self) -> ComposeResult:
        yield PickList(id="rows")
        yield RunChartView(id="chart")
        yield Static("", id="about-job", markup=False)

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())
        self.run_worker(self._read, thread=True, exclusive=True)

    def _read(self) -> None:
        found = series_of(gathered(self.jobs, self.product[0], self.gun))
        self.app.call_from_thread(self.put_series, found)

    def put_series(self, found: tuple[Series, ...]) -> None:
        """Put what was read on the screen."""
        self.series, self.has_read = found, True
        self.listed = Listed(("", each.measure, each) for each in found)
        if self.is_attached:
            self.draw(self.host.clock.now())

    def heading(self) -> str:
        gun = f" with {self.gun}" if self.gun else ""
        read = f"{self.product[1]}{gun}, {jobs(len(self.jobs))}"
        left = f", the latest of {len(self.jobs) + self.left_out}" if self.left_out else ""
        return f"Does it come out the same?  {read}{left}{'' if self.has_read else ': reading'}"

    def help(self) -> Sheet:
        return Sheet("Does it come out the same?", HELP)

    def line(self, item: Series, now: Moment) -> PickLine:
        return series_line(item, self.host.system, self.size.width)

    @property
    def figure(self) -> Figure | None:
        """The job that is told: the latest one until another is walked to."""
        series = self.chosen
        if series is None:
            return None
        last = len(series.figures) - 1
        return series.figures[last if self._at is None else min(self._at, last)]

    def name_of(self, figure: Figure) -> str:
        return self.jobs[figure.job].sprayed

    def deed(self, key: Key) -> Deed | None:
        series, figure = self.chosen, self.figure
        if key.name in ("left", "right") and series is not None and figure is not None:
            at = series.figures.index(figure)
            to = min(max(at + (1 if key.name == "right" else -1), 0), len(series.figures) - 1)
            return Deed("job by job" if to != at else "", lambda: self._walk(to))
        return super().deed(key)

    def enter(self) -> Deed | None:
        figure = self.figure
        if figure is None:
            return None
        return Deed("read the job", lambda: read_one(self.host, self.jobs[figure.job]))

    def pick(self, index: int) -> None:
        super().pick(index)
        self._at = None

    def _walk(self, to: int) -> None:
        self._at = to

    def draw(self, now: Moment) -> None:
        series, figure = self.chosen, self.figure
        rows = self.query_one("#rows", PickList)
        most = int((self.size.height or self.app.size.height) * MOST_SHARE)
        rows.styles.height = max(min(len(self.series), most), 1)
        chart, about = self.query_one(RunChartView), self.query_one("#about-job", Static)
        chart.display = series is not None
        lines: list[str] = [] if series is not None or not self.has_read else [NOTHING]
        if series is not None and figure is not None:
            system, at = self.host.system, series.figures.index(figure)
            chart.shown = chart_of(series, at, system, local_date)
            lines.append(
                f"▲ {figure_line(series, figure, system, self.name_of(figure), local_date)}"
            )
            named = outside_lines(series, system, self.name_of, local_date)
            lines += [each for each in named if not each.endswith(lines[0].removeprefix("▲"))]
            lines += [series.limits.note] if series.limits.note else []
        put(about, content("\n".join(lines), keep_lines=True))
        super().draw(now)
