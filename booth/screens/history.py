"""Past jobs, the newest first: read one as text, find some by words, or take one up again."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Iterable
from contextlib import suppress
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from textual.app import ComposeResult

from booth.clock import local_date, local_hhmm
from booth.files.faults import counted
from booth.forms.key import Key
from booth.log.errors import LogBusy, NotKept
from booth.log.events import NoteMade
from booth.log.fold import NoJob
from booth.log.history import history
from booth.log.parse import LogContent
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.ask import Ask
from booth.screens.base import Deed, Framed
from booth.screens.dialog import Sheet
from booth.screens.home import take_up, when
from booth.screens.list_screen import Listed, ListScreen
from booth.widgets.page_view import PageView
from booth.words.report import report
from booth.words.shown import Page, PickLine, Tone

if TYPE_CHECKING:
    from booth.screens.host import Host

HELP = (
    "Every job whose log lies in the folder below, closed or not; files that cannot be read stand "
    "last, each with why, and are left as they are.",
    "Enter shows a job as text. r takes it up again: the closing of a closed job is voided, nothing "
    "is erased. n looks at it again: a note is added, and a closed job stays closed. f or / finds jobs by words: a date, a verdict, a coating, a part, a gun.",
)

#: The shape that goes with the word of a verdict.
SHAPES = {
    "good": Tone.GOOD.shape,
    "usable": Tone.CAUTION.shape,
    "redo": Tone.LATE.shape,
    "open": Tone.RUNNING.shape,
}
WHEN_CELLS, VERDICT_CELLS = len("2025-06-15 15:06"), len("usable")


def verdict(summary: JobSummary) -> str:
    return "open" if summary.is_open else summary.verdict or "closed"


def job_line(summary: JobSummary) -> PickLine:
    """The line of a job: when, verdict, coating and parts; gun and what is broken behind it."""
    if summary.opened is None:
        return PickLine(f"{summary.path.name}  {summary.fault}", mark="!")
    word = verdict(summary)
    head = f"{when(summary.opened):<{WHEN_CELLS}}  {SHAPES.get(word, Tone.PLAIN.shape)} "
    product = f", {summary.product}" if summary.product else ""
    rest = f"{summary.profile_name}{product}: {summary.sprayed}"
    more = [summary.gun] if summary.gun else []
    if summary.broken:
        more.append(counted(summary.broken, "broken line"))
    if summary.fault:
        more.append("cannot be opened")
    name = f"{head}{word:<{VERDICT_CELLS}}  {rest}  {summary.name}"
    return PickLine(name, ", ".join(more), must=True)


def matching(summaries: Iterable[JobSummary], asked: str) -> tuple[JobSummary, ...]:
    """Give the jobs that hold every word asked for, in date, verdict, coating, parts, gun or name."""
    words = asked.casefold().split()
    if not words:
        return tuple(summaries)
    return tuple(each for each in summaries if _holds(each, words))


def _holds(summary: JobSummary, words: list[str]) -> bool:
    opened = when(summary.opened) if summary.opened is not None else ""
    told = (
        opened,
        verdict(summary),
        summary.profile_name,
        summary.product,
        *summary.parts,
        summary.sprayed,
        summary.gun,
        summary.name,
        summary.path.name,
        summary.fault,
    )
    text = " ".join(told).casefold()
    return all(word in text for word in words)


class History(ListScreen[None, JobSummary]):
    """The list. It is read off the event loop, so that it opens at once however long it is."""

    BESIDE = False

    def __init__(self) -> None:
        super().__init__(id="history")
        self.summaries: tuple[JobSummary, ...] = ()
        self.asked = ""
        self.has_read = False
        self._lines: tuple[PickLine, ...] = ()

    def on_mount(self) -> None:
        self.run_worker(self._read, thread=True, exclusive=True)

    def _read(self) -> None:
        """Read all logs, in a thread; they are put on the list by the event loop."""
        found = tuple(history(self.host.places.jobs_dir))
        self.app.call_from_thread(self.put_summaries, found)

    def put_summaries(self, found: tuple[JobSummary, ...]) -> None:
        """Put what was read on the list."""
        self.summaries, self.has_read = found, True
        self._put()

    def _put(self) -> None:
        """The jobs asked for; the picked one stays picked."""
        chosen = self.chosen
        found = matching(self.summaries, self.asked)
        self.listed = Listed(("", each.path, each) for each in found)
        self._lines = self.listed.lines(job_line)
        self.picked = self.listed.line(chosen.path if chosen is not None else None)
        if self.is_attached:
            self.draw(self.host.clock.now())

    def heading(self) -> str:
        if not self.has_read:
            return "Past jobs: reading the logs"
        if not self.summaries:
            return "Past jobs: none yet"
        if self.asked:
            return (
                f"Past jobs  {len(self.listed.items)} of {len(self.summaries)}  with: {self.asked}"
            )
        return f"Past jobs  {len(self.summaries)}"

    def help(self) -> Sheet:
        return Sheet("Past jobs", (*HELP, str(self.host.places.jobs_dir)))

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return self._lines

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("f", "slash", "left"):
            return Deed("find" if key.name == "left" else "", self._find)
        chosen = self.chosen
        if key.name in ("r", "right") and chosen is not None:
            word = "take up again" if chosen.is_open else "reopen"
            return Deed(word if key.name == "right" else "", lambda: self._reopen(chosen))
        if key.name in ("n", "f2") and chosen is not None:
            return Deed("", lambda: self._look_again(chosen))
        return super().deed(key)

    def enter(self) -> Deed | None:
        chosen = self.chosen
        return Deed("read", lambda: read_one(self.host, chosen)) if chosen is not None else None

    async def _reopen(self, chosen: JobSummary) -> None:
        """Put the job on the bench, above the first screen; say so where that cannot be done."""
        if chosen.opened is None or chosen.fault:
            await read_one(self.host, chosen)
            return
        await take_up(self.host, chosen.path, self.host.clock.now())

    async def _look_again(self, chosen: JobSummary) -> None:
        if chosen.opened is None or chosen.fault:
            await read_one(self.host, chosen)
            return
        await look_again(self.host, chosen.path, lambda: self.say("Noted."))

    async def _find(self) -> None:
        """Ask for words; no word shows all jobs."""

        def found(asked: str | None) -> None:
            self.asked = asked or ""
            self._put()

        why = "A date, a verdict, a coating, a part, a gun. No word shows all jobs."
        await self.host.show(Ask("Which jobs?", why), found)

    async def leave(self) -> None:
        """Back; where only some jobs are listed, first to all of them."""
        if self.asked:
            self.asked = ""
            self._put()
        else:
            await super().leave()


async def read_one(host: Host, chosen: JobSummary) -> None:
    """Show what was kept in a job, or why that cannot be done."""
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
    await host.show(JobReport(chosen, log, lambda: take_up(host, path, host.clock.now())))


async def look_again(host: Host, path: Path, done: Callable[[], None]) -> None:
    """Ask how a job looks now, and keep it as a note; the job stays open or closed as it is."""

    async def noted(text: str | None) -> None:
        if text is None:
            return
        try:
            host.jobs.keep(path, NoteMade(n=0, at=host.clock.now(), text=text))
        except (LogBusy, NotKept, NoJob, OSError) as fault:
            await host.show(Sheet("NOT KEPT", (str(fault), f"The note: {text}"), grave=True))
            return
        done()

    why = "Along the film against a lamp, the next morning: kept as a note of that job."
    await host.show(Ask("How does it look now?", why, needed=True), noted)


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

    def _read_again(self) -> None:
        with suppress(OSError):
            self.log_content = read_log(self.summary.path)
        self.draw(self.host.clock.now())

    def deed(self, key: Key) -> Deed | None:
        by = ROWS.get(key.name)
        if by is not None:
            word = "more" if key.name in ("up", "down") else ""
            return Deed(word, lambda: self.query_one(PageView).scroll_by(by))
        if key.name in ("r", "right"):
            word = "take up again" if self.summary.is_open else "reopen"
            return Deed(word if key.name == "right" else "", self.reopen)
        if key.name in ("n", "f2", "left"):
            deed = partial(look_again, self.host, self.summary.path, self._read_again)
            return Deed("look again: add a note" if key.name == "left" else "", deed)
        return super().deed(key)
