"""What a mix is made of: its components, their parts by volume or by weight, thinner on top."""

from __future__ import annotations

import enum
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import BadInput, require


class Measure(enum.StrEnum):
    """How an amount is measured: by volume [ml] or by weight [g]."""

    VOLUME = "volume"
    WEIGHT = "weight"

    @property
    def unit(self) -> str:
        """The unit of amounts in this measure."""
        return "ml" if self is Measure.VOLUME else "g"


@dataclass(frozen=True, slots=True)
class Component:
    """One component, in the order in which it is poured.

    name; parts: its parts of the mix, by volume or by weight as the data sheet gives them, above 0;
    density_g_ml: its density [g/ml], None where it is not known.
    """

    name: str
    parts: float
    density_g_ml: float | None = None

    def convert(self, amount: float, given: Measure, wanted: Measure) -> float:
        """Give an amount of it in the measure wanted: mass is volume times density."""
        if given is wanted:
            return amount
        if self.density_g_ml is None:
            raise BadInput(
                f"The density of {self.name} is not known. It is needed to go between volume and "
                "weight: take it from its data sheet, or weigh 100 ml."
            )
        density_g_ml = require(
            f"The density of {self.name}", self.density_g_ml, above=0.0, unit="g/ml"
        )
        return amount * density_g_ml if wanted is Measure.WEIGHT else amount / density_g_ml


def _check(components: Sequence[Component]) -> None:
    if not components:
        raise BadInput("A mix needs at least one component.")
    names = [component.name for component in components]
    for component in components:
        if names.count(component.name) > 1:
            raise BadInput(f"Two components are called {component.name}: give each its own name.")
        require(f"The parts of {component.name}", component.parts, above=0.0)


def _named(components: Sequence[Component], name: str) -> Component:
    for component in components:
        if component.name == name:
            return component
    known = ", ".join(component.name for component in components)
    raise BadInput(f"There is no component called {name}; the mix has {known}.")


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
    if density_g_ml is not None:
        require(f"The density of {thinner}", density_g_ml, above=0.0, unit="g/ml")
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
