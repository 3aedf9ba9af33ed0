"""What can be done with the picked job of the list of past jobs, and with those that are marked."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.forms.key import Key
from booth.screens.base import Deed
from booth.screens.home import take_up
from booth.screens.job_report import read_one
from booth.screens.look_again import Again
from booth.screens.past_choice import Choice, ask_gun, ask_product, ask_what
from booth.screens.write_card import write_card_of

if TYPE_CHECKING:
    from booth.log.summary import JobSummary
    from booth.screens.history import History

#: Side by side lie so many jobs at least, and at most.
LEAST_BESIDE, MOST_BESIDE = 2, 9
NO_JOB = "There is no job in it that could be laid beside others; a rehearsal is none."
FEW = "Mark two jobs or more with F6 first: they are laid side by side."


class PastDeeds:
    """By keys, and by the menu of all of them."""

    def __init__(self, screen: History, job: JobSummary) -> None:
        self.screen = screen
        self.host, self.jobs = screen.host, screen.list
        self.job = job

    @property
    def is_job(self) -> bool:
        """Whether a job can be opened from it; else it is only told why not."""
        return self.job.opened is not None and not self.job.fault

    @property
    def counts(self) -> bool:
        """Whether it can be held against other jobs: a rehearsal cannot."""
        return self.is_job and not self.job.rehearsal

    def deed(self, key: Key) -> Deed | None:
        """What a key does with the job; None where it does nothing of these."""
        match key.name:
            case "right":
                word = "open again" if self.job.is_open else "reopen"
                return Deed(word if self.is_job else "why not", self.reopen)
            case "left":
                return Deed("more", self.more)
            case "f2":
                return Deed("", lambda: self.look_again(note=True))
            case "f6" | "insert":
                word = "unmark" if self._is_marked else "mark"
                return Deed(word if self.counts else "", self.mark)
            case "f11":
                enough = len(self.jobs.marked) >= LEAST_BESIDE
                return Deed("side by side" if enough else "", self.beside)
            case "f12" if self.counts:
                return Deed("repeatability", self.repeats)
        return None

    async def command(self, id: str) -> None:
        """Do what a command of a past job asks for."""
        await (self.look_again() if id == "again" else write_card_of(self.host, self.job))

    async def read(self) -> None:
        await read_one(self.host, self.job, self.screen.on_mount)

    async def reopen(self) -> None:
        """Put the job on the bench, above the first screen; say so where that cannot be done."""
        if self.is_job:
            await take_up(self.host, self.job.path, self.host.clock.now())
        else:
            await self.read()

    async def look_again(self, note: bool = False) -> None:
        """A second verdict, a fault seen since, a note: behind the closing."""
        if not self.is_job:
            await self.read()
            return

        def kept(said: str) -> None:
            self.screen.say(said)
            self.screen.on_mount()

        again = Again(self.host, self.job, kept)
        await (again.note() if note else again.menu())

    async def more(self) -> None:
        """All of it, to be chosen from."""
        marked = len(self.jobs.marked)
        choices = [
            Choice("Only jobs of one product", "F4", lambda: ask_product(self.screen)),
            Choice("Only jobs with one gun", "F5", lambda: ask_gun(self.screen)),
        ]
        if self.counts:
            word = "Take its mark away" if self._is_marked else "Mark it, to be laid beside others"
            choices.append(Choice(word, "F6", self.mark))
        if marked >= LEAST_BESIDE:
            choices.append(Choice(f"Lay the {marked} marked jobs side by side", "F11", self.beside))
        if self.counts:
            choices.append(Choice("Does it come out the same each time?", "F12", self.repeats))
        if self.is_job:
            choices += [
                Choice("Look at it again: verdict, fault, polish", "Ctrl+Y", self.look_again),
                Choice("Add a note", "F2", lambda: self.look_again(note=True)),
                Choice("Write its card as a page to print", "Ctrl+E", lambda: self.command("card")),
            ]
        await ask_what(self.host, choices)

    # -- several jobs ------------------------------------------------------------------------------

    @property
    def _is_marked(self) -> bool:
        return self.job.path in self.jobs.marked

    def mark(self) -> None:
        """Mark the job, or take its mark away; then the next one is picked."""
        marked = self.jobs.marked
        if not self.counts:
            self.screen.say(NO_JOB)
        elif self._is_marked:
            self.jobs.mark(tuple(each for each in marked if each != self.job.path))
        elif len(marked) >= MOST_BESIDE:
            self.screen.say(f"{MOST_BESIDE} jobs are marked: no more lie side by side.")
        else:
            self.jobs.mark((*marked, self.job.path))
            self.screen.pick_by(1)
        self.screen.draw(self.host.clock.now())

    async def beside(self) -> None:
        """Lay the marked jobs side by side, the one marked first at the left."""
        if len(self.jobs.marked) < LEAST_BESIDE:
            self.screen.say(FEW)
            return
        from booth.screens.side_by_side import SideBySide, read_jobs

        jobs = [each.job for each in self.jobs.every if each.job.path in self.jobs.marked]
        jobs.sort(key=lambda job: self.jobs.marked.index(job.path))
        await self.host.show(SideBySide(read_jobs(jobs)))

    async def repeats(self) -> None:
        """Plot what was measured, job after job: of those that are listed, the ones of this product."""
        from booth.screens.repeatability import Repeatability

        product = self.job.products[-1]
        listed = [
            each.job
            for each in self.jobs.found
            if product[0] in dict(each.job.products) and not each.job.rehearsal
        ]
        gun = self.jobs.wanted.gun or ""
        await self.host.show(Repeatability(listed, product, gun))
