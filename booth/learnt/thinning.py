"""How much thinner a product took to its target, job by job: what to begin with the next time. Pure."""

from __future__ import annotations

import math
from collections.abc import Sequence

from booth.job.measured import compare, known
from booth.job.mix_choice import in_use
from booth.job.mixture import Stage, points, stages, timed
from booth.job.recipe import thinner_of
from booth.job.thin_advice import in_target_cup
from booth.learnt.observation import Observation, Told
from booth.log.fold import Job
from booth.profile.model import Efflux
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.efflux_time import viscosity_from_efflux
from booth.trade.result import Value
from booth.trade.thinning.thinning_fit import ThinningFit, fit_thinning
from booth.units import Kind

TAGS = (b'"efflux timed"',)
PERCENT = 100.0


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give the thinner, percent by volume of the coating, at which the mix of a job ran as asked for."""
    return tuple(each for job in products if (each := _of_product(job)) is not None)


def group_of(job: Job) -> tuple[str, ...]:
    """What belongs together: a product, its thinner, its cup, its target."""
    efflux, thinner = job.profile.efflux, thinner_of(in_use(job))
    if efflux is None or thinner is None:
        return ()
    span = efflux.target_s
    return (
        job.profile.key,
        thinner.name,
        efflux.cup,
        "-".join(f"{end or 0:g}" for end in (span.low, span.high)),
    )


def _of_product(job: Job) -> Observation | None:
    group, efflux = group_of(job), job.profile.efflux
    every = [stage for stage in stages(job) if stage.known and timed(stage) is not None]
    if not group or efflux is None or not every:
        return None
    found = _reached(job, efflux, every)
    if found is None:
        return None
    fraction, told = found
    last = every[-1].runs[-1]
    percent = PERCENT * fraction
    return Observation(
        group=group,
        about=(job.profile.name, group[1]),
        low=percent,
        high=percent,
        at=last.at,
        told=(*told, *_liquid(every[-1])),
    )


def _reached(
    job: Job, efflux: Efflux, every: Sequence[Stage]
) -> tuple[float, tuple[Told, ...]] | None:
    """The thinner at the middle of the target: between two runs on either side of it, by this mix's own
    line; else as it was at the last run within the target."""
    measured = known(points, job) or ()
    fit = known(fit_thinning, measured) if len(measured) > 1 else None
    cup = known(cup_named, efflux.cup)
    target = known(viscosity_from_efflux, cup, efflux.target_s.middle) if cup else None
    if isinstance(fit, ThinningFit) and isinstance(target, Value):
        share = (fit.intercept - math.log(target.value)) / fit.fall
        if fit.least_share <= share <= fit.most_share:
            return share / (1.0 - share), ("between two runs",)
    for stage in reversed(every):
        seconds = known(in_target_cup, efflux, *(timed(stage) or (None, None)))
        if isinstance(seconds, float) and compare(seconds, efflux.target_s) == "in":
            return stage.fraction, ((seconds, Kind.TIME),)
    return None


def _liquid(stage: Stage) -> tuple[Told, ...]:
    told = [run.liquid_temperature for run in stage.runs if run.liquid_temperature is not None]
    return ((told[-1].value, Kind.TEMPERATURE),) if told else ("temperature not noted",)
