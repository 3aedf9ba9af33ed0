"""Which shape a number has: it follows from its name, or from the unit a result names."""

from __future__ import annotations

from booth.figure.shape import Own, Shape
from booth.units import Kind

#: Exact by definition (NIST SP 811 (2008) B.8): foot, and US gallon of 231 cubic inches.
FT_M = 0.3048
GAL_L = 231 * 0.0254**3 * 1000
MINUTES_PER_HOUR = 60
L_PER_M3 = 1000

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
SPREADING = Shape("m2/l", limit=1e5, own=(Own("ft²/gal", GAL_L / FT_M**2, 1), Own("m²/l", 1.0, 2)))
#: Litres to the litre, cubic feet to the gallon.
PER_LIQUID = Shape(
    "l/l", limit=1e7, own=(Own("ft³/gal", GAL_L / FT_M**3 / L_PER_M3, 1), Own("l/l", 1.0, 0))
)
VAPOUR_PRESSURE = Shape("Pa", limit=1e8, own=(Own("Pa", 1.0, 0), Own("Pa", 1.0, 0)))
WATER_DENSITY = Shape("kg/m3", fixed=True, own=(Own("kg/m³", 1.0, 3),) * 2)
MOLAR_MASS = Shape("g/mol", own=(Own("g/mol", 1.0, 2), Own("g/mol", 1.0, 2)))
VOC = Shape("g/l", own=(Own("lb/gal", GAL_L / 453.59237, 2), Own("g/l", 1.0, 0)))
VAPOUR_WEIGHT = Shape("mg/m3", own=(Own("mg/m³"), Own("mg/m³")))
VAPOUR_SHARE = Shape("ppm", own=(Own("ppm"), Own("ppm")))
FAN_WIDTHS = Shape("fan widths", own=(Own("fan widths"), Own("fan widths")))


_FLOWS = (DELIVERY, AIR_FLOW, EXHAUST, SPEED, AIR_SPEED, VISCOSITY, SPREADING)
_STUFF = (DENSITY, MASS, MOLAR_MASS, WATER_DENSITY, VOLUME, ROOM, PRESSURE, VAPOUR_PRESSURE)
_IN_AIR = (VOC, VAPOUR_WEIGHT, VAPOUR_SHARE)
_EXTENTS = (FILM, LENGTH, AREA, TIME, DIFFERENCE)
#: The unit at the end of a name, as DEVELOPERS.md lists them.
SUFFIXES: dict[str, Shape] = {
    **{
        f"_{each.unit.lower().replace('/', '_')}": each
        for each in (*_FLOWS, RECEIVER, *_STUFF, *_IN_AIR, *_EXTENTS)
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
    return spelt(name.removesuffix(ending(name)).replace("_", " ").strip())


def spelt(words: str) -> str:
    """The words of a name of the code as the trade writes them."""
    return words.replace("flash ", "flash-")
