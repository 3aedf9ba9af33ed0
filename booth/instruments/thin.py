"""Thin: add this much, stir, time again; the figure is the thinner to add now."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, OpenStep, Say, SetForm, refused
from booth.bench.instrument import Instrument, quantity
from booth.files.safe_text import visible
from booth.forms.form import Field, Rows, Values, shown
from booth.instruments.figures import figure, interval
from booth.job import mixture
from booth.job.mix_choice import in_use
from booth.job.recipe import thinner_of, usual_percent
from booth.job.steps import key_of
from booth.job.thin_advice import Advice, Finding, advise, coating_to_thicken_ml, temperature_doubt
from booth.log.events import ThinnerAdded
from booth.profile.model import Efflux, Thinner
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.result import BadInput, Value
from booth.trade.thinning.thinner_share import solids_after_thinning, wet_film_after_thinning_um
from booth.units import Kind, Quantity, System, show
from booth.words.profile_words import range_words
from booth.words.shown import Readout, Tone

#: Below this nobody reads a volume in fluid ounces off a cup [ml].
SMALL_ML = 29.5735295625
WHEN_ADDED = "Space when it is in; or type what was really added."
NO_FIGURE = "There is no amount to add. What was added all the same: type it."
NO_DENSITY = "The profile gives no density of the thinner: measure it by volume."
NO_MIX_DENSITY = "The density of this mix is not known: give its volume."


class Thin(Instrument):
    KIND = "thin"
    NAME = "Thin"
    ABOUT = (
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
    KEEPS = (ThinnerAdded,)
    UNIT_FIRST = True

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        stage = mixture.now(context.job)
        kind = Kind.MASS if mixture.by_weight(context.job) else None
        left: Quantity | float | None = stage.left_ml
        if kind is not None and stage.left_ml is not None and stage.density_g_ml is not None:
            left = Quantity(stage.left_ml * stage.density_g_ml, "g", "")
        known, hint, asked = left is not None, "before it goes in", "if not the figure"
        return (
            Field("left", "Mix left", kind, amount=True, default=left, hint=hint, assumed=known),
            Field("added", "Really added", kind, amount=True, optional=True, hint=asked),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return thin_readout(context, advice_on(context, values), left_ml(context, values))

    def record(self, context: Context) -> tuple[str, ...]:
        lines = []
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
            step = advice_on(context, values).step
            if step is None:
                return refused(NO_FIGURE)
            kind, scale = _scale(context)
            typed = f"{step.step_ml * scale:g} {kind.base}"
            values["added"] = Quantity(step.step_ml * scale, kind.base, typed)
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


def thin_readout(context: Context, advice: Advice, left_ml: float | None) -> Readout:
    doubt = temperature_doubt(context.job)
    first = (doubt,) if doubt else ()
    if advice.finding is Finding.ADD:
        return _add(context, advice, first)
    tone, word, lines = _said(context, advice, left_ml)
    lines = (*lines, *first)
    if advice.mean_s is not None and advice.cup is not None:
        label = f"mean, {advice.cup.name}"
        return Readout(f"{advice.mean_s:.1f}", "s", label, tone, word, lines, like="00.0")
    if advice.finding is Finding.NOT_TIMED and context.job.thinner:
        percent = f"{100 * advice.stage.fraction:.1f}"
        return Readout(percent, "%", "thinner in it now", tone, word, lines)
    return Readout("–", "", "thinner to add", tone, word, lines)


def _said(
    context: Context, advice: Advice, left_ml: float | None
) -> tuple[Tone, str, tuple[str, ...]]:
    efflux, target = context.profile.efflux, ""
    thinner = thinner_of(in_use(context.job)) or Thinner("thinner")
    if efflux is not None:
        span = range_words(efflux.target_s, Kind.TIME, context.system)
        target = f"target: {span} in a {efflux.cup}"
    match advice.finding:
        case Finding.NO_THINNER:
            return Tone.PLAIN, "NO THINNER", ("The profile names none: spray it as it is mixed.",)
        case Finding.NO_TARGET:
            said = "The profile gives no efflux time to thin to."
            return Tone.PLAIN, "NO TARGET", (f"{said} What is added is kept all the same.",)
        case Finding.NOT_TIMED:
            if advice.stage.runs == () and context.job.thinner:
                said = "Stir until no streak is left, then time the cup."
                return Tone.READY, "TIME AGAIN", (said, target)
            said = "The mix as it is now was not timed yet: step Flow cup."
            return Tone.PLAIN, "TIME THE CUP", (said, target)
        case Finding.ON_TARGET:
            return Tone.GOOD, "ON TARGET", ("Add nothing.", target, *_effect(context, advice))
        case Finding.TOO_THIN:
            return Tone.CAUTION, "TOO THIN", (*_thicken(context, left_ml), target)
        case Finding.LIMIT:
            said = (
                f"{100 * advice.stage.fraction:.1f} % of {visible(thinner.name)} is in it; the "
                f"profile allows {thinner.limit_percent:g} %. Add no more: check the temperature of "
                "the mix and the cup, ask the data sheet about a larger tip or more pressure."
            )
            return Tone.CAUTION, "LIMIT REACHED", (said, target)
        case Finding.NO_AMOUNT:
            return Tone.PLAIN, "HOW MUCH MIX?", ("Type how much mix is left.", target)
    return Tone.CAUTION, "CANNOT TELL", (" ".join(advice.why), target)


def _thicken(context: Context, left_ml: float | None) -> tuple[str, ...]:
    said = "Thinner cannot be taken out: stir in unthinned mix of the same parts, and time it."
    left = left_ml or 0.0
    amount = coating_to_thicken_ml(context.job, left) if left > 0 else None
    if amount is None or amount <= 0:
        return (said, "Or thin films, more coats: it runs sooner.")
    kind, scale = _scale(context)
    stage = mixture.now(context.job)
    if kind is Kind.MASS and stage.density_g_ml is not None:
        # Volumes are taken to add up: what is no thinner in it weighs the rest.
        scale = stage.density_g_ml * (1 + stage.fraction) - scale * stage.fraction
    else:
        kind, scale = Kind.VOLUME, 1.0
    shown = show(amount * scale, kind, context.system)
    return (f"{said} About {shown} by this mix's own line (estimate).",)


def _add(context: Context, advice: Advice, first: tuple[str, ...]) -> Readout:
    step, fit, system = advice.step, advice.fit, context.system
    assert step is not None
    kind, scale = _scale(context)
    basis = "by one measurement (estimate): begin low"
    if fit is not None:
        basis = f"by {fit.count} measurements of this mix"
        if fit.residual_fraction is not None:
            basis += f", {100 * fit.residual_fraction:.0f} % off the line"
    ends = interval(step.add.low * scale, step.add.high * scale, kind, system)
    thinner = thinner_of(in_use(context.job)) or Thinner("thinner")
    limit = thinner.limit_percent
    of = f" of {limit:g} % allowed" if limit is not None else ""
    start = "" if advice.stage.known else ", counted from none: the pours are not in the log"
    lines = [step.note] if step.at_limit else []
    lines += [*first, f"{ends} {basis}"]
    lines.append(f"then {100 * step.fraction_after:.1f} % thinner in it{of}{start}")
    if kind is Kind.VOLUME and system is System.US and step.step_ml < SMALL_ML:
        small = show(step.step_ml, kind, System.METRIC)
        lines.append(f"that is {small}: use a small cup or a syringe")
    lines += _effect(context, advice, step.fraction_after)
    efflux, measured = context.profile.efflux, ""
    if efflux is not None and advice.cup is not None and advice.mean_s is not None:
        measured = f"  ({advice.mean_s:.1f} s, {_wanted(efflux, advice.cup)})"
    tone, word = (Tone.CAUTION, "TO THE LIMIT") if step.at_limit else (Tone.READY, "ADD, STIR")
    label = f"{visible(thinner.name)}: add now{measured}"
    return figure(context, step.step_ml * scale, kind, label, tone, word, lines)


def _wanted(efflux: Efflux, cup: Cup) -> str:
    """The target in few words, with its cup where another one was used."""
    span = efflux.target_s
    ends = [f"{end:g}" for end in dict.fromkeys((span.low, span.high)) if end is not None]
    least = "at least " if span.high is None else "up to " if span.low is None else ""
    where = "" if cup_named(efflux.cup).key == cup.key else f" in a {efflux.cup}"
    return f"wanted {least}{'-'.join(ends)} s{where}"


def _effect(context: Context, advice: Advice, after: float | None = None) -> tuple[str, ...]:
    """Volume solids and the wet film that leaves the same dry film."""
    film, fraction, said = context.profile.film, advice.stage.fraction, []
    fraction = fraction if after is None else after
    try:
        if film.wet_um is not None:
            usual = usual_percent(in_use(context.job)) / 100
            wet_um = wet_film_after_thinning_um(film.wet_um.middle, usual, fraction)
            wet = show(wet_um, Kind.THICKNESS, context.system)
            said.append(f"spray {wet} wet for the same dry film")
        if film.volume_solids_percent is not None:
            given = film.volume_solids_percent
            ends = dict.fromkeys(end for end in (given.low, given.high) if end is not None)
            shares = [100 * solids_after_thinning(end / 100, fraction) for end in ends]
            said.append(f"solids {' to '.join(f'{share:.1f}' for share in shares)} %")
    except BadInput:
        return ()
    return (", ".join(said),) if said else ()


def _scale(context: Context) -> tuple[Kind, float]:
    """How thinner is measured out, and what a millilitre of it is then: weighed with the rest."""
    density = mixture.thinner_density_g_ml(in_use(context.job))
    if density is None or not mixture.by_weight(context.job):
        return Kind.VOLUME, 1.0
    return Kind.MASS, density


def added_words(context: Context, added: ThinnerAdded) -> str:
    profile = in_use(context.job)
    stage = mixture.thinned(profile, added, mixture.now(context.job))
    thinner, percent = thinner_of(profile), 100 * stage.fraction
    limit = thinner.limit_percent if thinner is not None else None
    said = f"{percent:.1f} % thinner in it now. Stir, then Enter: time the cup again."
    if limit is not None and percent > limit * 1.001:
        return f"Over the limit of {limit:g} %: add unthinned coating. {said}"
    return said
