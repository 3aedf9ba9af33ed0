"""Catches, against pint and scipy, and against the facts of the trade."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.delivery import catches
from booth.trade.result import BadInput
from tests.reference import UNITS, props_si
from tests.trade.outside import Kind, outside

US_FL_OZ_ML = 29.5735295625  # NIST Handbook 44, appendix C: 1 US fl oz, exact
REL = 1e-12  # a handful of floating-point operations, nothing else differs

positive = st.floats(0.01, 1e5)


@outside(
    catches.time_to_empty_s,
    kind=Kind.LIBRARY,
    source="pint: volume over flow; 20 US fl oz at 6 fl oz/min are 3 min 20 s",
)
def test_a_full_cup_of_20_fl_oz_at_6_fl_oz_a_minute_lasts_3_min_20_s_in_both_systems() -> None:
    full, flow = 20 * UNITS.US_fluid_ounce, 6 * UNITS.US_fluid_ounce / UNITS.minute
    in_ml = catches.time_to_empty_s(full.to("ml").magnitude, flow.to("ml/min").magnitude)
    assert in_ml == pytest.approx((full / flow).to("s").magnitude, rel=REL)
    assert in_ml == pytest.approx(3 * 60 + 20, rel=REL)
    assert catches.time_to_empty_s(20 * US_FL_OZ_ML, 6 * US_FL_OZ_ML) == pytest.approx(200.0)
    # The same in round metric figures: 590 ml at 177 ml/min is 3 min 20 s as well.
    assert catches.time_to_empty_s(590, 177) == pytest.approx(200.0, rel=REL)


@outside(
    catches.delivery_from_volume,
    kind=Kind.LIBRARY,
    source="pint: volume over time in ml/min and US fl oz/min",
)
@given(volume_ml=positive, duration_s=positive)
def test_delivery_by_volume_is_volume_over_time(volume_ml: float, duration_s: float) -> None:
    expected = (volume_ml * UNITS.ml / (duration_s * UNITS.s)).to("ml/min").magnitude
    assert catches.delivery_from_volume(volume_ml, duration_s) == pytest.approx(expected, rel=1e-9)


@outside(
    catches.delivery_from_weight, kind=Kind.LIBRARY, source="pint: weight over density over time"
)
@given(weight_g=positive, density=st.floats(0.6, 3.0), duration_s=positive)
def test_delivery_by_weight_is_weight_over_density_over_time(
    weight_g: float, density: float, duration_s: float
) -> None:
    quantity = weight_g * UNITS.g / (density * UNITS.g / UNITS.ml) / (duration_s * UNITS.s)
    assert catches.delivery_from_weight(weight_g, density, duration_s) == pytest.approx(
        quantity.to("ml/min").magnitude, rel=1e-9
    )


@outside(
    catches.delivery_of_water,
    kind=Kind.LIBRARY,
    source="CoolProp (IAPWS-95): density of water, 200 g at 20 C",
)
def test_200_g_of_water_at_20_c_is_200_36_ml() -> None:
    per_ml = props_si("D", "T", 293.15, "P", 101325.0, "Water") / 1000.0
    assert catches.delivery_of_water(200, 60, 20) == pytest.approx(200 / per_ml, rel=1e-5)
    assert catches.delivery_of_water(200, 60, 20) == pytest.approx(200.36, abs=0.005)  # as printed
    assert catches.delivery_of_water(200, 30, 20) == pytest.approx(400.72, abs=0.01)


@outside(
    catches.catch_statistics,
    kind=Kind.LIBRARY,
    source="numpy mean, ptp and sample standard deviation",
)
@given(st.lists(st.floats(1.0, 2000.0), min_size=2, max_size=12))
def test_statistics_agree_with_numpy(caught: list[float]) -> None:
    ours = catches.catch_statistics(caught)
    sd = np.std(caught, ddof=1)
    assert ours.count == len(caught)
    assert ours.mean_ml_min == pytest.approx(np.mean(caught), rel=1e-12)
    assert (ours.least_ml_min, ours.most_ml_min) == (np.min(caught), np.max(caught))
    assert ours.spread_ml_min == pytest.approx(np.ptp(caught))
    # Catches that are nearly equal: both means round, at 2000 by some 1e-13, and so does this.
    assert ours.sd_ml_min == pytest.approx(sd, rel=1e-6, abs=1e-9)
    assert ours.cv == pytest.approx(sd / np.mean(caught), rel=1e-6, abs=1e-9)


def test_a_single_catch_has_no_scatter_to_speak_of() -> None:
    one = catches.catch_statistics([180.0])
    assert (one.count, one.mean_ml_min, one.spread_ml_min) == (1, 180.0, 0.0)
    assert one.sd_ml_min is None
    assert one.cv is None
    assert catches.catch_statistics([0.0, 0.0]).cv is None


@given(volume=positive, flow=positive)
def test_what_is_caught_while_a_cup_empties_is_the_cup(volume: float, flow: float) -> None:
    time_s = catches.time_to_empty_s(volume, flow)
    assert catches.delivery_from_volume(volume, time_s) == pytest.approx(flow, rel=1e-9)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: catches.delivery_from_volume(-1, 60), "volume caught must be 0 ml or more"),
        (lambda: catches.delivery_from_volume(100, 0), "duration of the catch must be above 0 s"),
        (lambda: catches.delivery_from_volume(math.nan, 60), "finite"),
        (lambda: catches.delivery_from_weight(100, 0, 60), "density must be above 0 g/ml"),
        (lambda: catches.delivery_of_water(100, 60, 41), "40 C or less"),
        (lambda: catches.catch_statistics([]), "at least one is needed"),
        (lambda: catches.catch_statistics([100.0, -1.0]), "0 ml/min or more"),
        (lambda: catches.time_to_empty_s(600, 0), "delivery must be above 0 ml/min"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
