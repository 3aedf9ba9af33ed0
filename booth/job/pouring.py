"""A batch being poured: what is to be poured next, after what was really poured. Pure.

Where the profile mixes nothing there is one component, the coating itself, and perhaps thinner.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import replace

import msgspec

from booth.log.events import BatchMixed, Poured
from booth.log.events import Pour as PouredAmount
from booth.log.fold import Job
from booth.moment import Moment
from booth.profile.model import Profile, Thinner
from booth.trade.mixing.components import Component, Measure, parts_by_volume, with_thinner
from booth.trade.mixing.mixed_batch import mixed_density_g_ml
from booth.trade.mixing.overpour import after_pouring, amounts_from_marks
from booth.trade.mixing.pours import (
    Pour,
    PourTable,
    pour_table_from_component,
    pour_table_on_top,
)
from booth.trade.result import BadInput
from booth.units import Quantity

#: The one component of a product that is not mixed.
COATING = "coating"
#: A pour within this share of what it should be is on its mark. Common practice, no source.
ON_THE_MARK = 0.01
#: Thinner below this is none: nobody can measure it [%].
LEAST_PERCENT = 0.01


class BatchPlan(msgspec.Struct, frozen=True):
    """How a batch is meant.

    wanted [ml or g]: of the whole mix, or of the component `of`; by: cup or scale; onto: the batch
    it goes onto, rest [ml or g]: what is left of that one where the cup or scale shows it.
    """

    wanted: Quantity
    of: str = ""
    by: Measure = Measure.VOLUME
    thinner_percent: float = 0.0
    onto: int | None = None
    rest: Quantity | None = None


class Pouring(msgspec.Struct, frozen=True):
    """Where a batch stands.

    plan: how it is meant; done: what was poured, in order; left: what is to be poured, with marks; mark: what the cup or
    scale shows now; total: what it will show at the end; grew: how much more than was wanted;
    by: the component that made it grow, '' if none did.
    """

    plan: BatchPlan
    done: tuple[Pour, ...]
    left: tuple[Pour, ...]
    mark: float
    total: float
    grew: float
    by: str

    @property
    def next(self) -> Pour | None:
        return self.left[0] if self.left else None


def thinner_of(profile: Profile) -> Thinner | None:
    return profile.mix.thinner if profile.mix is not None else None


def usual_percent(profile: Profile) -> float:
    """The thinner that the profile usually has, the middle of its range [%]; 0 where it names none."""
    thinner = thinner_of(profile)
    usual = thinner.usual_percent if thinner is not None else None
    return usual.middle if usual is not None else 0.0


def components(profile: Profile) -> tuple[Component, ...]:
    """The components without thinner, in the order in which they are poured."""
    if profile.mix is None or not profile.mix.parts:
        return (Component(COATING, 1.0, profile.film.density_g_ml),)
    return tuple(Component(each.name, each.parts, each.density_g_ml) for each in profile.mix.parts)


def densities(profile: Profile) -> dict[str, float | None]:
    """The density of all that can be poured, by name [g/ml]; None where it is not known."""
    known = {each.name: each.density_g_ml for each in components(profile)}
    thinner = thinner_of(profile)
    return known if thinner is None else {**known, thinner.name: thinner.density_g_ml}


def measures(profile: Profile) -> tuple[Measure, ...]:
    """By what it can be poured, the profile's own way first; one way where a density is missing."""
    own = _parts_by(profile)
    other = Measure.WEIGHT if own is Measure.VOLUME else Measure.VOLUME
    return (own,) if None in densities(profile).values() else (own, other)


def _parts_by(profile: Profile) -> Measure:
    return Measure(profile.mix.by) if profile.mix is not None else Measure.VOLUME


def _recipe(profile: Profile, percent: float) -> tuple[tuple[Component, ...], Measure]:
    """All that is poured and whether its parts are by volume or weight. Raises BadInput."""
    mix, by = components(profile), _parts_by(profile)
    thinner = thinner_of(profile)
    if percent < LEAST_PERCENT or thinner is None:
        return mix, by
    if thinner.limit_percent is not None and percent > thinner.limit_percent:
        raise BadInput(
            f"{percent:g} % of {thinner.name} is more than the {thinner.limit_percent:g} % that "
            "the profile allows. Take less."
        )
    if by is Measure.WEIGHT:
        mix = parts_by_volume(mix)
    return with_thinner(mix, thinner.name, percent, thinner.density_g_ml), Measure.VOLUME


def _measure_of(amount: Quantity) -> Measure:
    return Measure.WEIGHT if amount.unit == Measure.WEIGHT.unit else Measure.VOLUME


def _planned(profile: Profile, plan: BatchPlan) -> PourTable:
    """The pours as meant. Raises BadInput with a sentence."""
    mix, parts_by = _recipe(profile, plan.thinner_percent)

    def in_its_measure(amount: Quantity) -> float:
        if _measure_of(amount) is plan.by:
            return amount.value
        density = mixed_density_g_ml(mix, parts_by)
        return amount.value * density if plan.by is Measure.WEIGHT else amount.value / density

    rest = in_its_measure(plan.rest) if plan.rest is not None else 0.0
    if plan.of:
        table = pour_table_from_component(
            mix,
            plan.of,
            plan.wanted.value,
            parts_by=parts_by,
            measure=plan.by,
            amount_by=_measure_of(plan.wanted),
        )
        return PourTable(table.measure, rest, _marked(table.pours, rest))
    wanted = in_its_measure(plan.wanted)
    return pour_table_on_top(mix, rest, wanted, parts_by=parts_by, measure=plan.by)


def _marked(pours: Sequence[Pour], before: float) -> tuple[Pour, ...]:
    marks = itertools.accumulate((pour.amount for pour in pours), initial=before)
    next(marks)
    return tuple(replace(pour, mark=mark) for pour, mark in zip(pours, marks, strict=True))


def _with_thinner_as_poured(
    profile: Profile, plan: BatchPlan, table: PourTable, amounts: dict[str, float]
) -> PourTable:
    """More thinner than meant is no fault up to the limit; beyond it the batch has to grow."""
    thinner = thinner_of(profile)
    if thinner is None or thinner.name not in amounts or table.pours[-1].name != thinner.name:
        return table
    coating = [amounts.get(pour.name, 0.0) / pour.amount for pour in table.pours[:-1]]
    growth = max(1.0, *coating)
    meant = table.pours[-1].amount
    most = amounts[thinner.name] / growth
    if thinner.limit_percent is not None:
        most = min(most, meant * thinner.limit_percent / plan.thinner_percent)
    if most <= meant:
        return table
    last = replace(table.pours[-1], amount=most)
    pours = _marked((*table.pours[:-1], last), table.before)
    return PourTable(table.measure, table.before, pours)


def _summed(poured: Iterable[tuple[str, float]]) -> dict[str, float]:
    """How much there is of each, in the order of the first pours."""
    amounts: dict[str, float] = {}
    for name, amount in poured:
        amounts[name] = amounts.get(name, 0.0) + amount
    return amounts


def pouring(profile: Profile, plan: BatchPlan, poured: Sequence[tuple[str, float]]) -> Pouring:
    """Give what is left to pour after (name, amount) were poured. Raises BadInput."""
    meant = _planned(profile, plan)
    amounts = _summed(poured)
    table = _with_thinner_as_poured(profile, plan, meant, amounts)
    names = [pour.name for pour in table.pours]
    reached = max((names.index(name) + 1 for name in amounts if name in names), default=0)
    found = after_pouring(table, [amounts.get(name, 0.0) for name in names[:reached]])
    # What lies within a hundredth of its mark is on it: no cup is read any closer.
    missing = [
        pour
        for pour in found.pours
        if amounts.get(pour.name, 0.0) == 0.0
        or pour.amount > ON_THE_MARK * (amounts[pour.name] + pour.amount)
    ]
    mark = table.before + sum(amount for _, amount in poured)
    left = _marked(missing, mark)
    total = left[-1].mark if left else mark
    grew = total - meant.total
    grown = grew > ON_THE_MARK * meant.total
    by = _grown_by(table, poured) or table.pours[-1].name
    done = _marked([Pour(name, amount, 0.0) for name, amount in poured], table.before)
    return Pouring(plan, done, left, mark, total, grew, by if grown else "")


def _grown_by(table: PourTable, poured: Sequence[tuple[str, float]]) -> str:
    """The component of whose pour there was too much; one that is added to as told is not."""
    meant = {pour.name: pour.amount for pour in table.pours}
    growth, by = 1.0, ""
    for count, (name, _) in enumerate(poured, 1):
        share = _summed(poured[:count])[name] / meant[name] if name in meant else 0.0
        if share > growth * (1.0 + ON_THE_MARK):
            growth, by = share, name
    return by


def rest_amount(state: Pouring, reading: float) -> float:
    """What was poured, from what the cup or scale shows now. Raises BadInput."""
    return amounts_from_marks([reading], before=state.mark)[0]


def open_pours(job: Job) -> tuple[Poured, ...]:
    """The pours of the batch that is not mixed yet; none where no batch is half poured."""
    mixed = {batch.batch for batch in job.batches}
    waiting = [pour for pour in job.pours if pour.batch not in mixed]
    return tuple(pour for pour in waiting if pour.batch == waiting[-1].batch)


def plan_of(pours: Sequence[Poured]) -> BatchPlan:
    """How a half-poured batch is meant, as it was at the last pour."""
    last = pours[-1]
    return BatchPlan(
        wanted=last.wanted,
        of=last.of,
        by=_measure_of(last.amount),
        thinner_percent=last.thinner.value if last.thinner is not None else 0.0,
        onto=last.onto,
        rest=last.rest,
    )


def open_batches(job: Job) -> tuple[BatchMixed, ...]:
    """The batches in use: neither finished nor poured into a later one."""
    gone = job.finished_batches | {batch.onto for batch in job.batches}
    return tuple(batch for batch in job.batches if batch.batch not in gone)


def pour_event(job: Job, plan: BatchPlan, name: str, amount: float, at: Moment) -> Poured:
    waiting = open_pours(job)
    used = [each.batch for each in job.batches] + [each.batch for each in job.pours]
    return Poured(
        n=0,
        at=at,
        batch=waiting[-1].batch if waiting else max(used, default=0) + 1,
        name=name,
        amount=_quantity(amount, plan.by.unit),
        wanted=plan.wanted,
        of=plan.of,
        thinner=_quantity(plan.thinner_percent, "%"),
        onto=plan.onto,
        rest=plan.rest,
    )


def batch_of(profile: Profile, pours: Sequence[Poured], at: Moment) -> BatchMixed:
    """The event of a batch being mixed from its pours: each component once, and the whole."""
    plan = plan_of(pours)
    poured = [(pour.name, pour.amount.value) for pour in pours]
    return BatchMixed(
        n=0,
        at=at,
        batch=pours[-1].batch,
        pours=tuple(
            PouredAmount(name, _quantity(amount, plan.by.unit))
            for name, amount in _summed(poured).items()
        ),
        total=_quantity(pouring(profile, plan, poured).mark, plan.by.unit),
        onto=plan.onto,
    )


def _quantity(amount: float, unit: str) -> Quantity:
    return Quantity(amount, unit, f"{amount:g} {unit}")
