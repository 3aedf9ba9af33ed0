"""Rules and names that stand in the trade, worked by libraries that know nothing of it."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest
from chemicals.data_reader import data_source
from chemicals.dippr import EQ101, EQ105
from chemicals.identifiers import MW, CAS_from_any
from chemicals.utils import Vfs_to_zs, zs_to_Vfs
from chemicals.viscosity import viscosity_converter, viscosity_scales
from chemicals.volume import rho_data_Perry_8E_105_l
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.optimize import linprog

from booth.trade.air import air_base
from booth.trade.cups import cup_choice, cup_names, cup_runs, efflux_time
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS
from booth.trade.film import coverage, film_thickness
from booth.trade.mixing import pours
from booth.trade.mixing.components import Component, Measure
from booth.trade.result import Outside, Value
from booth.trade.thinning import blending_rule, thin_to_viscosity, thinner_share
from booth.trade.thinning.thin_to_viscosity import ThinnerStep
from booth.trade.ventilation import dilution, solvents
from booth.trade.waits import wait_by_rule
from booth.trade.weather import weather_limits
from tests.reference import UNITS, props_si
from tests.trade.outside import Kind, outside
from tests.trade.said import plain

L_PER_FT3 = UNITS("1 foot**3").to("l").magnitude


@outside(
    air_base.air_base,
    kind=Kind.LIBRARY,
    source="CoolProp, density of dry air, against the standards' own figures: DIN 1343 by the "
    "molar volume "
    "of CODATA (scipy.constants), 1.2250 kg/m3 of ISO 2533 at sea level, 0.075 lb/ft3 of fan "
    "practice",
)
def test_air_of_each_base_is_as_heavy_as_its_standard_says() -> None:
    def density(name: str) -> float:
        base = air_base.air_base(name)
        return props_si("D", "P", 1000 * base.kpa, "T", base.air_c + 273.15, "Air")

    molar_volume = constants.value("molar volume of ideal gas (273.15 K, 101.325 kPa)")
    # Real air is 0.06 % denser than an ideal gas at 0 C; molar mass 28.9655 g/mol (CIPM-2007).
    assert density("normal") == pytest.approx(0.0289655 / molar_volume, rel=1e-3)
    assert density("standard 15 C") == pytest.approx(1.2250, rel=1e-3)
    fan = UNITS("0.075 lb/foot**3").to("kg/m**3").magnitude
    # Two digits; at 68 F it is that of air with some vapour in it.
    assert density("scf 70 F") == pytest.approx(fan, rel=2.5e-3)
    assert density("scf 68 F") == pytest.approx(fan, rel=6e-3)
    # 60 F and the 14.5 psia of the compressed-air trade follow from their pressure and temperature.
    at_60 = UNITS.Quantity(60, "degF").to("K").magnitude
    assert density("scf 60 F") == pytest.approx(props_si("D", "P", 101325, "T", at_60, "Air"))
    bar = props_si("D", "P", 1e5, "T", 293.15, "Air")
    assert density("ANR") == density("scf 14.5 psia") == pytest.approx(bar)
    assert air_base.air_base("ANR").name == "ANR"


@outside(
    cup_names.cup_named,
    kind=Kind.LIBRARY,
    source="chemicals.viscosity.viscosity_scales: its names of the Ford and Zahn cups",
)
@pytest.mark.parametrize(
    "scale", sorted(each for each in viscosity_scales if re.match(r"(ford|zahn) cup #\d", each))
)
def test_the_names_of_a_library_s_cups_are_understood(scale: str) -> None:
    family, _, size = scale.partition(" cup #")
    found = cup_named(scale)
    assert (found.family.lower(), found.size) == (family, size)
    assert found.name == f"{family.capitalize()} #{size}"


@outside(
    efflux_time.equivalent_efflux,
    kind=Kind.LIBRARY,
    source="chemicals.viscosity.viscosity_converter (Gardner/Sward 1972): Zahn #4 and Ford #4",
)
@pytest.mark.parametrize("zahn_s", [22.0, 25.0, 28.0])
def test_one_liquid_in_two_cups_by_the_older_table(zahn_s: float) -> None:
    ford_s = viscosity_converter(zahn_s, "zahn cup #4", "ford cup #4")
    found = efflux_time.equivalent_efflux(zahn_s, CUPS["zahn-4"], CUPS["ford-4"])
    assert isinstance(found, Value)
    # The two cups on which that table and the lines of ASTM agree, each within 5 % of the
    # viscosity: 10 % for both.
    assert found.value == pytest.approx(ford_s, rel=0.10)


@outside(
    cup_choice.cups_for_viscosity,
    kind=Kind.DATA,
    source="UN/ADR 2.2.3.1.4, viscosity table: 80 mm2/s runs 60 s out of the ISO 4 mm cup, 300 "
    "mm2/s 44 s "
    "out of the 6 mm cup",
)
@pytest.mark.parametrize(("viscosity", "key", "flow_s"), [(80, "iso-4", 60), (300, "iso-6", 44)])
def test_the_cups_of_the_transport_rules_are_found(
    viscosity: float, key: str, flow_s: float
) -> None:
    fits = {fit.cup.key: fit for fit in cup_choice.cups_for_viscosity(viscosity)}
    # 3.5 %: the rules round their viscosities to a limit that is easy to quote.
    assert fits[key].efflux_s == pytest.approx(flow_s, rel=0.035)


@outside(
    cup_choice.suggest_cup_for_out_of_range,
    kind=Kind.DATA,
    source="UN/ADR 2.2.3.1.4, viscosity table: liquids of 300 to 700 mm2/s run 44 to 100 s out of "
    "the ISO "
    "6 mm cup; the Ford #4 cup ends at 368 mm2/s",
)
def test_after_too_long_in_a_cup_one_for_thicker_liquids_is_named() -> None:
    found = cup_choice.suggest_cup_for_out_of_range(
        CUPS["ford-4"], 110.0, owned=["ford 4", "iso 4", "iso 6"]
    )
    assert isinstance(found, Outside)
    assert found.advice == "Use ISO 6 mm."
    assert "110 s is above the 100 s" in plain(found.reason)


@outside(cup_runs.run_statistics, kind=Kind.LIBRARY, source="numpy mean and ptp")
@given(st.lists(st.floats(15.0, 100.0), min_size=1, max_size=8))
def test_statistics_of_runs_agree_with_numpy(runs: list[float]) -> None:
    found = cup_runs.run_statistics(runs)
    assert found.count == len(runs)
    assert found.mean_s == pytest.approx(np.mean(runs), rel=1e-12)
    assert found.spread_s == pytest.approx(np.ptp(runs), abs=1e-12)
    assert found.spread_fraction == pytest.approx(np.ptp(runs) / np.mean(runs), abs=1e-12)
    assert abs(found.reported_s - np.mean(runs)) <= 0.1 + 1e-9  # to the nearest 0.2 s


@outside(
    coverage.practical_coverage_m2_l,
    coverage.material_for_area_ml,
    kind=Kind.LIBRARY,
    source="pint: a volume spread over an area, what is lost taken off",
)
@given(
    st.floats(10, 200), st.floats(0.2, 1), st.floats(0.1, 1), st.floats(0, 0.5), st.floats(1, 50)
)
def test_a_volume_spread_over_an_area(
    dry: float, solids: float, lands: float, lost: float, area: float
) -> None:
    spread = (UNITS("1 l") * (1 - lost) * lands * solids / (dry * UNITS.um)).to("m**2").magnitude
    found = coverage.practical_coverage_m2_l(dry, solids, lands, lost)
    assert isinstance(found, Value) and found.value == pytest.approx(spread, rel=1e-9)
    needed = coverage.material_for_area_ml(area, dry / solids, 2, lands, lost)
    assert isinstance(needed, Value)
    assert needed.value == pytest.approx(2 * 1000 * area / spread, rel=1e-9)


@outside(
    thinner_share.solids_after_thinning,
    thinner_share.wet_film_after_thinning_um,
    film_thickness.dry_film_um,
    film_thickness.wet_film_um,
    dilution.volatile_fraction,
    kind=Kind.LIBRARY,
    source="chemicals.utils.Vfs_to_zs and zs_to_Vfs: solids, solvent and thinner mixed by way of "
    "moles",
)
@given(st.floats(0.1, 0.9), st.floats(0.01, 1.0), st.floats(20, 300))
def test_solids_in_a_thinned_mix_by_way_of_moles(
    solids: float, thinned: float, wet_um: float
) -> None:
    volumes = [250.0, 110.0, 130.0]  # molar volumes: any do, they go in and come out again
    litres = np.array([solids, 1.0 - solids, thinned])
    moles = litres / np.array(volumes)
    stays, solvent, thinner = zs_to_Vfs(list(moles / moles.sum()), volumes)
    assert Vfs_to_zs([stays, solvent, thinner], volumes) == pytest.approx(list(moles / moles.sum()))
    assert thinner_share.solids_after_thinning(solids, thinned) == pytest.approx(stays, rel=1e-9)
    gone = dilution.volatile_fraction(solids, thinned)
    assert gone == pytest.approx(solvent + thinner, rel=1e-9)
    dry_um = film_thickness.dry_film_um(wet_um, solids, thinned)
    assert dry_um == pytest.approx(stays * wet_um, rel=1e-9)
    assert film_thickness.wet_film_um(stays * wet_um, solids, thinned) == pytest.approx(wet_um)
    # The same dry film from the mix before: its solids were those of the coating.
    after = thinner_share.wet_film_after_thinning_um(wet_um, 0.0, thinned)
    assert after * stays == pytest.approx(wet_um * solids, rel=1e-9)


@outside(
    pours.pour_table_from_stock,
    pours.pour_table_from_component,
    kind=Kind.LIBRARY,
    source="scipy.optimize.linprog: the largest batch of given parts that the cans allow",
)
@given(
    st.lists(st.floats(0.2, 10.0), min_size=2, max_size=4),
    st.lists(st.floats(10.0, 2000.0), min_size=4, max_size=4),
)
def test_the_largest_batch_from_the_cans(parts: list[float], cans: list[float]) -> None:
    mix = [Component(f"part {n}", each) for n, each in enumerate(parts)]
    stock = {each.name: can for each, can in zip(mix, cans, strict=False)}
    share = np.array(parts) / np.sum(parts)
    best = linprog([-1.0], A_ub=share[:, None], b_ub=list(stock.values()), bounds=[(0, None)])
    table = pours.pour_table_from_stock(mix, stock, parts_by=Measure.VOLUME, measure=Measure.VOLUME)
    assert table.total == pytest.approx(-best.fun, rel=1e-7)
    assert table.amounts == pytest.approx(list(-best.fun * share), rel=1e-7)
    # From the one can that runs out it is the same batch.
    scarce = mix[int(np.argmin(np.array(list(stock.values())) / share))].name
    again = pours.pour_table_from_component(
        mix, scarce, stock[scarce], parts_by=Measure.VOLUME, measure=Measure.VOLUME
    )
    assert again.amounts == pytest.approx(list(-best.fun * share), rel=1e-7)


@outside(
    solvents.solvent_names,
    solvents.solvent,
    kind=Kind.LIBRARY,
    source="chemicals.identifiers.CAS_from_any: the names by which the library knows a substance",
)
def test_the_names_of_solvents_are_those_of_the_substances() -> None:
    cuts = {"VM&P naphtha", "Stoddard solvent", "turpentine", "xylene", "naphtha"}
    found = 0
    for name in solvents.solvent_names():
        cas = solvents.LISTED[name].cas
        if name in cuts or cas == "-":
            continue
        assert CAS_from_any(name) == cas, name
        assert solvents.solvent(name).name == name
        found += 1
    assert found >= 28


@outside(
    wait_by_rule.scaled_s,
    kind=Kind.LIBRARY,
    source="scipy.constants and numpy: temperatures by scipy's converter, halvings counted by "
    "numpy.logspace",
)
@pytest.mark.parametrize("halves_f", [12.0, 17.5, 18.0])
def test_a_time_is_halved_as_often_as_its_interval_fits(halves_f: float) -> None:
    starts_f, count = 41.0, 6
    times = np.logspace(0, -(count - 1), count, base=2.0) * 3600.0
    for n, expected in enumerate(times):
        from_c, to_c = constants.convert_temperature(
            np.array([starts_f, starts_f + n * halves_f]), "Fahrenheit", "Celsius"
        )
        found = wait_by_rule.scaled_s(3600.0, from_c, to_c, halves_f * 5 / 9)
        assert found == pytest.approx(expected, rel=1e-9)


@outside(
    blending_rule.blend_index_mm2_s,
    kind=Kind.THEOREM,
    source="a mean of indices: a blend of blends is one blend, its ends are the liquids, and it "
    "lies below "
    "the logarithmic blend of chemicals.utils (the double logarithm is concave)",
)
@given(st.floats(5.0, 2000.0), st.floats(0.6, 3.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_a_blend_of_blends_is_one_blend(thick: float, thin: float, x: float, y: float) -> None:
    blend = blending_rule.blend_index_mm2_s
    assert blend(thick, thin, 0.0) == pytest.approx(thick, rel=1e-9)
    assert blend(thick, thin, 1.0) == pytest.approx(thin, rel=1e-9)
    once = blend(thick, thin, x + y - x * y)
    assert blend(blend(thick, thin, x), thin, y) == pytest.approx(once, rel=1e-6)
    # log log is a concave bend of log: its mean, bent back, is never above the mean of the logs.
    shift = 0.8
    logs = (1 - x) * math.log(thick + shift) + x * math.log(thin + shift)
    assert blend(thick, thin, x) <= math.exp(logs) - shift + 1e-9 * thick


@outside(
    dilution.regulation_dilution_l_per_l,
    kind=Kind.THEOREM,
    source="29 CFR 1910.94(c)(6)(ii): four times the air in which the vapour stands at its limit "
    "itself, "
    "by the definition of concentration",
)
@given(st.floats(100.0, 700.0), st.floats(0.5, 8.0))
def test_the_regulation_takes_four_times_the_air_of_the_limit(vapour: float, limit: float) -> None:
    air = dilution.regulation_dilution_l_per_l(vapour, limit) / 4.0
    assert 100.0 * vapour / (vapour + air) == pytest.approx(limit, rel=1e-9)


@outside(
    weather_limits.weather_verdict,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetTDewPointFromRelHum, and the order of numbers",
)
@given(st.floats(5.0, 40.0), st.floats(20.0, 100.0), st.floats(5.0, 40.0))
def test_the_verdict_s_figures_are_the_library_s(
    air_c: float, percent: float, part_c: float
) -> None:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    dew_c = psychrolib.GetTDewPointFromRelHum(air_c, percent / 100)
    found = weather_limits.weather_verdict(air_c, percent, part_c)
    if dew_c < 1.0:
        return  # below freezing the library gives the frost point
    assert found.dew_point_c == pytest.approx(dew_c, abs=0.05)
    assert found.margin_c == pytest.approx(part_c - dew_c, abs=0.05)
    if abs(part_c - dew_c - 3.0) > 0.05:
        assert found.within is (part_c - dew_c > 3.0)


@outside(
    thin_to_viscosity.thinner_for_target,
    kind=Kind.LIBRARY,
    source="Perry's Handbook, 8th ed., tables 2-313 and 2-32, as carried by chemicals: viscosity "
    "over density "
    "of acetone, toluene, xylenes, butyl acetate and methyl ethyl ketone at 23 C",
)
def test_a_first_step_is_careful_with_the_thinnest_of_the_usual_thinners() -> None:
    viscosities = data_source("Table 2-313 Viscosity of Inorganic and Organic Liquids.tsv")

    def kinematic_mm2_s(cas: str) -> float:
        thick, dense = viscosities.loc[cas], rho_data_Perry_8E_105_l.loc[cas]
        pa_s = EQ101(296.15, *(thick[f"C{n}"] for n in range(1, 6)))
        mol_m3 = EQ105(296.15, *(dense[f"C{n}"] for n in range(1, 5)))
        return float(pa_s / (mol_m3 * MW(cas) / 1000.0) * 1e6)

    unsaid = thin_to_viscosity.thinner_for_target(1000.0, 0.0, 200.0, 66.289)
    assert isinstance(unsaid, ThinnerStep)
    for liquid in ("67-64-1", "108-88-3", "108-38-3", "95-47-6", "123-86-4", "78-93-3"):
        own = thin_to_viscosity.thinner_for_target(
            1000.0, 0.0, 200.0, 66.289, thinner_mm2_s=kinematic_mm2_s(liquid)
        )
        assert isinstance(own, ThinnerStep)
        # 1 %: the constants are printed with two digits.
        assert unsaid.step_ml <= own.step_ml * 1.01, liquid
        assert unsaid.add.high >= own.add.high * 0.99, liquid
    assert unsaid.step_ml == pytest.approx(74.0, rel=0.01)  # acetone; 98 ml for toluene
