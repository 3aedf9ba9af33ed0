"""Humid air: its dew point, the margin of the part above it, its drying power."""

from __future__ import annotations

import math

from booth.trade.result import ROUNDING, BadInput, Said, require

#: Magnus form over water, ``610.94 Pa exp(17.625 t / (t + 243.04 C))``: Alduchov and Eskridge,
#: Improved Magnus form approximation of saturation vapor pressure, J. Appl. Meteor. 35 (1996)
#: 601-609, equation 21; within 0.4 % from -40 to 50 C.
MAGNUS_PA = 610.94
MAGNUS_A = 17.625
MAGNUS_B_C = 243.04
MAGNUS_RANGE_C = (-40.0, 50.0)

#: Standard atmosphere 23/50 in which coatings are tested: ISO 3270 (from memory, not checked),
#: also ISO 291.
REFERENCE_AIR_C = 23.0
REFERENCE_HUMIDITY_PERCENT = 50.0


def saturation_pressure_pa(air_c: float) -> float:
    """Give the pressure of water vapour in saturated air, over liquid water.

    Args:
        air_c: temperature [degC], -40 to 50.

    Returns: saturation pressure [Pa]: ``e = 610.94 exp(17.625 t / (t + 243.04))``.
    Range: -40 to 50 C, within 0.4 % there. Below 0 C it holds over supercooled water, not over ice.
    Source: Alduchov and Eskridge 1996, J. Appl. Meteor. 35, 601-609, equation 21.

    >>> round(saturation_pressure_pa(20.0))  # 2339 Pa by IAPWS
    2333
    """
    require("The temperature", air_c, *MAGNUS_RANGE_C, unit="C")
    return MAGNUS_PA * math.exp(MAGNUS_A * air_c / (air_c + MAGNUS_B_C))


def dew_point_c(air_c: float, humidity_percent: float) -> float:
    """Give the temperature at which water condenses out of this air.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], above 0 to 100.

    Returns: dew point [degC]: ``g = ln(RH) + 17.625 t / (t + 243.04); dew point = 243.04 g /
        (17.625 - g)``.
    Range: air of -40 to 50 C, and dew points down to -40 C. Below 0 C this is the dew point over
        supercooled water; frost forms a little warmer.
    Source: the Magnus form with the constants of Alduchov and Eskridge 1996, solved for the
        temperature.

    >>> round(dew_point_c(25.0, 60.0), 2)
    16.7
    """
    require("The air temperature", air_c, *MAGNUS_RANGE_C, unit="C")
    require("The humidity", humidity_percent, above=0.0, high=100.0, unit="%")
    grown = math.log(humidity_percent / 100.0) + MAGNUS_A * air_c / (air_c + MAGNUS_B_C)
    lowest_c = MAGNUS_RANGE_C[0]
    lowest = MAGNUS_A * lowest_c / (lowest_c + MAGNUS_B_C)
    if grown < lowest * (1.0 + ROUNDING):  # further down the form has a pole, and hot dew points
        raise BadInput(
            f"This air is so dry that its dew point lies below {Said(lowest_c, 'C')}, where the "
            "formula ends: look at the humidity again."
        )
    return MAGNUS_B_C * grown / (MAGNUS_A - grown)


def dew_margin_c(air_c: float, humidity_percent: float, part_c: float) -> float:
    """Give how far the part lies above the dew point of the air.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], above 0 to 100.
        part_c: temperature of the part itself, by a surface thermometer [degC].

    Returns: margin [K]: ``part - dew point by the Magnus form``; below 0 water condenses on the
        part.
    Range: as for dew_point_c.
    Source: definition, as used with ISO 8502-4 and MIL-HDBK-1110 (now UFC 3-190-06) 9.6.6.

    >>> round(dew_margin_c(20.0, 85.0, 20.0), 2)
    2.6
    """
    require("The part's temperature", part_c, unit="C")
    return part_c - dew_point_c(air_c, humidity_percent)


def drying_power_pa(air_c: float, humidity_percent: float) -> float:
    """Give how much more water vapour this air could take: its vapour pressure deficit.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], 0 to 100.

    Returns: vapour pressure deficit [Pa]: ``e (1 - RH)``; 0 in saturated air.
    Range: as for saturation_pressure_pa. It is what drives water out of a film of the same
        temperature; moving air, film thickness and slow co-solvents count as well.
    Source: Dalton's law of evaporation; vapour pressure deficit, ASHRAE Handbook Fundamentals,
        Psychrometrics (from memory, not checked).

    >>> round(drying_power_pa(23.0, 50.0))
    1402
    """
    require("The humidity", humidity_percent, 0.0, 100.0, unit="%")
    return saturation_pressure_pa(air_c) * (1.0 - humidity_percent / 100.0)


def relative_drying_power(
    air_c: float,
    humidity_percent: float,
    reference_c: float = REFERENCE_AIR_C,
    reference_percent: float = REFERENCE_HUMIDITY_PERCENT,
) -> float:
    """Give the drying power of this air as a share of that of the reference air.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], 0 to 100.
        reference_c, reference_percent: the air the data sheet means [degC, %]; 23 C and 50 %
            unless given; a humidity of 0 or more, below 100.

    Returns: share [1]; 1 in the reference air, 0 in saturated air.
    Range: as for drying_power_pa; for waterborne products only.
    Source: ratio of two vapour pressure deficits; reference air 23/50, ISO 3270 (from memory,
        not checked).

    >>> round(relative_drying_power(15.0, 75.0), 2)  # a damp autumn garage
    0.3
    """
    require("The reference humidity", reference_percent, 0.0, below=100.0, unit="%")
    reference = drying_power_pa(reference_c, reference_percent)
    return drying_power_pa(air_c, humidity_percent) / reference
