"""The end of a job: what came out, what to change next time; Enter on the last row closes it."""

from __future__ import annotations

from booth.bench.act import Act, CloseJob, Context, Keep, Scroll
from booth.bench.instrument import Instrument, word
from booth.bench.next_act import onward, step_done
from booth.files.faults import counted
from booth.forms.form import Field, Rows, Values
from booth.forms.key import Key
from booth.instruments.large.day import day_at_large
from booth.job.products import products_of
from booth.job.rehearsal import NOTHING, Finding, findings
from booth.log.events import JobClosed
from booth.words.about import of_the_coat
from booth.words.shown import Page, Picture, Readout, Tone

#: Nothing is taken for good that nobody called so: the next job starts from a good one.
VERDICTS = (
    ("", "how did it come out?"),
    ("good", "good: repeat it like this"),
    ("usable", "usable, with flaws"),
    ("redo", "to be done again"),
)
#: Rows that one press moves what a rehearsal says.
SCROLLS = {"left": -3, "right": 3}
TONES = {"good": Tone.GOOD, "usable": Tone.CAUTION, "redo": Tone.LATE}


class Result(Instrument):
    KIND = "result"
    NAME = "Result"
    ABOUT = of_the_coat.RESULT
    KEEPS = (JobClosed,)
    FIRST = ("verdict",)
    at_large = day_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        said = (
            Field("words", "What came out", optional=True),
            Field("next_time", "Next time", optional=True, hint="Enter here closes the job"),
        )
        if context.job.opened.rehearsal:
            return said
        return (Field("verdict", "Verdict", choices=VERDICTS, asks=True), *said)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        return rehearsed_page(context) if context.job.opened.rehearsal else ()

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """Where nothing is typed the arrows move what a rehearsal says."""
        typed = rows.marked is not None and rows.marked.text
        if key.name not in SCROLLS or typed or not context.job.opened.rehearsal:
            return None
        return Act("read on", (Scroll(SCROLLS[key.name]),))

    def readout(self, context: Context, values: Values) -> Readout:
        """The verdict; until there is one, what was laid."""
        job, verdict = context.job, word(values, "verdict")
        if job.opened.rehearsal:
            return rehearsed_readout(context)
        laid = (own.coats_on(part) for own in products_of(job) for part in job.parts)
        coats = sum(coat.ended is not None for each in laid for coat in each)
        parts = counted(len(job.parts), "part")
        faults = ", ".join(each.fault for each in job.faults) or "none noted"
        lines = (f"{counted(coats, 'coat')} on {parts}", f"faults seen: {faults}")
        if not verdict:
            unit = counted(coats, "coat").partition(" ")[2]
            label = f"laid on {parts}"
            return Readout(f"{coats}", unit, label, word="VERDICT?", lines=lines[1:], whose="JOB")
        tone, said = TONES[verdict], verdict.upper()
        return Readout(said, tone=tone, word="", lines=lines, whose="JOB", edge=1.0)

    def enter(self, context: Context, rows: Rows) -> Act:
        """Through the rows, whatever they hold; on the last one the job is closed."""
        onto = onward(rows)
        if onto is not None:
            return onto
        *done, _ = step_done(context)  # there is no step to go on to
        said = {key: word(rows.values, key) for key in ("verdict", "words", "next_time")}
        told = tuple(each.words for each in found(context) if each.is_change)
        closed = JobClosed(n=0, at=context.now, **said, to_change=told)
        what = "rehearsal" if context.job.opened.rehearsal else "job"
        return Act(f"close the {what}", (*done, Keep(closed), CloseJob()))


def found(context: Context) -> tuple[Finding, ...]:
    """What a rehearsal says; nothing of a job."""
    job = context.job
    return findings(job, context.system, context.past.pairs) if job.opened.rehearsal else ()


def rehearsed_readout(context: Context) -> Readout:
    """How much there is to change before the real can is opened; never that it may be. Pure."""
    told = found(context)
    changes = sum(each.is_change for each in told)
    label = "to change before the real can"
    if changes:
        return Readout(f"{changes}", "", label, Tone.CAUTION, "TO CHANGE", whose="WATER")
    if any(each.words.endswith(NOTHING) for each in told):
        return Readout("", label=label, word="NOT KNOWN", whose="WATER")
    none = ("Nothing that was measured asks for a change; the coating itself may.",)
    return Readout("", label=label, word="NONE FOUND", lines=none, whose="WATER")


def rehearsed_page(context: Context) -> tuple[Picture, ...]:
    """What to change, the worst first, then what is not known. Pure."""
    said = [("warning" if each.is_change else "text", each.words) for each in found(context)]
    signs = {"warning": "▲", "text": "?"}
    return (Page(tuple((style, f"{signs[style]} {words}") for style, words in said)),)
