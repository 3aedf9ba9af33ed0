"""The cup at large: every run of this mix on the wanted band; seconds over thinner, with their line."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument
from booth.clock import local_day_hhmm
from booth.forms.form import Values
from booth.instruments.large.tries import (
    band_of,
    band_on,
    ends,
    in_unit,
    one_try,
    scale_over,
    spread_note,
    wanted_ticks,
)
from booth.instruments.learnt_here import of_thinner
from booth.job.measured import efflux_runs, known
from booth.job.mixture import Stage, stages, timed
from booth.job.thin_advice import fit_of
from booth.log.events import EffluxTimed
from booth.profile.model import Range
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_runs import run_statistics
from booth.trade.cups.cup_table import CUPS, Cup
from booth.trade.cups.efflux_time import efflux_from_viscosity
from booth.trade.result import Value
from booth.trade.thinning.thinning_fit import ThinningFit
from booth.units import Kind, show
from booth.words.tried import AtLarge, Chart, Curve, Spot, Tries

TIME = Kind.TIME
#: The line is drawn through so many places.
PLACES = 24


def runs_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """The runs of this mix, whatever thinner was in it; those of now count to the mean."""
    found = [stage for stage in stages(context.job) if stage.runs]
    if not found:
        return AtLarge()
    key = found[-1].runs[-1].cup
    span = _wanted_in(context, CUPS.get(key))
    tries = tuple(
        one_try(context, run.at, _thinner(stage), run.seconds * run.correction, TIME, span)
        for stage in found
        for run in stage.runs
        if run.cup == key
    )
    now = _times(efflux_runs(context.job))
    notes = [spread_note(now, TIME, context.system, f" of the last {len(now)}")]
    if now and run_statistics(now, CUPS.get(key)).suspect:
        notes.insert(0, f"SUSPECT: {run_statistics(now, CUPS.get(key)).criterion}")
    notes += _corrected(found)
    band = band_of(context, span, TIME)
    return AtLarge((Tries(_title(context), tries, band, tuple(filter(None, notes))),))


def thinning_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """What each step of thinner came to."""
    found = [(stage, *means) for stage in stages(context.job) if (means := timed(stage))]
    if not found:
        return AtLarge()
    cup = found[-1][1]
    span = _wanted_in(context, cup)
    alike = [(stage, mean) for stage, own, mean in found if own is cup]
    tries = tuple(
        one_try(context, stage.runs[-1].at, _thinner(stage), mean, TIME, span)
        for stage, mean in alike
    )
    fit, notes = fit_of(context.job), []
    if fit is not None and fit.residual_fraction is not None:
        notes.append(f"the line through them is off by {100 * fit.residual_fraction:.0f} %")
    chart = _chart(context, cup, alike, span) if len(alike) > 1 else None
    title = f"mean of each step, {cup.name}"
    return AtLarge(
        (Tries(title, tries, band_of(context, span, TIME), tuple(notes), chart),),
        record=of_thinner(context),
    )


def _chart(
    context: Context, cup: Cup, alike: list[tuple[Stage, float]], span: Range | None
) -> Chart:
    system, fit = context.system, fit_of(context.job)
    percents = [100 * stage.fraction for stage, _ in alike]
    across = scale_over([0.0, *percents], None, system)
    line = _line(cup, fit, min(percents), max(percents)) if fit is not None else []
    means = [mean for _, mean in alike]
    up = scale_over([*means, *ends(span), *(y for _, y in line)], TIME, system)
    spots = tuple(
        Spot(
            across.share(percent),
            up.share(mean),
            "■",
            one_try(context, stage.runs[-1].at, "", mean, TIME, span).tone,
            show(mean, TIME, system, unit=False),
        )
        for (stage, mean), percent in zip(alike, percents, strict=True)
    )
    low, high = band_on(span, up, TIME, system)
    curve = Curve(tuple((across.share(x), up.share(y)) for x, y in line))
    return Chart(
        in_unit(cup.name, TIME, system),
        spots,
        (curve,) if len(line) > 1 else (),
        across.ticks(),
        (*wanted_ticks(span, up, TIME, system), *up.ticks()),
        "% thinner",
        low,
        high,
    )


def _line(cup: Cup, fit: ThinningFit, low: float, high: float) -> list[tuple[float, float]]:
    """The line through the measurements, from percent to percent, in seconds of the cup."""
    found = []
    for place in range(PLACES + 1):
        percent = low + (high - low) * place / PLACES
        seconds = known(efflux_from_viscosity, cup, fit.viscosity_mm2_s(percent / 100))
        if isinstance(seconds, Value):
            found.append((percent, seconds.value))
    return found


def _wanted_in(context: Context, cup: Cup | None) -> Range | None:
    """The profile's seconds; None for another cup than its own."""
    efflux = context.profile.efflux
    if efflux is None or cup is None or known(cup_named, efflux.cup) is not cup:
        return None
    return efflux.target_s


def _thinner(stage: Stage) -> str:
    return f"{100 * stage.fraction:.1f} % thinner" if stage.known or stage.fraction else ""


def _times(runs: tuple[EffluxTimed, ...]) -> list[float]:
    return [run.seconds * run.correction for run in runs]


def _corrected(found: list[Stage]) -> list[str]:
    factors = sorted({run.correction for stage in found for run in stage.runs} - {1.0})
    said = ", ".join(f"{factor:g}" for factor in factors)
    return [f"each times this cup's own correction, {said}"] if factors else []


def _title(context: Context) -> str:
    """Whose runs they are, and from when that batch is."""
    if not context.job.batches:
        return "runs of the cup"
    last = context.job.batches[-1]
    return f"runs of batch {last.batch}, mixed {local_day_hhmm(last.at, context.now)}"
