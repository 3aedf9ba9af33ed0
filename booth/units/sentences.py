"""Sentences of the trade in the painter's units: one door for refusals, reasons and rules.

The trade writes a number and its unit with a no-break space between them (``trade.result.Said``), in
its own units; here each becomes what the painter reads. What a source says is quoted with a plain
space and stays as it is.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Protocol

from booth.units.display import shown_unit, shown_value, with_unit
from booth.units.durations import length
from booth.units.kinds import Kind, System

#: What stands between a number and its unit (``trade.result.JOIN``; a test holds that they agree).
JOIN = "\N{NO-BREAK SPACE}"


class Refusal(Protocol):
    """A refusal of the trade, as ``trade.result.BadInput``."""

    @property
    def sentence(self) -> str:
        """What it says."""


#: How the trade writes its units: the kind, and how many of its base unit one is.
KINDS: dict[str, tuple[Kind, float]] = {
    "C": (Kind.TEMPERATURE, 1),
    "K": (Kind.TEMPERATURE_DIFFERENCE, 1),
    "kPa": (Kind.PRESSURE, 1),
    "um": (Kind.THICKNESS, 1),
    "mm": (Kind.LENGTH, 1),
    "m2": (Kind.AREA, 1),
    "m3": (Kind.ROOM, 1),
    "ml": (Kind.VOLUME, 1),
    "l": (Kind.RECEIVER, 1),
    "g": (Kind.MASS, 1),
    "g/ml": (Kind.DENSITY, 1),
    "ml/min": (Kind.DELIVERY, 1),
    "l/min": (Kind.AIR_FLOW, 1),
    "m3/h": (Kind.EXHAUST, 1),
    "mm/s": (Kind.SPEED, 1e-3),
    "m/s": (Kind.SPEED, 1),
    "mm2/s": (Kind.VISCOSITY, 1),
    "s": (Kind.TIME, 1),
}
#: From here on a time is told in minutes [s]: an efflux time stays in seconds.
MINUTES_FROM_S = 300.0
#: A difference is told as roundly as its source told it: 12 F are 6.66667 K.
DIGITS, DIGITS_OF_DIFFERENCE = 4, 3


@cache
def _quantities() -> re.Pattern[str]:
    return re.compile(rf"(-?\d[\d.]*(?:e[+-]?\d+)?){JOIN}([\w/%]+)")


def in_units(said: str | Refusal, system: System) -> str:
    """Give a sentence of the trade with every quantity in the units of `system`.

    said: the sentence, or the refusal that has it. What has no quantity comes back as it is.
    """
    text = said if isinstance(said, str) else said.sentence
    if JOIN not in text:
        return text

    def shown(found: re.Match[str]) -> str:
        return _shown(float(found[1]), found[1], found[2], system)

    return _quantities().sub(shown, text).replace(JOIN, " ")


def _shown(number: float, written: str, unit: str, system: System) -> str:
    if unit not in KINDS:
        return f"{written} {unit}"
    kind, factor = KINDS[unit]
    if kind is Kind.TIME and number >= MINUTES_FROM_S:
        return length(number)
    digits = DIGITS_OF_DIFFERENCE if kind is Kind.TEMPERATURE_DIFFERENCE else DIGITS
    value = shown_value(number * factor, kind, system)
    text = f"{value:.{digits}g}"
    if "e" in text and abs(value) < 1e9:
        text = f"{value:.0f}" if abs(value) > 1 else f"{value:.6f}".rstrip("0").rstrip(".")
    return with_unit(text, shown_unit(kind, system))
