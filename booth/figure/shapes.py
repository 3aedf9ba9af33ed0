"""The unit in which the trade gives a number, and how that number is read and shown.

A shape joins a unit of ``booth.trade`` to a kind of ``booth.units``; where no kind fits (a spreading
rate, say) it carries its own two units. Which shape a number has follows from its name.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from booth.units import EntryError, Kind, System, read, show, shown_unit, shown_value

#: Exact by definition (NIST SP 811 (2008) B.8): foot, and US gallon of 231 cubic inches.
FT_M = 0.3048
GAL_L = 231 * 0.0254**3 * 1000
MINUTES_PER_HOUR = 60
L_PER_M3 = 1000
#: Digits of a number that has no unit, where the shape names no places.
DIGITS = 5


@dataclass(frozen=True, slots=True)
class Own:
    """A unit that ``booth.units`` does not have: its name, how many make one of the trade's."""

    unit: str
    per: float = 1.0
    places: int | None = None

    def text(self, value: float) -> str:
        """Give `value` [trade unit] in this unit."""
        number = value * self.per
        told = f"{number:.{DIGITS}g}" if self.places is None else f"{number:,.{self.places}f}"
        if self.places is None and abs(number) >= 10**DIGITS:
            told = f"{number:,.0f}"
        return f"{told} {self.unit}".rstrip()


#: Signs of units as a plain keyboard has them.
_KEYS = str.maketrans({"°": "", "²": "2", "³": "3", "µ": "u"})


def _plain(text: str) -> str:
    return text.strip().lower().translate(_KEYS)


@dataclass(frozen=True, slots=True)
class Shape:
    """How one sort of number is read and shown.

    unit: the trade's unit; kind: what an entry is read as; scale: trade's number to the kind's base
    unit; places: decimals shown, US and metric; own: units of its own, US and metric.
    """

    unit: str
    kind: Kind | None = None
    scale: float = 1.0
    places: tuple[int, int] | None = None
    own: tuple[Own, Own] | None = None

    def read(self, text: str, system: System) -> float:
        """Read an entry as a number in the trade's unit. Raises EntryError."""
        if self.kind is not None:
            return read(text, self.kind, system).value / self.scale
        typed = _plain(text)
        for own in self._owns(system):
            unit = _plain(own.unit)
            if unit and typed.endswith(unit):
                return read(typed.removesuffix(unit), Kind.RATIO, system).value / own.per
        try:
            return read(text, Kind.RATIO, system).value / self._owns(system)[0].per
        except EntryError as fault:
            raise EntryError(f"{fault} Its unit here is {self.bare(system)}.") from None

    def show(self, value: float | None, system: System) -> str:
        """Give a number in the trade's unit as it is read."""
        if value is None:
            return "none"
        if not math.isfinite(value):
            return show(value, Kind.RATIO, system)
        if self.own is not None or self.kind is None:
            return self._owns(system)[0].text(value)
        places = None if self.places is None else self.places[system is System.METRIC]
        return show(value * self.scale, self.kind, system, places=places)

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
TIME = Shape("s", Kind.TIME)
#: Efflux times and catches are told in seconds, not in minutes.
SECONDS = Shape("s", Kind.TIME, places=(1, 1))
TEMPERATURE = Shape("degC", Kind.TEMPERATURE, places=(1, 1))
DIFFERENCE = Shape("K", Kind.TEMPERATURE_DIFFERENCE, places=(2, 2))
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
SHARE = Shape("1", Kind.PERCENT, 100.0)
PERCENT = Shape("%", Kind.PERCENT)
AIR_FLOW = Shape("l/min", Kind.AIR_FLOW)
RECEIVER = Shape("l", Kind.ROOM, 0.001, own=(Own("gal", 1 / GAL_L, 1), Own("l", 1.0, 0)))
ROOM = Shape("m3", Kind.ROOM)
#: Free air, by its volume.
FREE_AIR = Shape("l", Kind.ROOM, 0.001, own=(Own("ft³", 0.001 / FT_M**3, 2), Own("l", 1.0, 1)))
TURNS = Shape("turns", Kind.TURNS)
COUNT = Shape("1", Kind.COUNT)
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
WATER_DENSITY = Shape("kg/m3", own=(Own("kg/m³", 1.0, 3), Own("kg/m³", 1.0, 3)))
MOLAR_MASS = Shape("g/mol", own=(Own("g/mol", 1.0, 2), Own("g/mol", 1.0, 2)))
FAN_WIDTHS = Shape("fan widths", own=(Own("fan widths"), Own("fan widths")))

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
    **dict.fromkeys(("cv", "doubt", "duty", "high", "likely", "low", "pot_life_used"), SHARE),
    **dict.fromkeys(("share", "share_of_lel", "strength", "trigger_share", "volatile"), SHARE),
    "rated_duty": SHARE,
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
