"""Water against libraries that carry the IAPWS formulations; the ratio of water and paint."""

from __future__ import annotations

import iapws
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.delivery import water
from booth.trade.delivery.water import WaterPaintPair
from booth.trade.result import BadInput, Estimate, Outside
from tests.reference import props_si
from tests.trade.outside import Kind, outside

# The CIPM formula gives its own uncertainty as below 1e-6 and was fitted to other measurements than
# IAPWS-95, whose own is 1e-6 near room temperature; at 40 C they are 2e-6 apart.
DENSITY_TOLERANCE_KG_M3 = 0.004
PASCAL = 101325.0


@outside(
    water.water_density_kg_m3,
    kind=Kind.LIBRARY,
    source="IAPWS-95 by CoolProp and iapws; IAPWS table 15, 20, 25, 30 C",
)
@pytest.mark.parametrize("water_c", [1, 4, 10, 15, 20, 25, 30, 35, 40])
def test_density_agrees_with_iapws(water_c: float) -> None:
    ours = water.water_density_kg_m3(water_c)
    kelvin = water_c + 273.15
    theirs = props_si("D", "T", kelvin, "P", PASCAL, "Water")
    assert ours == pytest.approx(theirs, abs=DENSITY_TOLERANCE_KG_M3)
    assert ours == pytest.approx(
        iapws.IAPWS95(T=kelvin, P=PASCAL / 1e6).rho, abs=DENSITY_TOLERANCE_KG_M3
    )


@pytest.mark.parametrize(
    ("water_c", "printed", "half_a_digit"),
    [(15, 999.10, 0.005), (20, 998.207, 0.0005), (25, 997.048, 0.001), (30, 995.65, 0.005)],
)
def test_density_agrees_with_the_printed_table(
    water_c: float, printed: float, half_a_digit: float
) -> None:
    # At 25 C the two formulations differ by 0.0005 kg/m3 on top of the printed digit.
    assert water.water_density_kg_m3(water_c) == pytest.approx(printed, abs=half_a_digit)


def test_water_is_densest_at_4_c() -> None:
    densest = max(range(401), key=lambda tenth: water.water_density_kg_m3(tenth / 10))
    assert densest / 10 == 4.0  # 3.98 C, to the tenth


@pytest.mark.parametrize("water_c", [-0.1, 40.1, float("nan")])
def test_density_is_refused_outside_its_range(water_c: float) -> None:
    with pytest.raises(BadInput, match="temperature of the water"):
        water.water_density_kg_m3(water_c)


pairs = st.lists(
    st.builds(WaterPaintPair, st.floats(100, 300), st.floats(50, 300)), min_size=1, max_size=8
)


@outside(
    water.paint_from_water,
    kind=Kind.THEOREM,
    source="order statistics: the median lies between the extremes, and a ratio common to all "
    "pairs is returned",
)
@given(ratio=st.floats(0.2, 1.5), settings=st.lists(st.floats(100, 300), min_size=1, max_size=6))
def test_a_constant_ratio_is_found_whatever_the_settings(
    ratio: float, settings: list[float]
) -> None:
    own = [WaterPaintPair(each, each * ratio) for each in settings]
    found = water.paint_from_water(settings[0], own)
    assert isinstance(found, Estimate)
    assert found.likely == pytest.approx(settings[0] * ratio, rel=1e-9)
    assert found.low <= found.likely * 0.9 * (1 + 1e-9)
    assert found.high >= found.likely * 1.1 * (1 - 1e-9)


@given(pairs)
def test_every_ratio_seen_lies_within_the_estimate(own: list[WaterPaintPair]) -> None:
    found = water.paint_from_water(own[0].water_ml_min, own)
    assert isinstance(found, Estimate)
    for pair in own:
        would_be = own[0].water_ml_min * pair.paint_ml_min / pair.water_ml_min
        assert found.low - 1e-9 <= would_be <= found.high + 1e-9
    assert found.low <= found.likely <= found.high


def test_nothing_is_said_without_pairs_or_far_from_them() -> None:
    assert isinstance(water.paint_from_water(200, []), Outside)
    own = [WaterPaintPair(200, 150), WaterPaintPair(240, 180)]
    assert isinstance(water.paint_from_water(361, own), Outside)  # 240 x 1.5 = 360
    assert isinstance(water.paint_from_water(133, own), Outside)  # 200 / 1.5 = 133.3
    assert isinstance(water.paint_from_water(359, own), Estimate)
    with pytest.raises(BadInput, match="paint in a pair must be above 0"):
        water.paint_from_water(200, [WaterPaintPair(200, 0)])
