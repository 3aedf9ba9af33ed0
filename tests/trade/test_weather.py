"""Dew point and vapour pressure against psychrolib and IAPWS; the verdict against the two rules."""

from __future__ import annotations

import math

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import iapws97

from booth.trade.result import BadInput
from booth.trade.weather import humid_air, weather_limits
from booth.trade.weather.weather_limits import Bounds
from tests.trade.outside import Kind, outside

psychrolib.SetUnitSystem(psychrolib.SI)

#: Alduchov and Eskridge state 0.4 % for the vapour pressure from -40 to 50 C.
STATED = 0.004
air = st.floats(-20.0, 45.0)
humidity = st.floats(1.0, 100.0)


def has_a_dew_point(air_c: float, percent: float) -> bool:
    """Whether the vapour in this air saturates air of -40 C or more, where the form ends."""
    vapour = humid_air.saturation_pressure_pa(air_c) * percent / 100.0
    return vapour > humid_air.saturation_pressure_pa(-40.0) * (1.0 + 1e-6)


#: Air that has a dew point by the formula: temperature [degC] and humidity [%].
AIRS = st.tuples(air, humidity).filter(lambda each: has_a_dew_point(*each))


@outside(
    humid_air.saturation_pressure_pa,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5 (ASHRAE Fundamentals 2017, ch. 1)",
)
@pytest.mark.parametrize("air_c", range(1, 51))
def test_saturation_pressure_is_ashraes_within_what_the_authors_state(air_c: int) -> None:
    assert humid_air.saturation_pressure_pa(air_c) == pytest.approx(
        psychrolib.GetSatVapPres(air_c), rel=STATED
    )


@outside(
    humid_air.saturation_pressure_pa, kind=Kind.LIBRARY, source="IAPWS-IF97, as carried by iapws"
)
@pytest.mark.parametrize("air_c", (5, 15, 20, 25, 35, 45))
def test_saturation_pressure_is_that_of_the_steam_tables(air_c: int) -> None:
    pascal = iapws97._PSat_T(air_c + 273.15) * 1e6
    assert humid_air.saturation_pressure_pa(air_c) == pytest.approx(pascal, rel=STATED)


@outside(
    humid_air.dew_point_c,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5 (ASHRAE Fundamentals 2017, ch. 1)",
)
@pytest.mark.parametrize(
    ("air_c", "percent", "printed"),
    [(20, 50, 9.27), (25, 60, 16.70), (30, 70, 23.93), (20, 85, 17.40)],
)
def test_dew_point_as_the_reference_library_gives_it(
    air_c: float, percent: float, printed: float
) -> None:
    reference = psychrolib.GetTDewPointFromRelHum(air_c, percent / 100)
    assert reference == pytest.approx(printed, abs=0.005)
    # A thermometer is not read closer than 0.1 C; half of that is no difference.
    assert humid_air.dew_point_c(air_c, percent) == pytest.approx(reference, abs=0.05)


@outside(
    humid_air.dew_point_c,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5 (ASHRAE Fundamentals 2017, ch. 1)",
)
@given(st.floats(0.5, 50.0), st.floats(5.0, 100.0))
def test_dew_points_above_freezing(air_c: float, percent: float) -> None:
    """Below 0 C the library gives the frost point, which is another thing: not compared."""
    reference = psychrolib.GetTDewPointFromRelHum(air_c, percent / 100)
    if reference > 0.0:
        # 0.4 % stated, at both ends of the way, over the 6 % by which the pressure grows per K.
        assert humid_air.dew_point_c(air_c, percent) == pytest.approx(reference, abs=0.13)


@given(AIRS)
def test_air_cooled_to_its_dew_point_is_saturated(read: tuple[float, float]) -> None:
    air_c, percent = read
    dew_c = humid_air.dew_point_c(air_c, percent)
    assert dew_c <= air_c + 1e-9
    assert humid_air.saturation_pressure_pa(dew_c) == pytest.approx(
        humid_air.saturation_pressure_pa(air_c) * percent / 100, rel=1e-9
    )


@given(AIRS)
def test_damper_air_has_a_higher_dew_point(read: tuple[float, float]) -> None:
    air_c, percent = read
    if percent <= 99.0:
        assert humid_air.dew_point_c(air_c, percent + 1) > humid_air.dew_point_c(air_c, percent)


@given(air, humidity)
def test_air_too_dry_for_the_formula_is_refused_and_no_other(air_c: float, percent: float) -> None:
    if not has_a_dew_point(air_c, percent * (1.0 - 1e-5)):
        if not has_a_dew_point(air_c, percent * (1.0 + 1e-5)):
            with pytest.raises(BadInput, match="so dry"):
                humid_air.dew_point_c(air_c, percent)
    else:
        assert humid_air.dew_point_c(air_c, percent) > -40.0


@outside(
    humid_air.dew_margin_c,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5: a wall at 14 C in air of 20 C and 60 %",
)
def test_margin_of_a_cold_part() -> None:
    dew_c = psychrolib.GetTDewPointFromRelHum(20.0, 0.60)
    assert humid_air.dew_margin_c(20.0, 60.0, 14.0) == pytest.approx(14.0 - dew_c, abs=0.05)


@given(AIRS, st.floats(-10, 60))
def test_margin_and_dew_point_make_the_part(read: tuple[float, float], part_c: float) -> None:
    air_c, percent = read
    margin = humid_air.dew_margin_c(air_c, percent, part_c)
    assert margin + humid_air.dew_point_c(air_c, percent) == pytest.approx(part_c, abs=1e-9)


@outside(
    humid_air.drying_power_pa, kind=Kind.LIBRARY, source="psychrolib 2.5, GetVapourPressureDeficit"
)
@given(st.floats(1.0, 50.0), st.floats(0.0, 99.0))
def test_drying_power_is_the_vapour_pressure_deficit(air_c: float, percent: float) -> None:
    ratio = psychrolib.GetHumRatioFromRelHum(air_c, percent / 100, 101325)
    reference = psychrolib.GetVaporPressureDeficit(air_c, ratio, 101325)
    # abs: near saturation the library subtracts two nearly equal pressures of some kPa.
    assert humid_air.drying_power_pa(air_c, percent) == pytest.approx(
        reference, rel=STATED, abs=0.05
    )


@outside(
    humid_air.relative_drying_power,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetVapourPressureDeficit",
)
@pytest.mark.parametrize(("air_c", "percent"), [(15, 75), (10, 80), (23, 30), (35, 40), (23, 50)])
def test_relative_drying_power(air_c: float, percent: float) -> None:
    def deficit(t: float, rh: float) -> float:
        ratio = psychrolib.GetHumRatioFromRelHum(t, rh / 100, 101325)
        return float(psychrolib.GetVaporPressureDeficit(t, ratio, 101325))

    share = humid_air.relative_drying_power(air_c, percent)
    # 0.4 % stated, in numerator and denominator.
    assert share == pytest.approx(deficit(air_c, percent) / deficit(23, 50), rel=2 * STATED)


def test_drying_power_at_its_ends() -> None:
    assert humid_air.relative_drying_power(23, 50) == 1.0
    assert humid_air.relative_drying_power(23, 0) == 2.0
    assert humid_air.drying_power_pa(30, 100) == 0.0


@outside(
    weather_limits.weather_verdict,
    kind=Kind.LIBRARY,
    source="MIL-HDBK-1110 9.6.6 (5 F) and ISO 8502-4 as practised (3 C); psychrolib 2.5",
)
def test_20_c_at_83_5_percent_passes_five_fahrenheit_and_fails_three_celsius() -> None:
    dew_c = psychrolib.GetTDewPointFromRelHum(20.0, 0.835)
    assert 5 / 1.8 < 20 - dew_c < 3.0  # the library says so too
    assert not weather_limits.weather_verdict(20, 83.5, 20).within
    assert weather_limits.weather_verdict(20, 83.5, 20, least_margin_c=5 / 1.8).within


def test_each_limit_is_listed_with_what_was_measured() -> None:
    verdict = weather_limits.weather_verdict(
        12.0,
        88.0,
        10.5,
        air=Bounds(15, 30),
        humidity=Bounds(high=80),
        part=Bounds(low=10),
        least_margin_c=2.0,
    )
    found = {
        check.name: (check.measured, check.low, check.high, check.ok) for check in verdict.checks
    }
    assert found["air"] == (12.0, 15, 30, False)
    assert found["humidity"] == (88.0, None, 80, False)
    assert found["part"] == (10.5, 10, None, True)
    assert found["dew margin"] == (verdict.margin_c, 2.0, None, False)
    assert [check.name for check in verdict.failed] == ["air", "humidity", "dew margin"]
    assert not verdict.within


def test_a_limit_nobody_gave_is_not_listed_and_the_stricter_margin_is_the_default() -> None:
    verdict = weather_limits.weather_verdict(20, 50, 20, air=Bounds())
    (check,) = verdict.checks
    assert (check.name, check.low, check.unit) == ("dew margin", 3.0, "C")
    assert "stricter" in check.rule
    assert verdict.within


def test_the_ends_of_a_limit_are_allowed() -> None:
    verdict = weather_limits.weather_verdict(
        15, 80, 30, air=Bounds(15, 15), humidity=Bounds(80, 80)
    )
    assert verdict.within


@given(AIRS, st.floats(-10, 45), st.floats(0, 10))
def test_a_warmer_part_never_fails_the_margin_a_colder_one_met(
    read: tuple[float, float], part_c: float, least: float
) -> None:
    air_c, percent = read
    if weather_limits.weather_verdict(air_c, percent, part_c, least_margin_c=least).within:
        assert weather_limits.weather_verdict(
            air_c, percent, part_c + 1, least_margin_c=least
        ).within


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: humid_air.dew_point_c(20, 0), "humidity must be above 0 %; 0 % was given"),
        (lambda: humid_air.dew_point_c(20, 101), "humidity must be 100 % or less"),
        (lambda: humid_air.dew_point_c(72, 50), "air temperature must be 50 C or less; 72"),
        (lambda: humid_air.saturation_pressure_pa(math.nan), "finite number"),
        (lambda: humid_air.drying_power_pa(20, -1), "humidity must be 0 % or more"),
        (lambda: humid_air.relative_drying_power(20, 50, 23, 100), "reference humidity"),
        (lambda: humid_air.dew_margin_c(20, 50, math.inf), "part's temperature"),
        (
            lambda: weather_limits.weather_verdict(20, 50, 20, air=Bounds(30, 15)),
            "upside down: from 30",
        ),
        (lambda: weather_limits.weather_verdict(20, 50, 20, least_margin_c=-1), "least dew margin"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says):
        call()
