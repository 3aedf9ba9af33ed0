"""Past jobs, the newest first: whoever types finds; read one, lay several side by side, take one up again."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from textual.app import ComposeResult
from textual.widgets import Static

from booth.bench.commands import OF_A_JOB
from booth.forms.key import Key
from booth.log.open_jobs import summaries
from booth.moment import Moment
from booth.screens.base import ASKED, Deed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.history_rows import ready
from booth.screens.list_screen import MOVES, ListScreen
from booth.screens.past_choice import narrowing
from booth.screens.past_deeds import PastDeeds
from booth.screens.past_list import PastList
from booth.widgets.text import content, put
from booth.words.job_search import Searched
from booth.words.shown import PickLine

HELP = (
    "Every job whose log lies in the folder below, closed or not; files that cannot be read stand "
    "last, each with why, and are left as they are.",
    "Whoever types finds: each letter narrows the list. A date (2025-06, june, sunday), a verdict, a "
    "coating, a part, a gun, a fault, a word of a note or of 'next time'. Of several words a job has to "
    "hold all. Where the row does not show the word, it says where it stands. Bksp takes a letter back, "
    "Esc shows all jobs again. F4 keeps to one product, F5 to one gun.",
    "F6 or Insert marks a job; F11 lays the marked ones side by side. F12 plots what was measured job "
    "after job with the product of this one: whether it comes out the same.",
    "Enter shows a job as text. → opens it again: the closing of a closed job is voided, nothing "
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
        self.list = PastList()
        self.has_read = False

    def body(self) -> ComposeResult:
        yield from super().body()
        yield Static("", id="about-job", markup=False)

    # -- what is listed ----------------------------------------------------------------------------

    def on_mount(self, _: object = None) -> None:
        """Read at first, and again where a verdict may be another one."""
        self.run_worker(partial(read_past, self), thread=True, exclusive=True)

    def put_jobs(self, every: tuple[Searched, ...], has_read: bool) -> None:
        """Put what was read on the list."""
        self.has_read = has_read
        self.list.put(every)
        if self.is_attached:
            self.draw(self.host.clock.now())

    @property
    def picked(self) -> int:
        return self.list.picked

    @picked.setter
    def picked(self, at: int) -> None:
        self.list.picked = at

    @property
    def chosen(self) -> Searched | None:
        return self.list.chosen

    def lines(self, now: Moment) -> Sequence[PickLine]:
        return self.list.rows(self.size.width)

    def pick_by(self, by: int) -> None:
        self.pick(self.list.step(by))

    def heading(self) -> str:
        return self.list.heading(self.has_read)

    def draw(self, now: Moment) -> None:
        about = "\n".join(self.list.about(self.size.width))
        put(self.query_one("#about-job", Static), content(about, keep_lines=True))
        super().draw(now)

    # -- what keys do ------------------------------------------------------------------------------

    def deed(self, key: Key) -> Deed | None:
        if key.name in MOVES and len(self.list.found) < 2:
            return None
        found = narrowing(self, key)
        if found is None and self.chosen is not None:
            found = PastDeeds(self, self.chosen.job).deed(key)
        return found or super().deed(key)

    def enter(self) -> Deed | None:
        return Deed("read", PastDeeds(self, self.chosen.job).read) if self.chosen else None

    async def command(self, id: str) -> None:
        if id == "help":
            await self.host.show(Sheet("Past jobs", (*HELP, str(self.host.places.jobs_dir))))
        elif id not in OF_A_JOB:
            await super().command(id)
        elif self.chosen is not None:
            await PastDeeds(self, self.chosen.job).command(id)

    async def paste(self, text: str) -> None:
        """A pasted text is looked for as if it was typed."""
        wanted = self.list.wanted
        self.list.want(wanted._replace(asked=" ".join(f"{wanted.asked}{text}".split())))
        self.draw(self.host.clock.now())


def read_past(screen: History) -> None:
    """List what is known already, a first page of it before all else; then what is on the disk. In a
    thread."""
    jobs, on_screen = screen.host.jobs, screen.app.call_from_thread
    if not screen.list.every:
        known = summaries(jobs)
        on_screen(screen.put_jobs, ready(known[:FIRST_JOBS]), False)
        on_screen(screen.put_jobs, ready(known, screen.list.every), False)
    jobs.look()
    on_screen(screen.put_jobs, ready(summaries(jobs), screen.list.every), True)
