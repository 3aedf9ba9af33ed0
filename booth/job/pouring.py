"""A batch being poured: what is to be poured next, after what was really poured. Pure.

Where the profile mixes nothing there is one component, the coating itself, and perhaps thinner.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from dataclasses import replace

import msgspec

from booth.job.mix_choice import mixed_with
from booth.job.recipe import recipe, thinner_of
from booth.log.events import BatchMixed, Poured
from booth.log.events import Pour as PouredAmount
from booth.log.fold import Job
from booth.moment import Moment
from booth.profile.model import Profile
from booth.trade.mixing.components import Measure
from booth.trade.mixing.mixed_batch import mixed_density_g_ml
from booth.trade.mixing.overpour import after_pouring, amounts_from_marks
from booth.trade.mixing.pours import (
    Pour,
    PourTable,
    pour_table_from_component,
    pour_table_on_top,
)
from booth.units import Quantity

#: A pour within this share of what it should be is on its mark. Common practice, no source.
ON_THE_MARK = 0.01


class BatchPlan(msgspec.Struct, frozen=True):
    """How a batch is meant.

    wanted [ml or g]: of the whole mix, or of the component `of`; by: cup or scale; onto: the batch
    it goes onto, rest [ml or g]: what is left of that one where the cup or scale shows it; hardener
    and thinner: which, where the profile names several.
    """

    wanted: Quantity
    of: str = ""
    by: Measure = Measure.VOLUME
    thinner_percent: float = 0.0
    onto: int | None = None
    rest: Quantity | None = None
    hardener: str = ""
    thinner: str = ""


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


def _measure_of(amount: Quantity) -> Measure:
    return Measure.WEIGHT if amount.unit == Measure.WEIGHT.unit else Measure.VOLUME


def _planned(profile: Profile, plan: BatchPlan) -> PourTable:
    """The pours as meant. Raises BadInput with a sentence."""
    mix, parts_by = recipe(profile, plan.thinner_percent, plan.by)

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
    profile = mixed_with(profile, plan.hardener, plan.thinner)
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
        hardener=last.hardener,
        thinner=last.thinned_with,
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
        hardener=plan.hardener,
        thinned_with=plan.thinner,
    )


def batch_of(
    profile: Profile, pours: Sequence[Poured], at: Moment, others: tuple[str, ...] = ()
) -> BatchMixed:
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
        hardener=plan.hardener,
        thinned_with=plan.thinner,
        others=others,
    )


def _quantity(amount: float, unit: str) -> Quantity:
    return Quantity(amount, unit, f"{amount:g} {unit}")
