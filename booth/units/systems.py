"""Which system a unit is of: a painter who types ml is answered in ml."""

from __future__ import annotations

from booth.units.kinds import Dimension, System
from booth.units.words import Unit

_US = {
    *("fl oz", "pt", "qt", "gal", "in3", "ft3", "yd3", "oz wt", "lb", "degF", "delta_degF", "psi"),
    *("mil", "in", "ft", "yd", "in2", "ft2", "yd2"),
}
#: Of both: a paint scale reads grams in either, and flow cups are converted to mm2/s.
_BOTH = frozenset(
    {Dimension.TIME, Dimension.FRACTION, Dimension.TURN, Dimension.NUMBER, Dimension.KINEMATIC}
)


def system_of(unit: Unit) -> System | None:
    """Give the system of `unit`, None where it is of both: seconds, grams, per cent, mm2/s."""
    if unit.dimension in _BOTH or unit.key == "g":
        return None
    if unit.over is not None:
        found = {system_of(part) for part in unit.over} - {None}
        return System.US if System.US in found else System.METRIC if found else None
    return System.US if unit.key in _US else System.METRIC
