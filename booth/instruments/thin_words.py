"""What Thin says: the thinner to add now, or what comes first."""

from __future__ import annotations

from msgspec.structs import replace

from booth.bench.act import Context
from booth.files.safe_text import visible
from booth.instruments.figures import figure, gauge, given, interval
from booth.job import mixture
from booth.job.advice import limit_words, on_cup
from booth.job.amiss import Cause
from booth.job.guard import of_induction
from booth.job.measured import known
from booth.job.mix_choice import in_use
from booth.job.recipe import thinner_of, usual_percent
from booth.job.thin_advice import (
    Advice,
    Finding,
    coating_to_thicken_ml,
    off_temperature_k,
    temperature_doubt,
)
from booth.job.thinner_time import ThinnerTime, thinner_time
from booth.log.events import ThinnerAdded
from booth.profile.model import Efflux, Thinner
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.result import BadInput
from booth.trade.thinning.thinner_share import solids_after_thinning, wet_film_after_thinning_um
from booth.units import Kind, System, show
from booth.units.sentences import in_units
from booth.words.profile_words import range_words
from booth.words.shown import Readout, Tone
from booth.words.thinner_time_words import at_thin
from booth.words.wait_words import length

#: Below this nobody reads a volume in fluid ounces off a cup [ml].
WHOSE = "THINNER"
SMALL_ML = 29.5735295625


def thin_readout(context: Context, advice: Advice, left_ml: float | None) -> Readout:
    """What to add now; while it stands that comes after the induction, where the sheet has it so."""
    found, profile = _readout(context, advice, left_ml), in_use(context.job)
    stands = {each.cause: each.value for each in of_induction(context.job, context.now)}
    left = f"another {length(stands[Cause.INDUCTION])}" if Cause.INDUCTION in stands else ""
    if Cause.INDUCTION_UNKNOWN in stands:
        left = "a time that is not known"
    said = at_thin(profile, left)
    lines = (said, *found.lines) if said else found.lines
    if left and thinner_time(profile) is ThinnerTime.AFTER:
        return replace(found, tone=Tone.CAUTION, word="NOT YET", lines=lines)
    return replace(found, lines=lines)


def _readout(context: Context, advice: Advice, left_ml: float | None) -> Readout:
    doubt = temperature_doubt(context.job)
    first = (doubt,) if doubt else ()
    if advice.finding is Finding.ADD:
        return _add(context, advice, first)
    if advice.finding is Finding.ADD_LITTLE:
        return _add_little(context, advice)
    tone, word, lines = _said(context, advice, left_ml)
    at_limit = limit_words(context.job) if advice.finding is not Finding.LIMIT else ""
    lines = (*filter(None, (at_limit,)), *lines, *first)
    if advice.mean_s is not None and advice.cup is not None:
        label = f"mean, {advice.cup.name}"
        efflux, span = context.profile.efflux, None
        if efflux is not None and known(cup_named, efflux.cup) is advice.cup:
            span = efflux.target_s
        edge, band = gauge(context.system, advice.mean_s, span, Kind.TIME)
        return Readout(
            f"{advice.mean_s:.1f}",
            "s",
            label,
            tone,
            word,
            lines,
            like="00.0",
            whose=advice.cup.name,
            edge=edge,
            band=band,
        )
    if advice.finding is Finding.NOT_TIMED and context.job.thinner:
        percent = f"{100 * advice.stage.fraction:.1f}"
        return Readout(percent, "%", "thinner in it now", tone, word, lines, whose=WHOSE)
    return Readout("", "", "thinner to add", tone, word, lines, whose=WHOSE)


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
            return Tone.GOOD, Tone.GOOD.word, ("Add nothing.", target, *_effect(context, advice))
        case Finding.TOO_THIN:
            return Tone.CAUTION, "TOO THIN", (*_thicken(context, left_ml), target)
        case Finding.LIMIT:
            said = (
                f"{100 * advice.stage.fraction:.1f} % of {visible(thinner.name)} is in it; the "
                f"profile allows {thinner.limit_percent:g} %. Add no more: check the temperature of "
                "the mix and the cup, ask the data sheet about a larger tip or more pressure."
            )
            if advice.over_limit:
                more = "Stir in unthinned mix of the same parts."
                return Tone.CAUTION, "OVER THE LIMIT", (limit_words(context.job), more, target)
            return Tone.CAUTION, "LIMIT REACHED", (said, target)
        case Finding.TEMPERATURE:
            word = (
                "WARM IT FIRST"
                if (off_temperature_k(context.job) or 0) < 0
                else "LET IT COOL FIRST"
            )
            return Tone.CAUTION, word, (*on_cup(given(context)), target)
        case Finding.NO_AMOUNT:
            return Tone.PLAIN, "HOW MUCH MIX?", ("Type how much mix is left.", target)
    return Tone.CAUTION, "CANNOT TELL", (in_units(" ".join(advice.why), context.system), target)


def _add_little(context: Context, advice: Advice) -> Readout:
    """A little thinner, where only the seconds of the cup are known."""
    step, (kind, scale) = advice.little, scale_of(context)
    assert step is not None and advice.mean_s is not None and context.profile.efflux is not None
    limit = advice.limit_percent
    of = f" of {limit:g} % allowed" if limit is not None else ""
    start = "" if advice.stage.known else ", counted from none: the pours are not in the log"
    asked = _wanted(context.profile.efflux, advice.cup) if advice.cup is not None else ""
    lines = (
        *(["That is all the data sheet allows."] if step.at_limit else ()),
        "2.5 % at a time, then the same cup again: how much it takes in all is not known.",
        f"then {100 * step.fraction_after:.1f} % thinner in it{of}{start}",
        *_effect(context, advice, step.fraction_after),
    )
    tone, word = (Tone.CAUTION, "TO THE LIMIT") if step.at_limit else (Tone.READY, "ADD, STIR")
    name = visible((thinner_of(in_use(context.job)) or Thinner("thinner")).name)
    label = f"{name}: add now  ({advice.mean_s:.1f} s, {asked})"
    return figure(context, step.step_ml * scale, kind, label, tone, word, lines, whose=WHOSE)


def _thicken(context: Context, left_ml: float | None) -> tuple[str, ...]:
    said = "Thinner cannot be taken out: stir in unthinned mix of the same parts, and time it."
    left = left_ml or 0.0
    amount = coating_to_thicken_ml(context.job, left) if left > 0 else None
    if amount is None or amount <= 0:
        return (said, "Or more coats, each thinner: thin mix runs sooner.")
    kind, scale = scale_of(context)
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
    kind, scale = scale_of(context)
    basis = "by one measurement (estimate): begin low"
    if fit is not None:
        basis = f"by {fit.count} measurements of this mix"
        if fit.residual_fraction is not None:
            basis += f", {100 * fit.residual_fraction:.0f} % off their line"
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
    return figure(context, step.step_ml * scale, kind, label, tone, word, lines, whose=WHOSE)


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


def scale_of(context: Context) -> tuple[Kind, float]:
    """How thinner is measured out, and what a millilitre of it is then: weighed with the rest."""
    density = mixture.thinner_density_g_ml(in_use(context.job))
    if density is None or not mixture.by_weight(context.job):
        return Kind.VOLUME, 1.0
    return Kind.MASS, density


def added_words(context: Context, added: ThinnerAdded) -> str:
    stage = mixture.thinned(in_use(context.job), added, mixture.now(context.job))
    thinner, percent = thinner_of(in_use(context.job)), 100 * stage.fraction
    limit = thinner.limit_percent if thinner is not None else None
    said = f"{percent:.1f} % thinner in it now. Stir, then Enter: time the cup again."
    if limit is not None and percent > limit * 1.001:
        return f"Over the limit of {limit:g} %: add unthinned coating. {said}"
    return said
