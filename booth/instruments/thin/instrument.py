"""Thin: add this much, stir, time again; the figure is the thinner to add now."""

from __future__ import annotations

from typing import ClassVar

from booth.bench.act import Act, Keep, OpenStep, Say, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, quantity
from booth.forms.field import Field, shown
from booth.forms.form import Rows, Values
from booth.instruments.thin.words import added_words, amount_to_add, thin_readout
from booth.job.mixture import added_ml, by_weight, now, stages, viscosity_of, volume_ml
from booth.job.steps import steps_of
from booth.job.thin_advice import Advice, Finding, advise
from booth.log.events import Event, ThinnerAdded
from booth.trade.result import Value
from booth.units import Kind, Quantity, show
from booth.words.readout import Readout

WHEN_ADDED = "Space when it is in; or type what was really added."
NO_FIGURE = "There is no amount to add. What was added all the same: type it."
NO_DENSITY = "The profile gives no density of the thinner: measure it by volume."
NO_MIX_DENSITY = "The density of this mix is not known: give its volume."


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
        "Once anything was weighed, thinner is weighed too, where the profile gives its density.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (ThinnerAdded,)
    UNIT_FIRST: ClassVar[bool] = True

    def fields(self, context: Context) -> tuple[Field, ...]:
        stage, kind = now(context.job), Kind.MASS if by_weight(context.job) else None
        left, density = stage.left_ml, stage.density_g_ml
        default = None if left is None else Quantity(left, "ml", "")
        if kind is not None and left is not None and density is not None:
            default = Quantity(left * density, "g", "")
        left_row = Field(
            "left",
            "Mix left",
            kind,
            amount=True,
            default=default,
            hint="before it goes in",
            assumed=default is not None,
        )
        hint = "if not the figure"
        return (
            left_row,
            Field("added", "Really added", kind, amount=True, optional=True, hint=hint),
        )

    def first(self, context: Context, values: Values) -> str:
        return "added" if now(context.job).left_ml is not None else ""

    def readout(self, context: Context, values: Values) -> Readout:
        return thin_readout(context, advice_on(context, values), left_ml(context, values))

    def record(self, context: Context) -> tuple[str, ...]:
        lines = []
        for stage in stages(context.job)[-4:]:
            viscosity = viscosity_of(stage)
            if not stage.runs:
                continue
            runs = "  ".join(f"{run.seconds:.1f}" for run in stage.runs[-3:])
            said = "outside the cup's range"
            if isinstance(viscosity, Value):
                said = show(viscosity.value, Kind.VISCOSITY, context.system)
            lines.append(f"{100 * stage.fraction:.1f} % thinner: {runs} s, {said}")
        return tuple(lines)

    def kept_any(self, context: Context) -> bool:
        return bool(context.job.thinner) or advise(context.job).finding is Finding.ON_TARGET

    def event(self, context: Context, values: Values) -> ThinnerAdded | str:
        added, left = quantity(values, "added"), quantity(values, "left")
        if added is None or added.value <= 0:
            return "Nothing was added." if added is not None else WHEN_ADDED
        if added_ml(context.profile, added) is None:
            return NO_DENSITY
        if left is None or left.value <= 0:
            return "Say how much mix it went into."
        if left_ml(context, values) is None:
            return NO_MIX_DENSITY
        return ThinnerAdded(n=0, at=context.now, amount=added, remaining=left)

    def space(self, context: Context, rows: Rows) -> Act:
        """The figure was added, or what was typed."""
        row, values = rows.row("added"), dict(rows.values)
        wrong = next((each.fault for each in rows.every if each.fault), "")
        if wrong:
            return refused(wrong)
        if row.is_empty:
            step = advice_on(context, values).step
            if step is None:
                return refused(NO_FIGURE)
            values["added"] = amount_to_add(context, step.step_ml)
        event = self.event(context, values)
        if isinstance(event, str):
            return refused(event)
        word = f"added: {shown(event.amount, row.field, context.system)}"
        said = Say(added_words(context, event))
        return Act(word, (Keep(event), SetForm(self.cleared(rows.form)), said))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """Keep what was typed; back to the cup once thinner went in; else as in every form."""
        marked = rows.marked
        if marked is not None and marked.key == "added" and rows.holds and not rows.waiting:
            return self.space(context, rows) if not marked.is_empty else refused(WHEN_ADDED)
        untimed = advise(context.job).finding is Finding.NOT_TIMED and context.job.thinner
        cup = next((step.key for step in steps_of(context.job) if step.kind == "efflux"), "")
        if rows.holds or not untimed or not cup:
            return None
        return Act("time the cup again", (OpenStep(cup),))


def left_ml(context: Context, values: Values) -> float | None:
    """The mix that is left [ml]; None where it is not said, or weighed and of unknown density."""
    left = quantity(values, "left")
    density = now(context.job).density_g_ml or context.profile.film.density_g_ml
    return None if left is None else volume_ml(left, density)


def advice_on(context: Context, values: Values) -> Advice:
    """What there is to say now; of an amount that is not known nothing."""
    left = left_ml(context, values)
    return advise(context.job, 0.0 if left is None else left)
