"""The mix as it is now: how much of it, how much thinner in it, what the cup said at each stage.

A stage begins where a batch is mixed and where thinner goes in; runs of the cup belong to the stage
in which they were timed. Weights become volumes through the profile's densities. Pure.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from booth.job.mix_choice import in_use, mixed_with
from booth.job.recipe import densities, thinner_of
from booth.log.events import BatchMixed, EffluxTimed, ThinnerAdded
from booth.log.fold import Job
from booth.profile.model import Profile
from booth.trade.cups.cup_table import CUPS, Cup
from booth.trade.cups.efflux_time import viscosity_from_efflux
from booth.trade.result import BadInput, Outside, Value
from booth.trade.thinning.thinner_share import thinner_fraction_after
from booth.trade.thinning.thinning_fit import ThinningPoint
from booth.units import Quantity


class Stage(msgspec.Struct, frozen=True):
    """One state of the mix.

    fraction: thinner per volume of coating [1]; known: whether that is from what was poured, or
    counted from an unknown start; left_ml: how much mix there was [ml], density_g_ml: of the mix,
    None where unknown.
    """

    fraction: float = 0.0
    known: bool = False
    left_ml: float | None = None
    runs: tuple[EffluxTimed, ...] = ()
    density_g_ml: float | None = None

    @property
    def alike(self) -> tuple[EffluxTimed, ...]:
        """The runs of the cup that was used last."""
        return tuple(run for run in self.runs if run.cup == self.runs[-1].cup)

    @property
    def mean_s(self) -> float | None:
        """Their mean [s], the cup's own correction applied."""
        return mean([run.seconds * run.correction for run in self.alike])


def mean(figures: Sequence[float]) -> float | None:
    return sum(figures) / len(figures) if figures else None


def stages(job: Job, until: int | None = None) -> tuple[Stage, ...]:
    """Every stage of the mix that is in use, the present one last. until: as it was at entry `until`."""
    found = [Stage()]
    for event in job.live if until is None else (each for each in job.live if each.n <= until):
        if isinstance(event, BatchMixed):
            found = [_mixed(job.profile, event, found[-1])]
        elif isinstance(event, ThinnerAdded):
            found.append(thinned(in_use(job, event.n), event, found[-1]))
        elif isinstance(event, EffluxTimed):
            found[-1] = msgspec.structs.replace(found[-1], runs=(*found[-1].runs, event))
    return tuple(found)


def now(job: Job) -> Stage:
    return stages(job)[-1]


def by_weight(job: Job) -> bool:
    """Whether a scale was used in this job: for a pour, for thinner, for a catch."""
    mixed = [pour.amount for batch in job.batches for pour in batch.pours]
    for kept in (job.pours, job.thinner, job.catches):
        mixed += [each.amount for each in kept]
    return any(amount.unit == "g" for amount in mixed)


def _mixed(profile: Profile, batch: BatchMixed, before: Stage) -> Stage:
    profile = mixed_with(profile, batch.hardener, batch.thinned_with)
    known = densities(profile)
    volumes = {pour.name: volume_ml(pour.amount, known.get(pour.name)) for pour in batch.pours}
    if not volumes or None in volumes.values():
        whole = batch.total.value if batch.total and batch.total.unit == "ml" else None
        return Stage(left_ml=whole)
    poured = {name: volume for name, volume in volumes.items() if volume is not None}
    fresh = sum(poured.values())
    weights = [_g(pour.amount, known.get(pour.name)) for pour in batch.pours]
    # What it may have gone onto is of the same parts, so its density is the same.
    density = sum(filter(None, weights)) / fresh if None not in weights and fresh > 0 else None
    thinner = thinner_of(profile)
    thin = poured.get(thinner.name, 0.0) if thinner is not None else 0.0
    coating = fresh - thin
    whole = fresh
    if batch.onto is not None and batch.total is not None:
        weighed = sum(pour.amount.value for pour in batch.pours)
        # What the cup held before, in the share that it has of the whole: one product, one density.
        rest = fresh * max(batch.total.value - weighed, 0.0) / weighed if weighed else 0.0
        coating += rest / (1.0 + before.fraction)
        thin += rest - rest / (1.0 + before.fraction)
        whole += rest
    if coating <= 0:
        return Stage(left_ml=whole, density_g_ml=density)
    return Stage(thin / coating, True, whole, density_g_ml=density)


def thinned(profile: Profile, event: ThinnerAdded, before: Stage) -> Stage:
    """The stage that begins where thinner goes into `before`."""
    amount, left = added_ml(profile, event.amount), before.left_ml
    if event.remaining is not None:
        left = volume_ml(event.remaining, before.density_g_ml or profile.film.density_g_ml)
    try:
        if amount is None or left is None or left <= 0:
            return Stage(before.fraction, False, left)
        fraction = thinner_fraction_after(left, before.fraction, amount)
    except BadInput:
        return Stage(before.fraction, False, left)
    mix_g = None if before.density_g_ml is None else left * before.density_g_ml
    added_g = _g(event.amount, thinner_density_g_ml(profile))
    whole = left + amount
    density = None if mix_g is None or added_g is None else (mix_g + added_g) / whole
    return Stage(fraction, before.known, whole, density_g_ml=density)


def thinner_density_g_ml(profile: Profile) -> float | None:
    """The density of the profile's thinner, if it gives one."""
    thinner = thinner_of(profile)
    return thinner.density_g_ml if thinner is not None else None


def added_ml(profile: Profile, amount: Quantity) -> float | None:
    """Thinner in millilitres; None where it was weighed and its density is not known."""
    return volume_ml(amount, thinner_density_g_ml(profile))


def volume_ml(amount: Quantity, density_g_ml: float | None) -> float | None:
    """A volume or a weight as a volume; None for a weight of unknown density."""
    if amount.unit == "ml":
        return amount.value
    return amount.value / density_g_ml if density_g_ml else None


def _g(amount: Quantity, density_g_ml: float | None) -> float | None:
    if amount.unit == "g":
        return amount.value
    return amount.value * density_g_ml if density_g_ml else None


def timed(stage: Stage) -> tuple[Cup, float] | None:
    """The cup used last in a stage and the mean of its runs [s]; None without runs."""
    cup = CUPS.get(stage.runs[-1].cup) if stage.runs else None
    return None if cup is None or stage.mean_s is None else (cup, stage.mean_s)


def viscosity_of(stage: Stage) -> Value | Outside | None:
    """The viscosity that the runs of a stage stand for; None without runs."""
    found = timed(stage)
    return viscosity_from_efflux(*found) if found is not None else None


def points(job: Job) -> tuple[ThinningPoint, ...]:
    """What this mix has shown: thinner in it and viscosity, of every stage that was timed."""
    every = [(stage.fraction, viscosity_of(stage)) for stage in stages(job)]
    return tuple(ThinningPoint(part, nu.value) for part, nu in every if isinstance(nu, Value))
