"""Solids, volatile compounds, transfer and vapour from weights; a receiver for a wanted time."""

from __future__ import annotations

import math

import numpy as np
import pytest
from chemicals.identifiers import MW
from chemicals.utils import ws_to_zs, zs_to_Vfs
from hypothesis import assume, given
from hypothesis import strategies as st

from booth.trade.air import receiver
from booth.trade.film import solids_and_voc, transfer_efficiency
from booth.trade.result import BadInput, Estimate, Outside, Value
from booth.trade.ventilation import vapour_in_air
from tests.reference import UNITS
from tests.trade.outside import Kind, outside
from tests.trade.test_air import energy_balance

G_L_PER_LB_GAL = UNITS("1 lb/gallon").to("g/l").magnitude
shares = st.floats(0.05, 0.95)
density = st.floats(0.7, 1.6)


@outside(
    solids_and_voc.solids_from_weights,
    kind=Kind.LIBRARY,
    source="chemicals.utils.ws_to_zs and zs_to_Vfs: by way of moles",
)
@given(shares, st.floats(1.05, 4.0), st.floats(0.65, 1.0))
def test_volume_solids_by_way_of_moles(solids: float, solid_g_ml: float, gone_g_ml: float) -> None:
    molar = [500.0, 100.0]  # any molar masses do: they go in and come out again
    volumes = [m / d for m, d in zip(molar, (solid_g_ml, gone_g_ml), strict=True)]
    known = zs_to_Vfs(ws_to_zs([solids, 1.0 - solids], molar), volumes)[0]
    coating_g_ml = 1.0 / (solids / solid_g_ml + (1.0 - solids) / gone_g_ml)
    found = solids_and_voc.solids_from_weights(solids, coating_g_ml, gone_g_ml)
    assert found == pytest.approx(known, rel=1e-9)


@outside(
    solids_and_voc.voc_less_water_g_l,
    kind=Kind.DATA,
    source="paintcenter.org, March 2004, worked example: 20.8 % solids and 53.0 % water by weight, "
    "8.52 lb/gal: VOC 2.23 lb/gal in the can, 4.87 lb/gal less water",
)
@outside(
    solids_and_voc.voc_of_coating_g_l,
    kind=Kind.DATA,
    source="paintcenter.org, March 2004, as above",
)
def test_voc_of_the_printed_example() -> None:
    coating = 8.52 * G_L_PER_LB_GAL / 1000.0
    # Printed with two decimals: half of the last, and its water is 8.33 lb/gal to three digits.
    material = solids_and_voc.voc_of_coating_g_l(coating, 0.208, 0.530) / G_L_PER_LB_GAL
    assert material == pytest.approx(2.23, abs=0.0051)
    less_water = solids_and_voc.voc_less_water_g_l(coating, 0.208, 0.530) / G_L_PER_LB_GAL
    assert less_water == pytest.approx(4.87, abs=0.01)


@outside(
    solids_and_voc.voc_of_solids_g_l,
    kind=Kind.DATA,
    source="F.A.C. 62-296.500 (Florida), table 296.500-1, worked example: 3 lb/gal of coating at "
    "7.36 "
    "lb/gal of VOC are 5.07 lb/gal of solids",
)
def test_voc_of_solids_of_the_printed_example() -> None:
    found = solids_and_voc.voc_of_solids_g_l(3.0 * G_L_PER_LB_GAL) / G_L_PER_LB_GAL
    # The example rounds 0.592 and 1.689 to three digits on its way.
    assert found == pytest.approx(5.07, rel=1.5e-3)


@outside(
    solids_and_voc.voc_less_water_g_l,
    solids_and_voc.voc_of_solids_g_l,
    kind=Kind.THEOREM,
    source="mass balance: VOC in the can over volume solids is VOC less water over its own solids",
)
@given(shares, st.floats(0.0, 0.9), st.floats(0.0, 0.9), st.floats(1.1, 3.0), st.floats(0.7, 1.0))
def test_either_way_to_the_solids_is_one(
    solids: float, water: float, exempt: float, solid_g_ml: float, solvent_g_ml: float
) -> None:
    left = 1.0 - solids
    water, exempt = water * left, exempt * left * (1.0 - water)
    voc = left - water - exempt
    assume(voc > 0.01)
    volumes = {
        "solids": solids / solid_g_ml,
        "water": water / 0.9982,  # Tanaka et al. 2001, at 20 C
        "exempt": exempt / 0.79,
        "voc": voc / solvent_g_ml,
    }
    litre = sum(volumes.values())
    less = solids_and_voc.voc_less_water_g_l(1.0 / litre, solids, water, exempt, 0.79)
    assert less == pytest.approx(1000 * voc / (volumes["solids"] + volumes["voc"]), rel=1e-6)
    of_solids = solids_and_voc.voc_of_solids_g_l(less, solvent_g_ml)
    in_can = solids_and_voc.voc_of_coating_g_l(1.0 / litre, solids, water, exempt)
    assert of_solids == pytest.approx(in_can / (volumes["solids"] / litre), rel=1e-6)


@outside(
    transfer_efficiency.efficiency_from_weights,
    kind=Kind.SIMULATION,
    source="a panel sprayed drop by drop with numpy: every drop lands or does not, solvent "
    "leaves, and "
    "the scale tells (ASTM D5286 3.1.3)",
)
@pytest.mark.parametrize(("lands", "solids"), [(0.25, 0.5), (0.65, 0.38), (0.9, 0.7)])
def test_transfer_efficiency_of_a_panel_on_the_scale(lands: float, solids: float) -> None:
    rng = np.random.default_rng(4)
    drops_g = rng.lognormal(-18.0, 0.5, 200_000)
    landed = rng.random(drops_g.size) < lands
    film_g = drops_g[landed] * solids  # what stays once the solvent has left
    found = transfer_efficiency.efficiency_from_weights(
        float(film_g.sum()), float(drops_g.sum()), solids
    )
    assert isinstance(found, Value)
    # 200,000 drops: sqrt(p (1 - p) / n), a third more since they differ in size; four times that.
    scatter = math.sqrt(lands * (1.0 - lands) / drops_g.size) * 1.2
    assert found.value == pytest.approx(lands, abs=4 * scatter)


def test_more_solids_than_were_sprayed_is_no_efficiency() -> None:
    found = transfer_efficiency.efficiency_from_weights(50.0, 100.0, 0.4)
    assert isinstance(found, Outside) and "solids by weight" in found.advice


#: 8 CCR 5155, table AC-1 (California): ppm, mg/m3 of one limit, both printed.
TABLE_AC_1 = {
    "acetaldehyde": ("75-07-0", 25, 45),
    "acetone": ("67-64-1", 750, 1780),
    "acetophenone": ("98-86-2", 10, 49),
    "acrylic acid": ("79-10-7", 2, 5.9),
    "adiponitrile": ("111-69-3", 2, 8.8),
}


@outside(
    vapour_in_air.vapour_by_weight_mg_m3,
    vapour_in_air.vapour_by_volume_ppm,
    kind=Kind.DATA,
    source="8 CCR 5155, table AC-1 (California): limits printed in ppm and in mg/m3; molar masses "
    "by "
    "chemicals",
)
@pytest.mark.parametrize("name", TABLE_AC_1)
def test_limits_printed_in_both(name: str) -> None:
    cas, ppm, mg_m3 = TABLE_AC_1[name]
    # Printed with two or three digits.
    assert vapour_in_air.vapour_by_weight_mg_m3(ppm, MW(cas)) == pytest.approx(mg_m3, rel=0.01)
    assert vapour_in_air.vapour_by_volume_ppm(mg_m3, MW(cas)) == pytest.approx(ppm, rel=0.01)


@outside(
    vapour_in_air.vapour_by_weight_mg_m3,
    vapour_in_air.vapour_by_volume_ppm,
    kind=Kind.LIBRARY,
    source="pint's molar gas constant: p M / (R T) at 25 C and 1 atm",
)
@given(st.floats(0.1, 1e5), st.floats(20.0, 250.0))
def test_vapour_in_air_by_the_gas_law(ppm: float, molar_mass: float) -> None:
    moles = UNITS("1 atm") / (UNITS("molar_gas_constant") * UNITS.Quantity(298.15, "K"))
    weight = (moles * ppm * 1e-6 * molar_mass * UNITS("g/mol")).to("mg/m**3").magnitude
    # 24.45 is 24.4654 to four digits: 0.06 %.
    found = vapour_in_air.vapour_by_weight_mg_m3(ppm, molar_mass)
    assert found == pytest.approx(weight, rel=1e-3)
    assert vapour_in_air.vapour_by_volume_ppm(found, molar_mass) == pytest.approx(ppm, rel=1e-9)


def test_a_conversion_is_no_permission() -> None:
    assert "not a permission to breathe" in vapour_in_air.CAUTION


@outside(
    receiver.receiver_for_trigger_l,
    kind=Kind.DATA,
    source="US DOE / ORNL industrial tools suite, receiver tank sizing: 5 min at 350 against 250 "
    "cfm, 100 to "
    "60 psig, 14.7 psia: 183.75 ft3",
)
def test_a_receiver_for_five_minutes() -> None:
    psi, ft3 = UNITS("1 psi").to("kPa").magnitude, UNITS("1 foot**3").to("l").magnitude
    found = receiver.receiver_for_trigger_l(
        *(300.0, 100 * psi, 60 * psi, 350 * ft3, 250 * ft3), air_kpa=14.7 * psi
    )
    assert isinstance(found, Estimate)
    assert found.likely / ft3 == pytest.approx(183.75, rel=1e-9)


@outside(
    receiver.receiver_for_trigger_l,
    kind=Kind.SIMULATION,
    source="energy balance of a vessel without heat flow, solved by scipy, gamma from CoolProp",
)
@pytest.mark.parametrize(
    ("wanted_s", "high", "low", "use", "give"),
    [(60, 800, 500, 300, 0), (120, 800, 500, 340, 200), (300, 1000, 400, 500, 150)],
)
def test_the_larger_receiver_lasts_even_without_heat_from_the_wall(
    wanted_s: float, high: float, low: float, use: float, give: float
) -> None:
    found = receiver.receiver_for_trigger_l(wanted_s, high, low, use, give)
    assert isinstance(found, Estimate)
    # 0.3 %: gamma of real air is 1.402, and the band is built with 1.4.
    assert energy_balance(found.high, high, low, use, give) >= wanted_s * 0.997
    assert energy_balance(found.low, high, low, use, give) <= wanted_s * 1.003
    # No more than the fastest possible draw asks for.
    assert energy_balance(found.high, high, low, use, give) <= 1.41 * wanted_s


def test_a_compressor_that_keeps_up_needs_no_receiver_of_a_size() -> None:
    assert receiver.receiver_for_trigger_l(60.0, 800.0, 500.0, 200.0, 200.0) is None


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (
            lambda: solids_and_voc.solids_from_weights(0.1, 1.5, 0.7),
            "fill the can by itself",
        ),
        (lambda: solids_and_voc.voc_of_coating_g_l(1.0, 0.6, 0.5), "more than the whole coating"),
        (lambda: solids_and_voc.voc_less_water_g_l(1.0, 0.3, 0.3, 0.1), "density of the exempt"),
        (lambda: solids_and_voc.voc_less_water_g_l(1.2, 0.0, 0.9), "without water and exempt"),
        (lambda: solids_and_voc.voc_of_solids_g_l(900.0), "must be below 881"),
        (
            lambda: transfer_efficiency.efficiency_from_weights(10, 0, 0.4),
            "weight sprayed must be above 0 g",
        ),
        (lambda: vapour_in_air.vapour_by_weight_mg_m3(2e6, 92), "1e+06 ppm or less"),
        (
            lambda: receiver.receiver_for_trigger_l(60, 500, 500, 300),
            "pressure at the start must be above 500",
        ),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says.replace("+", r"\+")):
        call()
