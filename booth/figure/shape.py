"""How one sort of number is read and shown.

A shape joins a unit of ``booth.trade`` to a kind of ``booth.units``; where no kind fits (a spreading
rate, say) it carries its own two units.
"""

from __future__ import annotations

import math
import re

import msgspec

from booth.figure.heard import Heard
from booth.figure.numbers import MOST_PLACES, fitted, stepped, time_text
from booth.units import (
    EntryError,
    Kind,
    System,
    show,
    shown_unit,
    shown_value,
    system_of,
    understand,
)
from booth.units.display import number_text, shown, with_unit

SECONDS_PER_MINUTE = 60
#: Digits of an estimate below a minute.
WHOLE_SECONDS = 2
#: Digits of a number that has no unit, where the shape names no places.
DIGITS = 5


class Own(msgspec.Struct, frozen=True):
    """A unit that ``booth.units`` does not have: its name, how many make one of the trade's."""

    unit: str
    per: float = 1.0
    places: int | None = None

    def text(self, value: float, digits: int | None = None, way: int = 0) -> str:
        """Give `value` [trade unit] in this unit, to so many digits at most."""
        number = value * self.per
        if self.places is not None:
            number, places = fitted(number, self.places, digits, way)
            told = f"{number:,.{places}f}"
        else:
            number = float(f"{number:.{digits or DIGITS}g}")
            told = f"{number:,.0f}" if abs(number) >= 10**DIGITS else f"{number:g}"
        return f"{told} {self.unit}".rstrip()


#: Signs of units as a plain keyboard has them.
_KEYS = str.maketrans({"°": "", "²": "2", "³": "3", "µ": "u"})


#: A number without a unit: digits and what may stand between them.
_NUMBER = re.compile(r"\s*[-+]?[\d.,/ -]*\d\s*")
_WHICH_TIME = "{0} h or {0} min? A time is typed with its unit: {0}h, {0}min."


def _plain(text: str) -> str:
    return text.strip().lower().translate(_KEYS)


#: Units that go without saying in an example.
_UNSAID = ("turns", "fan widths")
#: Numbers that are what they are, however they are written: 4 parts, 2 coats.
_EXACT = (Kind.COUNT, Kind.RATIO, Kind.TURNS)


class Shape(msgspec.Struct, frozen=True):
    """How one sort of number is read and shown.

    unit: the trade's unit; kind: what an entry is read as; scale: trade's number to the kind's base
    unit; places: decimals shown, US and metric; own: units of its own, US and metric; fixed: its
    digits do not follow those that were typed; needs_unit: a bare number is not taken; limit: the
    most there can be, where no kind says it (common practice, no source).
    """

    unit: str
    kind: Kind | None = None
    scale: float = 1.0
    places: tuple[int, int] | None = None
    own: tuple[Own, Own] | None = None
    fixed: bool = False
    needs_unit: bool = False
    limit: float = math.inf

    @property
    def most(self) -> float:
        """The most that any shop can have, in the trade's unit: beyond, a number was mistyped."""
        return self.limit if self.kind is None else self.kind.high / self.scale

    def read(self, text: str, heard: Heard) -> float:
        """Read an entry as a number in the trade's unit. Raises EntryError."""
        bare = _NUMBER.fullmatch(text)
        if not self.fixed and self.kind not in _EXACT:
            heard.number(text)
        if self.kind is not None:
            found = understand(text, self.kind, heard.system)
            if bare and self.needs_unit and found.value:
                raise EntryError(_WHICH_TIME.format(bare[0].strip()))
            heard.unit(None if bare or found.unit is None else system_of(found.unit))
            return found.value / self.scale
        typed = _plain(text)
        for own in self._owns(heard.system):
            unit = _plain(own.unit)
            if unit and typed.endswith(unit):
                heard.unit(self._whose(own))
                found = understand(typed.removesuffix(unit), Kind.RATIO, heard.system)
                return found.value / own.per
        try:
            bare_unit = self._owns(heard.system)[0]
            return understand(text, Kind.RATIO, heard.system).value / bare_unit.per
        except EntryError as fault:
            raise EntryError(f"{fault} Its unit here is {self.bare(heard.system)}.") from None

    def _whose(self, own: Own) -> System | None:
        us, metric = self.own or (own, own)
        return None if us.unit == metric.unit else System.US if own == us else System.METRIC

    def show(
        self, value: float | None, system: System, digits: int | None = None, way: int = 0
    ) -> str:
        """Give a number in the trade's unit as it is read, to so many digits at most.

        way: 1 where it may only be rounded up.
        """
        if value is None:
            return "none"
        if not math.isfinite(value):
            return show(value, Kind.RATIO, system)
        digits = None if self.fixed else digits
        if self.own is not None or self.kind is None:
            return self._owns(system)[0].text(value, digits, way)
        if self.needs_unit and round(abs(value), 1) >= SECONDS_PER_MINUTE:
            return time_text(value)
        number, how = shown_value(value * self.scale, self.kind, system), shown(self.kind, system)
        places = how.places(number)
        if self.places is not None:
            places = self.places[system is System.METRIC]
        if not self.fixed:
            number, places = fitted(number, places, digits, way)
        return with_unit(number_text(number, places, how.least), shown_unit(self.kind, system))

    def estimated(self, value: float, system: System, digits: int | None, way: int) -> str:
        """Give an estimate: a time in whole steps, the wait that opens up, the one that closes down."""
        if self.needs_unit and math.isfinite(value):
            return self.show(stepped(value, way), system, WHOLE_SECONDS)
        return self.show(value, system, digits)

    def typed(self, value: float) -> str:
        """Give a number as the shortest word that reads as it: ``1.5mil``, ``200ml/min``, ``4h``."""
        found = []
        for system in System:
            unit, number = self._owns(system)[0].unit, value * self._owns(system)[0].per
            if self.own is None and self.kind is not None:
                unit = shown_unit(self.kind, system)
                number = shown_value(value * self.scale, self.kind, system)
            found.append((f"{number:.6g}", "" if self.unit in _UNSAID else unit))
        if self.kind is Kind.TIME:
            found += [(f"{value / 60:.6g}", "min"), (f"{value / 3600:.6g}", "h")]
        number_text, unit = min(found, key=lambda each: len(each[0]))
        return f"{number_text}{unit}".translate(_KEYS)

    def bare(self, system: System) -> str:
        """Name the unit that a bare number takes."""
        if self.kind is not None:
            return shown_unit(self.kind, system) or "no unit"
        return self._owns(system)[0].unit or "no unit"

    def _owns(self, system: System) -> tuple[Own, Own]:
        us, metric = self.own or (Own(self.unit), Own(self.unit))
        return (us, metric) if system is System.US else (metric, us)


def telling_apart(shape: Shape, number: float, *others: float | None) -> Shape:
    """Give the shape with as many places as it takes for `number` not to read as one of the others."""
    for places in range(MOST_PLACES):
        finer = msgspec.structs.replace(shape, places=(places, places), fixed=True)
        told = {(system, finer.show(number, system)) for system in System}
        limits = {(system, finer.show(end, system)) for end in others for system in System}
        if places >= max(shape.places or (0,)) and not told & limits:
            return finer
    return shape
