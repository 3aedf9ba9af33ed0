"""What a mix is once it is mixed: its density, its volume, and how long it may still be used."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.mixing.components import Component, Measure, _named, pour_shares
from booth.trade.mixing.pours import PourTable
from booth.trade.result import BadInput, require


@dataclass(frozen=True, slots=True)
class BatchAge:
    """A batch that went into the cup. age_s: since it was mixed; pot_life_s: its own [s]."""

    age_s: float
    pot_life_s: float


def mixed_density_g_ml(components: Sequence[Component], parts_by: Measure) -> float:
    """Give the density of the mix.

    Args:
        components: the components, each with its density [g/ml].
        parts_by: whether their parts are by volume or by weight.

    Returns: density [g/ml]: ``weight of the parts / their volume``.
    Range: volumes are taken to add up. Alcohol in water shrinks by up to 4 %; most solvents by less
        than 1 % (common practice, no source). For a catch by weight, weigh 100 ml of the mix.
    Source: mass is conserved; volumes of an ideal mixture add up.

    >>> parts = [Component("base", 4, 1.25), Component("hardener", 1, 1.0)]
    >>> mixed_density_g_ml(parts, Measure.VOLUME)
    1.2
    """
    shares = pour_shares(components, parts_by, Measure.VOLUME)
    return sum(
        component.convert(share, Measure.VOLUME, Measure.WEIGHT)
        for component, share in zip(components, shares, strict=True)
    )


def mixed_volume_ml(components: Sequence[Component], table: PourTable) -> float:
    """Give the volume that the pours of a table make, whether poured by volume or on a scale.

    Args:
        components: the components of the table; with densities [g/ml] if it is poured by weight.
        table: the pours.

    Returns: volume of what is poured [ml], without what was in the cup before.
    Range: as for mixed_density_g_ml.
    Source: volume is mass over density (ISO 80000-4); volumes of an ideal mixture add up.

    >>> from booth.trade.mixing.pours import pour_table
    >>> parts = [Component("base", 4, 1.25), Component("hardener", 1, 1.0)]
    >>> table = pour_table(parts, 600.0, parts_by=Measure.VOLUME, measure=Measure.WEIGHT)
    >>> mixed_volume_ml(parts, table)
    500.0
    """
    return sum(
        _named(components, pour.name).convert(pour.amount, table.measure, Measure.VOLUME)
        for pour in table.pours
    )


def pot_life_left_s(batches: Sequence[BatchAge]) -> float:
    """Give the pot life left of everything that was poured together.

    Args:
        batches: every batch in the cup: its age and its own pot life [s], each 0 or more.

    Returns: the least that any of them has left [s]; below 0 it has been over for so long.
    Range: for batches of one product. Fresh material does not make old material young: what has
        begun to gel goes on inside the new.
    Source: common practice, no source: the oldest batch rules.

    >>> pot_life_left_s([BatchAge(3 * 3600, 4 * 3600), BatchAge(0, 4 * 3600)]) / 3600
    1.0
    """
    if not batches:
        raise BadInput("There is no batch: pot life counts from mixing.")
    for batch in batches:
        require("The age of a batch", batch.age_s, 0.0, unit="s")
        require("The pot life of a batch", batch.pot_life_s, 0.0, unit="s")
    return min(float(batch.pot_life_s - batch.age_s) for batch in batches)
