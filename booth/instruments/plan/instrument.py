"""Plan: the whole job as a time line from now; the figure is when the last coat is on."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number
from booth.instruments.plan.words import plan_readout, timeline
from booth.job.job_schedule import Planned, planned, spray_times
from booth.units import Kind, Quantity
from booth.widgets.entry import Field, FieldRow
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.time_line import TimelineView
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
    can_be_empty: ClassVar[bool] = True

    def compose(self) -> ComposeResult:
        for widget in super().compose():
            yield widget
            if isinstance(widget, FigurePanel):
                yield TimelineView()

    def fields(self, context: Context) -> tuple[Field, ...]:
        times = {round(each.seconds) for each in spray_times(context.job).values()}
        sources = {each.source for each in spray_times(context.job).values()}
        usual = sum(times) / len(times) if times else 0.0
        return (
            Field("coat", "A coat takes", Kind.TIME, default=Quantity(usual, "s", ""),
                  hint=sources.pop() if len(sources) == 1 else "on average",
                  optional=True),
        )  # fmt: skip

    def _plan(self, context: Context) -> Planned:
        row = self.row("coat")
        typed = number(self.values(), "coat") if not row.is_empty else None
        return planned(context.job, context.now, typed)

    def readout(self, context: Context, values: Values) -> Readout:
        return plan_readout(context, self._plan(context), self.desk.local_time)

    def draw(self, context: Context) -> None:
        if not self.is_mounted:
            return
        super().draw(context)
        self.set_class(any(context.job.coats.values()), "-planned")
        self.query_one(TimelineView).line = timeline(
            context, self._plan(context), self.desk.local_time, self.size.width
        )

    def enter(self, row: FieldRow | None = None) -> None:
        """Nothing is kept here: the plan is made anew from the job at any moment."""
        if row is not None and row.fault:
            self.desk.say(row.fault, fault=True)
            return
        self.desk.finish_step()

    def kept_any(self, context: Context) -> bool:
        return True

    def void_last(self) -> None:
        """There is nothing of its own to void."""
        self.desk.say("The plan keeps nothing: it is made from the job.")

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        return (("Enter", "next step"), ("digits", "how long a coat takes"))
