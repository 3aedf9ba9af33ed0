"""How heavy the air of a room is: dry air and the water vapour in it."""

from __future__ import annotations

from booth.trade.result import require
from booth.trade.weather.humid_air import saturation_pressure_pa

__all__ = ["moist_air_density_kg_m3"]

#: Molar gas constant [J/(mol K)]: 2019 SI, exact to the digits given (SI Brochure, 9th ed.).
GAS_CONSTANT = 8.314462618
#: Molar mass of dry air with 0.04 % carbon dioxide, and of water [g/mol]: CIPM-2007, Picard, Davis,
#: Glaeser and Fujii, Metrologia 45 (2008) 149-155.
DRY_AIR_G_MOL = 28.96546
WATER_G_MOL = 18.01528
ZERO_C_K = 273.15
GRAMS_PER_KG = 1000.0
PA_PER_KPA = 1000.0
AIR_KPA = (50.0, 110.0)


def moist_air_density_kg_m3(
    air_c: float, humidity_percent: float, air_kpa: float = 101.325
) -> float:
    """Give the density of the air of a room, its water vapour counted.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], 0 to 100.
        air_kpa: absolute pressure of the room's air [kPa], 50 to 110; one atmosphere unless given.

    Returns: density [kg/m3]: ``((p - e) 0.028965 + e 0.018015) / (8.3145 T)``, e the pressure of
        the vapour; damp air is the lighter one.
    Range: air as an ideal gas, within 0.1 % where people work.
    Source: Dalton's law; molar masses of CIPM-2007, Picard et al., Metrologia 45 (2008) 149-155;
        saturation pressure, Alduchov and Eskridge 1996.

    >>> round(moist_air_density_kg_m3(20.0, 50.0), 3)
    1.199
    """
    require("The pressure of the room's air", air_kpa, *AIR_KPA, unit="kPa")
    require("The humidity", humidity_percent, 0.0, 100.0, unit="%")
    vapour_pa = saturation_pressure_pa(air_c) * humidity_percent / 100.0
    dry_pa = air_kpa * PA_PER_KPA - vapour_pa
    grams = (dry_pa * DRY_AIR_G_MOL + vapour_pa * WATER_G_MOL) / GAS_CONSTANT / (air_c + ZERO_C_K)
    return grams / GRAMS_PER_KG
