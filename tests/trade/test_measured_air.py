"""Psychrometer, spread and weight of the air, against libraries and a printed table."""

from __future__ import annotations

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.result import BadInput
from booth.trade.weather import air_density, psychrometer
from booth.trade.weather.humid_air import dew_point_c
from tests.reference import props_ha
from tests.trade.outside import Kind, outside

psychrolib.SetUnitSystem(psychrolib.SI)
ATM_PA = 101325.0


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32.0) / 1.8


@outside(
    psychrometer.humidity_from_wet_bulb_percent,
    kind=Kind.DATA,
    source="TM 5-3610-285-14 (US Army), psychrometric table: 68 F dry and 62 F wet are 71 %",
)
def test_humidity_of_the_printed_psychrometric_table() -> None:
    found = psychrometer.humidity_from_wet_bulb_percent(celsius(68), celsius(62))
    # Printed without decimals, from a formula of its day that may differ in the last of them.
    assert found == pytest.approx(71, abs=1.0)


@outside(
    psychrometer.humidity_from_wet_bulb_percent,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetRelHumFromTWetBulb (ASHRAE Fundamentals 2017, ch. 1)",
)
@pytest.mark.parametrize("air_c", range(10, 51, 5))
@pytest.mark.parametrize("depression_k", [0.0, 1.0, 2.0, 4.0, 6.0, 8.0])
def test_humidity_from_two_thermometers(air_c: float, depression_k: float) -> None:
    wet_c = air_c - depression_k
    reference = 100 * psychrolib.GetRelHumFromTWetBulb(air_c, wet_c, ATM_PA)
    # ASHRAE's wet bulb is the one of saturation without loss; a wick's constant is 0.00062 (Fan and
    # Whiting 1987) to 0.00066 / K in print: 6 % of p (t - tw), against the saturation pressure.
    doubt = 100 * 4e-5 * ATM_PA * depression_k / psychrolib.GetSatVapPres(air_c)
    assert psychrometer.humidity_from_wet_bulb_percent(air_c, wet_c) == pytest.approx(
        reference, abs=doubt + 0.5
    )


@outside(
    psychrometer.wet_bulb_c,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetTWetBulbFromRelHum (ASHRAE Fundamentals 2017, ch. 1)",
)
@pytest.mark.parametrize("air_c", range(15, 41, 5))
@pytest.mark.parametrize("percent", [30, 50, 70, 90, 100])
def test_wet_bulb_of_an_air(air_c: float, percent: float) -> None:
    reference = psychrolib.GetTWetBulbFromRelHum(air_c, percent / 100, ATM_PA)
    # The same doubt as above, in kelvin: a third of one at most in this air.
    assert psychrometer.wet_bulb_c(air_c, percent) == pytest.approx(reference, abs=0.35)


@given(st.floats(15.0, 50.0), st.floats(30.0, 100.0), st.floats(75.0, 108.0))
def test_the_wet_bulb_of_an_air_gives_its_humidity_back(
    air_c: float, percent: float, kpa: float
) -> None:
    wet_c = psychrometer.wet_bulb_c(air_c, percent, kpa)
    assert wet_c <= air_c
    # The wet bulb is found to a billionth of a kelvin.
    found = psychrometer.humidity_from_wet_bulb_percent(air_c, wet_c, kpa)
    assert found == pytest.approx(percent, abs=1e-6)


@outside(
    psychrometer.humidity_from_dew_point_percent,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetRelHumFromTDewPoint (ASHRAE Fundamentals 2017, ch. 1)",
)
@given(st.floats(1.0, 50.0), st.floats(0.0, 40.0))
def test_humidity_from_the_spread(air_c: float, spread_k: float) -> None:
    dew_c = max(0.1, air_c - spread_k)
    reference = 100 * psychrolib.GetRelHumFromTDewPoint(air_c, dew_c)
    # 0.4 % stated by the authors of the form, in numerator and denominator.
    found = psychrometer.humidity_from_dew_point_percent(air_c, dew_c)
    assert found == pytest.approx(reference, rel=0.008)


@given(st.floats(0.0, 50.0), st.floats(10.0, 99.9))
def test_the_dew_point_of_an_air_gives_its_humidity_back(air_c: float, percent: float) -> None:
    found = psychrometer.humidity_from_dew_point_percent(air_c, dew_point_c(air_c, percent))
    assert found == pytest.approx(percent, rel=1e-9)


@outside(
    air_density.moist_air_density_kg_m3,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetMoistAirDensity; CoolProp, HAPropsSI (real gas)",
)
@pytest.mark.parametrize("air_c", range(-10, 51, 10))
@pytest.mark.parametrize("percent", [0, 30, 60, 100])
@pytest.mark.parametrize("kpa", [80.0, 101.325])
def test_density_of_moist_air(air_c: float, percent: float, kpa: float) -> None:
    found = air_density.moist_air_density_kg_m3(air_c, percent, kpa)
    ratio = psychrolib.GetHumRatioFromRelHum(air_c, percent / 100, 1000 * kpa)
    assert found == pytest.approx(
        psychrolib.GetMoistAirDensity(air_c, ratio, 1000 * kpa), rel=3e-4
    )  # 0.4 % of the vapour, which is up to 7 % of the air
    real = 1.0 / props_ha("Vha", "T", air_c + 273.15, "P", 1000 * kpa, "R", percent / 100)
    # Real air is denser than an ideal gas by up to 0.1 %, and holds a little more vapour.
    assert found == pytest.approx(real, rel=1.2e-3)


def test_damp_air_is_the_lighter() -> None:
    dry, damp = (air_density.moist_air_density_kg_m3(30.0, percent) for percent in (0.0, 100.0))
    assert damp < dry


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: psychrometer.humidity_from_wet_bulb_percent(20, 21), "wet thermometer must be 20"),
        (lambda: psychrometer.humidity_from_wet_bulb_percent(20, 2), "No air has these two"),
        (lambda: psychrometer.humidity_from_wet_bulb_percent(60, 20), "air temperature must be 50"),
        (lambda: psychrometer.wet_bulb_c(6, 10), "may freeze"),
        (lambda: psychrometer.humidity_from_dew_point_percent(20, 25), "dew point must be 20"),
        (lambda: air_density.moist_air_density_kg_m3(20, 50, 14.7), "must be 50 kPa or more"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says):
        call()
