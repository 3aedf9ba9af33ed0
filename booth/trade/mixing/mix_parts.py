"""The components of a mix: their parts by volume or by weight, their shares, thinner on top."""

from __future__ import annotations

from collections.abc import Sequence

from booth.trade.mixing.components import Component, Measure, _check
from booth.trade.result import require


def pour_shares(
    components: Sequence[Component], parts_by: Measure, measure: Measure
) -> tuple[float, ...]:
    """Give each component's share of the mix, by volume or by weight.

    Args:
        components: the components with their parts; names differ.
        parts_by: whether the parts are by volume or by weight.
        measure: whether the shares are wanted by volume or by weight; where it differs from
            parts_by, every density [g/ml] is needed.

    Returns: shares [1] in the order of the components; they add up to 1.
    Range: volumes are taken to add up; solvents that shrink when mixed (alcohol in water by up to 4
        %) make a little less.
    Source: definition of parts; mass is volume times density (ISO 80000-4).

    >>> parts = [Component("base", 4, 1.2), Component("hardener", 1, 0.9)]
    >>> pour_shares(parts, Measure.VOLUME, Measure.VOLUME)
    (0.8, 0.2)
    >>> [round(share, 4) for share in pour_shares(parts, Measure.VOLUME, Measure.WEIGHT)]
    [0.8421, 0.1579]
    """
    _check(components)
    amounts = [each.convert(float(each.parts), parts_by, measure) for each in components]
    whole = sum(amounts)
    return tuple(amount / whole for amount in amounts)


def with_thinner(
    components: Sequence[Component], thinner: str, percent: float, density_g_ml: float | None = None
) -> tuple[Component, ...]:
    """Give the mix with thinner on top, as percent by volume of the mixed coating.

    Args:
        components: the components of the coating, parts by volume.
        thinner: its name.
        percent: thinner [% of the volume of all the components together], above 0.
        density_g_ml: its density [g/ml], None where it is not known.

    Returns: the components and the thinner, poured last; parts by volume.
    Range: parts by volume only: for parts by weight, bring them to volume with parts_by_volume.
        Never more than the data sheet's limit, which is not known here.
    Source: common practice, no source: '25 %' is a quarter of the volume of the coating, on top.

    >>> [part.parts for part in with_thinner([Component("base", 4)], "thinner", 25)]
    [4, 1.0]
    """
    _check(components)
    require("The thinner", percent, above=0.0, unit="%")
    whole = sum(component.parts for component in components)
    mix = (*components, Component(thinner, whole * percent / 100.0, density_g_ml))
    _check(mix)
    return mix


def parts_by_volume(components: Sequence[Component]) -> tuple[Component, ...]:
    """Give the same mix with its parts by volume, from parts by weight.

    Args:
        components: the components, parts by weight, each with its density [g/ml].

    Returns: the components, parts by volume: ``weight / density``.
    Range: as for pour_shares.
    Source: volume is mass over density (ISO 80000-4).

    >>> resin = [Component("resin", 100, 1.25), Component("hardener", 40, 1.0)]
    >>> [part.parts for part in parts_by_volume(resin)]
    [80.0, 40.0]
    """
    _check(components)
    return tuple(
        Component(
            each.name,
            each.convert(float(each.parts), Measure.WEIGHT, Measure.VOLUME),
            each.density_g_ml,
        )
        for each in components
    )
