"""The solvents of coatings: vapour they make, and the lower explosive limit to reckon with.

The regulation's table is dated: where a later list or usual safety data sheets give a lower limit,
the lower one counts. The product's own safety data sheet comes before all of them.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from booth.trade.result import BadInput, require
from booth.trade.text_table import rows

#: Volume of a mole of vapour at 70 F and one atmosphere: 386.8 ft3/lbmol, ideal gas.
MOLAR_VOLUME_70F_L_MOL = 24.147
#: US gallons in a cubic foot: vapour in ft3 per gallon of liquid is this many litres per litre.
GAL_PER_FT3 = 7.480519

REGULATION = "29 CFR 1910.94(c)(6)(ii), Table G-11 (from memory, not checked)"
#: The edition that the library carries; ISO/IEC 80079-20-1:2017 has replaced it.
IEC = "IEC 60079-20-1:2010 (old edition)"
NFPA = "NFPA 497 (2008)"
SHEETS = "usual safety data sheets (from memory, not checked)"


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


class Listed(NamedTuple):
    """What the lists say of a solvent.

    vapour: [ft3 per US gallon of liquid at 70 F], or density [g/ml] and molar mass [g/mol];
    limits: lower explosive limit [% by volume of air] by its list; also: other names of the trade.
    """

    cas: str
    vapour: tuple[float, ...]
    limits: dict[str, float]
    also: list[str]


def _listed(cas: str, vapour: str, table: str, iec: str, lower: str, also: str = "") -> Listed:
    lower, _, whose = lower.partition(" ")
    found = {IEC: iec, REGULATION: table, {"NFPA": NFPA, "SDS": SHEETS}.get(whose, ""): lower}
    limits = {name: float(limit) for name, limit in found.items() if limit != "-"}
    figures = vapour.removesuffix(" ft3/gal").split()
    return Listed(cas, tuple(map(float, figures)), limits, also.split(", ") if also else [])


#: Name, CAS number; vapour by the regulation's table, or else density at 70 F (Perry's Handbook 8th
#: ed., DIPPR equation 105; the last five from memory) and molar mass; lower explosive limits by
#: that table, which has trade names for some, and by IEC; a lower one of NFPA or of data sheets;
#: other names. IEC and NFPA as carried by the library ``chemicals``. Xylene: para-xylene, the
#: lowest of the three. Amyl acetate: normal. SDS: the lower end of what usual safety data sheets
#: give (from memory, not checked); for Stoddard solvent (mineral spirits) it lies below the
#: regulation's figure.
LISTED = {
    name: _listed(*cells)
    for name, *cells in rows("""
acetone                    | 67-64-1  | 44.0 ft3/gal | 2.6 | 2.5  | -
amyl acetate               | 628-63-7 | 21.6 ft3/gal | 1.0 | 1.0  | -
n-amyl alcohol             | 71-41-0  | 29.6 ft3/gal | 1.2 | 1.06 | -        | amyl alcohol
n-butyl acetate            | 123-86-4 | 24.8 ft3/gal | 1.7 | 1.2  | -        | butyl acetate
n-butyl alcohol            | 71-36-3  | 35.2 ft3/gal | 1.4 | 1.4  | -
    | butanol, n-butanol, 1-butanol
2-butoxyethanol            | 111-76-2 | 24.8 ft3/gal | 1.1 | 1.1  | -        | egbe, butyl glycol
2-ethoxyethanol            | 110-80-5 | 33.6 ft3/gal | 1.8 | 1.7  | -
2-ethoxyethyl acetate      | 111-15-9 | 23.2 ft3/gal | 1.7 | 1.2  | -
cyclohexanone              | 108-94-1 | 31.2 ft3/gal | 1.1 | 1.3  | -
ethyl acetate              | 141-78-6 | 32.8 ft3/gal | 2.5 | 2.0  | -        | etoac
ethyl alcohol              | 64-17-5  | 55.2 ft3/gal | 4.3 | 3.1  | -
    | ethanol, denatured alcohol
ethyl lactate              | -        | 28.0 ft3/gal | 1.5 | -    | -
methyl acetate             | 79-20-9  | 40.0 ft3/gal | 3.1 | 3.1  | -
methyl alcohol             | 67-56-1  | 80.8 ft3/gal | 7.3 | 6.0  | -        | methanol
2-methoxyethanol           | 109-86-4 | 40.8 ft3/gal | 2.5 | 1.8  | -
methyl ethyl ketone        | 78-93-3  | 36.0 ft3/gal | 1.8 | 1.5  | 1.4 NFPA | butanone, mek
methyl n-propyl ketone     | -        | 30.4 ft3/gal | 1.5 | -    | -        | mpk
VM&P naphtha               | -        | 22.4 ft3/gal | 0.9 | -    | -        | naphtha
Stoddard solvent           | -        | 23.2 ft3/gal | 1.0 | -    | 0.6 SDS
    | mineral spirits, white spirit
n-propyl acetate           | 109-60-4 | 27.2 ft3/gal | 2.8 | 1.7  | -
isopropyl acetate          | 108-21-4 | 28.0 ft3/gal | 1.1 | 1.7  | -
n-propyl alcohol           | 71-23-8  | 44.8 ft3/gal | 2.1 | 2.1  | -
isopropyl alcohol          | 67-63-0  | 44.0 ft3/gal | 2.0 | 2.0  | -
    | isopropanol, 2-propanol, ipa
toluene                    | 108-88-3 | 30.4 ft3/gal | 1.4 | 1.0  | -        | toluol
turpentine                 | -        | 20.8 ft3/gal | 0.8 | -    | -
xylene                     | 106-42-3 | 26.4 ft3/gal | 1.0 | 0.9  | -        | xylol, xylenes
methyl isobutyl ketone     | 108-10-1 | 0.800 100.16 | -   | 1.2  | -        | mibk
methyl n-amyl ketone       | 110-43-0 | 0.815 114.19 | -   | 1.1  | -        | mak, 2-heptanone
ethylbenzene               | 100-41-4 | 0.867 106.17 | -   | 0.8  | -
n-heptane                  | 142-82-5 | 0.685 100.20 | -   | 0.85 | -        | heptane
n-hexane                   | 110-54-3 | 0.660 86.18  | -   | 1.0  | -        | hexane
cumene                     | 98-82-8  | 0.862 120.19 | -   | 0.8  | -
isobutyl alcohol           | 78-83-1  | 0.801 74.12  | -   | 1.4  | 1.2 NFPA | isobutanol
mesitylene                 | 108-67-8 | 0.864 120.19 | -   | 0.8  | -
diacetone alcohol          | 123-42-2 | 0.938 116.16 | -   | 1.8  | -        | daa
1-methoxy-2-propanol       | -        | 0.921 90.12  | -   | -    | 1.6 SDS  | pm, pgme
1-methoxy-2-propyl acetate | -        | 0.968 132.16 | -   | -    | 1.3 SDS
    | pma, pm acetate, pgmea
""")
}
_NAMES = {other.casefold(): name for name in LISTED for other in (name, *LISTED[name].also)}


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
    Source: 29 CFR 1910.94(c)(6)(ii), Table G-11 (from memory, not checked), and IEC 60079-20-1:2010
        (since replaced by ISO/IEC 80079-20-1:2017).

    >>> "toluene" in solvent_names()
    True
    """
    return tuple(sorted(LISTED, key=str.casefold))


def solvent(name: str) -> Solvent:
    """Give a solvent by its name, with the lowest of the explosive limits that the lists give.

    Args:
        name: its name, or another the trade uses; capitals or not.

    Returns: Solvent: vapour [l per l of liquid at 70 F], lower explosive limit [% by volume of
        air].
    Range: the names listed, and other names of the trade for them; for anything else take the
        safety data sheet: solvent_from_data_sheet.
    Source: the lowest of 29 CFR 1910.94(c)(6)(ii), Table G-11 (from memory, not checked), IEC
        60079-20-1:2010 (since replaced by ISO/IEC 80079-20-1:2017), NFPA 497 (2008; later editions
        not seen) and, where marked, usual safety data sheets (from memory, not checked).

    >>> solvent("Toluene").lel_percent  # 1.4 in the regulation's table
    1.0
    """
    known = _NAMES.get(name.strip().casefold())
    if known is None:
        raise BadInput(
            f"No solvent is called {name!r}. Known are {', '.join(solvent_names())}. "
            "For any other, take density, molar mass and lower explosive limit from its safety "
            "data sheet."
        )
    _, figures, limits, _ = LISTED[known]
    vapour = vapour_l_per_l(*figures) if len(figures) > 1 else figures[0] * GAL_PER_FT3
    source = min(limits, key=limits.__getitem__)
    return Solvent(known, vapour, limits[source], source)
