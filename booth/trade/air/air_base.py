"""What 'standard' and 'free' air mean: the same mass of air is a different volume to each.

A plate that says cubic feet or litres a minute says nothing until it says of which air.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import BadInput, require

#: The zero of the Celsius scale [K]: SI Brochure, 9th ed., 2.3.1.
ZERO_C_K = 273.15
#: Air a compressor takes in [degC]: beyond, a temperature was mistyped.
AIR_RANGE_C = (-50.0, 60.0)


@dataclass(frozen=True, slots=True)
class AirBase:
    """The air a volume is counted in: absolute pressure [kPa], temperature [degC], source."""

    name: str
    kpa: float
    air_c: float
    source: str


#: Dry air in each; water vapour, which some of the standards name, is left out (up to 1 %).
AIR_BASES = (
    AirBase(
        "scf 60 F",
        101.325,
        (60 - 32) / 1.8,
        "14.696 psia, 60 F: US gas industry (from memory, not checked)",
    ),
    AirBase(
        "scf 68 F", 101.325, 20.0, "14.696 psia, 68 F: ASME, older (common practice, no source)"
    ),
    AirBase(
        "scf 70 F",
        101.325,
        (70 - 32) / 1.8,
        "14.696 psia, 70 F: US fan practice (common practice, no source)",
    ),
    AirBase(
        "scf 14.5 psia",
        100.0,
        20.0,
        "14.5 psia, 68 F: US compressed-air practice (from memory, not checked)",
    ),
    AirBase(
        "ANR",
        100.0,
        20.0,
        "ISO 8778:2003, standard reference atmosphere (from memory, not checked)",
    ),
    AirBase("normal", 101.325, 0.0, "DIN 1343, normal conditions"),
    AirBase("standard 15 C", 101.325, 15.0, "ISO 13443, also ISO 2533 at sea level"),
)


def air_base(name: str) -> AirBase:
    """Give one of the named bases of air.

    Args:
        name: its name, capitals or not.

    Returns: AirBase: absolute pressure [kPa] and temperature [degC].
    Range: the names in AIR_BASES; any other condition can be made as an AirBase of its own.
    Source: each base names its own.

    >>> air_base("anr").kpa
    100.0
    """
    for base in AIR_BASES:
        if base.name.casefold() == name.strip().casefold():
            return base
    known = ", ".join(base.name for base in AIR_BASES)
    raise BadInput(f"No air is called {name!r}; known are {known}.")


def convert_flow_l_min(flow_l_min: float, counted_as: AirBase, wanted_as: AirBase) -> float:
    """Give the same flow of air counted at another pressure and temperature (another base).

    Args:
        flow_l_min: flow as counted [l/min], 0 or more.
        counted_as: the base it is counted in.
        wanted_as: the base it is wanted in; for free air, one of the room's own air.

    Returns: flow [l/min].
    Range: dry air as an ideal gas, within 0.1 % near room conditions; moist air up to 1 % more.
    Source: ideal gas law.

    >>> round(convert_flow_l_min(100.0, air_base("scf 60 F"), air_base("scf 14.5 psia")), 1)
    102.9
    """
    require("The flow", flow_l_min, 0.0, unit="l/min")
    for base in (counted_as, wanted_as):
        require(f"The pressure of {base.name}", base.kpa, above=0.0, unit="kPa")
        require(f"The temperature of {base.name}", base.air_c, *AIR_RANGE_C, unit="C")
    hotter = (wanted_as.air_c + ZERO_C_K) / (counted_as.air_c + ZERO_C_K)
    return flow_l_min * counted_as.kpa / wanted_as.kpa * hotter
