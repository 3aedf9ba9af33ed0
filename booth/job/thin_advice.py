"""How much thinner to add now, from what the cup has shown of this very mix. Pure."""

from __future__ import annotations

import enum
import math
from functools import partial
from statistics import fmean

import msgspec

from booth.job.measured import compare
from booth.job.mix_choice import in_use
from booth.job.mixture import Stage, now, points, stages, timed, viscosity_of
from booth.job.recipe import thinner_of
from booth.log.fold import Job
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.cups.efflux_time import equivalent_efflux, viscosity_from_efflux
from booth.trade.result import BadInput, Outside, Value
from booth.trade.thinning.thin_to_viscosity import (
    USUAL_THINNER_MM2_S,
    ThinnerStep,
    thinner_for_target,
    thinner_from_fit,
)
from booth.trade.thinning.thinning_fit import ThinningFit, fit_thinning

#: Liquids this far apart in temperature are not compared without a word [K] (ASTM D4212 8.1: 5 % a
#: degree F, so 2 K are 18 %).
SAME_TEMPERATURE_K = 2.0
#: At the limit within this share of it [1].
AT_LIMIT = 1e-6


class Finding(enum.Enum):
    """What there is to say."""

    NO_THINNER = "the profile names no thinner"
    NO_TARGET = "the profile gives no target"
    NOT_TIMED = "the mix as it is now was not timed"
    CANNOT_TELL = "outside the range of a cup, or contradictory"
    ON_TARGET = "within the target"
    TOO_THIN = "thinner than the target"
    LIMIT = "the limit on thinner is reached"
    NO_AMOUNT = "it is not known how much mix there is"
    ADD = "add this much"


class Advice(msgspec.Struct, frozen=True):
    """finding; mean_s and cup: what was timed; step: what to add; fit: what it rests on, None where
    it is one measurement; why: sentences."""

    finding: Finding
    stage: Stage
    mean_s: float | None = None
    cup: Cup | None = None
    step: ThinnerStep | None = None
    fit: ThinningFit | None = None
    why: tuple[str, ...] = ()


def advise(job: Job, remaining_ml: float | None = None) -> Advice:
    """Give what to add now to `remaining_ml` of mix [ml]; what was mixed, where None."""
    stage, profile = now(job), in_use(job)
    cup, mean_s = timed(stage) or (None, None)
    found = partial(Advice, stage=stage, mean_s=mean_s, cup=cup)
    thinner, efflux = thinner_of(profile), profile.efflux
    if thinner is None:
        return found(Finding.NO_THINNER)
    if efflux is None:
        return found(Finding.NO_TARGET)
    if cup is None or mean_s is None:
        return found(Finding.NOT_TIMED)
    target_cup = cup_named(efflux.cup)
    comparable = mean_s
    if target_cup.key != cup.key:
        same = equivalent_efflux(mean_s, cup, target_cup)
        if isinstance(same, Outside):
            return found(Finding.CANNOT_TELL, why=(same.reason, same.advice))
        comparable = same.value
    match compare(comparable, efflux.target_s):
        case "in":
            return found(Finding.ON_TARGET)
        case "below":
            return found(Finding.TOO_THIN)
    viscosity = viscosity_of(stage)
    target = viscosity_from_efflux(target_cup, efflux.target_s.middle)
    for each in (viscosity, target):
        if isinstance(each, Outside):
            return found(Finding.CANNOT_TELL, why=(each.reason, each.advice))
    assert isinstance(viscosity, Value) and isinstance(target, Value)
    limit = thinner.limit_percent / 100 if thinner.limit_percent is not None else None
    if limit is not None and stage.fraction >= limit * (1 - AT_LIMIT):
        return found(Finding.LIMIT)
    remaining_ml = remaining_ml if remaining_ml is not None else stage.left_ml
    if not remaining_ml:
        return found(Finding.NO_AMOUNT)
    own, mixed = thinner.viscosity_mm2_s, (remaining_ml, stage.fraction)
    step: ThinnerStep | Outside | None = None
    try:
        fit = _fit(job)
        if fit is not None:
            step = thinner_from_fit(fit, *mixed, target.value, limit)
        # The cup has just said that it is too thick: a line that says 'thin enough' is no help.
        if not isinstance(step, ThinnerStep):
            own = own if own is not None else USUAL_THINNER_MM2_S
            step = thinner_for_target(*mixed, viscosity.value, target.value, limit, own)
    except BadInput as fault:
        return found(Finding.CANNOT_TELL, why=(str(fault),))
    if isinstance(step, Outside):
        return found(Finding.CANNOT_TELL, why=(step.reason, step.advice))
    return found(Finding.ADD, step=step, fit=fit)


def _fit(job: Job) -> ThinningFit | None:
    """What this mix has shown, from two stages on; None where it shows nothing usable."""
    measured = points(job)
    fit = fit_thinning(measured) if len(measured) > 1 else None
    return fit if isinstance(fit, ThinningFit) else None


def coating_to_thicken_ml(job: Job, remaining_ml: float) -> float | None:
    """Unthinned mix that would bring a mix that is too thin to its target [ml], by its own fit.

    None where there is no fit or the line does not reach the target before all thinner is gone.
    """
    fit, stage, efflux = _fit(job), now(job), job.profile.efflux
    if fit is None or efflux is None or remaining_ml <= 0:
        return None
    target = viscosity_from_efflux(cup_named(efflux.cup), efflux.target_s.middle)
    if isinstance(target, Outside):
        return None
    # Where the line is at the target: the share of thinner in the whole mix.
    share = (fit.intercept - math.log(target.value)) / fit.fall
    share = min(share, stage.fraction / (1 + stage.fraction))
    if share <= 0:
        return None
    coating = remaining_ml / (1 + stage.fraction)
    return max(coating * (stage.fraction * (1 - share) / share - 1), 0.0)


def temperature_doubt(job: Job) -> str:
    """A sentence where the liquid was not at the temperature that the target is for; else ''."""
    efflux = job.profile.efflux
    *before, present = [
        [run.liquid_temperature.value for run in stage.runs if run.liquid_temperature is not None]
        for stage in stages(job)
    ]
    if efflux is not None and efflux.at_c is not None and present:
        off = fmean(present) - efflux.at_c
        if abs(off) > SAME_TEMPERATURE_K:
            return (
                f"The mix is {'warmer' if off > 0 else 'colder'} than the target is for: bring it "
                "to that temperature before thinning."
            )
    every = [each for stage in (*before, present) for each in stage]
    if every and max(every) - min(every) > SAME_TEMPERATURE_K:
        return "The runs were not at one temperature: the fit is in doubt."
    return ""
