"""From one product of the job to the next: how its window stands on each part; Enter begins it."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, Say, refused
from booth.bench.instrument import Instrument
from booth.bench.next_act import finish
from booth.forms.form import Rows, Values
from booth.instruments.coats import part_readout
from booth.instruments.part_rows import by_part, parts_picture
from booth.job.coat_plan import coats_wanted, next_part, running_part
from booth.job.steps import coming
from booth.job.waits import standings
from booth.log.events import ProductBegun
from booth.words.about import of_the_coat
from booth.words.shown import Page, Picture, Readout

GOES_BACK = "To go back: void that entry in the log."


class NextProduct(Instrument):
    """The parts with their windows for the next product."""

    KIND = "next-product"
    NAME = "Next product"
    ABOUT = of_the_coat.NEXT_PRODUCT

    def readout(self, context: Context, values: Values) -> Readout | None:
        """The window of the part that is most urgent."""
        job, following, part = context.job, coming(context.job), foremost(context)
        if following is None:
            return None
        each = by_part(context).get(part)
        if each is not None:
            return part_readout(context, part, each)
        count = f"{job.product + 1}/{len(job.opened.products)}"
        return Readout(count, label=f"next: {following.name}", word="NEXT", whose="PRODUCT")

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        if coming(context.job) is None:
            return (Page((("text", "No product follows in this job."),)),)
        lacks = Page(tuple(("warning", each) for each in missing(context)))
        return (parts_picture(context, foremost(context)), lacks)

    def kept_any(self, context: Context) -> bool:
        return True

    def busy(self, context: Context) -> str:
        running = running_part(context.job)
        return f"{running}: a coat is being sprayed. End it first." if running else ""

    def enter(self, context: Context, rows: Rows) -> Act:
        """Begin the next product."""
        following = coming(context.job)
        if following is None:
            return finish(self, context)
        word = f"next product: {following.name}"
        why = self.busy(context)
        if why:
            return refused(why, word)
        begun = ProductBegun(n=0, at=context.now, product=context.job.product + 1)
        return Act(word, (Keep(begun), Say(f"{following.name} is begun. {GOES_BACK}")))


def foremost(context: Context) -> str:
    """The part whose window is most urgent, else the one whose turn it is."""
    known = (each.wait.part for each in standings(context.job, context.now))
    return next(filter(None, known), next_part(context.job))


def missing(context: Context) -> tuple[str, ...]:
    """Parts that lack coats of the present product."""
    job, found = context.job, []
    for part in job.parts:
        n, wanted = sum(c.ended is not None for c in job.coats_on(part)), coats_wanted(job, part)
        if n < wanted:
            found.append(f"{part}: {n} of {wanted} coats")
    return tuple(found)
