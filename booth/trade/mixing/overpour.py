"""What to do after pouring too much: nothing can be taken out, so the batch grows."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.mixing.components import Measure
from booth.trade.mixing.pours import Pour, PourTable
from booth.trade.result import BadInput, require

#: An amount to add below this share of the batch is the rounding of floating-point numbers.
ROUNDING = 1e-12


@dataclass(frozen=True, slots=True)
class Correction:
    """What is still to be poured so that the parts are right again.

    measure: of all amounts, [ml] or [g]; pours: what to add, in order, with marks that count on
    from what is in the cup; total: what is in the cup at the end; grew: how much over the plan;
    by: the component that made it grow, None if none did.
    """

    measure: Measure
    pours: tuple[Pour, ...]
    total: float
    grew: float
    by: str | None


def amounts_from_marks(marks: Sequence[float], before: float = 0.0) -> tuple[float, ...]:
    """Give the amount of each pour from the marks read off the cup or the scale.

    Args:
        marks: what was read after each pour, in order [ml or g].
        before: what was in the cup before the first [ml or g], 0 or more.

    Returns: amounts [ml or g].
    Range: readings that do not fall; a scale that was set to zero in between reads amounts, not
        marks.
    Source: mass balance: a mark is the sum of the pours up to it.

    >>> amounts_from_marks([400.0, 512.0])
    (400.0, 112.0)
    """
    require("What was in the cup", before, 0.0)
    for earlier, later in itertools.pairwise([before, *marks]):
        require("A mark", later)
        if later < earlier:
            raise BadInput(
                f"The mark {later:g} is below the one before it, {earlier:g}: marks count up. "
                "If the scale was set to zero in between, enter the sum."
            )
    return tuple(float(b - a) for a, b in itertools.pairwise([before, *marks]))


def after_pouring(table: PourTable, poured: Sequence[float]) -> Correction:
    """Give the pours that are left after what was really poured.

    After too much of one component everything else grows in step; of too little the rest is added.

    Args:
        table: the plan.
        poured: what was poured of each component so far, in order [ml or g], each 0 or more.

    Returns: Correction: the least that makes the parts right; never a negative amount.
    Range: any excess; whether the cup holds the larger batch is for the painter to see. Once mixed
        components have begun to react, the correction is mixed in at once and pot life still counts
        from the first mixing.
    Source: mass balance: what was poured cannot be taken out; the greatest excess over its share
        sets the batch.

    >>> from booth.trade.mixing.pours import pour_table
    >>> from booth.trade.mixing.components import Component, Measure
    >>> parts = [Component("base", 4), Component("hardener", 1)]
    >>> plan = pour_table(parts, 500.0, parts_by=Measure.VOLUME, measure=Measure.VOLUME)
    >>> found = after_pouring(plan, [400.0, 112.0])  # 12 ml of hardener too much
    >>> [(pour.name, round(pour.amount), round(pour.mark)) for pour in found.pours]
    [('base', 48, 560)]
    >>> round(found.total), round(found.grew), found.by
    (560, 60, 'hardener')
    """
    if len(poured) > len(table.pours):
        raise BadInput(
            f"{len(poured)} amounts were given for {len(table.pours)} components: "
            "give one for each, in the order of the table."
        )
    for pour, amount in zip(table.pours, poured, strict=False):
        require(f"What was poured of {pour.name}", amount, 0.0, unit=table.measure.unit)
    for pour in table.pours:
        require(f"The amount of {pour.name} in the plan", pour.amount, above=0.0)
    planned = sum(table.amounts)
    growth, by = 1.0, None
    for pour, amount in zip(table.pours, poured, strict=False):
        if amount / pour.amount > growth * (1.0 + ROUNDING):
            growth, by = amount / pour.amount, pour.name
    mark = table.before + sum(poured)
    pours = []
    in_cup = [*poured, *([0.0] * (len(table.pours) - len(poured)))]
    for pour, amount in zip(table.pours, in_cup, strict=True):
        missing = pour.amount * growth - amount
        if missing <= ROUNDING * planned * growth:
            continue
        mark += missing
        pours.append(Pour(pour.name, missing, mark))
    total = table.before + planned * growth
    return Correction(table.measure, tuple(pours), total, total - table.total, by)
