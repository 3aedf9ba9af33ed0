"""Dilution air against the regulation's example and independent lists; the face of a booth."""

from __future__ import annotations

import math
import re

import pytest
from chemicals.dippr import EQ105
from chemicals.identifiers import MW, CAS_from_any
from chemicals.safety import LFL, LFL_methods, fire_mixing
from chemicals.volume import rho_data_Perry_8E_105_l
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film.film_thickness import dry_film_um
from booth.trade.result import BadInput, Outside, Value
from booth.trade.ventilation import booth_face, dilution, solvents
from booth.trade.ventilation.solvents import Solvent, solvent
from tests.reference import UNITS
from tests.trade.outside import Kind, outside
from tests.trade.said import plain

KELVIN_70F = UNITS.Quantity(70, "degF").to("K").magnitude
#: Litre per litre in a cubic foot per US gallon.
PER_FT3_GAL = UNITS("1 foot**3 / gallon").to("").magnitude
LISTS = ("IEC 60079-20-1 (2010)", "NFPA 497 (2008)")

LISTED = solvents.LISTED
#: Vapour and limit of the regulation's table; CAS number and limit of IEC; density and molar mass.
TABLE_G11 = {
    name: (*each.vapour, each.limits[solvents.REGULATION])
    for name, each in LISTED.items()
    if solvents.REGULATION in each.limits
}
LIMITS_IEC = {
    name: (each.cas, each.limits[solvents.IEC])
    for name, each in LISTED.items()
    if solvents.IEC in each.limits
}
LIQUIDS = {name: each.vapour for name, each in LISTED.items() if name not in TABLE_G11}

lel = st.floats(0.5, 8.0)
vapour = st.floats(100.0, 700.0)


def density_70f_g_ml(cas: str) -> float:
    row = rho_data_Perry_8E_105_l.loc[cas]
    mol_m3 = EQ105(KELVIN_70F, row["C1"], row["C2"], row["C3"], row["C4"])
    return float(mol_m3 * MW(cas) / 1e6)


@outside(
    dilution.regulation_dilution_l_per_l,
    kind=Kind.COPIED,
    source="29 CFR 1910.94(c)(6)(ii), worked example: toluene; acetone by the same formula (from "
    "memory, not checked)",
)
@pytest.mark.parametrize(("name", "ft3_per_gal"), [("toluene", 8564), ("acetone", 6593)])
def test_the_regulations_example(name: str, ft3_per_gal: float) -> None:
    per_gal, limit = TABLE_G11[name]
    found = dilution.regulation_dilution_l_per_l(per_gal, limit)
    assert found == pytest.approx(ft3_per_gal, abs=0.5)  # printed without decimals


@outside(
    dilution.dilution_air_l_per_l,
    kind=Kind.THEOREM,
    source="definition of concentration by volume, checked backwards; 29 CFR 1910.94(c)(6)(ii)",
)
@given(vapour, lel, st.floats(0.02, 0.25))
def test_the_air_makes_the_concentration_it_is_for(v: float, limit: float, share: float) -> None:
    air = dilution.dilution_air_l_per_l(v, limit, share)
    assert 100 * v / (v + air) == pytest.approx(share * limit, rel=1e-9)
    # The regulation's formula is three volumes of vapour short of a quarter: never ask for less.
    printed = dilution.regulation_dilution_l_per_l(v, limit)
    assert dilution.dilution_air_l_per_l(v, limit) - printed == pytest.approx(3 * v, rel=1e-6)
    assert air >= printed


@outside(
    solvents.vapour_l_per_l,
    kind=Kind.LIBRARY,
    source="pint's molar gas constant: R T / p at 70 F and 1 atm",
)
@given(st.floats(0.6, 1.3), st.floats(30, 200))
def test_vapour_of_a_litre(density: float, molar_mass: float) -> None:
    moles = UNITS.Quantity(1000 * density / molar_mass, "mol")
    volume = moles * UNITS("molar_gas_constant") * UNITS.Quantity(KELVIN_70F, "K") / UNITS("1 atm")
    # The constant is the 386.8 ft3/lbmol of handbooks, four digits.
    assert solvents.vapour_l_per_l(density, molar_mass) == pytest.approx(
        volume.to("l").magnitude, rel=3e-4
    )


#: Further than 2 % from the molar volume: the table's own figures, not misread by us (recalled).
TABLE_IS_OFF = {"isopropyl alcohol": 1.043, "n-propyl alcohol": 1.039, "n-propyl acetate": 0.971}


@outside(
    solvents.solvent,
    kind=Kind.LIBRARY,
    source="DIPPR equation 105, Perry's Handbook 8th ed. (chemicals): density at 70 F",
)
@pytest.mark.parametrize(
    "name",
    [
        name
        for name in TABLE_G11
        if name in LIMITS_IEC and LIMITS_IEC[name][0] in rho_data_Perry_8E_105_l.index
    ],
)
def test_vapour_of_the_regulations_table_agrees_with_the_molar_volume(name: str) -> None:
    cas = LIMITS_IEC[name][0]
    by_density = solvents.vapour_l_per_l(density_70f_g_ml(cas), MW(cas))
    # 2 %: the table rounds to 0.4 ft3, and its densities are those of its day.
    assert solvent(name).vapour_l_per_l / by_density == pytest.approx(
        TABLE_IS_OFF.get(name, 1.0), abs=0.02 if name not in TABLE_IS_OFF else 0.002
    )


@pytest.mark.parametrize("name", [each for each in LIQUIDS if each in LIMITS_IEC])
def test_densities_and_molar_masses_of_the_other_liquids(name: str) -> None:
    cas = LIMITS_IEC[name][0]
    density, molar_mass = LIQUIDS[name]
    assert molar_mass == pytest.approx(MW(cas), abs=0.01)
    if cas in rho_data_Perry_8E_105_l.index:
        assert density == pytest.approx(density_70f_g_ml(cas), abs=0.001)  # three digits


@outside(
    solvents.solvent,
    kind=Kind.LIBRARY,
    source="IEC 60079-20-1:2010 and NFPA 497 (2008), as carried by chemicals",
)
@pytest.mark.parametrize("name", LIMITS_IEC)
def test_the_limit_is_the_lowest_of_the_lists(name: str) -> None:
    cas, ours = LIMITS_IEC[name]
    listed = {m: 100 * LFL(CASRN=cas, method=m) for m in LFL_methods(CASRN=cas) if m in LISTS}
    assert ours == pytest.approx(listed["IEC 60079-20-1 (2010)"], abs=1e-9)
    # NFPA's rounding of heptane and others is never lower than what is reckoned with.
    assert solvent(name).lel_percent <= min(listed.values()) + 1e-9
    if name in TABLE_G11:
        assert solvent(name).lel_percent <= TABLE_G11[name][1]


@outside(
    solvents.solvent_names,
    kind=Kind.COPIED,
    source="29 CFR 1910.94(c)(6)(ii), Table G-11 (from memory, not checked)",
)
def test_every_solvent_of_the_table_is_known_and_gives_its_vapour() -> None:
    names = solvents.solvent_names()
    assert {*TABLE_G11, *LIQUIDS} == set(names)
    for name in names:
        found = solvent(name.upper())
        assert found.name == name
        if name in TABLE_G11:
            ft3 = TABLE_G11[name][0]
            assert found.vapour_l_per_l == pytest.approx(ft3 * PER_FT3_GAL, rel=1e-6)
        for other in LISTED[name].also:
            assert other == other.casefold()
            assert solvent(other) == found
    others = [*names, *(other for name in names for other in LISTED[name].also)]
    assert len(others) == len({each.casefold() for each in others})


def test_old_limits_give_way_to_lower_ones() -> None:
    assert (solvent("toluene").lel_percent, TABLE_G11["toluene"][1]) == (1.0, 1.4)
    assert "IEC" in solvent("toluene").source
    assert "1910.94" in solvent("isopropyl acetate").source  # there the old table is lower
    assert solvent("white spirit").lel_percent == 0.6


@outside(
    solvents.solvent_from_data_sheet,
    kind=Kind.LIBRARY,
    source="chemicals: toluene's molar mass, density, limit",
)
def test_a_solvent_from_its_data_sheet() -> None:
    made = solvents.solvent_from_data_sheet(
        "thinner A", density_70f_g_ml("108-88-3"), MW("108-88-3"), 100 * LFL(CASRN="108-88-3")
    )
    assert made.vapour_l_per_l == pytest.approx(solvent("toluene").vapour_l_per_l, rel=0.002)
    assert made.lel_percent == pytest.approx(1.0)


@outside(
    dilution.dilution_air_of_blend_l_per_l,
    kind=Kind.LIBRARY,
    source="chemicals.safety.fire_mixing: Le Chatelier's rule for the mixed vapour",
)
@given(st.lists(st.tuples(vapour, lel, st.floats(0.05, 1)), min_size=1, max_size=5))
def test_a_blend_needs_the_air_of_its_mixed_vapour(parts: list[tuple[float, float, float]]) -> None:
    whole = sum(share for _, _, share in parts)
    blend = [
        (Solvent(f"solvent {n}", v, limit, "made up"), share / whole)
        for n, (v, limit, share) in enumerate(parts)
    ]
    volumes = [each.vapour_l_per_l * share for each, share in blend]
    total = sum(volumes)
    mixed = 100 * fire_mixing(
        [v / total for v in volumes], [each.lel_percent / 100 for each, _ in blend]
    )
    expected = dilution.dilution_air_l_per_l(total, mixed)
    assert dilution.dilution_air_of_blend_l_per_l(blend) == pytest.approx(expected, rel=1e-9)


@outside(
    dilution.volatile_fraction,
    kind=Kind.DEFINITION,
    source="Organic Finishing Guidebook 2012-13 p. 615: 4 mil wet, 50 %, thinned 25 %, 1.6 mil dry",
)
@given(st.floats(0.05, 1.0), st.floats(0.0, 1.0))
def test_what_evaporates_is_what_does_not_stay(vs: float, s: float) -> None:
    assert dilution.volatile_fraction(0.5, 0.25) == pytest.approx(1 - 1.6 / 4)
    left = dry_film_um(1.0, vs, s)
    assert dilution.volatile_fraction(vs, s) == pytest.approx(1 - left, abs=1e-12)


@outside(
    dilution.minimum_air,
    kind=Kind.DEFINITION,
    source="29 CFR 1910.94(c)(6)(ii) (from memory, not checked): dilution volume per gallon times "
    "gallons a minute",
)
def test_a_gallon_of_solvent_an_hour() -> None:
    per_gal, limit = TABLE_G11["xylene"]
    old = Solvent("xylene as in the table", per_gal * PER_FT3_GAL, limit, "29 CFR 1910.94")
    gallon_an_hour = UNITS("1 gallon/hour").to("ml/min").magnitude
    found = dilution.minimum_air(gallon_an_hour, 1.0, [(old, 1.0)])
    printed_ft3_h = 4 * (100 - limit) * per_gal / limit
    in_ft3_h = UNITS.Quantity(found.least.value, "m**3/hour").to("foot**3/hour").magnitude
    # To a quarter of the limit exactly: three vapour volumes more than the printed formula.
    assert in_ft3_h == pytest.approx(printed_ft3_h + 3 * per_gal, rel=1e-9)
    assert found.least.unit == "m3/h"


@given(st.floats(1, 1000), st.floats(0.01, 1), st.floats(0.05, 1))
def test_air_grows_with_delivery_and_volatiles(q: float, volatile: float, duty: float) -> None:
    blend = [(solvent("n-butyl acetate"), 0.7), (solvent("xylene"), 0.3)]
    one = dilution.minimum_air(q, volatile, blend, trigger_share=duty)
    two = dilution.minimum_air(2 * q, volatile, blend, trigger_share=duty)
    assert two.least.value == pytest.approx(2 * one.least.value)
    assert one.averaged.value == pytest.approx(duty * one.least.value)
    strict = dilution.minimum_air(q, volatile, blend, share_of_lel=0.1)
    assert strict.least.value > 2.4 * one.least.value


def test_no_result_reads_as_a_permission() -> None:
    air = dilution.minimum_air(200, 0.6, [(solvent("toluene"), 1.0)])
    booth = booth_face.required_exhaust(4.0)
    velocity = booth_face.face_velocity(9000, 4.0)
    for caution in (air.caution, booth.caution, velocity.caution):
        assert "not a permission to breathe" in caution
        assert "Local codes" in caution
    words = " ".join((air.caution, booth.caution, air.least.rule, booth.least.rule))
    assert not re.search(r"\b(safe|safely|enough|sufficient|adequate|allowed)\b", words)


@outside(
    booth_face.required_exhaust,
    booth_face.face_velocity,
    kind=Kind.LIBRARY,
    source="29 CFR 1910.107(b)(5)(i): 100 ft/min; area x velocity = cfm, Organic Finishing "
    "Guidebook 2012; units by pint",
)
@pytest.mark.parametrize(
    ("wide_ft", "high_ft", "cfm"), [(8, 7, 5600), (10, 10, 10000), (4, 3, 1200)]
)
def test_exhaust_of_an_open_face(wide_ft: float, high_ft: float, cfm: float) -> None:
    area = UNITS.Quantity(wide_ft * high_ft, "foot**2").to("m**2").magnitude
    needed = booth_face.required_exhaust(area).least.value
    expected = UNITS.Quantity(cfm, "foot**3/minute").to("m**3/hour").magnitude
    assert needed == pytest.approx(expected, rel=1e-9)
    found = booth_face.face_velocity(expected, area)
    in_ft_min = UNITS.Quantity(found.average.value, "m/s").to("foot/minute").magnitude
    assert in_ft_min == pytest.approx(100.0)
    assert not found.falls_short
    assert booth_face.face_velocity(0.99 * expected, area).falls_short


@given(st.floats(0.1, 50), st.floats(0.1, 3))
def test_exhaust_and_velocity_undo_each_other(area: float, velocity: float) -> None:
    needed = booth_face.required_exhaust(area, velocity).least.value
    found = booth_face.face_velocity(needed, area, velocity)
    assert found.average.value == pytest.approx(velocity, rel=1e-12)
    assert not found.falls_short


@outside(
    booth_face.design_velocity_m_s,
    kind=Kind.COPIED,
    source="WAC 296-62-11019, Table 14, air-operated guns",
)
@pytest.mark.parametrize(
    ("crossdraft_ft_min", "large", "ft_min"),
    [(0, True, 100), (50, True, 100), (50, False, 150), (51, True, 150), (100, False, 200)],
)
def test_design_velocity(crossdraft_ft_min: float, large: bool, ft_min: float) -> None:
    crossdraft = UNITS.Quantity(crossdraft_ft_min, "foot/minute").to("m/s").magnitude
    found = booth_face.design_velocity_m_s(crossdraft, large=large)
    assert isinstance(found, Value)
    assert UNITS.Quantity(found.value, "m/s").to("foot/minute").magnitude == pytest.approx(ft_min)


def test_too_much_crossdraft_has_no_design_velocity() -> None:
    found = booth_face.design_velocity_m_s(0.6, large=True)
    assert isinstance(found, Outside)
    assert "above 0.508 m/s" in plain(found.reason)  # 100 ft/min


TOLUENE = solvent("toluene")


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: solvent("unobtainium"), "No solvent is called 'unobtainium'. Known are 1-methoxy"),
        (lambda: solvents.vapour_l_per_l(0, 92), "density must be above 0"),
        (
            lambda: solvents.solvent_from_data_sheet("x", 0.9, 92, 0),
            "explosive limit must be above",
        ),
        (lambda: dilution.dilution_air_l_per_l(227, 1.0, 0.5), "must be 0.25 or less"),
        (lambda: dilution.dilution_air_l_per_l(227, 100), "explosive limit must be below 100"),
        (lambda: dilution.regulation_dilution_l_per_l(math.nan, 1), "finite"),
        (lambda: dilution.dilution_air_of_blend_l_per_l([]), "at least one solvent"),
        (
            lambda: dilution.dilution_air_of_blend_l_per_l([(TOLUENE, 0.5)]),
            "add up to 0.5; they should make 1",
        ),
        (lambda: dilution.volatile_fraction(50), "Volume solids must be 1 or less; 50"),
        (lambda: dilution.minimum_air(-1, 0.5, [(TOLUENE, 1)]), "delivery must be 0 ml/min"),
        (
            lambda: dilution.minimum_air(1, 0.5, [(TOLUENE, 1)], trigger_share=0),
            "trigger pulled must be above 0",
        ),
        (lambda: booth_face.required_exhaust(0), "open front must be above 0 m2"),
        (lambda: booth_face.face_velocity(-1, 4), "exhaust must be 0 m3/h or more"),
        (lambda: booth_face.design_velocity_m_s(-1, large=True), "crossdraft must be 0"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says):
        call()


@pytest.mark.parametrize(
    ("short", "cas"),
    [
        ("MEK", "78-93-3"),
        ("MIBK", "108-10-1"),
        ("PGMEA", "108-65-6"),
        ("PGME", "107-98-2"),
        ("EGBE", "111-76-2"),
        ("butyl glycol", "111-76-2"),
        ("EtOAc", "141-78-6"),
    ],
)
def test_short_names_mean_what_a_general_library_means_by_them(short: str, cas: str) -> None:
    """The numbers are those of ``chemicals`` for both names; IPA, MPK and DAA it does not know."""
    assert CAS_from_any(short) == cas
    assert CAS_from_any(solvent(short).name) == cas
