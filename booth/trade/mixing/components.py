"""What a mix is made of, and the way between volume and weight; used by parts, pours and blends."""

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
