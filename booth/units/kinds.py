"""A quantity, and what kinds the program knows: base unit, dimension, bounds, examples."""

from __future__ import annotations

import enum
from typing import Any, Self

import msgspec


class System(enum.StrEnum):
    """The units a painter prefers to see. Entries in either are always understood."""

    US = "us"
    METRIC = "metric"

    @property
    def other(self) -> System:
        return System.METRIC if self is System.US else System.US


class Quantity(msgspec.Struct, frozen=True):
    """A quantity as it was entered.

    value: the number in the base unit; unit: that unit (``ml/min``); typed: the painter's text.
    """

    value: float
    unit: str
    typed: str


class EntryError(ValueError):
    """An entry that is not understood; the message is a sentence for the painter.

    measures: what the unit that was typed does measure, where it is one of another kind.
    """

    measures: tuple[Dimension, ...] = ()


class Dimension(enum.StrEnum):
    """What a unit measures; the value is how a sentence calls it."""

    VOLUME = "a volume"
    MASS = "a weight"
    FLOW = "a flow (volume per time)"
    TIME = "a time"
    TEMPERATURE = "a temperature"
    DIFFERENCE = "a temperature difference"
    PRESSURE = "a pressure"
    LENGTH = "a length"
    SPEED = "a speed"
    AREA = "an area"
    DENSITY = "a density"
    KINEMATIC = "a kinematic viscosity"
    DYNAMIC = "a dynamic viscosity"
    FRACTION = "a share"
    TURN = "an angle"
    NUMBER = "a number"


#: Absolute zero [degC], by the definition of the kelvin scale (SI Brochure, 9th ed., 2.3.1).
ABSOLUTE_ZERO_C = -273.15

_D = Dimension


class Kind(enum.StrEnum):
    """What a field or a figure holds. Two kinds of one dimension differ in their shown units.

    base: the unit in which values are kept, plain ASCII; label: how a sentence calls one; low, high:
    bounds [base unit] wide enough for any shop, narrow enough to catch a slip of the unit; examples:
    how an entry looks, US first.
    """

    base: str
    dimension: Dimension
    label: str
    low: float
    high: float
    examples: tuple[str, ...]

    def __new__(cls, name: str, *about: Any) -> Self:
        kind = str.__new__(cls, name)
        kind._value_ = name
        kind.base, kind.dimension, kind.low, kind.high, kind.label, *examples = about
        kind.examples = tuple(examples)
        return kind

    VOLUME = "volume", "ml", _D.VOLUME, 0, 1e7, "a volume", "6.5 fl oz", "180 ml"
    MASS = "mass", "g", _D.MASS, 0, 1e7, "a weight", "8 oz", "200 g"
    DELIVERY = "delivery", "ml/min", _D.FLOW, 0, 1e5, "a delivery", "6 fl oz/min", "180 ml/min"
    TIME = "time", "s", _D.TIME, 0, 366 * 86400, "a time", "21.5 s", "1:30"
    TEMPERATURE = (
        "temperature",
        "degC",
        _D.TEMPERATURE,
        ABSOLUTE_ZERO_C,
        1000,
        "a temperature",
        "72 F",
        "22 C",
    )
    TEMPERATURE_DIFFERENCE = (
        "temperature difference",
        "delta_degC",
        _D.DIFFERENCE,
        -1000,
        1000,
        "a temperature difference",
        "5 F",
        "3 C",
    )
    PRESSURE = "pressure", "kPa", _D.PRESSURE, 0, 1e5, "a pressure", "28 psi", "2 bar"
    THICKNESS = "thickness", "um", _D.LENGTH, 0, 1e5, "a film thickness", "2.5 mil", "60 um"
    LENGTH = "length", "mm", _D.LENGTH, 0, 1e5, "a length", "6 in", "150 mm"
    TIP = "tip", "mm", _D.LENGTH, 0, 100, "a tip size", "1.4 mm", "1.8 mm"
    PART_LENGTH = "part length", "m", _D.LENGTH, 0, 1e4, "a length", "8 ft", "2.4 m"
    SPEED = "speed", "m/s", _D.SPEED, 0, 1000, "a speed", "80 ft/min", "0.4 m/s"
    AREA = "area", "m2", _D.AREA, 0, 1e6, "an area", "32 sq ft", "3 m2"
    DENSITY = "density", "g/ml", _D.DENSITY, 0.05, 25, "a density", "8.3 lb/gal", "1.05 g/ml"
    VISCOSITY = (
        "viscosity",
        "mm2/s",
        _D.KINEMATIC,
        0,
        1e7,
        "a kinematic viscosity",
        "95 mm2/s",
        "95 mm2/s",
    )
    PERCENT = "percent", "%", _D.FRACTION, 0, 1000, "a percentage", "50 %", "12.5 %"
    AIR_FLOW = "air flow", "l/min", _D.FLOW, 0, 1e7, "an air flow", "12 cfm", "340 l/min"
    EXHAUST = "exhaust", "m3/h", _D.FLOW, 0, 1e6, "an exhaust", "1200 cfm", "2000 m3/h"
    RECEIVER = "receiver", "l", _D.VOLUME, 0, 1e5, "a receiver's volume", "60 gal", "200 l"
    ROOM = "room", "m3", _D.VOLUME, 0, 1e6, "a room's volume", "3500 ft3", "100 m3"
    TURNS = "turns", "turns", _D.TURN, 0, 100, "turns", "1 1/4 turns", "1.25"
    COUNT = "count", "", _D.NUMBER, 0, 1e6, "a whole number", "3", "12"
    RATIO = "ratio", "", _D.FRACTION, 0, 1e6, "a ratio", "4:1", "0.25"
