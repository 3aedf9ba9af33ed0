"""The rows of past jobs: one line a job, made only when it comes in sight, cut by whole words."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import TypeVar, overload

from rich.cells import cell_len

from booth.clock import local_date, local_day_words, local_hhmm
from booth.files.faults import counted
from booth.files.safe_text import visible
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.widgets.text import ELLIPSIS, fit
from booth.words.job_search import NEXT_TIME, Place, Searched, found_in, searched, verdict_word
from booth.words.shown import PickLine, Tone

T = TypeVar("T")
#: The shape that goes with the word of a verdict.
SHAPES = {
    "good": Tone.GOOD.shape,
    "usable": Tone.CAUTION.shape,
    "redo": Tone.LATE.shape,
    "open": Tone.RUNNING.shape,
}
WHEN_CELLS, VERDICT_CELLS = len("2025-06-15 15:06"), len("usable")
#: Cells of a row that the list itself takes: its arrows and what parts two columns.
OF_THE_LIST = 8
#: From this width on a row has the name of the job as well.
NAMED_FROM = 100
#: What stands behind a name takes so much of a row at most; more where it is what was looked for.
MOST_BEHIND, MOST_FOUND = 0.45, 0.55


def when(moment: Moment) -> str:
    return f"{local_date(moment)} {local_hhmm(moment)}"


def ready(jobs: Iterable[JobSummary], known: Iterable[Searched] = ()) -> tuple[Searched, ...]:
    """Jobs made ready to be searched; those that were are not made ready again."""
    before = {each.job.path: each for each in known}
    found = []
    for job in jobs:
        old = before.get(job.path)
        new = old is None or old.job is not job
        found.append(searched(job, when, local_day_words) if new or old is None else old)
    return tuple(found)


class Rows(Sequence[PickLine]):
    """The rows of many jobs: one is made when it is looked at."""

    def __init__(self, jobs: Sequence[T], line_of: Callable[[T], PickLine]) -> None:
        self._jobs = jobs
        self._line_of = line_of
        self._made: dict[int, PickLine] = {}

    def __len__(self) -> int:
        return len(self._jobs)

    @overload
    def __getitem__(self, at: int) -> PickLine: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[PickLine]: ...
    def __getitem__(self, at: int | slice) -> PickLine | Sequence[PickLine]:
        if isinstance(at, slice):
            return [self[each] for each in range(*at.indices(len(self)))]
        if at not in self._made:
            self._made[at] = self._line_of(self._jobs[at])
        return self._made[at]


def job_line(
    job: JobSummary, width: int = 200, places: Sequence[Place] = (), marked: str = ""
) -> PickLine:
    """The row of a job in a window so wide: when, verdict, coating and parts; behind them where the
    words asked for were found, what is wrong with its log, the gun. marked: '#1 ' where it is marked."""
    if job.opened is None:
        return PickLine(fit(f"{job.path.name}  {job.fault}", width - OF_THE_LIST), mark="!")
    word = verdict_word(job)
    head = f"{marked}{when(job.opened):<{WHEN_CELLS}}  {SHAPES.get(word, Tone.PLAIN.shape)} "
    head += f"{word:<{VERDICT_CELLS}}  "
    product = f", {job.product}" if job.product else ""
    room = width - OF_THE_LIST
    behind = fit(
        "; ".join(_behind(job, places)), int(room * (MOST_FOUND if places else MOST_BEHIND))
    )
    left = room - len(head) - cell_len(behind)
    rest = f"{visible(job.profile_name)}{visible(product)}: {visible(job.sprayed)}"
    if width >= NAMED_FROM and cell_len(rest) + cell_len(job.name) + 2 <= left:
        rest = f"{rest}  {job.name}"
    return PickLine(head + fit(rest, left), behind, must=True)


def _behind(job: JobSummary, places: Sequence[Place]) -> list[str]:
    first = job.first_verdict
    said = [each.in_words for each in places]
    said += [f"was {first}"] if first and first != job.verdict else []
    said += [counted(job.broken, "broken line")] if job.broken else []
    said += ["cannot be opened"] if job.fault else []
    said += ["differs from a copy"] if job.differs else []
    return said + ([job.gun] if job.gun and not places else [])


def about_job(job: Searched, asked: str, row: PickLine) -> tuple[str, ...]:
    """What is known of the picked job and its row has no room for; nothing is said twice."""
    summary = job.job
    cut = ELLIPSIS in row.name or ELLIPSIS in row.behind
    if summary.opened is None:
        return (f"{summary.path.name}: {summary.fault}",) if cut else ()
    product = f", {summary.product}" if summary.product else ""
    whole = f"{summary.profile_name}{product}: {summary.sprayed}"
    places = [each for each in found_in(job, asked) if each.where != NEXT_TIME]
    said = [whole, *(each.in_words for each in places)] if cut else []
    said += [f"gun {summary.gun}"] if summary.gun and summary.gun not in row.behind else []
    said += [summary.name] if summary.name not in row.name else []
    lines = ["; ".join(dict.fromkeys(said))] if said else []
    return (*lines, *([f"Next time: {summary.next_time}"] if summary.next_time else []))
