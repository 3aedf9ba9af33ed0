"""What is gone through line by line, Space for each: cautions, preparing, cleaning up, after care."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep
from booth.bench.instrument import Instrument
from booth.bench.next_act import finish
from booth.clock import local_hhmm
from booth.forms.form import Rows, Values
from booth.job.steps import cautions_of
from booth.log.events import BatchFinished, CautionAcknowledged, Event, LineTicked
from booth.moment import Moment
from booth.profile.cautions import Caution
from booth.profile.step_words import HEADS
from booth.words.about import of_the_coat, of_the_day
from booth.words.afar import key_words
from booth.words.shown import Page, Picture, Readout, Tone, reflow
from booth.words.tried import AtLarge


class Cautions(Instrument):
    KIND = "cautions"
    NAME = "Cautions"
    ABOUT = of_the_day.CAUTIONS
    KEEPS = (CautionAcknowledged,)

    def readout(self, context: Context, values: Values) -> Readout:
        every, left = cautions_of(context.job), open_cautions(context)
        if not left:
            return Readout("ALL READ", word="", whose="CAUTIONS", in_words=True)
        carried = carried_cautions(context)
        new = [each for each in left if each.key not in carried]
        if not new:
            return _asks("STILL HOLD?", "CAUTIONS")
        count = len(every) - len(carried)
        return _asks(new[0].afar, f"{count - len(new) + 1} of {count}")

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        every, left = cautions_of(context.job), open_cautions(context)
        if not left:
            all_read = ("head", f"▲ All {len(every)} were read and are in the log.")
            return (Page((all_read, *(("done", f"√ {each.title}") for each in every))),)
        carried = carried_cautions(context)
        if len(carried) == len(left):
            head = ("warning", f"▲ Acknowledged at {_when(carried)}, still hold")
            return (Page((head, *(("text", f"▲ {each.title}") for each in left))),)
        left = [each for each in left if each.key not in carried]
        said = (
            ("warning", f"▲ {left[0].title}"),
            *(("text", line) for line in reflow(left[0].lines)),
            ("quiet", f"Source: {left[0].source}"),
        )
        return (Page(said),)

    def at_large(self, context: Context, values: Values) -> AtLarge:
        """All of them beside the words of the one to be read."""
        every, left = cautions_of(context.job), open_cautions(context)
        new = [each for each in left if each.key not in carried_cautions(context)]
        if not new:
            return AtLarge(page=True)
        listed = (_marked(each.title, each in left, each is new[0]) for each in every)
        return AtLarge((Page(tuple(listed)),), page=True)

    def kept_any(self, context: Context) -> bool:
        return not open_cautions(context)

    def space(self, context: Context, rows: Rows) -> Act | None:
        left, carried = open_cautions(context), carried_cautions(context)
        new = [each for each in left if each.key not in carried]
        read = tuple(Keep(acknowledged(each, context)) for each in new[:1] or left)
        return Act("read and understood" if new else "all still hold", read) if left else None

    enter = space


class Checklist(Instrument):
    """A list that Space ticks line by line; Enter goes on, whatever is left for later."""

    LINES = (
        "The lines are this step's own, from the profile or the default list (common practice, no "
        "source). Each tick is kept."
    )
    KEEPS = (LineTicked,)

    def readout(self, context: Context, values: Values) -> Readout:
        """What the line to do now is about."""
        every, left = context.step.how, open_lines(context)
        if not left:
            return Readout("ALL TICKED", word="", whose=self.NAME, in_words=True)
        at = f"{every.index(left[0]) + 1} of {len(every)}"
        return Readout(
            HEADS.get(left[0]) or key_words(left[0]), word="DO IT", whose=at, in_words=True
        )

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        left = open_lines(context)
        lines = (_marked(each, each in left, left[:1] == [each]) for each in context.step.how)
        return (Page(tuple(lines)),)

    def at_large(self, context: Context, values: Values) -> AtLarge:
        return AtLarge(page=True)

    def kept_any(self, context: Context) -> bool:
        return not open_lines(context)

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        return ticked(context)[-1:]

    def space(self, context: Context, rows: Rows) -> Act | None:
        left = open_lines(context)
        if not left:
            return None
        tick = LineTicked(n=0, at=context.now, step=context.step.key, line=left[0])
        return Act("tick this line", (Keep(tick),))


class Prepare(Checklist):
    KIND = "prepare"
    NAME = "Prepare"
    ABOUT = of_the_day.PREPARE


class After(Checklist):
    KIND = "after"
    NAME = "After care"
    ABOUT = of_the_coat.AFTER_CARE


class Clean(Checklist):
    KIND = "clean"
    NAME = "Clean the gun"
    ABOUT = of_the_coat.CLEAN

    def enter(self, context: Context, rows: Rows) -> Act:
        """What is left in the gun was thrown away: no pot life rings any more."""
        job = context.job
        left = (each.batch for each in job.batches if each.batch not in job.finished_batches)
        finished = (BatchFinished(n=0, at=context.now, batch=batch) for batch in left)
        return self.space(context, rows) or finish(self, context, *finished)


def _asks(words: str, whose: str) -> Readout:
    """A caution, or all that were read before, to be read now."""
    return Readout(words, tone=Tone.CAUTION, word="READ", whose=whose, in_words=True)


def _marked(line: str, is_open: bool, is_next: bool) -> tuple[str, str]:
    """A line of a list with its style: done, to be done now, to come."""
    if not is_open:
        return "done", f"√ {line}"
    return ("now", f"→ {line}") if is_next else ("text", f"  {line}")


def open_cautions(context: Context) -> list[Caution]:
    """The cautions that have not been acknowledged in this job."""
    every = cautions_of(context.job)
    return [each for each in every if each.key not in context.job.cautions]


def acknowledged(caution: Caution, context: Context) -> CautionAcknowledged:
    words = f"{caution.title}. {' '.join(reflow(caution.lines))}"
    return CautionAcknowledged(n=0, at=context.now, caution=caution.key, words=words)


def carried_cautions(context: Context) -> dict[str, Moment]:
    """The open cautions that were acknowledged in the same words earlier today, in another job of
    this product, by their key, and when."""
    past = context.past.acknowledged(context.profile.key, context.now, context.job.opened.job)
    found = {}
    for each in open_cautions(context):
        at = past.get((each.key, acknowledged(each, context).words))
        if at is not None and at.wall <= context.now.wall:
            found[each.key] = at
    return found


def _when(carried: dict[str, Moment]) -> str:
    """The time of day of the latest of them."""
    return local_hhmm(max(carried.values(), key=lambda at: at.wall))


def ticked(context: Context) -> tuple[LineTicked, ...]:
    """The lines that were ticked in this list: a job may have several."""
    return tuple(each for each in context.job.ticked if each.step == context.step.key)


def open_lines(context: Context) -> list[str]:
    """The lines of this step that are still to be done."""
    done = {each.line for each in ticked(context)}
    return [line for line in context.step.how if line not in done]
