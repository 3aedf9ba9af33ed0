"""Relative humidity from two thermometers or from a dew point, and the wet bulb of an air."""

from __future__ import annotations

from booth.trade.result import BadInput, Said, require
from booth.trade.weather.humid_air import saturation_pressure_pa

__all__ = ["humidity_from_dew_point_percent", "humidity_from_wet_bulb_percent", "wet_bulb_c"]

#: Psychrometric formula, e = es(tw) - 6.60e-4 (1 + 0.00115 tw) p (t - tw): Glossary of Meteorology,
#: American Meteorological Society; the factor with 0.00115 from memory, and held by a library's
#: figures.
COEFFICIENT_PER_K = 6.60e-4
WET_BULB_TERM_PER_C = 0.00115
#: Air, wet bulb and pressure for which a psychrometer is read: ASTM E337-02 1.3.2 (later editions
#: not seen): 5 to 50 C, no ice on the wick, within 30 % of one atmosphere; no shop has more than
#: 110 kPa.
AIR_C = (5.0, 50.0)
LEAST_WET_BULB_C = 1.0
AIR_KPA = (71.0, 110.0)
ATMOSPHERE_KPA = 101.325
PA_PER_KPA = 1000.0
#: A wet bulb is found as closely as no thermometer reads [K].
CLOSE_C = 1e-9


def _vapour_pa(air_c: float, wet_c: float, air_kpa: float) -> float:
    """The vapour pressure that the two bulbs stand for [Pa]; below 0 where they cannot be."""
    coefficient = COEFFICIENT_PER_K * (1.0 + WET_BULB_TERM_PER_C * wet_c)
    return saturation_pressure_pa(wet_c) - coefficient * air_kpa * PA_PER_KPA * (air_c - wet_c)


def _checked(air_c: float, air_kpa: float) -> None:
    require("The air temperature", air_c, *AIR_C, unit="C")
    require("The pressure of the room's air", air_kpa, *AIR_KPA, unit="kPa")


def humidity_from_wet_bulb_percent(
    air_c: float, wet_c: float, air_kpa: float = ATMOSPHERE_KPA
) -> float:
    """Give the relative humidity that a dry and a wet thermometer show.

    Args:
        air_c: the dry thermometer [degC], 5 to 50.
        wet_c: the thermometer with the wet wick [degC], 1 or more, not above the dry one.
        air_kpa: absolute pressure of the room's air [kPa], 71 to 110; one atmosphere unless given.

    Returns: relative humidity [%]: ``(e(wet) - 0.00066 (1 + 0.00115 wet) p (dry - wet)) / e(dry)``.
    Range: bulbs in moving air, whirled or with a fan (3 m/s and more), clean wick, clean water; in
        still air the wet one reads too high. A third of a degree is about 3 % of humidity.
    Source: psychrometric formula, Glossary of Meteorology (American Meteorological Society); its
        range, ASTM E337-02 1.3.2; saturation pressure, Alduchov and Eskridge 1996.

    >>> round(humidity_from_wet_bulb_percent(20.0, 16.67))  # 68 and 62 F: a printed table has 71
    71
    """
    _checked(air_c, air_kpa)
    require("The wet thermometer", wet_c, LEAST_WET_BULB_C, air_c, unit="C")
    share = _vapour_pa(air_c, wet_c, air_kpa) / saturation_pressure_pa(air_c)
    if share <= 0.0:
        raise BadInput(
            "No air has these two readings: the wet thermometer is too cold for the dry one. "
            "Look whether they were mixed up or misread."
        )
    return 100.0 * share


def wet_bulb_c(air_c: float, humidity_percent: float, air_kpa: float = ATMOSPHERE_KPA) -> float:
    """Give what a thermometer with a wet wick shows in this air: what drying cools a wet film to.

    Args:
        air_c: air temperature [degC], 5 to 50.
        humidity_percent: relative humidity [%], 0 to 100.
        air_kpa: absolute pressure of the room's air [kPa], 71 to 110; one atmosphere unless given.

    Returns: wet bulb [degC]: ``the wet bulb at which e(wet) - 0.00066 (1 + 0.00115 wet) p (dry -
        wet) is the vapour pressure``.
    Range: as for humidity_from_wet_bulb_percent; a film of water in moving air. Solvents cool it by
        other amounts.
    Source: as for humidity_from_wet_bulb_percent, solved for the wet bulb.

    >>> round(wet_bulb_c(20.0, 50.0), 1)
    13.9
    """
    _checked(air_c, air_kpa)
    require("The humidity", humidity_percent, 0.0, 100.0, unit="%")
    wanted_pa = saturation_pressure_pa(air_c) * humidity_percent / 100.0
    low, high = LEAST_WET_BULB_C, air_c
    if _vapour_pa(air_c, low, air_kpa) > wanted_pa:
        raise BadInput(
            f"In this air the wick would be colder than {Said(LEAST_WET_BULB_C, 'C')}, where it may "
            "freeze."
        )
    while high - low > CLOSE_C:
        middle = (low + high) / 2.0
        if _vapour_pa(air_c, middle, air_kpa) < wanted_pa:
            low = middle
        else:
            high = middle
    return high


def humidity_from_dew_point_percent(air_c: float, dew_point_c: float) -> float:
    """Give the relative humidity of air whose dew point, or distance from it, is known.

    Args:
        air_c: air temperature [degC], -40 to 50.
        dew_point_c: its dew point [degC], -40 or more, not above the air: the air less the spread.

    Returns: relative humidity [%]: ``e(dew point) / e(air), e = 610.94 exp(17.625 t / (t +
        243.04))``.
    Range: as for dew_point_c; below 0 C a mirror with frost on it shows the frost point, which is
        another.
    Source: definition of relative humidity; saturation pressure, Alduchov and Eskridge 1996.

    >>> round(humidity_from_dew_point_percent(20.0, 10.0))
    53
    """
    over_pa = saturation_pressure_pa(air_c)
    require("The dew point", dew_point_c, high=air_c, unit="C")
    return 100.0 * saturation_pressure_pa(dew_point_c) / over_pa
