"""Subjects of mixing that join several functions of the trade; see ``joined``."""

from __future__ import annotations

import functools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from booth.figure.answer import Answer, Item
from booth.figure.docs import Function
from booth.figure.joined import joins
from booth.figure.readers import Amount
from booth.figure.results import joined, told
from booth.figure.shapes import SHARE, TIME, VOLUME
from booth.trade.mixing import pours
from booth.trade.mixing.components import Component, Measure, pour_shares, with_thinner
from booth.trade.mixing.mixed_batch import BatchAge, mixed_volume_ml, pot_life_left_s
from booth.trade.mixing.overpour import Correction, after_pouring, amounts_from_marks
from booth.trade.mixing.pours import PourTable, pour_table
from booth.trade.result import BadInput


@joins(pot_life_left_s, examples=["3h:4h 0h:4h", "5h:4h"])
def pot_life_left(batches: Sequence[BatchAge]) -> Answer:
    left = pot_life_left_s(batches)
    if left < 0:
        return Answer((Item("over since", -left, TIME),), notes=("spray no more of it",))
    return Answer((Item("pot life left", left, TIME),))


def _poured(mix: Sequence[Component], table: PourTable, parts_by: Measure) -> Answer:
    """Give what a table of pours gives, and the volume it makes where that can be told."""
    parts = [told(table, None, ""), Answer(rule=f"parts by {parts_by}, poured one on the other")]
    if table.measure is Measure.WEIGHT and all(each.density_g_ml for each in mix):
        volume = Item("which makes", mixed_volume_ml(mix, table), VOLUME)
        parts.append(Answer((volume,)))
    return joined(parts)


def _with_volume(pour: Function) -> Function:
    @functools.wraps(pour)
    def asked(components: Sequence[Component], **given: Any) -> Answer:
        return _poured(components, pour(components, **given), given["parts_by"])

    return asked


joins(
    pour_table,
    mixed_volume_ml,
    examples=["600ml base:4 hardener:1", "600g base:4:1.25g/ml hardener:1:1g/ml pour=weight"],
)(_with_volume(pour_table))
for _pours in (pours.pour_table_from_component, pours.pour_table_on_top):
    joins(_pours)(_with_volume(_pours))


@dataclass(frozen=True, slots=True)
class Held:
    """A component, and an amount of it: what is left, or the mark it was poured to."""

    name: str
    parts: float
    amount: Amount | None = None
    density_g_ml: float | None = None


def _mix(held: Sequence[Held]) -> list[Component]:
    return [Component(each.name, each.parts, each.density_g_ml) for each in held]


@joins(pours.pour_table_from_stock, examples=["base:4:500ml hardener:1:100ml"])
def mix_stock(components: Sequence[Held], parts_by: Measure, measure: Measure) -> Answer:
    stock = {
        each.name: each.amount.in_measure(measure, each.name)
        for each in components
        if each.amount is not None
    }
    mix = _mix(components)
    table = pours.pour_table_from_stock(mix, stock, parts_by=parts_by, measure=measure)
    return _poured(mix, table, parts_by)


@joins(after_pouring, amounts_from_marks, examples=["500ml base:4:400ml hardener:1:512ml"])
def mix_correct(
    wanted: Amount, components: Sequence[Held], parts_by: Measure, measure: Measure
) -> Correction:
    number = wanted.in_measure(measure, "What is wanted")
    plan = pour_table(_mix(components), number, parts_by=parts_by, measure=measure)
    marks = [each.amount for each in components]
    while marks and marks[-1] is None:
        marks.pop()
    read = [mark.in_measure(measure, "A mark") for mark in marks if mark is not None]
    if len(read) < len(marks):
        raise BadInput("Give the mark of every component up to the last one poured.")
    return after_pouring(plan, amounts_from_marks(read))


@joins(pour_shares, examples=["base:4:1.2g/ml hardener:1:0.9g/ml"])
def mix_shares(components: Sequence[Component], parts_by: Measure) -> Answer:
    """Give the share of each component, by volume and by weight."""
    dense = all(each.density_g_ml for each in components)
    items = []
    for by in (parts_by, *(each for each in Measure if each is not parts_by and dense)):
        shares = pour_shares(components, parts_by, by)
        for each, share in zip(components, shares, strict=True):
            items.append(Item(f"{each.name} by {by}", share, SHARE))
    return Answer(tuple(items), "parts over all parts")


@joins(with_thinner, examples=["25% base:4"])
def mix_thinner(thinner_percent: float, components: Sequence[Component]) -> Any:
    return with_thinner(components, "thinner", thinner_percent)
