"""Libraries that figures are held against, each loaded once however many tests ask."""

from __future__ import annotations

import pint

#: Making a registry takes half a second.
UNITS = pint.UnitRegistry()


def props_si(*state: str | float) -> float:
    """Give a property of a fluid by CoolProp, which takes seconds to load: not before it is asked."""
    from CoolProp.CoolProp import PropsSI

    return float(PropsSI(*state))


def props_ha(*state: str | float) -> float:
    """Give a property of humid air by CoolProp, loaded as above."""
    from CoolProp.CoolProp import HAPropsSI

    return float(HAPropsSI(*state))
