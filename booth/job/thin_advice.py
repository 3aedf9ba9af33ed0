"""How much thinner to add now, from what the cup has shown of this very mix. Pure."""

from __future__ import annotations

import enum
import math
from functools import partial
from statistics import fmean
from typing import NamedTuple

import msgspec

from booth.job.measured import compare
from booth.job.mix_choice import in_use
from booth.job.mixture import Stage, now, points, stages, timed, viscosity_of
from booth.job.recipe import thinner_of
from booth.log.fold import Job
from booth.profile.model import Efflux
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import Cup
from booth.trade.cups.efflux_time import equivalent_efflux, viscosity_from_efflux
from booth.trade.result import BadInput, Outside, Value
from booth.trade.thinning.same_cup import next_thinning_step
from booth.trade.thinning.thin_to_viscosity import (
    ThinnerStep,
    thinner_for_target,
    thinner_from_fit,
)
from booth.trade.thinning.thinning_fit import ThinningFit, fit_thinning

#: Liquids this far apart in temperature are not compared without a word [K] (ASTM D4212 8.1: 5 % a
#: degree F, so 2 K are 18 %).
SAME_TEMPERATURE_K = 2.0
#: At the limit within this share of it, over it beyond this one [1]: amounts are typed as rounded.
AT_LIMIT, OVER_LIMIT = 1e-6, 1e-3


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
    ADD_LITTLE = "add a little, and time again"
    TEMPERATURE = "colder or warmer than the target is for"


class LittleStep(NamedTuple):
    """Thinner to add where only the seconds of one cup are known: step_ml now [ml]; fraction_after:
    thinner per volume of coating then [1]; at_limit: it was cut at the limit."""

    step_ml: float
    fraction_after: float
    at_limit: bool


class Advice(msgspec.Struct, frozen=True):
    """finding; mean_s and cup: what was timed; side: of the target, as `compare` says it; step, little:
    what to add; fit: what it rests on, None where it is one measurement; why: sentences."""

    finding: Finding
    stage: Stage
    mean_s: float | None = None
    cup: Cup | None = None
    side: str = ""
    limit_percent: float | None = None
    step: ThinnerStep | None = None
    little: LittleStep | None = None
    fit: ThinningFit | None = None
    why: tuple[str, ...] = ()

    @property
    def at_limit(self) -> bool:
        """Whether no more thinner may go in."""
        limit = self.limit_percent
        return limit is not None and self.stage.fraction * 100 >= limit * (1 - AT_LIMIT)

    @property
    def over_limit(self) -> bool:
        limit = self.limit_percent
        return limit is not None and self.stage.fraction * 100 > limit * (1 + OVER_LIMIT)

    @property
    def to_add_ml(self) -> float | None:
        """Thinner to add now [ml], if any."""
        step = self.step or self.little
        return step.step_ml if step is not None else None


def advise(job: Job, remaining_ml: float | None = None) -> Advice:
    """Give what to do now with `remaining_ml` of mix [ml]; with what was mixed, where None.

    The limit comes first, then the temperature, then thinner.
    """
    stage, profile = now(job), in_use(job)
    cup, mean_s = timed(stage) or (None, None)
    thinner, efflux = thinner_of(profile), profile.efflux
    limit = thinner.limit_percent if thinner is not None else None
    seconds = in_target_cup(efflux, cup, mean_s)
    side = compare(seconds, efflux.target_s) if efflux and isinstance(seconds, float) else ""
    found = partial(Advice, stage=stage, mean_s=mean_s, cup=cup, side=side, limit_percent=limit)
    first = found(Finding.NOT_TIMED)
    if thinner is None:
        return found(Finding.NO_THINNER)
    if first.over_limit:
        return found(Finding.LIMIT)
    if efflux is None:
        return found(Finding.NO_TARGET)
    if cup is None or mean_s is None:
        return first
    if isinstance(seconds, Outside):
        return found(Finding.CANNOT_TELL, why=(seconds.reason, seconds.advice))
    if side == "in":
        return found(Finding.ON_TARGET)
    if side == "above" and first.at_limit:
        return found(Finding.LIMIT)
    if abs(off_temperature_k(job) or 0.0) > SAME_TEMPERATURE_K:
        return found(Finding.TEMPERATURE)
    if side == "below":
        return found(Finding.TOO_THIN)
    remaining_ml = remaining_ml if remaining_ml is not None else stage.left_ml
    if not remaining_ml:
        return found(Finding.NO_AMOUNT)
    target_cup = cup_named(efflux.cup)
    target = viscosity_from_efflux(target_cup, efflux.target_s.middle)
    every = viscosity_of(stage), target
    outside = next((each for each in every if isinstance(each, Outside)), None)
    fraction = None if limit is None else limit / 100
    own, mixed = thinner.viscosity_mm2_s, (remaining_ml, stage.fraction)
    step: ThinnerStep | Outside | None = None
    try:
        if outside is not None and target_cup.key == cup.key:
            little = _little(mean_s, efflux, stage.fraction, fraction, remaining_ml)
            return found(Finding.ADD_LITTLE, little=little)
        if outside is not None:
            return found(Finding.CANNOT_TELL, why=(outside.reason, outside.advice))
        viscosity = viscosity_of(stage)
        assert isinstance(viscosity, Value) and isinstance(target, Value)
        fit = fit_of(job)
        if fit is not None:
            step = thinner_from_fit(fit, *mixed, target.value, fraction)
        # The cup has just said that it is too thick: a line that says 'thin enough' is no help.
        if not isinstance(step, ThinnerStep):
            step = thinner_for_target(*mixed, viscosity.value, target.value, fraction, own)
    except BadInput as fault:
        return found(Finding.CANNOT_TELL, why=(fault.sentence,))
    if isinstance(step, Outside):
        return found(Finding.CANNOT_TELL, why=(step.reason, step.advice))
    return found(Finding.ADD, step=step, fit=fit)


def in_target_cup(
    efflux: Efflux | None, cup: Cup | None, mean_s: float | None
) -> float | Outside | None:
    """What was timed as seconds of the cup that the target is for; None without either."""
    if efflux is None or cup is None or mean_s is None:
        return None
    target_cup = cup_named(efflux.cup)
    if target_cup.key == cup.key:
        return mean_s
    same = equivalent_efflux(mean_s, cup, target_cup)
    return same if isinstance(same, Outside) else same.value


def _little(
    mean_s: float, efflux: Efflux, fraction: float, limit: float | None, remaining_ml: float
) -> LittleStep:
    target = efflux.target_s
    ends = (target.low or target.middle, target.high or target.middle)
    found = next_thinning_step(mean_s, *ends, fraction, limit)
    after = fraction + found.add_fraction
    at_limit = limit is not None and after >= limit * (1 - AT_LIMIT)
    return LittleStep(found.add_fraction * remaining_ml / (1 + fraction), after, at_limit)


def fit_of(job: Job) -> ThinningFit | None:
    """What this mix has shown, from two stages on; None where it shows nothing usable."""
    measured = points(job)
    fit = fit_thinning(measured) if len(measured) > 1 else None
    return fit if isinstance(fit, ThinningFit) else None


def coating_to_thicken_ml(job: Job, remaining_ml: float) -> float | None:
    """Unthinned mix that would bring a mix that is too thin to its target [ml], by its own fit.

    None where there is no fit or the line does not reach the target before all thinner is gone.
    """
    fit, stage, efflux = fit_of(job), now(job), job.profile.efflux
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


def off_temperature_k(job: Job) -> float | None:
    """How much warmer the mix was timed than its target is for [K]; None where that is not known."""
    efflux = job.profile.efflux
    present = _liquid_c(now(job))
    if efflux is None or efflux.at_c is None or not present:
        return None
    return fmean(present) - efflux.at_c


def _liquid_c(stage: Stage) -> list[float]:
    told = (run.liquid_temperature for run in stage.runs)
    return [each.value for each in told if each is not None]


def temperature_doubt(job: Job) -> str:
    """A sentence where the liquid was not at the temperature that the target is for; else ''."""
    off = off_temperature_k(job)
    if off is not None and abs(off) > SAME_TEMPERATURE_K:
        warmer = "warmer" if off > 0 else "colder"
        return f"The mix is {warmer} than the target is for: bring it to that temperature first."
    every = [each for stage in stages(job) for each in _liquid_c(stage)]
    if every and max(every) - min(every) > SAME_TEMPERATURE_K:
        return "The runs were not at one temperature: the fit is in doubt."
    return ""
