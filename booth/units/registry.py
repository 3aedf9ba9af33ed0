"""The one unit registry (pint), asked late and once: how the units of the table convert.

What is shown on every screen is known from the start (each is exact by definition, and a test asks
the registry again), so that neither the first frame nor a list of profiles waits for pint.
"""

from __future__ import annotations

import threading
from functools import cache
from typing import TYPE_CHECKING, Any

from booth.units.kinds import Dimension as D
from booth.units.words import Unit, first_of

if TYPE_CHECKING:
    import pint

# Exact by definition: yard and pound of 1959, the US gallon of 231 cubic inches, the standard
# acceleration of gravity (NIST SP 811 (2008) B.8; NIST Handbook 44 Appendix C).
_IN = 25.4
_FT = 12 * _IN
_LB = 453.59237
_GRAVITY_M_S2 = 9.80665
_GAL = 231 * _IN**3 / 1000
_PSI = _LB * _GRAVITY_M_S2 / _IN**2

#: How many of the first of its dimension a unit is, by its key.
_KNOWN: dict[D, dict[str, float]] = {
    D.VOLUME: {"ml": 1, "l": 1e3, "m3": 1e6, "fl oz": _GAL / 128, "gal": _GAL, "ft3": _FT**3 / 1e3},
    D.MASS: {"g": 1, "kg": 1000, "lb": _LB, "oz wt": _LB / 16},
    D.TIME: {"s": 1, "min": 60, "h": 3600, "d": 86400},
    D.TEMPERATURE: {"degC": 1, "degF": 5 / 9},
    D.DIFFERENCE: {"delta_degC": 1, "delta_degF": 5 / 9},
    D.PRESSURE: {"kPa": 1, "bar": 100, "psi": _PSI},
    D.LENGTH: {"um": 1e-3, "mil": _IN / 1e3, "mm": 1, "cm": 10, "m": 1e3, "in": _IN, "ft": _FT},
    D.AREA: {"mm2": 1e-6, "m2": 1, "ft2": (_FT / 1000) ** 2},
    D.FRACTION: {"%": 0.01, "": 1},
    D.TURN: {"turns": 1},
    D.NUMBER: {"": 1},
}
_ZERO_AT = {"degF": -160 / 9}

_lock = threading.Lock()


@cache
def _registry() -> pint.UnitRegistry[Any]:
    import pint

    registry: pint.UnitRegistry[Any] = pint.UnitRegistry()
    # The registry's own ``mil`` is an angle; the shop's is a thousandth of an inch.
    registry.define("shop_mil = 0.001 * inch")
    return registry


def _ask(unit: Unit) -> tuple[float, float]:
    """Ask the registry for scale and offset from `unit` to the first of its dimension."""
    with _lock:
        registry = _registry()
        target = registry.Unit(first_of(unit.dimension).registry)
        zero = float(registry.Quantity(0.0, unit.registry).to(target).magnitude)
        one = float(registry.Quantity(1.0, unit.registry).to(target).magnitude)
    return one - zero, zero


@cache
def _to_reference(unit: Unit) -> tuple[float, float]:
    if unit.over is not None:
        above, below = unit.over
        return _to_reference(above)[0] / _to_reference(below)[0], 0.0
    scale = _KNOWN.get(unit.dimension, {}).get(unit.key)
    return _ask(unit) if scale is None else (scale, _ZERO_AT.get(unit.key, 0.0))


@cache
def pair(here: Unit, there: Unit) -> tuple[float, float]:
    """Give (scale, offset) with ``there = scale * here + offset``, for two units of a dimension."""
    if here.dimension is not there.dimension:
        raise ValueError(f"{here.key} and {there.key} do not measure the same.")
    if here.key == there.key:
        return 1.0, 0.0
    scale_here, offset_here = _to_reference(here)
    scale_there, offset_there = _to_reference(there)
    return scale_here / scale_there, (offset_here - offset_there) / scale_there


def convert(value: float, here: Unit, there: Unit) -> float:
    """Give `value` in `here` as a value in `there`."""
    scale, offset = pair(here, there)
    return scale * value + offset
