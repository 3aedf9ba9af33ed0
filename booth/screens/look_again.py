"""A closed job, looked at again: a second verdict, faults seen since, polish and cure, a note.

Each is one more entry behind the closing; the job stays closed.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.widgets import Static

from booth.files.safe_text import visible
from booth.forms.form import Field, Rows
from booth.log.errors import LogBusy, NotKept
from booth.log.events import Event, FaultSeen, FinishedLater, JudgedAgain, NoteMade
from booth.log.fold import NoJob
from booth.moment import Moment
from booth.screens.ask import Ask
from booth.screens.dialog import WORK_OVER, Dialog, Sheet
from booth.screens.form_screen import FormScreen
from booth.screens.menu import Menu, Taken
from booth.screens.write_card import write_card_of
from booth.trade.faults.fault_table import FAULTS
from booth.widgets.form_view import FormView
from booth.widgets.text import content
from booth.words.event_words import words
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from booth.log.summary import JobSummary
    from booth.screens.host import Host

SECOND = "how it looks now: a second verdict"
FAULT = "a fault seen since: dust, loss of gloss, …"
NOTE = "a note"
CARD = "its card, as a page to print"
WORKS = FinishedLater.WORKS
ALL_PARTS = "all of them"
WHY_NOTE = "Along the film against a lamp, the next morning: kept as a note of that job."
WHY_AGAIN = "It counts from now on; what was said at the closing stays in the log and is told too."
VERDICTS = (
    ("", "as it was"),
    ("good", "good: repeat it like this"),
    ("usable", "usable, with flaws"),
    ("redo", "to be done again"),
)


class JudgeAgain(Dialog[JudgedAgain | None], FormScreen[JudgedAgain | None]):
    """Verdict, words, next time, as at the step Result."""

    WORK = ("units", *WORK_OVER)
    KEEP = "keep it"

    def __init__(self) -> None:
        super().__init__("How does it look now?")

    def body(self) -> ComposeResult:
        yield Static(content(WHY_AGAIN), classes="dialog-text", markup=False)
        yield FormView()

    def fields(self) -> tuple[Field, ...]:
        return (
            Field("verdict", "Verdict", choices=VERDICTS, optional=True),
            Field("words", "What came out", optional=True),
            Field("next_time", "Next time", optional=True, hint="Enter here keeps it"),
        )

    def goes_on(self, rows: Rows) -> bool:
        return True

    async def keep(self, rows: Rows) -> str:
        chosen = rows.values.get("verdict")
        verdict = chosen if isinstance(chosen, str) else ""
        said = {key: rows.row(key).text.strip() for key in ("words", "next_time")}
        if not (verdict or any(said.values())):
            return "Choose a verdict or type a word: Esc leaves with nothing kept."
        await self.close(JudgedAgain(n=0, at=self.host.clock.now(), verdict=verdict, **said))
        return ""


class Again:
    """What is asked of one past job, and kept in its log. done: what follows when it was kept."""

    def __init__(self, host: Host, chosen: JobSummary, done: Callable[[str], None]) -> None:
        self.host = host
        self.chosen = chosen
        self.path: Path = chosen.path
        self.is_open = chosen.is_open
        self.rehearsal = chosen.rehearsal
        self.parts = chosen.parts
        self.done = done

    async def menu(self) -> None:
        """Ask what there is to keep; of a job that is open, a note."""
        if self.is_open:
            await self.note()
            return
        # A rehearsal has no film of which more could be said.
        lines = (NOTE, CARD) if self.rehearsal else (SECOND, FAULT, *WORKS, NOTE, CARD)

        async def chosen(taken: Taken | None) -> None:
            if taken is None:
                return
            word = lines[taken.line]
            if word == SECOND:
                await self.host.show(JudgeAgain(), self._keep)
            elif word == FAULT:
                await self._fault()
            elif word == NOTE:
                await self.note()
            elif word == CARD:
                await write_card_of(self.host, self.chosen)
            else:
                await self._on_part(
                    lambda part: FinishedLater(n=0, at=self.now, work=word, part=part)
                )

        shown = tuple(PickLine(each, must=True) for each in lines)
        await self.host.show(Menu("Looked at again", shown), chosen)

    async def note(self) -> None:
        """Ask for words, and keep them as a note; the job stays open or closed as it is."""

        async def noted(text: str | None) -> None:
            if text is not None:
                await self._keep(NoteMade(n=0, at=self.now, text=text))

        await self.host.show(Ask("How does it look now?", WHY_NOTE, needed=True), noted)

    @property
    def now(self) -> Moment:
        return self.host.clock.now()

    async def _fault(self) -> None:
        keys = tuple(FAULTS)

        async def chosen(taken: Taken | None) -> None:
            if taken is not None:
                key = keys[taken.line]
                await self._on_part(lambda part: FaultSeen(n=0, at=self.now, fault=key, part=part))

        shown = tuple(PickLine(FAULTS[key].name, FAULTS[key].looks) for key in keys)
        await self.host.show(Menu("Which fault?", shown), chosen)

    async def _on_part(self, event: Callable[[str], Event]) -> None:
        """Of several parts, ask on which."""
        if len(self.parts) < 2:
            await self._keep(event(""))
            return
        parts = ("", *self.parts)

        async def chosen(taken: Taken | None) -> None:
            if taken is not None:
                await self._keep(event(parts[taken.line]))

        shown = tuple(PickLine(visible(each) or ALL_PARTS) for each in parts)
        await self.host.show(Menu("On which part?", shown), chosen)

    async def _keep(self, event: Event | None) -> None:
        if event is None:
            return
        try:
            self.host.jobs.keep(self.path, event)
        except (LogBusy, NotKept, NoJob, OSError) as fault:
            what = (
                f"The note: {event.text}"
                if isinstance(event, NoteMade)
                else f"It was: {words(event, self.host.system)}"
            )
            told = (str(fault), what)
            await self.host.show(Sheet("NOT KEPT", told, grave=True))
            return
        self.done("Noted." if isinstance(event, NoteMade) else "Kept.")
