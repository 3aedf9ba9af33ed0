"""How much of each component: parts by volume or by weight, poured into a cup or on a scale.

The pours are cumulative: each mark is what the cup or the scale shows when to stop.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from booth.trade.mixing.components import Component, Measure, _check, _named, pour_shares
from booth.trade.result import BadInput, require


@dataclass(frozen=True, slots=True)
class Pour:
    """One pour. amount: how much of this one; mark: where to stop, all before it included.

    Both in the measure of the table, [ml] or [g].
    """

    name: str
    amount: float
    mark: float

    def __post_init__(self) -> None:
        require(f"The amount of {self.name}", self.amount, 0.0)
        require(f"The mark of {self.name}", self.mark, 0.0)


@dataclass(frozen=True, slots=True)
class PourTable:
    """The pours of a batch, in order.

    measure: how it is poured; before: what is in the cup already, 0 for an empty one; total: the
    last mark. Amounts and marks in `measure.unit`.
    """

    measure: Measure
    before: float
    pours: tuple[Pour, ...]

    def __post_init__(self) -> None:
        require("What is in the cup already", self.before, 0.0)

    @property
    def total(self) -> float:
        """What is in the cup at the end."""
        return self.pours[-1].mark

    @property
    def amounts(self) -> tuple[float, ...]:
        """The amounts alone, in order."""
        return tuple(pour.amount for pour in self.pours)


def _table(
    components: Sequence[Component], amounts: Sequence[float], measure: Measure, before: float = 0.0
) -> PourTable:
    marks = itertools.accumulate(amounts, initial=before)
    next(marks)
    pours = tuple(
        Pour(component.name, amount, mark)
        for component, amount, mark in zip(components, amounts, marks, strict=True)
    )
    return PourTable(measure, before, pours)


def pour_table(
    components: Sequence[Component],
    wanted: float,
    *,
    parts_by: Measure,
    measure: Measure,
    wanted_by: Measure | None = None,
) -> PourTable:
    """Give the cumulative pours for a wanted amount of mix.

    Args:
        components: the components in the order they are poured.
        wanted: how much of the mix [ml or g], above 0.
        parts_by: whether the parts are by volume or by weight.
        measure: whether it is poured by volume or on a scale.
        wanted_by: whether `wanted` is a volume or a weight; as `measure` if None.

    Returns: PourTable in `measure`; the last mark is the wanted amount.
    Range: as for pour_shares; densities are needed only where two measures differ.
    Source: definition of parts; mass is volume times density (ISO 80000-4).

    >>> parts = [Component("base", 4), Component("hardener", 1), Component("thinner", 1)]
    >>> table = pour_table(parts, 600.0, parts_by=Measure.VOLUME, measure=Measure.VOLUME)
    >>> [round(pour.mark) for pour in table.pours]
    [400, 500, 600]
    """
    require("The amount wanted", wanted, above=0.0, unit=(wanted_by or measure).unit)
    wanted_by = wanted_by or measure
    shares = pour_shares(components, parts_by, wanted_by)
    amounts = [
        component.convert(share * wanted, wanted_by, measure)
        for component, share in zip(components, shares, strict=True)
    ]
    return _table(components, amounts, measure)


def pour_table_from_component(
    components: Sequence[Component],
    name: str,
    amount: float,
    *,
    parts_by: Measure,
    measure: Measure,
    amount_by: Measure | None = None,
) -> PourTable:
    """Give the cumulative pours that use a given amount, or all that is left, of one component.

    Args:
        components: the components in the order they are poured.
        name: the component whose amount is given.
        amount: how much of it [ml or g], above 0.
        parts_by: whether the parts are by volume or by weight.
        measure: whether it is poured by volume or on a scale.
        amount_by: whether `amount` is a volume or a weight; as `measure` if None.

    Returns: PourTable in `measure`.
    Range: as for pour_shares.
    Source: definition of parts; mass is volume times density (ISO 80000-4).

    >>> parts = [Component("base", 4), Component("hardener", 1)]
    >>> table = pour_table_from_component(
    ...     parts, "hardener", 30.0, parts_by=Measure.VOLUME, measure=Measure.VOLUME
    ... )
    >>> [round(pour.mark) for pour in table.pours]
    [120, 150]
    """
    _check(components)
    amount_by = amount_by or measure
    require(f"The amount of {name}", amount, above=0.0, unit=amount_by.unit)
    the_one = _named(components, name)
    scale = the_one.convert(amount, amount_by, parts_by) / the_one.parts
    amounts = [each.convert(each.parts * scale, parts_by, measure) for each in components]
    return _table(components, amounts, measure)


def pour_table_from_stock(
    components: Sequence[Component],
    stock: Mapping[str, float],
    *,
    parts_by: Measure,
    measure: Measure,
) -> PourTable:
    """Give the largest batch that what is left in the cans allows.

    Args:
        components: the components in the order they are poured.
        stock: what is left, by name [ml or g, as `measure`], each above 0; not named is plenty.
        parts_by: whether the parts are by volume or by weight.
        measure: whether it is poured by volume or on a scale.

    Returns: PourTable in `measure`; it uses up the component that runs out first.
    Range: as for pour_shares.
    Source: definition of parts: the scarcest component sets the batch.

    >>> parts = [Component("base", 4), Component("hardener", 1)]
    >>> left = {"base": 500.0, "hardener": 100.0}
    >>> table = pour_table_from_stock(
    ...     parts, left, parts_by=Measure.VOLUME, measure=Measure.VOLUME
    ... )
    >>> [round(pour.mark) for pour in table.pours]
    [400, 500]
    """
    if not stock:
        raise BadInput("Say what is left of at least one component.")
    tables = (
        pour_table_from_component(components, name, left, parts_by=parts_by, measure=measure)
        for name, left in stock.items()
    )
    return min(tables, key=lambda table: table.total)


def pour_table_on_top(
    components: Sequence[Component],
    left: float,
    wanted: float,
    *,
    parts_by: Measure,
    measure: Measure,
) -> PourTable:
    """Give the pours that top up a rest of the same mix, into the same cup.

    Args:
        components: the components in the order they are poured.
        left: what is left of the ready mix [ml or g, as `measure`], 0 or more.
        wanted: how much there is to be in the end [ml or g], above `left`.
        parts_by: whether the parts are by volume or by weight.
        measure: whether it is poured by volume or on a scale.

    Returns: PourTable in `measure`; the marks count on from what is left.
    Range: as for pour_shares; the rest must be of the same parts. The older material rules the pot
        life of all of it (pot_life_left_s).
    Source: definition of parts; mass balance.

    >>> parts = [Component("base", 4), Component("hardener", 1)]
    >>> table = pour_table_on_top(
    ...     parts, 100.0, 600.0, parts_by=Measure.VOLUME, measure=Measure.VOLUME
    ... )
    >>> [round(pour.mark) for pour in table.pours]
    [500, 600]
    """
    require("What is left of the mix", left, 0.0, unit=measure.unit)
    require("The amount wanted in all", wanted, above=left, unit=measure.unit)
    fresh = pour_table(components, wanted - left, parts_by=parts_by, measure=measure)
    return _table(components, fresh.amounts, measure, before=float(left))
