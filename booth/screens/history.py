"""Past jobs, the newest first: read one as text, find some by words, or take one up again."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from booth.bench.commands import OF_A_JOB
from booth.files.faults import counted
from booth.forms.key import Key
from booth.log.history import history
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.screens.ask import Ask
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.home import take_up, when
from booth.screens.job_report import read_one
from booth.screens.list_screen import Listed, ListScreen
from booth.screens.look_again import Again
from booth.screens.write_card import write_card_of
from booth.words.shown import PickLine, Tone

if TYPE_CHECKING:
    pass

HELP = (
    "Every job whose log lies in the folder below, closed or not; files that cannot be read stand "
    "last, each with why, and are left as they are.",
    "Enter shows a job as text. r takes it up again: the closing of a closed job is voided, nothing "
    "is erased. v looks at it again: a second verdict, a fault seen since, sanded, polished, cured; "
    "the latest verdict counts, and a closed job stays closed. n adds a note. e writes the card of the "
    "job as a page to print. f or / finds jobs by "
    "words: a date, a verdict, a coating, a part, a gun.",
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
    first = summary.first_verdict
    more = [f"was {first}"] if first and first != summary.verdict else []
    more += ["differs from a copy"] if summary.differs else []
    more += [summary.gun] if summary.gun else []
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
    WORK = (*OwnScreen.WORK, *OF_A_JOB)

    def __init__(self) -> None:
        super().__init__(id="history")
        self.summaries: tuple[JobSummary, ...] = ()
        self.asked = ""
        self.has_read = False
        self._lines: tuple[PickLine, ...] = ()

    def on_mount(self, _: object = None) -> None:
        """Read at first, and again where a verdict may be another one."""
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
            return Deed("", lambda: self._look_again(chosen, note=True))
        return super().deed(key)

    async def command(self, id: str) -> None:
        chosen = self.chosen
        if id == "again" and chosen is not None:
            await self._look_again(chosen)
        elif id == "card" and chosen is not None:
            await write_card_of(self.host, chosen)
        elif id not in OF_A_JOB:
            await super().command(id)

    def enter(self) -> Deed | None:
        chosen = self.chosen
        return (
            Deed("read", lambda: read_one(self.host, chosen, self.on_mount))
            if chosen is not None
            else None
        )

    async def _reopen(self, chosen: JobSummary) -> None:
        """Put the job on the bench, above the first screen; say so where that cannot be done."""
        if chosen.opened is None or chosen.fault:
            await read_one(self.host, chosen)
            return
        await take_up(self.host, chosen.path, self.host.clock.now())

    async def _look_again(self, chosen: JobSummary, note: bool = False) -> None:
        if chosen.opened is None or chosen.fault:
            await read_one(self.host, chosen)
            return

        def kept(said: str) -> None:
            self.say(said)
            self.on_mount()

        again = Again(self.host, chosen, kept)
        await (again.note() if note else again.menu())

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
