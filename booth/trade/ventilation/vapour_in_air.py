"""Vapour in air by volume and by weight: parts per million and milligrams in a cubic metre."""

from __future__ import annotations

from booth.trade.result import require

__all__ = ["vapour_by_volume_ppm", "vapour_by_weight_mg_m3"]

#: A mole of vapour at 25 C and 760 torr [l]: as limits are given, 29 CFR 1910.1000 table Z-1, note
#: (a).
MOLAR_VOLUME_25C_L_MOL = 24.45
MILLION = 1e6

CAUTION = (
    "A conversion of figures, not a permission to breathe the air. Limits and how they are "
    "measured are "
    "those of the safety data sheet and of local law."
)


def vapour_by_weight_mg_m3(vapour_ppm: float, molar_mass_g_mol: float) -> float:
    """Give the weight of vapour in a cubic metre of air from its parts per million.

    Args:
        vapour_ppm: vapour by volume [ppm], 0 to 1,000,000.
        molar_mass_g_mol: molar mass of the substance [g/mol], above 0.

    Returns: vapour by weight [mg/m3]: ``ppm x molar mass / 24.45``.
    Range: 25 C and one atmosphere; lists that mean 20 C have 24.06 for 24.45 and give 1.6 % more.
    Source: 24.45 l/mol at 25 C and 760 torr: 29 CFR 1910.1000 table Z-1, note (a); the same in the
        guide of the Canadian Centre for Occupational Health and Safety.

    >>> round(vapour_by_weight_mg_m3(50.0, 92.14))  # toluene
    188
    """
    require("The vapour in the air", vapour_ppm, 0.0, MILLION, unit="ppm")
    require("The molar mass", molar_mass_g_mol, above=0.0, unit="g/mol")
    return vapour_ppm * molar_mass_g_mol / MOLAR_VOLUME_25C_L_MOL


def vapour_by_volume_ppm(vapour_mg_m3: float, molar_mass_g_mol: float) -> float:
    """Give the parts per million of a vapour from its weight in a cubic metre of air.

    Args:
        vapour_mg_m3: vapour by weight [mg/m3], 0 or more.
        molar_mass_g_mol: molar mass of the substance [g/mol], above 0.

    Returns: vapour by volume [ppm]: ``mg/m3 x 24.45 / molar mass``.
    Range: 25 C and one atmosphere, as for vapour_by_weight_mg_m3; vapour and gas, not mist or dust.
    Source: 24.45 l/mol at 25 C and 760 torr: 29 CFR 1910.1000 table Z-1, note (a).

    >>> round(vapour_by_volume_ppm(188.4, 92.14))  # toluene
    50
    """
    require("The vapour in the air", vapour_mg_m3, 0.0, unit="mg/m3")
    require("The molar mass", molar_mass_g_mol, above=0.0, unit="g/mol")
    return vapour_mg_m3 * MOLAR_VOLUME_25C_L_MOL / molar_mass_g_mol
