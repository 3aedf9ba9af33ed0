"""Thin: add this much, stir, time again; the figure is the thinner to add now."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, OpenStep, Say, SetForm, refused
from booth.bench.instrument import Instrument, quantity
from booth.forms.form import Field, Rows, Values, shown
from booth.instruments.large.cup import thinning_at_large
from booth.instruments.learnt_here import of_thinner
from booth.instruments.thin_words import added_words, scale_of, thin_readout
from booth.job import mixture
from booth.job.mix_choice import in_use
from booth.job.pot import left_in_pot
from booth.job.steps import key_of
from booth.job.thin_advice import (
    Advice,
    Finding,
    advise,
)
from booth.log.events import ThinnerAdded
from booth.trade.result import Value
from booth.units import Kind, Quantity, show
from booth.words.about import of_the_can
from booth.words.shown import Readout

WHEN_ADDED = "Space when it is in; or type what was really added."
NO_FIGURE = "There is no amount to add. What was added all the same: type it."
NO_DENSITY = "The profile gives no density of the thinner: measure it by volume."
NO_MIX_DENSITY = "The density of this mix is not known: give its volume."


class Thin(Instrument):
    KIND = "thin"
    NAME = "Thin"
    ABOUT = of_the_can.THIN
    KEEPS = (ThinnerAdded,)
    UNIT_FIRST = True
    at_large = thinning_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        stage = mixture.now(context.job)
        kind = Kind.MASS if mixture.by_weight(context.job) else None
        in_pot = left_in_pot(context.job).left_ml
        left: Quantity | float | None = in_pot
        if kind is not None and in_pot is not None and stage.density_g_ml is not None:
            left = Quantity(in_pot * stage.density_g_ml, "g", "")
        known, hint, asked = left is not None, "before it goes in", "if not the figure"
        return (
            Field("left", "Mix left", kind, amount=True, default=left, hint=hint, assumed=known),
            Field("added", "Really added", kind, amount=True, optional=True, hint=asked),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return thin_readout(context, advice_on(context, values), left_ml(context, values))

    def record(self, context: Context) -> tuple[str, ...]:
        lines = [*of_thinner(context)]
        for stage in (stage for stage in mixture.stages(context.job)[-4:] if stage.runs):
            viscosity = mixture.viscosity_of(stage)
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
        if mixture.added_ml(in_use(context.job), added) is None:
            return NO_DENSITY
        if left is None or left.value <= 0:
            return "Say how much mix it went into."
        if left_ml(context, values) is None:
            return NO_MIX_DENSITY
        return ThinnerAdded(n=0, at=context.now, amount=added, remaining=left)

    def space(self, context: Context, rows: Rows) -> Act:
        """The figure was added, or what was typed."""
        row, values = rows.row("added"), dict(rows.values)
        if rows.fault:
            return refused(rows.fault)
        if row.is_empty:
            to_add_ml = advice_on(context, values).to_add_ml
            if to_add_ml is None:
                return refused(NO_FIGURE)
            kind, scale = scale_of(context)
            typed = f"{to_add_ml * scale:g} {kind.base}"
            values["added"] = Quantity(to_add_ml * scale, kind.base, typed)
        event = self.event(context, values)
        if isinstance(event, str):
            return refused(event)
        word, said = shown(event.amount, row.field, context.system), added_words(context, event)
        return Act(f"added: {word}", (Keep(event), SetForm(rows.emptied()), Say(said)))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """Keep what was typed; back to the cup once thinner went in; else as in every form."""
        marked = rows.marked
        if marked is not None and marked.key == "added" and rows.holds and not rows.waiting:
            return self.space(context, rows) if not marked.is_empty else refused(WHEN_ADDED)
        untimed = advise(context.job).finding is Finding.NOT_TIMED and context.job.thinner
        cup = key_of(context.job, "efflux")
        if rows.holds or not untimed or not cup:
            return None
        return Act("time the cup again", (OpenStep(cup),))


def left_ml(context: Context, values: Values) -> float | None:
    """The mix that is left [ml]; None where it is not said, or weighed and of unknown density."""
    left = quantity(values, "left")
    density = mixture.now(context.job).density_g_ml or context.profile.film.density_g_ml
    return None if left is None else mixture.volume_ml(left, density)


def advice_on(context: Context, values: Values) -> Advice:
    """What there is to say now; of an amount that is not known nothing."""
    left = left_ml(context, values)
    return advise(context.job, 0.0 if left is None else left)
