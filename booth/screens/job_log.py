"""Everything that was kept in the open job, the newest first; void an entry, or bring it back."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.binding import Binding
from textual.content import Content
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from booth.clock import local_date, local_hhmmss
from booth.bench.context import Desk
from booth.log.events import Event, JobOpened, Restored, UnknownEvent, Voided
from booth.log.fold import Job
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.screens.sheet import Sheet
from booth.units import System
from booth.widgets.quiet_line import put
from booth.widgets.text import content, fit
from booth.words.event_words import words

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
    if isinstance(event, Voided):
        return f"This voided number {event.target}: choose that entry and bring it back."
    if isinstance(event, Restored):
        return f"This brought number {event.target} back: choose that entry and void it again."
    if isinstance(event, UnknownEvent):
        return "It was kept by a later version of this program: void it there."
    return ""


def entry_line(event: Entry, job: Job, system: System, width: int) -> Content:
    """Give one entry in one line: number, local time, what it says."""
    digits = len(str(job.next_n - 1))
    first = job.events[0].at
    days = local_date(first) != local_date(job.events[-1].at)
    date = f"{local_date(event.at)} " if days else ""
    head = f"{event.n:>{digits}}  {date}{local_hhmmss(event.at)}  "
    if event.n not in job.void:
        return Content(head + fit(words(event, system, job), max(0, width - len(head))))
    room = max(0, width - len(head) - len(VOIDED) - 2)
    return Content.assemble(
        head, (VOIDED, "bold"), "  ", (fit(words(event, system, job), room), "strike dim")
    )


class JobLog(OwnScreen[None]):
    """The log of the job that is open."""

    BINDINGS = [
        Binding("escape,l,f4,f9", "leave", "back", show=False),
        Binding("backspace,delete", "void", "void", show=False),
        Binding("r", "restore", "bring back", show=False),
        Binding("question_mark,f1", "help", "help", show=False),
    ]
    AUTO_FOCUS = "OptionList"

    def __init__(self, desk: Desk) -> None:
        super().__init__(id="job-log")
        self.desk = desk
        self._drawn: tuple[int, System, int] | None = None
        self._said_of: Entry | None = None

    def compose(self) -> ComposeResult:
        yield Static("", id="name", markup=False)
        yield OptionList(id="rows")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw()

    def draw(self, now: object = None) -> None:
        """Draw the entries where something has come, the units have changed, or the window has."""
        context = self.desk.context
        job, system = context.job, context.system
        new = (len(job.events), system, self.size.width)
        if new != self._drawn:
            self._drawn = new
            self._put(job, system)
        self._draw_keys(job)

    def _put(self, job: Job, system: System) -> None:
        shown = self.query_one(OptionList)
        option = shown.highlighted_option
        was = option.id if option is not None else None
        room = max(10, self.size.width - 4)
        shown.clear_options()
        shown.add_options(
            Option(entry_line(event, job, system, room), id=f"n{at}")
            for at, event in reversed(tuple(enumerate(job.events)))
        )
        shown.highlighted = 0 if was is None else shown.get_option_index(was)
        voided = f", {len(job.void)} voided" if job.void else ""
        said = f"Log of this job: {len(job.events)} entries{voided}"
        put(self.query_one("#name", Static), content(said))

    def _draw_keys(self, job: Job) -> None:
        event = self._chosen
        keys = [("Enter", "in full"), ("Bksp", "void")]
        if event is not None and event.n in job.void:
            keys = [("Enter", "bring back")]
        keys += [("↑↓", "choose"), ("Esc", "back"), ("?", "help"), ("u", "units")]
        put(self.query_one("#keys", Static), key_line(tuple(keys), self.size.width))

    @property
    def _chosen(self) -> Entry | None:
        option = self.query_one(OptionList).highlighted_option
        if option is None or option.id is None:
            return None
        return self.desk.context.job.events[int(option.id[1:])]

    def say(self, sentence: str) -> None:
        """Say something above the keys."""
        shown = self.query_one("#say", Static)
        shown.update(content(sentence))
        shown.display = bool(sentence)
        self._said_of = self._chosen

    def on_option_list_option_highlighted(self) -> None:
        if self._chosen is not self._said_of:
            self.say("")
        self._draw_keys(self.desk.context.job)

    def on_option_list_option_selected(self) -> None:
        event = self._chosen
        if event is None or not self.is_active:
            return
        if event.n in self.desk.context.job.void:
            self.action_restore()
            return
        title = f"{event.n}  {local_date(event.at)} {local_hhmmss(event.at)}"
        self.app.push_screen(
            Sheet(title, (words(event, self.desk.context.system, self.desk.context.job),))
        )

    def action_void(self) -> None:
        """Void the chosen entry."""
        event, context = self._chosen, self.desk.context
        if event is None:
            return
        why_not = why_not_void(context.job, event)
        if why_not:
            self.say(why_not)
        elif self.desk.keep(Voided(n=0, at=context.now, target=event.n)) is not None:
            self.draw()
            self.say(f"Number {event.n} is voided. Enter brings it back.")

    def action_restore(self) -> None:
        """Let the chosen entry count again."""
        event, context = self._chosen, self.desk.context
        if event is None:
            return
        if event.n not in context.job.void:
            self.say("It counts: there is nothing to bring back.")
        elif self.desk.keep(Restored(n=0, at=context.now, target=event.n)) is not None:
            self.draw()
            self.say(f"Number {event.n} counts again.")

    def action_help(self) -> None:
        """What this is."""
        self.app.push_screen(Sheet("Log of this job", HELP))

    def action_leave(self) -> None:
        """Back to the bench."""
        self.dismiss(None)
