"""The unit in which the trade gives a number, and how that number is read and shown.

A shape joins a unit of ``booth.trade`` to a kind of ``booth.units``; where no kind fits (a spreading
rate, say) it carries its own two units. Which shape a number has follows from its name.
"""

from __future__ import annotations

import dataclasses
import math
import re
from dataclasses import dataclass

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

#: Exact by definition (NIST SP 811 (2008) B.8): foot, and US gallon of 231 cubic inches.
FT_M = 0.3048
GAL_L = 231 * 0.0254**3 * 1000
MINUTES_PER_HOUR = 60
SECONDS_PER_MINUTE = 60
#: Digits of an estimate below a minute.
WHOLE_SECONDS = 2
L_PER_M3 = 1000
#: Digits of a number that has no unit, where the shape names no places.
DIGITS = 5


@dataclass(frozen=True, slots=True)
class Own:
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


#: Numbers that are what they are, however they are written: 4 parts, 2 coats.
_EXACT = (Kind.COUNT, Kind.RATIO, Kind.TURNS)


@dataclass(frozen=True, slots=True)
class Shape:
    """How one sort of number is read and shown.

    unit: the trade's unit; kind: what an entry is read as; scale: trade's number to the kind's base
    unit; places: decimals shown, US and metric; own: units of its own, US and metric; fixed: its
    digits do not follow those that were typed; needs_unit: a bare number is not taken.
    """

    unit: str
    kind: Kind | None = None
    scale: float = 1.0
    places: tuple[int, int] | None = None
    own: tuple[Own, Own] | None = None
    fixed: bool = False
    needs_unit: bool = False

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
            found.append((f"{number:.6g}", "" if self in (TURNS, FAN_WIDTHS) else unit))
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


VOLUME = Shape("ml", Kind.VOLUME, places=(2, 1))
MASS = Shape("g", Kind.MASS)
DELIVERY = Shape("ml/min", Kind.DELIVERY, places=(2, 1))
TIME = Shape("s", Kind.TIME, needs_unit=True)
#: Efflux times and catches are told in seconds, not in minutes.
SECONDS = Shape("s", Kind.TIME, places=(1, 1))
TEMPERATURE = Shape("degC", Kind.TEMPERATURE, places=(1, 1), fixed=True)
DIFFERENCE = Shape("K", Kind.TEMPERATURE_DIFFERENCE, places=(2, 2), fixed=True)
PRESSURE = Shape("kPa", Kind.PRESSURE)
FILM = Shape("um", Kind.THICKNESS, places=(2, 1))
LENGTH = Shape("mm", Kind.LENGTH)
PART = Shape("mm", Kind.PART_LENGTH, 0.001)
SPEED = Shape("mm/s", Kind.SPEED, 0.001)
AIR_SPEED = Shape("m/s", Kind.SPEED)
AREA = Shape("m2", Kind.AREA, places=(2, 3))
DENSITY = Shape("g/ml", Kind.DENSITY)
VISCOSITY = Shape("mm2/s", Kind.VISCOSITY)
#: A share is kept as a number of 1 and typed and shown in per cent.
SHARE = Shape("1", Kind.PERCENT, 100.0, places=(3, 3))
PERCENT = Shape("%", Kind.PERCENT, places=(3, 3))
AIR_FLOW = Shape("l/min", Kind.AIR_FLOW)
RECEIVER = Shape("l", Kind.ROOM, 0.001, own=(Own("gal", 1 / GAL_L, 1), Own("l", 1.0, 0)))
ROOM = Shape("m3", Kind.ROOM)
#: Free air, by its volume.
FREE_AIR = Shape("l", Kind.ROOM, 0.001, own=(Own("ft³", 0.001 / FT_M**3, 2), Own("l", 1.0, 1)))
TURNS = Shape("turns", Kind.TURNS)
COUNT = Shape("1", Kind.COUNT, fixed=True)
NUMBER = Shape("1", Kind.RATIO)
EXHAUST = Shape(
    "m3/h",
    Kind.AIR_FLOW,
    L_PER_M3 / MINUTES_PER_HOUR,
    own=(Own("ft³/min", 1 / (FT_M**3 * MINUTES_PER_HOUR), 0), Own("m³/h", 1.0, 0)),
)
SPREADING = Shape("m2/l", own=(Own("ft²/gal", GAL_L / FT_M**2, 1), Own("m²/l", 1.0, 2)))
#: Litres to the litre, cubic feet to the gallon.
PER_LIQUID = Shape("l/l", own=(Own("ft³/gal", GAL_L / FT_M**3 / L_PER_M3, 1), Own("l/l", 1.0, 0)))
VAPOUR_PRESSURE = Shape("Pa", own=(Own("Pa", 1.0, 0), Own("Pa", 1.0, 0)))
WATER_DENSITY = Shape("kg/m3", fixed=True, own=(Own("kg/m³", 1.0, 3),) * 2)
MOLAR_MASS = Shape("g/mol", own=(Own("g/mol", 1.0, 2), Own("g/mol", 1.0, 2)))
FAN_WIDTHS = Shape("fan widths", own=(Own("fan widths"), Own("fan widths")))


def telling_apart(shape: Shape, number: float, *others: float | None) -> Shape:
    """Give the shape with as many places as it takes for `number` not to read as one of the others."""
    for places in range(MOST_PLACES):
        finer = dataclasses.replace(shape, places=(places, places), fixed=True)
        told = {(system, finer.show(number, system)) for system in System}
        limits = {(system, finer.show(end, system)) for end in others for system in System}
        if places >= max(shape.places or (0,)) and not told & limits:
            return finer
    return shape


_FLOWS = (DELIVERY, AIR_FLOW, EXHAUST, SPEED, AIR_SPEED, VISCOSITY, SPREADING)
_STUFF = (DENSITY, MASS, MOLAR_MASS, WATER_DENSITY, VOLUME, ROOM, PRESSURE, VAPOUR_PRESSURE)
_EXTENTS = (FILM, LENGTH, AREA, TIME, DIFFERENCE)
#: The unit at the end of a name, as DEVELOPERS.md lists them.
SUFFIXES: dict[str, Shape] = {
    **{
        f"_{each.unit.lower().replace('/', '_')}": each
        for each in (*_FLOWS, RECEIVER, *_STUFF, *_EXTENTS)
    },
    "_c": TEMPERATURE,
    "_fraction": SHARE,
    "_l_per_l": PER_LIQUID,
    "_percent": PERCENT,
}
#: Names without a unit at their end, and names told in another way than their unit is.
NAMES = {
    **dict.fromkeys(("diameter_mm", "height_mm", "length_mm", "width_mm"), PART),
    **dict.fromkeys(
        ("duration_s", "efflux_s", "mean_s", "pass_time_s", "reported_s", "spread_s"), SECONDS
    ),
    **dict.fromkeys(("efflux_high_s", "efflux_low_s", "high_s", "low_s"), SECONDS),
    **dict.fromkeys(("cv", "doubt", "duty", "high", "likely", "low", "pot_life_used"), SHARE),
    **dict.fromkeys(("share", "share_of_lel", "strength", "trigger_share", "volatile"), SHARE),
    "rated_duty": SHARE,
    "seconds": TIME,
    "air_changes_per_h": Shape("1/h", own=(Own("an hour", 1.0, 1), Own("an hour", 1.0, 1))),
    **dict.fromkeys(("fraction_after", "fraction_before"), SHARE),
    **dict.fromkeys(("coats", "count", "cups", "passes"), COUNT),
    "air": TEMPERATURE,
    "free_air_stored_l": FREE_AIR,
    "humidity": PERCENT,
    "part": TEMPERATURE,
    "percent": PERCENT,
    "place": FAN_WIDTHS,
    "turns": TURNS,
}
#: Units as a value or a reading names them.
UNITS = {
    **{shape.unit: shape for shape in (*SUFFIXES.values(), TURNS)},
    "1": SHARE,
    "C": TEMPERATURE,
    "K": DIFFERENCE,
    "m2/L": SPREADING,
    "s": SECONDS,
}


def ending(name: str) -> str:
    """Give the unit that a name ends in, as ``_mm2_s``; '' where it carries none."""
    parts = name.split("_")
    tails = ("_" + "_".join(parts[start:]) for start in range(1, len(parts)))
    return next((tail for tail in tails if tail in SUFFIXES), "")


def shape_of(name: str) -> Shape | None:
    """Give the shape of a number by its name, None where the name says nothing of it."""
    if name in NAMES:
        return NAMES[name]
    if "margin" in name:
        return DIFFERENCE
    return SUFFIXES.get(ending(name))


def words_of(name: str) -> str:
    """Give a name as words, its unit left away: ``dew_point_c`` is 'dew point'."""
    return name.removesuffix(ending(name)).replace("_", " ").strip()
