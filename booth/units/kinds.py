"""A quantity, and what kinds the program knows: base unit, dimension, bounds, examples."""

from __future__ import annotations

import enum

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


class Kind(enum.StrEnum):
    """What a field or a figure holds. Two kinds of one dimension differ in their shown units."""

    VOLUME = "volume"
    MASS = "mass"
    DELIVERY = "delivery"
    TIME = "time"
    TEMPERATURE = "temperature"
    TEMPERATURE_DIFFERENCE = "temperature difference"
    PRESSURE = "pressure"
    THICKNESS = "thickness"
    LENGTH = "length"
    TIP = "tip"
    PART_LENGTH = "part length"
    SPEED = "speed"
    AREA = "area"
    DENSITY = "density"
    VISCOSITY = "viscosity"
    PERCENT = "percent"
    AIR_FLOW = "air flow"
    RECEIVER = "receiver"
    ROOM = "room"
    TURNS = "turns"
    COUNT = "count"
    RATIO = "ratio"

    @property
    def base(self) -> str:
        """The unit in which values of this kind are kept, plain ASCII: ``ml/min``."""
        return ABOUT[self].base

    @property
    def dimension(self) -> Dimension:
        return ABOUT[self].dimension


class About(msgspec.Struct, frozen=True):
    """Facts of one kind.

    low, high: bounds [base unit] wide enough for any shop, narrow enough to catch a slip of the
    unit; examples: how an entry looks, US first.
    """

    base: str
    dimension: Dimension
    label: str
    low: float
    high: float
    examples: tuple[str, str]


#: Absolute zero [degC], by the definition of the kelvin scale (SI Brochure, 9th ed., 2.3.1).
ABSOLUTE_ZERO_C = -273.15

_D = Dimension

ABOUT: dict[Kind, About] = {
    Kind.VOLUME: About("ml", _D.VOLUME, "a volume", 0, 1e7, ("6.5 fl oz", "180 ml")),
    Kind.MASS: About("g", _D.MASS, "a weight", 0, 1e7, ("8 oz", "200 g")),
    Kind.DELIVERY: About("ml/min", _D.FLOW, "a delivery", 0, 1e5, ("6 fl oz/min", "180 ml/min")),
    Kind.TIME: About("s", _D.TIME, "a time", 0, 366 * 86400, ("21.5 s", "1:30")),
    Kind.TEMPERATURE: About(
        "degC", _D.TEMPERATURE, "a temperature", ABSOLUTE_ZERO_C, 1000, ("72 F", "22 C")
    ),
    Kind.TEMPERATURE_DIFFERENCE: About(
        "delta_degC", _D.DIFFERENCE, "a temperature difference", -1000, 1000, ("5 F", "3 C")
    ),
    Kind.PRESSURE: About("kPa", _D.PRESSURE, "a pressure", 0, 1e5, ("28 psi", "2 bar")),
    Kind.THICKNESS: About("um", _D.LENGTH, "a film thickness", 0, 1e5, ("2.5 mil", "60 um")),
    Kind.LENGTH: About("mm", _D.LENGTH, "a length", 0, 1e5, ("6 in", "150 mm")),
    Kind.TIP: About("mm", _D.LENGTH, "a tip size", 0, 100, ("1.4 mm", "1.8 mm")),
    Kind.PART_LENGTH: About("m", _D.LENGTH, "a length", 0, 1e4, ("8 ft", "2.4 m")),
    Kind.SPEED: About("m/s", _D.SPEED, "a speed", 0, 1000, ("80 ft/min", "0.4 m/s")),
    Kind.AREA: About("m2", _D.AREA, "an area", 0, 1e6, ("32 sq ft", "3 m2")),
    Kind.DENSITY: About("g/ml", _D.DENSITY, "a density", 0.05, 25, ("8.3 lb/gal", "1.05 g/ml")),
    Kind.VISCOSITY: About(
        "mm2/s", _D.KINEMATIC, "a kinematic viscosity", 0, 1e7, ("95 cSt", "95 mm2/s")
    ),
    Kind.PERCENT: About("%", _D.FRACTION, "a percentage", 0, 1000, ("50 %", "12.5 %")),
    Kind.AIR_FLOW: About("l/min", _D.FLOW, "an air flow", 0, 1e7, ("12 cfm", "340 l/min")),
    Kind.RECEIVER: About("l", _D.VOLUME, "a receiver's volume", 0, 1e5, ("60 gal", "200 l")),
    Kind.ROOM: About("m3", _D.VOLUME, "a room's volume", 0, 1e6, ("3500 ft3", "100 m3")),
    Kind.TURNS: About("turns", _D.TURN, "turns", 0, 100, ("1 1/4 turns", "1.25")),
    Kind.COUNT: About("", _D.NUMBER, "a whole number", 0, 1e6, ("3", "12")),
    Kind.RATIO: About("", _D.FRACTION, "a ratio", 0, 1e6, ("4:1", "0.25")),
}
