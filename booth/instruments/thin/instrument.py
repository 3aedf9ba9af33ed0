"""Thin: add this much, stir, time again; the figure is the thinner to add now."""

from __future__ import annotations

from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number, quantity
from booth.instruments.thin.words import thin_readout
from booth.job.mixture import added_ml, now, stages, viscosity_of
from booth.job.pouring import thinner_of
from booth.job.thin_advice import Advice, Finding, advise
from booth.log.events import Event, ThinnerAdded
from booth.moment import Moment
from booth.trade.result import Value
from booth.units import Kind, Quantity, show
from booth.widgets.entry import Field, FieldRow
from booth.words.readout import Readout


class Thin(Instrument):
    """From the runs of the cup to the amount to add."""

    KIND: ClassVar[str] = "thin"
    NAME: ClassVar[str] = "Thin"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The figure is the thinner to add now to the mix that is left: the cautious part of what "
        "the target may take, for it cannot be taken out again. Add, stir, time the cup again.",
        "From one measurement two published rules give a band: the blending index (Refutas, in the "
        "form of ASTM D7152) its low end, the logarithmic mixing rule its high one. Neither was "
        "made for paint and they disagree, so this is an estimate and the step is the low end.",
        "From two amounts of thinner on, a straight line of ln viscosity over the thinner's share "
        "is laid through your own measurements of this mix (least squares) and its doubt is shown. "
        "Real mixes fall fast at first and slower later.",
        "Efflux times become viscosities by the cup's own standard, within its range only. All "
        "runs have to be at one temperature: viscosity moves by up to 5 % a degree F "
        "(ASTM D4212 8.1).",
        "Thinner lowers the volume solids: VS / (1 + s), and the wet film for the same dry film "
        "grows by as much (Organic Finishing Guidebook 2012-13 p. 615). The wet film of the "
        "profile is taken to be meant for its usual thinner.",
        "The limit is the profile's, in percent of the coating's volume. Local rules on solvent "
        "may allow less; the product's data sheet decides.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (ThinnerAdded,)
    GO: ClassVar[str] = "added"

    def fields(self, context: Context) -> tuple[Field, ...]:
        left = now(context.job).left_ml
        return (
            Field("added", "Really added", amount=True, optional=True,
                  hint="if not the figure"),
            Field("left", "Mix left", Kind.VOLUME,
                  default=None if left is None else Quantity(left, "ml", ""),
                  hint="before it goes in"),
        )  # fmt: skip

    def advice(self, context: Context, values: Values) -> Advice:
        """What there is to say now."""
        return advise(context.job, number(values, "left"))

    def readout(self, context: Context, values: Values) -> Readout:
        return thin_readout(context, self.advice(context, values), number(values, "left"))

    def draw(self, context: Context) -> None:
        super().draw(context)
        if self.is_mounted:
            step = self.advice(context, self.values()).step
            self.set_class(step is not None, "-planned")

    def record(self, context: Context) -> tuple[str, ...]:
        lines = []
        for stage in stages(context.job)[-4:]:
            viscosity = viscosity_of(stage)
            if not stage.runs:
                continue
            runs = "  ".join(f"{run.seconds:.1f}" for run in stage.runs[-3:])
            shown = (
                show(viscosity.value, Kind.VISCOSITY, context.system)
                if isinstance(viscosity, Value)
                else "outside the cup's range"
            )
            lines.append(f"{100 * stage.fraction:.1f} % thinner: {runs} s, {shown}")
        return tuple(lines)

    def go(self, at: Moment) -> None:
        """The figure was added, or what was typed."""
        context, values = self.desk.context, self.values()
        for row in self.rows:
            if row.fault:
                self.desk.say(row.fault, fault=True)
                return
        advice = self.advice(context, values)
        added = quantity(values, "added")
        if added is None:
            if advice.step is None:
                self.desk.say("There is no amount to add. What was added all the same: type it.")
                return
            added = Quantity(advice.step.step_ml, "ml", f"{advice.step.step_ml:g} ml")
        self._add(added, at)

    def _add(self, added: Quantity, at: Moment) -> None:
        context, values = self.desk.context, self.values()
        if added.value <= 0:
            self.desk.say("Nothing was added.")
            return
        if added_ml(context.profile, added) is None:
            self.desk.say(
                "The profile gives no density of the thinner: measure it by volume.", fault=True
            )
            return
        left = quantity(values, "left")
        if left is None or left.value <= 0:
            self.row("left").place.focus()
            self.desk.say("Say how much mix it went into.", fault=True)
            return
        if self.desk.keep(ThinnerAdded(n=0, at=at, amount=added, remaining=left)) is None:
            return
        self.clear()
        self.draw(self.desk.context)
        self.desk.say(self._after(self.desk.context))

    def _after(self, context: Context) -> str:
        """What the thinner in the mix comes to, and what is next."""
        stage, thinner = now(context.job), thinner_of(context.profile)
        limit = thinner.limit_percent if thinner is not None else None
        percent = 100 * stage.fraction
        said = f"{percent:.1f} % thinner in it now. Stir, then Enter: time the cup again."
        if limit is not None and percent > limit * 1.001:
            return f"Over the limit of {limit:g} %: add unthinned coating. {said}"
        return said

    def enter(self, row: FieldRow | None = None) -> None:
        """Keep what was typed; else on to the cup, or to the next step once the target is met."""
        if row is not None and row.fault:
            self.desk.say(row.fault, fault=True)
            return
        if not self.row("added").is_empty:
            self.go(self.desk.context.now)
            return
        if row is not None and row.field.key == "left" and not row.is_empty:
            self.row("added").place.focus()
            return
        advice = self.advice(self.desk.context, self.values())
        if advice.finding is Finding.NOT_TIMED and self.desk.context.job.thinner:
            self.desk.open_kind("efflux")
            return
        self.desk.finish_step()

    def kept_any(self, context: Context) -> bool:
        return bool(context.job.thinner) or (self.advice(context, {}).finding is Finding.ON_TARGET)

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        advice = self.advice(context, self.values()) if self.is_mounted else None
        if self.is_mounted and not self.row("added").is_empty:
            return (("Enter", "keep"), ("↑↓", "row"))
        if advice is not None and advice.step is not None:
            return (("Space", "added, as shown"), ("digits", "what was added"), ("Enter", "go on"))
        if advice is not None and advice.finding is Finding.NOT_TIMED and context.job.thinner:
            return (("Enter", "time the cup again"), ("Bksp", "void"))
        return (("Enter", "next step"), ("digits", "what was added"))
