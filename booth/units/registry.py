"""The one unit registry (pint), asked late and once: how the units of the table convert.

A conversion is an affine pair, ``there = scale * here + offset``, kept once it is known. What is
shown on every screen is known from the start (each is exact by definition, and a test asks the
registry again), so that neither the first frame nor a list of profiles waits for pint.
"""

from __future__ import annotations

import threading
from functools import cache
from typing import TYPE_CHECKING, Any

from booth.units.kinds import Dimension as D
from booth.units.words import Unit, find

if TYPE_CHECKING:
    import pint

#: The unit of each dimension through which conversions run.
_REFERENCE = {
    D.VOLUME: "ml", D.MASS: "g", D.FLOW: "ml/min", D.TIME: "s", D.TEMPERATURE: "degc",
    D.DIFFERENCE: "delta_degc", D.PRESSURE: "kpa", D.LENGTH: "mm", D.SPEED: "m/s", D.AREA: "m2",
    D.DENSITY: "g/ml", D.KINEMATIC: "mm2/s", D.DYNAMIC: "cp", D.FRACTION: "", D.TURN: "turns",
    D.NUMBER: "",
}  # fmt: skip

# Exact by definition: yard and pound of 1959, the US gallon of 231 cubic inches, the standard
# acceleration of gravity (NIST SP 811 (2008) B.8; NIST Handbook 44 Appendix C).
_IN_MM = 25.4
_LB_G = 453.59237
_GRAVITY_M_S2 = 9.80665
_GAL_ML = 231 * _IN_MM**3 / 1000
_PSI_KPA = _LB_G * _GRAVITY_M_S2 / _IN_MM**2

#: (dimension, key): scale and offset to the reference of that dimension.
_KNOWN: dict[tuple[D, str], tuple[float, float]] = {
    (D.VOLUME, "ml"): (1.0, 0.0),
    (D.VOLUME, "l"): (1000.0, 0.0),
    (D.VOLUME, "m3"): (1e6, 0.0),
    (D.VOLUME, "fl oz"): (_GAL_ML / 128, 0.0),
    (D.VOLUME, "gal"): (_GAL_ML, 0.0),
    (D.VOLUME, "ft3"): ((12 * _IN_MM) ** 3 / 1000, 0.0),
    (D.MASS, "g"): (1.0, 0.0),
    (D.MASS, "kg"): (1000.0, 0.0),
    (D.MASS, "lb"): (_LB_G, 0.0),
    (D.MASS, "oz wt"): (_LB_G / 16, 0.0),
    (D.TIME, "s"): (1.0, 0.0),
    (D.TIME, "min"): (60.0, 0.0),
    (D.TIME, "h"): (3600.0, 0.0),
    (D.TIME, "d"): (86400.0, 0.0),
    (D.TEMPERATURE, "degC"): (1.0, 0.0),
    (D.TEMPERATURE, "degF"): (5 / 9, -160 / 9),
    (D.DIFFERENCE, "delta_degC"): (1.0, 0.0),
    (D.DIFFERENCE, "delta_degF"): (5 / 9, 0.0),
    (D.PRESSURE, "kPa"): (1.0, 0.0),
    (D.PRESSURE, "bar"): (100.0, 0.0),
    (D.PRESSURE, "psi"): (_PSI_KPA, 0.0),
    (D.LENGTH, "um"): (0.001, 0.0),
    (D.LENGTH, "mil"): (_IN_MM / 1000, 0.0),
    (D.LENGTH, "mm"): (1.0, 0.0),
    (D.LENGTH, "cm"): (10.0, 0.0),
    (D.LENGTH, "m"): (1000.0, 0.0),
    (D.LENGTH, "in"): (_IN_MM, 0.0),
    (D.LENGTH, "ft"): (12 * _IN_MM, 0.0),
    (D.AREA, "mm2"): (1e-6, 0.0),
    (D.AREA, "m2"): (1.0, 0.0),
    (D.AREA, "ft2"): ((12 * _IN_MM / 1000) ** 2, 0.0),
    (D.FRACTION, "%"): (0.01, 0.0),
    (D.FRACTION, ""): (1.0, 0.0),
    (D.TURN, "turns"): (1.0, 0.0),
    (D.NUMBER, ""): (1.0, 0.0),
}

_lock = threading.RLock()
_registry: pint.UnitRegistry[Any] | None = None


def _loaded() -> pint.UnitRegistry[Any]:
    """Give the registry, loaded on the first call. To be called with the lock held."""
    global _registry  # noqa: PLW0603 - one registry for the process, made late on purpose
    if _registry is None:
        import pint

        registry: pint.UnitRegistry[Any] = pint.UnitRegistry()
        # The registry's own ``mil`` is an angle; the shop's is a thousandth of an inch.
        registry.define("shop_mil = 0.001 * inch")
        _registry = registry
    return _registry


def _ask(unit: Unit) -> tuple[float, float]:
    """Ask the registry for scale and offset from `unit` to the reference of its dimension."""
    with _lock:
        registry = _loaded()
        target = registry.Unit(_reference(unit.dimension, registry_name=True))
        zero = float(registry.Quantity(0.0, unit.registry).to(target).magnitude)
        one = float(registry.Quantity(1.0, unit.registry).to(target).magnitude)
    return one - zero, zero


def _reference(dimension: D, *, registry_name: bool = False) -> str:
    key = _REFERENCE[dimension]
    if not registry_name:
        return key
    unit = find(key, dimension)
    assert unit is not None, key
    if unit.over is None:
        return unit.registry
    return f"{unit.over[0].registry} / ({unit.over[1].registry})"


@cache
def _to_reference(unit: Unit) -> tuple[float, float]:
    known = _KNOWN.get((unit.dimension, unit.key))
    if known is not None:
        return known
    if unit.over is None:
        return _ask(unit)
    return _quotient(unit) / _quotient(_known_unit(_reference(unit.dimension), unit.dimension)), 0.0


def _quotient(unit: Unit) -> float:
    assert unit.over is not None, unit.key
    return _to_reference(unit.over[0])[0] / _to_reference(unit.over[1])[0]


def _known_unit(word: str, dimension: D) -> Unit:
    unit = find(word, dimension)
    assert unit is not None, word
    return unit


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


def unit_named(key: str, dimension: D) -> Unit:
    """Give the unit that this program itself calls `key`; KeyError when there is none."""
    unit = find(key.lower(), dimension)
    if unit is None:
        raise KeyError(key)
    return unit
