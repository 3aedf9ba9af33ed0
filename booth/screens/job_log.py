"""Everything that was kept in the open job, the newest first; void an entry, or bring it back."""

from __future__ import annotations

from booth.clock import local_date, local_hhmmss
from booth.forms.key import Key
from booth.log.events import Event, JobOpened, ProductBegun, Restored, UnknownEvent, Voided
from booth.log.fold import Job
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.bench_desk import BenchDesk
from booth.screens.dialog import Sheet
from booth.screens.list_screen import ListScreen
from booth.units import System
from booth.words.event_words import teller, words
from booth.words.shown import PickLine

Entry = Event | UnknownEvent

#: A voided entry is crossed out by a word and a shape, whatever the terminal can draw.
VOIDED = "× VOIDED"
HELP = (
    "Nothing in a job's log is changed or erased. Backspace on an entry adds one that voids it: it "
    "stays here, crossed out, and no longer counts. Enter on a voided entry brings it back.",
    "Enter on an entry that counts shows it in full. The opening of the job cannot be voided.",
)


def why_not_void(job: Job, event: Entry) -> str:
    """The sentence why an entry cannot be voided; nothing where it can."""
    if event.n in job.void:
        return "It is voided already: Enter brings it back."
    if isinstance(event, JobOpened):
        return "The opening of the job cannot be voided: without it there is no job."
    if isinstance(event, ProductBegun) and job.product > event.product:
        return "A later product was begun since: void that first, so that each coat stays with its own."
    if isinstance(event, Voided):
        return f"This voided number {event.target}: choose that entry and bring it back."
    if isinstance(event, Restored):
        return f"This brought number {event.target} back: choose that entry and void it again."
    if isinstance(event, UnknownEvent):
        return "It was kept by a later version of this program: void it there."
    return ""


def entry_lines(job: Job, system: System) -> tuple[PickLine, ...]:
    """Give every entry in one line, the newest first: number, local time, what it says."""
    digits = len(str(job.next_n - 1))
    days = local_date(job.events[0].at) != local_date(job.events[-1].at)
    found, told = [], teller(system, job)
    for event in reversed(job.events):
        date = f"{local_date(event.at)} " if days else ""
        voided = f"{VOIDED}  " if event.n in job.void else ""
        head = f"{event.n:>{digits}}  {date}{local_hhmmss(event.at)}"
        found.append(PickLine(f"{head}  {voided}{told(event)}"))
    return tuple(found)


class JobLog(ListScreen[None, Entry]):
    """The log of the job that is open, the newest entry first."""

    BESIDE = False
    LEAVES = ("escape", "l", "f4", "f9")

    def __init__(self, desk: BenchDesk) -> None:
        super().__init__(id="job-log")
        self.desk = desk
        self._at = len(desk.job.events) - 1
        self._lines: tuple[PickLine, ...] = ()
        self._drawn: tuple[int, System] | None = None

    @property
    def chosen(self) -> Entry:
        return self.desk.job.events[self._at]

    @property
    def picked(self) -> int:
        return len(self.desk.job.events) - 1 - self._at

    @picked.setter
    def picked(self, line: int) -> None:
        self._at = len(self.desk.job.events) - 1 - line

    def heading(self) -> str:
        job = self.desk.job
        voided = f", {len(job.void)} voided" if job.void else ""
        what = "rehearsal" if job.opened.rehearsal else "job"
        return f"Log of this {what}: {len(job.events)} entries{voided}"

    def help(self) -> Sheet:
        return Sheet("Log of this job", HELP)

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        """The entries, put into words anew where something has come or the units have changed."""
        job, system = self.desk.job, self.host.system
        if self._drawn != (len(job.events), system):
            self._drawn = len(job.events), system
            self._lines = entry_lines(job, system)
        return self._lines

    def deed(self, key: Key) -> Deed | None:
        if key.name in ("backspace", "delete"):
            word = "" if why_not_void(self.desk.job, self.chosen) else "void"
            return Deed(word, self._void)
        if key.name == "r":
            return Deed("", self._restore)
        return super().deed(key)

    def enter(self) -> Deed:
        if self.chosen.n in self.desk.job.void:
            return Deed("bring back", self._restore)
        return Deed("in full", self._in_full)

    async def _in_full(self) -> None:
        event = self.chosen
        title = f"{event.n}  {local_date(event.at)} {local_hhmmss(event.at)}"
        told = words(event, self.host.system, self.desk.job)
        await self.host.show(Sheet(title, (told,)))

    async def _void(self) -> None:
        """Void the chosen entry."""
        event, job = self.chosen, self.desk.job
        why_not = why_not_void(job, event)
        if why_not:
            self.say(why_not)
            return
        void = Voided(n=0, at=self.host.clock.now(), target=event.n)
        await self._keep(void, f"Entry {event.n} is voided. Enter brings it back.")

    async def _restore(self) -> None:
        """Let the chosen entry count again."""
        event, job = self.chosen, self.desk.job
        if event.n not in job.void:
            self.say("It counts: there is nothing to bring back.")
            return
        back = Restored(n=0, at=self.host.clock.now(), target=event.n)
        await self._keep(back, f"Entry {event.n} restored.")

    async def _keep(self, event: Event, said: str) -> None:
        """Keep it, or say why it is not kept."""
        if not self.desk.keep(event):
            await self.host.show(Sheet("NOT KEPT", (self.desk.taken_refusal(),), grave=True))
            return
        self.say(said)
