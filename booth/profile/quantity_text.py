"""Quantities in base units, written as a painter would type them: in the unit that is shortest."""

from __future__ import annotations

from functools import cache

from booth.profile.model import Range
from booth.units import Kind, System, read

__all__ = ["typed", "typed_range"]

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
}

#: Digits that are written; a gauge or a cup gives three.
DIGITS = 5
#: A number is what the painter typed when it is that close to it: conversions are exact, floats
#: are not quite.
EXACT = 1e-9
#: What a unit costs in which the number is not exact: more than any number of characters.
INEXACT = 1000


def typed(value: float | None, kind: Kind, system: System, only: str | None = None) -> str | None:
    """Give a quantity with its unit; None stays None. only: the one unit to use."""
    if value is None:
        return None
    unit = _unit_for((value,), kind, system, only)
    return f"{_number(value, kind, unit)} {unit}"


def typed_range(
    both: Range | None,
    kind: Kind,
    system: System,
    only: str | None = None,
    single: bool = True,
) -> str | None:
    """Give a range with its unit. single: whether one value may stand for a range of one."""
    if both is None:
        return None
    ends = [end for end in (both.low, both.high) if end is not None]
    unit = _unit_for(tuple(ends), kind, system, only)
    texts = [_number(end, kind, unit) for end in ends]
    if both.low is None:
        return f"at most {texts[0]} {unit}"
    if both.high is None:
        return f"at least {texts[0]} {unit}"
    if single and both.low == both.high:
        return f"{texts[0]} {unit}"
    return f"{texts[0]} to {texts[1]} {unit}"


def _unit_for(values: tuple[float, ...], kind: Kind, system: System, only: str | None) -> str:
    """The first unit in which every number is exact and short; else the first there is."""
    if only is not None:
        return only
    us, metric = UNITS[kind]
    first, second = (us, metric) if system == System.US else (metric, us)
    units = tuple(dict.fromkeys(first + second))
    ranked = [(sum(_cost(value, kind, unit) for value in values), unit) for unit in units]
    least = min(cost for cost, _ in ranked)
    if least >= INEXACT:
        # Exact in none of them: it was measured, not typed.
        ranked = ranked[: len(first)]
        least = min(cost for cost, _ in ranked)
    return next(unit for cost, unit in ranked if cost == least)


def _cost(value: float, kind: Kind, unit: str) -> int:
    """How ill a number sits in a unit: its characters, and much more where it is not exact."""
    text = _number(value, kind, unit)
    scale, offset = _pair(kind, unit)
    exact = abs(float(text) * scale + offset - value) <= EXACT * max(1.0, abs(value))
    # A painter says 24 h and 72 h, and days only from there on.
    return len(text.lstrip("-")) + (unit == "d") + (0 if exact else INEXACT)


def _number(value: float, kind: Kind, unit: str) -> str:
    scale, offset = _pair(kind, unit)
    rounded = float(f"{(value - offset) / scale:.{DIGITS}g}")
    text = f"{rounded:.10f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@cache
def _pair(kind: Kind, unit: str) -> tuple[float, float]:
    """Give (scale, offset) with ``base = scale * number + offset``, as the reader has it."""
    zero = read(f"0 {unit}", kind, System.METRIC).value if kind is Kind.TEMPERATURE else 0.0
    return read(f"1 {unit}", kind, System.METRIC).value - zero, zero
