"""Past jobs, the newest first: whoever types finds; read one, lay several side by side, take one up again."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.widgets import Static

from booth.bench.commands import OF_A_JOB
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import ASKED, Deed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.history_rows import Rows, about_job, job_line, ready
from booth.screens.list_screen import MOVES, ListScreen
from booth.screens.past_choice import ask_gun, ask_product
from booth.screens.past_deeds import PastDeeds
from booth.widgets.text import content, put
from booth.words.job_search import Searched, Wanted, found_in, matching, nothing_found
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from pathlib import Path

HELP = (
    "Every job whose log lies in the folder below, closed or not; files that cannot be read stand "
    "last, each with why, and are left as they are.",
    "Whoever types finds: each letter narrows the list. A date (2025-06, june, sunday), a verdict, a "
    "coating, a part, a gun, a fault, a word of a note or of 'next time'. Of several words a job has to "
    "hold all. Where the row does not show the word, it says where it stands. Bksp takes a letter back, "
    "Esc shows all jobs again. F4 keeps to one product, F5 to one gun.",
    "F6 or Insert marks a job; F11 lays the marked ones side by side. F12 plots what was measured job "
    "after job with the product of this one: whether it comes out the same.",
    "Enter shows a job as text. → takes it up again: the closing of a closed job is voided, nothing "
    "is erased. Ctrl+Y looks at it again: a second verdict, a fault seen since, sanded, polished, "
    "cured; the latest verdict counts, and a closed job stays closed. F2 adds a note. Ctrl+E writes the "
    "card of the job as a page to print. ← lists all that can be done.",
)
#: So many jobs are put on the list before the rest is made ready to be searched.
FIRST_JOBS = 200


class History(ListScreen[None, Searched]):
    """The list. It is read off the event loop, so that it opens at once however long it is."""

    BESIDE = False
    WORK = (*OwnScreen.WORK, *OF_A_JOB)
    ASKS = (*ASKED, *((key.upper(), key) for key in ("f11", "f6", "f4", "f5", "f12")))

    def __init__(self) -> None:
        super().__init__(id="history")
        self.every: tuple[Searched, ...] = ()
        self.found: tuple[Searched, ...] = ()
        self.wanted = Wanted()
        self.marked: tuple[Path, ...] = ()
        self.has_read = False
        self._rows: Sequence[PickLine] = ()
        self._width = 0

    def body(self) -> ComposeResult:
        yield from super().body()
        yield Static("", id="about-job", markup=False)

    # -- what is listed ----------------------------------------------------------------------------

    def on_mount(self, _: object = None) -> None:
        """Read at first, and again where a verdict may be another one."""
        self.run_worker(self._read, thread=True, exclusive=True)

    def _read(self) -> None:
        """List what is known already, a first page of it before all else; then what is on the disk. In
        a thread."""
        jobs, put = self.host.jobs, self.app.call_from_thread
        known = jobs.summaries()
        if not self.every:
            put(self.put_jobs, ready(known[:FIRST_JOBS]), False)
            put(self.put_jobs, ready(known, self.every), False)
        jobs.look()
        put(self.put_jobs, ready(jobs.summaries(), self.every), True)

    def put_jobs(self, every: tuple[Searched, ...], has_read: bool) -> None:
        """Put what was read on the list."""
        self.every, self.has_read = every, has_read
        self._put(self.wanted)

    def _put(self, wanted: Wanted) -> None:
        """The jobs wanted; the picked one stays picked."""
        chosen, self.wanted = self.chosen, wanted
        self.found, self._width = matching(self.every, wanted), 0
        paths = [each.job.path for each in self.found] if chosen is not None else []
        self.picked = paths.index(chosen.job.path) if chosen and chosen.job.path in paths else 0
        if self.is_attached:
            self.draw(self.host.clock.now())

    @property
    def chosen(self) -> Searched | None:
        return self.found[self.picked] if self.picked < len(self.found) else None

    def lines(self, now: Moment) -> Sequence[PickLine]:
        """The rows, made anew where the window has another width."""
        if self._width != self.size.width:
            self._width = self.size.width
            self._rows = Rows(self.found, self._line)
        return self._rows

    def _line(self, each: Searched) -> PickLine:
        place = self.marked.index(each.job.path) + 1 if each.job.path in self.marked else 0
        mark = f"#{place} " if place else "   " if self.marked else ""
        places = found_in(each, self.wanted.asked) if self.wanted.asked else ()
        return job_line(each.job, self._width, places, mark)

    def pick_by(self, by: int) -> None:
        self.pick(min(max(self.picked + by, 0), max(len(self.found) - 1, 0)))

    def heading(self) -> str:
        every, wanted = len(self.every), self.wanted.in_words
        if not every:
            return "Past jobs: none yet" if self.has_read else "Past jobs: reading the logs"
        found = f"{len(self.found)} of {every}  {wanted}" if wanted else f"{every}"
        hint = "  type a word to find some" if self.has_read and not wanted else ""
        return f"Past jobs  {found}{hint if self.has_read else '  still reading the logs'}"

    def draw(self, now: Moment) -> None:
        about: tuple[str, ...] = ()
        if self.chosen is not None:
            row = self.lines(now)[self.picked]
            about = about_job(self.chosen, self.wanted.asked, row)
        elif self.wanted.in_words:
            about = (nothing_found(self.every, self.wanted),)
        put(self.query_one("#about-job", Static), content("\n".join(about), keep_lines=True))
        super().draw(now)

    def help(self) -> Sheet:
        return Sheet("Past jobs", (*HELP, str(self.host.places.jobs_dir)))

    # -- what keys do ------------------------------------------------------------------------------

    def deed(self, key: Key) -> Deed | None:
        if key.name in MOVES and len(self.found) < 2:
            return None
        found, deeds = self._on_list(key) or self._typed(key), self.deeds
        if found is None and deeds is not None:
            found = deeds.deed(key)
        return found or super().deed(key)

    @property
    def deeds(self) -> PastDeeds | None:
        """What can be done with the picked job."""
        return PastDeeds(self, self.chosen.job) if self.chosen is not None else None

    def enter(self) -> Deed | None:
        return Deed("read", self.deeds.read) if self.deeds is not None else None

    async def command(self, id: str) -> None:
        if id not in OF_A_JOB:
            await super().command(id)
        elif self.deeds is not None:
            await self.deeds.command(id)

    def mark(self, marked: tuple[Path, ...]) -> None:
        """Let these be the marked jobs, in the order in which they were marked."""
        self.marked, self._width = marked, 0

    def _on_list(self, key: Key) -> Deed | None:
        """What narrows the list, and what is done with all of it."""
        wanted = self.wanted
        if key.name == "escape" and wanted.in_words:
            return Deed("all jobs", lambda: self._put(Wanted()))
        if key.name == "backspace" and wanted.asked:
            return Deed(
                "a letter back", lambda: self._put(wanted._replace(asked=wanted.asked[:-1]))
            )
        if key.name == "f4" and self.every:
            return Deed("product", self.ask_product)
        if key.name == "f5" and self.every:
            return Deed("gun", self.ask_gun)
        return None

    def _typed(self, key: Key) -> Deed | None:
        """What can be read narrows the list; a space where there is a word before it."""
        letter = key.character or ""
        if not letter.isprintable() or not letter or letter == "?":
            return None
        asked = f"{self.wanted.asked}{letter}"
        if letter == " " and not self.wanted.asked:
            return None
        return Deed("", lambda: self._put(self.wanted._replace(asked=asked)))

    async def paste(self, text: str) -> None:
        """A pasted text is looked for as if it was typed."""
        self._put(self.wanted._replace(asked=" ".join(f"{self.wanted.asked}{text}".split())))

    async def ask_product(self) -> None:
        """List the jobs of one product only, or of all."""

        def taken(product: tuple[str, str] | None) -> None:
            self._put(self.wanted._replace(product=product))

        await ask_product(self.host, self.every, taken)

    async def ask_gun(self) -> None:
        """List the jobs with one gun only, or with all."""

        def taken(gun: str | None) -> None:
            self._put(self.wanted._replace(gun=gun))

        await ask_gun(self.host, self.every, taken)
