"""The solvents of coatings: vapour they make, and the lower explosive limit to reckon with.

The regulation's table is dated: where a later list or usual safety data sheets give a lower limit,
the lower one counts. The product's own safety data sheet comes before all of them.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import BadInput, require

__all__ = ["Solvent", "solvent", "solvent_from_data_sheet", "solvent_names", "vapour_l_per_l"]

#: Volume of a mole of vapour at 70 F and one atmosphere: 386.8 ft3/lbmol, ideal gas.
MOLAR_VOLUME_70F_L_MOL = 24.147
#: US gallons in a cubic foot: vapour in ft3 per gallon of liquid is this many litres per litre.
GAL_PER_FT3 = 7.480519

REGULATION = "29 CFR 1910.94(c)(6)(ii), Table G-11 (recalled)"
IEC = "IEC 60079-20-1:2010"
NFPA = "NFPA 497 (2008)"
SHEETS = "usual safety data sheets (recalled)"


@dataclass(frozen=True, slots=True)
class Solvent:
    """A solvent as fire sees it.

    name; vapour_l_per_l: vapour at 70 F from a litre of liquid [l/l]; lel_percent: lower explosive
    limit, the lowest of the lists [% by volume of air]; source: where that limit is from.
    """

    name: str
    vapour_l_per_l: float
    lel_percent: float
    source: str


#: Vapour [ft3 per US gallon of liquid at 70 F] and lower explosive limit [% by volume of air]:
#: 29 CFR 1910.94(c)(6)(ii), Table G-11 (recalled). Chemical names where it has trade names.
TABLE_G11 = {
    "acetone": (44.0, 2.6),
    "amyl acetate": (21.6, 1.0),
    "n-amyl alcohol": (29.6, 1.2),
    "n-butyl acetate": (24.8, 1.7),
    "n-butyl alcohol": (35.2, 1.4),
    "2-butoxyethanol": (24.8, 1.1),
    "2-ethoxyethanol": (33.6, 1.8),
    "2-ethoxyethyl acetate": (23.2, 1.7),
    "cyclohexanone": (31.2, 1.1),
    "ethyl acetate": (32.8, 2.5),
    "ethyl alcohol": (55.2, 4.3),
    "ethyl lactate": (28.0, 1.5),
    "methyl acetate": (40.0, 3.1),
    "methyl alcohol": (80.8, 7.3),
    "2-methoxyethanol": (40.8, 2.5),
    "methyl ethyl ketone": (36.0, 1.8),
    "methyl n-propyl ketone": (30.4, 1.5),
    "VM&P naphtha": (22.4, 0.9),
    "Stoddard solvent": (23.2, 1.0),
    "n-propyl acetate": (27.2, 2.8),
    "isopropyl acetate": (28.0, 1.1),
    "n-propyl alcohol": (44.8, 2.1),
    "isopropyl alcohol": (44.0, 2.0),
    "toluene": (30.4, 1.4),
    "turpentine": (20.8, 0.8),
    "xylene": (26.4, 1.0),
}

#: Not in that table: density at 70 F [g/ml] (Perry's Handbook 8th ed., DIPPR equation 105; the last
#: five recalled) and molar mass [g/mol]. Vapour follows from the molar volume.
LIQUIDS = {
    "methyl isobutyl ketone": (0.800, 100.16),
    "methyl n-amyl ketone": (0.815, 114.19),
    "ethylbenzene": (0.867, 106.17),
    "n-heptane": (0.685, 100.20),
    "n-hexane": (0.660, 86.18),
    "cumene": (0.862, 120.19),
    "isobutyl alcohol": (0.801, 74.12),
    "mesitylene": (0.864, 120.19),
    "diacetone alcohol": (0.938, 116.16),
    "1-methoxy-2-propanol": (0.921, 90.12),
    "1-methoxy-2-propyl acetate": (0.968, 132.16),
}

#: CAS number, and the lower limit of IEC 60079-20-1:2010 [% by volume], as carried by the library
#: ``chemicals``. Xylene: para-xylene, the lowest of the three. Amyl acetate: normal.
LIMITS_IEC = {
    "acetone": ("67-64-1", 2.5),
    "amyl acetate": ("628-63-7", 1.0),
    "n-amyl alcohol": ("71-41-0", 1.06),
    "n-butyl acetate": ("123-86-4", 1.2),
    "n-butyl alcohol": ("71-36-3", 1.4),
    "2-butoxyethanol": ("111-76-2", 1.1),
    "2-ethoxyethanol": ("110-80-5", 1.7),
    "2-ethoxyethyl acetate": ("111-15-9", 1.2),
    "cyclohexanone": ("108-94-1", 1.3),
    "ethyl acetate": ("141-78-6", 2.0),
    "ethyl alcohol": ("64-17-5", 3.1),
    "methyl acetate": ("79-20-9", 3.1),
    "methyl alcohol": ("67-56-1", 6.0),
    "2-methoxyethanol": ("109-86-4", 1.8),
    "methyl ethyl ketone": ("78-93-3", 1.5),
    "n-propyl acetate": ("109-60-4", 1.7),
    "isopropyl acetate": ("108-21-4", 1.7),
    "n-propyl alcohol": ("71-23-8", 2.1),
    "isopropyl alcohol": ("67-63-0", 2.0),
    "toluene": ("108-88-3", 1.0),
    "xylene": ("106-42-3", 0.9),
    "methyl isobutyl ketone": ("108-10-1", 1.2),
    "methyl n-amyl ketone": ("110-43-0", 1.1),
    "ethylbenzene": ("100-41-4", 0.8),
    "n-heptane": ("142-82-5", 0.85),
    "n-hexane": ("110-54-3", 1.0),
    "cumene": ("98-82-8", 0.8),
    "isobutyl alcohol": ("78-83-1", 1.4),
    "mesitylene": ("108-67-8", 0.8),
    "diacetone alcohol": ("123-42-2", 1.8),
}

#: Where NFPA 497 (2008), as carried by ``chemicals``, is lower still [% by volume].
LIMITS_NFPA = {"isobutyl alcohol": 1.2, "methyl ethyl ketone": 1.4}

#: Lower limits of usual safety data sheets [% by volume], the lower end of what they give
#: (recalled): Stoddard solvent (mineral spirits) lies below the regulation's figure.
LIMITS_SHEETS = {
    "Stoddard solvent": 0.6,
    "1-methoxy-2-propanol": 1.6,
    "1-methoxy-2-propyl acetate": 1.3,
}

#: Other names of the trade.
ALSO = {
    "butanone": "methyl ethyl ketone",
    "mek": "methyl ethyl ketone",
    "mibk": "methyl isobutyl ketone",
    "mak": "methyl n-amyl ketone",
    "2-heptanone": "methyl n-amyl ketone",
    "butyl acetate": "n-butyl acetate",
    "amyl alcohol": "n-amyl alcohol",
    "ethanol": "ethyl alcohol",
    "denatured alcohol": "ethyl alcohol",
    "methanol": "methyl alcohol",
    "isopropanol": "isopropyl alcohol",
    "2-propanol": "isopropyl alcohol",
    "butanol": "n-butyl alcohol",
    "n-butanol": "n-butyl alcohol",
    "1-butanol": "n-butyl alcohol",
    "isobutanol": "isobutyl alcohol",
    "heptane": "n-heptane",
    "hexane": "n-hexane",
    "xylol": "xylene",
    "xylenes": "xylene",
    "toluol": "toluene",
    "mineral spirits": "Stoddard solvent",
    "white spirit": "Stoddard solvent",
    "naphtha": "VM&P naphtha",
    "pm": "1-methoxy-2-propanol",
    "pma": "1-methoxy-2-propyl acetate",
    "pm acetate": "1-methoxy-2-propyl acetate",
}


def vapour_l_per_l(density_g_ml: float, molar_mass_g_mol: float) -> float:
    """Give the vapour that a litre of liquid makes, at 70 F and one atmosphere.

    Args:
        density_g_ml: density of the liquid [g/ml], above 0.
        molar_mass_g_mol: molar mass [g/mol], above 0.

    Returns: vapour [l/l]: ``density / molar mass x molar volume``, at 70 F and one atmosphere.
    Range: 70 F (21.1 C); it grows by 0.34 % per K.
    Source: ideal gas law, 386.8 ft3/lbmol at 70 F and 1 atm (24.147 l/mol).

    >>> round(vapour_l_per_l(0.8675, 92.14))  # toluene; 30.4 ft3/gal in the table is 227
    227
    """
    require("The density", density_g_ml, above=0.0, unit="g/ml")
    require("The molar mass", molar_mass_g_mol, above=0.0, unit="g/mol")
    return 1000.0 * density_g_ml / molar_mass_g_mol * MOLAR_VOLUME_70F_L_MOL


def solvent_from_data_sheet(
    name: str, density_g_ml: float, molar_mass_g_mol: float, lel_percent: float
) -> Solvent:
    """Make a solvent from the figures of its own safety data sheet.

    Args:
        name: what it is called.
        density_g_ml: density of the liquid [g/ml], above 0.
        molar_mass_g_mol: molar mass [g/mol], above 0; for a cut, the lowest of its range.
        lel_percent: lower explosive limit [% by volume of air], above 0, below 100.

    Returns: Solvent.
    Range: as for vapour_l_per_l.
    Source: the safety data sheet, section 9; vapour by the ideal gas law at 70 F.

    >>> solvent_from_data_sheet("thinner A", 0.86, 98.0, 1.1).lel_percent
    1.1
    """
    require("The lower explosive limit", lel_percent, above=0.0, below=100.0, unit="%")
    vapour = vapour_l_per_l(density_g_ml, molar_mass_g_mol)
    return Solvent(name, vapour, float(lel_percent), "its own safety data sheet")


def solvent_names() -> tuple[str, ...]:
    """Give the names of the solvents that are known, other names left out.

    Returns: names, in the order of the alphabet.
    Range: single solvents and three cuts; a thinner is a blend of several.
    Source: 29 CFR 1910.94(c)(6)(ii), Table G-11 (recalled), and IEC 60079-20-1:2010.

    >>> "toluene" in solvent_names()
    True
    """
    return tuple(sorted({*TABLE_G11, *LIQUIDS}, key=str.casefold))


def solvent(name: str) -> Solvent:
    """Give a solvent by its name, with the lowest of the explosive limits that the lists give.

    Args:
        name: its name, or another the trade uses; capitals or not.

    Returns: Solvent: vapour [l per l of liquid at 70 F], lower explosive limit [% by volume of
        air].
    Range: the names listed, and other names of the trade for them; for anything else take the
        safety data sheet: solvent_from_data_sheet.
    Source: the lowest of 29 CFR 1910.94(c)(6)(ii), Table G-11 (recalled), IEC 60079-20-1:2010, NFPA
        497 (2008) and, where marked, usual safety data sheets (recalled).

    >>> solvent("Toluene").lel_percent  # 1.4 in the regulation's table
    1.0
    """
    wanted = name.strip().casefold()
    wanted = ALSO.get(wanted, wanted).casefold()
    known = next((each for each in solvent_names() if each.casefold() == wanted), None)
    if known is None:
        raise BadInput(
            f"No solvent is called {name!r}. Known are {', '.join(solvent_names())}. "
            "For any other, take density, molar mass and lower explosive limit from its safety "
            "data sheet."
        )
    limits: list[tuple[float, str]] = []
    if known in LIMITS_IEC:
        limits.append((LIMITS_IEC[known][1], IEC))
    if known in TABLE_G11:
        limits.append((TABLE_G11[known][1], REGULATION))
        vapour = TABLE_G11[known][0] * GAL_PER_FT3
    else:
        vapour = vapour_l_per_l(*LIQUIDS[known])
    for lower, whose in ((LIMITS_NFPA, NFPA), (LIMITS_SHEETS, SHEETS)):
        if known in lower:
            limits.append((lower[known], whose))
    lowest, source = min(limits, key=lambda limit: limit[0])
    return Solvent(known, vapour, lowest, source)
