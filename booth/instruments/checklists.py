"""What is gone through line by line, Space or Enter for each: the product's cautions, cleaning up."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep
from booth.bench.instrument import Instrument
from booth.bench.next_act import finish
from booth.forms.form import Rows, Values
from booth.log.events import BatchFinished, CautionAcknowledged, Event, LineTicked
from booth.profile.cautions import Caution, cautions_for
from booth.words.shown import Page, Picture, reflow


class Cautions(Instrument):
    KIND = "cautions"
    NAME = "Cautions"
    ABOUT = (
        "The usual cautions for this kind of product, from the hazards its profile declares. They "
        "are not all there is: the product's safety data sheet, local codes and licensed practice "
        "come first.",
        "Having read them does not make a job free of danger, and this program never says so.",
    )
    KEEPS = (CautionAcknowledged,)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        every, left = cautions_for(context.profile), open_cautions(context)
        if not left:
            all_read = ("head", f"▲ All {len(every)} were read and are in the log.")
            return (Page((all_read, *(("done", f"√ {each.title}") for each in every))),)
        said = (
            ("quiet", f"{len(every) - len(left) + 1} of {len(every)}"),
            ("warning", f"▲ {left[0].title}"),
            *(("text", line) for line in reflow(left[0].lines)),
            ("quiet", f"Source: {left[0].source}"),
        )
        return (Page(said),)

    def kept_any(self, context: Context) -> bool:
        return not open_cautions(context)

    def space(self, context: Context, rows: Rows) -> Act | None:
        left = open_cautions(context)
        if not left:
            return None
        words = f"{left[0].title}. {' '.join(reflow(left[0].lines))}"
        read = CautionAcknowledged(n=0, at=context.now, caution=left[0].key, words=words)
        return Act("read and understood", (Keep(read),))

    enter = space


class Clean(Instrument):
    KIND = "clean"
    NAME = "Clean-up"
    ABOUT = (
        "The lines are this step's own, from the profile or the default list (common practice, no "
        "source). Each tick is kept.",
        "Finishing the list also marks the mixed batches as used up, so that their pot life no "
        "longer rings. Rags with drying oils or two-pack residues can heat by themselves: a metal "
        "can with a lid, emptied daily (29 CFR 1910.107(g)(3); paragraph from memory, not "
        "checked). Waste goes where local rules say.",
    )
    KEEPS = (LineTicked,)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        left = open_lines(context)

        def shown(line: str) -> tuple[str, str]:
            if line not in left:
                return "done", f"√ {line}"
            return ("now", f"→ {line}") if line == left[0] else ("text", f"  {line}")

        return (Page(tuple(map(shown, context.step.how))),)

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

    def enter(self, context: Context, rows: Rows) -> Act:
        """What is left in the gun was thrown away: no pot life rings any more."""
        job = context.job
        left = (each.batch for each in job.batches if each.batch not in job.finished_batches)
        finished = (BatchFinished(n=0, at=context.now, batch=batch) for batch in left)
        return self.space(context, rows) or finish(self, context, *finished)


def open_cautions(context: Context) -> list[Caution]:
    """The cautions that have not been acknowledged in this job."""
    every = cautions_for(context.profile)
    return [each for each in every if each.key not in context.job.cautions]


def ticked(context: Context) -> tuple[LineTicked, ...]:
    """The lines that were ticked in this list: a job may have several."""
    return tuple(each for each in context.job.ticked if each.step == context.step.key)


def open_lines(context: Context) -> list[str]:
    """The lines of this step that are still to be done."""
    done = {each.line for each in ticked(context)}
    return [line for line in context.step.how if line not in done]
