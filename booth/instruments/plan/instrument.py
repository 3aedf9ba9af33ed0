"""Plan: the whole job as a time line from now; the figure is when the last coat is on."""

from __future__ import annotations

from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, quantity
from booth.forms.field import Field
from booth.forms.form import Values
from booth.instruments.plan.words import plan_readout, timeline
from booth.job.job_schedule import Planned, planned, spray_times
from booth.units import Kind, Quantity
from booth.words.pictures import Picture
from booth.words.readout import Readout


class Plan(Instrument):
    """The rest of the job, and what of it has been."""

    KIND: ClassVar[str] = "plan"
    NAME: ClassVar[str] = "Plan"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The figure is the time of day at which the last coat is on, if the gun goes on wherever a "
        "part is ready and waits only where none is. What has been is taken from the job; the rest "
        "moves on with the clock until a coat begins.",
        "A solid block is spraying, with the number of its coat; a dotted one is a wait, flash-off "
        "or until the recoat window opens; a thin line is a part that stands ready; a heavy one is "
        "a part past its window. The mark in the rule is now.",
        "Of the parts that are ready the one with the fewest coats comes first, in the order of "
        "the job; a part whose window would close meanwhile goes before it.",
        "Minutes for a coat on one part: as typed; else as this part's own coats took; else area x "
        "wet film / transfer efficiency / delivery, which is time at the trigger alone; else as "
        "the coats took so far; else 5 minutes, a guess (common practice, no source).",
        "Waits are those of the profile for today's weather, as everywhere else; an estimate is "
        "marked ~. A touch test always decides, and the data sheet before all of this.",
    )

    def fields(self, context: Context) -> tuple[Field, ...]:
        times = spray_times(context.job).values()
        seconds = {round(each.seconds) for each in times}
        sources = {each.source for each in times}
        usual = sum(seconds) / len(seconds) if seconds else 0.0
        hint = sources.pop() if len(sources) == 1 else "on average"
        default = Quantity(usual, "s", "")
        return (
            Field("coat", "A coat takes", Kind.TIME, optional=True, default=default, hint=hint),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return plan_readout(context, _plan(context, values))

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        return (timeline(context, _plan(context, values)),)

    def event(self, context: Context, values: Values) -> None:
        """Nothing is kept here: the plan is made anew from the job at any moment."""

    def kept_any(self, context: Context) -> bool:
        return True


def _plan(context: Context, values: Values) -> Planned:
    """The plan with the time that was typed; what is offered is each part's own."""
    coat = quantity(values, "coat")
    typed = coat.value if coat is not None and coat.typed else None
    return planned(context.job, context.now, typed)
