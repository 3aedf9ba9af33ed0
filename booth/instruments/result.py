"""The end of a job: what came out, in a word and in words, and what to change next time."""

from __future__ import annotations

from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, word
from booth.log.events import Event, FaultSeen, JobClosed, StepDone
from booth.widgets.entry import Field
from booth.words.readout import Readout
from booth.words.tone import Tone

#: Nothing is taken for good that nobody called so: the next job starts from a good one.
NOT_SAID = ""
VERDICTS = (
    (NOT_SAID, "how did it come out?"),
    ("good", "good: repeat it like this"),
    ("usable", "usable, with flaws"),
    ("redo", "to be done again"),
)
TONES = {"good": Tone.GOOD, "usable": Tone.CAUTION, "redo": Tone.LATE}


class Result(Instrument):
    """Verdict, words, next time; Enter on the last row closes the job."""

    KIND: ClassVar[str] = "result"
    NAME: ClassVar[str] = "Result"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The settings of a job whose verdict is 'good' come up as the starting point the next time "
        "the same product is sprayed with the same gun.",
        "A closed job no longer rings. It can be reopened from the list of past jobs.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (JobClosed,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        return (
            Field("verdict", "Verdict", choices=VERDICTS, default=NOT_SAID),
            Field("words", "What came out", optional=True),
            Field("next_time", "Next time", optional=True, hint="Enter here closes the job"),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        verdict = word(values, "verdict")
        seen = [event for event in context.job.events if isinstance(event, FaultSeen)]
        faults = [event.fault for event in seen if context.job.is_live(event.n)]
        coats = sum(
            coat.ended is not None for part in context.job.parts
            for coat in context.job.coats_on(part)
        )  # fmt: skip
        return Readout(
            verdict.upper() or "?",
            label="verdict",
            tone=TONES.get(verdict, Tone.PLAIN),
            word="",
            lines=(
                f"{_counted(coats, 'coat')} on {_counted(len(context.job.parts), 'part')}",
                f"faults seen: {', '.join(faults) if faults else 'none noted'}",
            ),
        )

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if not word(self.values(), "verdict"):
            return (("←→", "verdict"), ("Enter", "next row"))
        last = self.rows and self.rows[-1].place.has_focus
        return (("Enter", "close the job" if last else "next row"), ("←→", "verdict"))

    def focus_first(self) -> None:
        """The verdict comes first, and is to be chosen."""
        if self.rows:
            self._focus(self.rows[0].place)

    def enter(self, row: object = None) -> None:
        rows = self.rows
        at = rows.index(row) if row in rows else len(rows) - 1  # type: ignore[arg-type]
        if at + 1 < len(rows):
            self._focus(rows[at + 1].place)
            return
        values = self.values()
        if not word(values, "verdict"):
            self._focus(rows[0].place)
            self.desk.say("How did it come out? ← → choose the verdict.", fault=True)
            return
        now = self.desk.context.now
        done = StepDone(n=0, at=now, step=self.desk.context.step.key)
        closed = JobClosed(
            n=0,
            at=now,
            verdict=word(values, "verdict"),
            words=word(values, "words"),
            next_time=word(values, "next_time"),
        )
        if self.desk.keep(done) is not None and self.desk.keep(closed) is not None:
            self.desk.close_job()


def _counted(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"
