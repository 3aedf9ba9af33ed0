"""What the thinning says: the figure, its word, its lines. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.files.safe_text import visible
from booth.job.mixture import by_weight, now, thinned, thinner_density_g_ml
from booth.job.pouring import thinner_of
from booth.job.thin_advice import Advice, Finding, coating_to_thicken_ml, temperature_doubt
from booth.log.events import ThinnerAdded
from booth.profile.model import Efflux
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.result import BadInput
from booth.trade.thinning.thinner_share import solids_after_thinning, wet_film_after_thinning_um
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone

#: Below this nobody reads a volume in fluid ounces off a cup [ml].
SMALL_ML = 29.5735295625


def thin_readout(context: Context, advice: Advice, left_ml: float | None) -> Readout:
    """What to do now. Pure."""
    doubt = temperature_doubt(context.job)
    first = (doubt,) if doubt else ()
    if advice.finding is Finding.ADD:
        return _add(context, advice, first)
    figure, unit = "–", ""
    label, like = "thinner to add", ""
    if advice.mean_s is not None and advice.cup is not None:
        figure, unit, like = f"{advice.mean_s:.1f}", "s", "00.0"
        label = f"mean, {advice.cup.name}"
    elif advice.finding is Finding.NOT_TIMED and context.job.thinner:
        figure, unit, label = f"{100 * advice.stage.fraction:.1f}", "%", "thinner in it now"
    tone, word, lines = _said(context, advice, left_ml)
    return Readout(
        figure, unit, label=label, tone=tone, word=word, lines=(*lines, *first), like=like
    )


def _target(context: Context) -> str:
    efflux = context.profile.efflux
    if efflux is None:
        return ""
    span = range_words(efflux.target_s, Kind.TIME, context.system)
    return f"target: {span} in a {efflux.cup}"


def _said(
    context: Context, advice: Advice, left_ml: float | None
) -> tuple[Tone, str, tuple[str, ...]]:
    thinner, name = thinner_of(context.profile), _name(context)
    target = _target(context)
    match advice.finding:
        case Finding.NO_THINNER:
            return Tone.PLAIN, "NO THINNER", ("The profile names none: spray it as it is mixed.",)
        case Finding.NO_TARGET:
            said = (
                "The profile gives no efflux time to thin to. What is added is kept all the same."
            )
            return Tone.PLAIN, "NO TARGET", (said,)
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
            assert thinner is not None
            said = (
                f"{_percent(advice)} of {name} is in it; the profile allows "
                f"{thinner.limit_percent:g} %. Add no more: check the temperature of the mix and "
                "the cup, ask the data sheet about a larger tip or more pressure."
            )
            return Tone.CAUTION, "LIMIT REACHED", (said, target)
        case Finding.NO_AMOUNT:
            return Tone.PLAIN, "HOW MUCH MIX?", ("Type how much mix is left.", target)
    return Tone.CAUTION, "CANNOT TELL", (" ".join(advice.why), target)


def _name(context: Context) -> str:
    thinner = thinner_of(context.profile)
    return visible(thinner.name) if thinner is not None else "thinner"


def _percent(advice: Advice) -> str:
    return f"{100 * advice.stage.fraction:.1f} %"


def _thicken(context: Context, left_ml: float | None) -> tuple[str, ...]:
    said = "Thinner cannot be taken out: stir in unthinned mix of the same parts, and time it."
    left = left_ml or 0.0
    amount = coating_to_thicken_ml(context.job, left) if left > 0 else None
    if amount is None or amount <= 0:
        return (said, "Or thin films, more coats: it runs sooner.")
    kind, scale = _scale(context)
    stage = now(context.job)
    if kind is Kind.MASS and stage.density_g_ml is not None:
        # Volumes are taken to add up: what is no thinner in it weighs the rest.
        scale = stage.density_g_ml * (1 + stage.fraction) - scale * stage.fraction
    else:
        kind, scale = Kind.VOLUME, 1.0
    shown = show(amount * scale, kind, context.system)
    return (f"{said} About {shown} by this mix's own line (estimate).",)


def _add(context: Context, advice: Advice, first: tuple[str, ...]) -> Readout:
    step, system = advice.step, context.system
    assert step is not None
    thinner = thinner_of(context.profile)
    kind, scale = _scale(context)
    low = show(step.add.low * scale, kind, system, unit=False)
    high = show(step.add.high * scale, kind, system)
    if advice.fit is None:
        basis = f"{low} to {high} by one measurement (estimate): begin low"
    else:
        fit = advice.fit
        off = (
            f", {100 * fit.residual_fraction:.0f} % off the line"
            if fit.residual_fraction is not None
            else ""
        )
        basis = f"{low} to {high} by {fit.count} measurements of this mix{off}"
    lines = [*first, basis]
    limit = thinner.limit_percent if thinner is not None else None
    of = f" of {limit:g} % allowed" if limit is not None else ""
    start = "" if advice.stage.known else ", counted from none: the pours are not in the log"
    lines.append(f"then {100 * step.fraction_after:.1f} % thinner in it{of}{start}")
    if step.at_limit:
        lines.insert(0, step.note)
    if kind is Kind.VOLUME and system is System.US and step.step_ml < SMALL_ML:
        lines.append(
            f"that is {show(step.step_ml, kind, System.METRIC)}: use a small cup or a syringe"
        )
    lines += _effect(context, advice, step.fraction_after)
    efflux, measured = context.profile.efflux, ""
    if efflux is not None and advice.cup is not None and advice.mean_s is not None:
        measured = f"  ({advice.mean_s:.1f} s, {_wanted(efflux, advice.cup)})"
    return Readout(
        show(step.step_ml * scale, kind, system, unit=False),
        shown_unit(kind, system),
        label=f"{_name(context)}: add now{measured}",
        tone=Tone.CAUTION if step.at_limit else Tone.READY,
        word="TO THE LIMIT" if step.at_limit else "ADD, STIR",
        lines=tuple(lines),
    )


def _wanted(efflux: Efflux, cup: Cup) -> str:
    """The target in few words, with its cup where another one was used."""
    span = efflux.target_s
    ends = [f"{end:g}" for end in dict.fromkeys((span.low, span.high)) if end is not None]
    least = "at least " if span.high is None else "up to " if span.low is None else ""
    where = "" if cup_named(efflux.cup).key == cup.key else f" in a {efflux.cup}"
    return f"wanted {least}{'-'.join(ends)} s{where}"


def _effect(context: Context, advice: Advice, after: float | None = None) -> tuple[str, ...]:
    """Volume solids and the wet film that leaves the same dry film."""
    film, thinner = context.profile.film, thinner_of(context.profile)
    fraction = advice.stage.fraction if after is None else after
    solids, wet = "", ""
    try:
        if film.volume_solids_percent is not None:
            share = solids_after_thinning(film.volume_solids_percent / 100, fraction)
            solids = f"solids {100 * share:.1f} %"
        if film.wet_um is not None:
            usual = (thinner.usual_percent or 0.0) / 100 if thinner is not None else 0.0
            middle = wet_film_after_thinning_um(film.wet_um.middle, usual, fraction)
            film_words = show(middle, Kind.THICKNESS, context.system)
            wet = f"spray {film_words} wet for the same dry film"
    except BadInput:
        return ()
    said = ", ".join(each for each in (wet, solids) if each)
    return (said,) if said else ()


def _scale(context: Context) -> tuple[Kind, float]:
    """How thinner is measured out, and what a millilitre of it is then: weighed with the rest."""
    density = thinner_density_g_ml(context.profile)
    if density is None or not by_weight(context.job):
        return Kind.VOLUME, 1.0
    return Kind.MASS, density


def amount_to_add(context: Context, step_ml: float) -> Quantity:
    """The figure as an amount that was added."""
    kind, scale = _scale(context)
    return Quantity(step_ml * scale, kind.base, f"{step_ml * scale:g} {kind.base}")


def added_words(context: Context, added: ThinnerAdded) -> str:
    """What the thinner in the mix comes to, and what is next."""
    stage = thinned(context.profile, added, now(context.job))
    thinner = thinner_of(context.profile)
    limit = thinner.limit_percent if thinner is not None else None
    percent = 100 * stage.fraction
    said = f"{percent:.1f} % thinner in it now. Stir, then Enter: time the cup again."
    if limit is not None and percent > limit * 1.001:
        return f"Over the limit of {limit:g} %: add unthinned coating. {said}"
    return said
