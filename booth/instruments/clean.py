"""Cleaning up, line by line, so that nothing is left in the gun on a long day."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep
from booth.bench.instrument import Instrument
from booth.bench.next_act import finish
from booth.forms.form import Rows, Values
from booth.log.events import BatchFinished, Event, LineTicked
from booth.words.shown import Page, Picture


class Clean(Instrument):
    """A checklist; Space or Enter ticks the next line."""

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
        """The last line that was ticked in this list: a job may have several."""
        return tuple(each for each in context.job.ticked if each.step == context.step.key)[-1:]

    def space(self, context: Context, rows: Rows) -> Act | None:
        left = open_lines(context)
        if not left:
            return None
        ticked = LineTicked(n=0, at=context.now, step=context.step.key, line=left[0])
        return Act("tick this line", (Keep(ticked),))

    def enter(self, context: Context, rows: Rows) -> Act:
        """What is left in the gun was thrown away: no pot life rings any more."""
        job = context.job
        finished = [
            BatchFinished(n=0, at=context.now, batch=each.batch)
            for each in job.batches
            if each.batch not in job.finished_batches
        ]
        return self.space(context, rows) or finish(self, context, *finished)


def open_lines(context: Context) -> list[str]:
    """The lines of this step that are still to be done."""
    ticked = {each.line for each in context.job.ticked if each.step == context.step.key}
    return [line for line in context.step.how if line not in ticked]
