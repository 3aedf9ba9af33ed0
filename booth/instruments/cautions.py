"""The cautions of this product, one by one: read, acknowledged, logged."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep
from booth.bench.instrument import Instrument
from booth.forms.form import Rows, Values
from booth.log.events import CautionAcknowledged
from booth.log.fold import Job
from booth.profile.cautions import Caution, cautions_for
from booth.words.shown import Page, Picture, reflow


class Cautions(Instrument):
    """One caution at a time; Space or Enter acknowledges it."""

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
        every = cautions_for(context.profile)
        now = first_open(context.job)
        if now is None:
            all_read = ("head", f"▲ All {len(every)} were read and are in the log.")
            return (Page((all_read, *(("done", f"√ {each.title}") for each in every))),)
        read = sum(each.key in context.job.cautions for each in every)
        said = (
            ("quiet", f"{read + 1} of {len(every)}"),
            ("warning", f"▲ {now.title}"),
            *(("text", line) for line in reflow(now.lines)),
            ("quiet", f"Source: {now.source}"),
        )
        return (Page(said),)

    def kept_any(self, context: Context) -> bool:
        return first_open(context.job) is None

    def space(self, context: Context, rows: Rows) -> Act | None:
        now = first_open(context.job)
        if now is None:
            return None
        words = f"{now.title}. {' '.join(reflow(now.lines))}"
        read = CautionAcknowledged(n=0, at=context.now, caution=now.key, words=words)
        return Act("read and understood", (Keep(read),))

    enter = space


def first_open(job: Job) -> Caution | None:
    """The first caution that has not been acknowledged in this job."""
    return next((each for each in cautions_for(job.profile) if each.key not in job.cautions), None)
