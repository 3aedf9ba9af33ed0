"""Quantities in base units, written as a painter would type them: in the unit that is shortest."""

from __future__ import annotations

from functools import cache, lru_cache

from booth.units import Kind, System, read

#: Units a painter would use, the likeliest first: US, metric. Either list is followed by the other.
UNITS: dict[Kind, tuple[tuple[str, ...], tuple[str, ...]]] = {
    Kind.TIME: (("min", "h", "s", "d"), ("min", "h", "s", "d")),
    Kind.TEMPERATURE: (("F",), ("C",)),
    Kind.TEMPERATURE_DIFFERENCE: (("F",), ("C",)),
    Kind.PRESSURE: (("psi",), ("bar", "kPa")),
    Kind.THICKNESS: (("mil",), ("um",)),
    Kind.LENGTH: (("in",), ("mm",)),
    Kind.TIP: (("mm",), ("mm",)),
    Kind.DELIVERY: (("fl oz/min",), ("ml/min",)),
    Kind.DENSITY: (("lb/gal",), ("g/ml",)),
    Kind.VISCOSITY: (("mm2/s",), ("mm2/s",)),
    Kind.PERCENT: (("%",), ("%",)),
    Kind.VOLUME: (("fl oz", "gal"), ("ml", "l")),
    Kind.AIR_FLOW: (("cfm",), ("l/min", "m3/min")),
    Kind.EXHAUST: (("cfm",), ("m3/h",)),
    Kind.TURNS: (("turns",), ("turns",)),
    Kind.RECEIVER: (("gal",), ("l",)),
    Kind.ROOM: (("ft3",), ("m3",)),
    Kind.AREA: (("sq ft",), ("m2",)),
}

#: Digits that are written; a gauge or a cup gives three.
DIGITS = 5
#: A number is what the painter typed when it is that close to it: conversions are exact, floats
#: are not quite.
EXACT = 1e-9
#: What a unit costs in which the number is not exact: more than any number of characters.
INEXACT = 1000


def typed(value: float, kind: Kind, system: System, unit: str = "") -> str:
    """Give a quantity with its unit, as in ``2.5 mil``. unit: the one to use, whatever the system."""
    unit = unit or unit_for((value,), kind, system)
    return f"{number_in(unit, value, kind)} {unit}"


@lru_cache(maxsize=1024)
def unit_for(values: tuple[float, ...], kind: Kind, system: System) -> str:
    """Give the first unit in which every number is exact and short; else the first there is."""
    us, metric = UNITS[kind]
    own, other = (us, metric) if system == System.US else (metric, us)
    costs = {
        unit: sum(_cost(value, kind, unit) for value in values)
        for unit in dict.fromkeys(own + other)
    }
    if min(costs.values()) >= INEXACT:
        # Exact in none of them: it was measured, not typed.
        costs = {unit: costs[unit] for unit in own}
    return min(costs, key=costs.__getitem__)


def _cost(value: float, kind: Kind, unit: str) -> int:
    """How ill a number sits in a unit: its characters, and much more where it is not exact."""
    text = number_in(unit, value, kind)
    scale, offset = _pair(kind, unit)
    exact = abs(float(text) * scale + offset - value) <= EXACT * max(1.0, abs(value))
    # A painter says 24 h and 72 h, and days only from there on.
    return len(text.lstrip("-")) + (unit == "d") + (0 if exact else INEXACT)


def in_unit(value: float, kind: Kind, unit: str = "") -> str:
    """Give a quantity to three digits, in the unit named or the first metric one."""
    unit = unit or UNITS[kind][1][0]
    return f"{float(number_in(unit, value, kind)):.3g} {unit}"


def number_in(unit: str, value: float, kind: Kind) -> str:
    """Give the number of `value` [base unit] in `unit`, to five digits."""
    scale, offset = _pair(kind, unit)
    rounded = float(f"{(value - offset) / scale:.{DIGITS}g}")
    text = f"{rounded:.10f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@cache
def _pair(kind: Kind, unit: str) -> tuple[float, float]:
    """Give (scale, offset) with ``base = scale * number + offset``, as the reader has it."""
    zero = read(f"0 {unit}", kind, System.METRIC).value if kind is Kind.TEMPERATURE else 0.0
    return read(f"1 {unit}", kind, System.METRIC).value - zero, zero
