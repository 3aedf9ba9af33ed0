"""Viscosity and temperature against the liquids of a reference library."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.cups import viscosity_by_temperature
from booth.trade.cups.viscosity_by_temperature import (
    ViscosityPoint,
    one_point_band,
    viscosity_at_temperature,
)
from booth.trade.result import BadInput, Estimate, Outside, Value
from tests.reference import props_si
from tests.trade.outside import Kind, outside
from tests.trade.said import plain

#: Liquids of CoolProp that are 2 mm2/s or thicker from 15 to 30 C: oils, glycol brines, dodecane.
LIQUIDS = [
    "INCOMP::T66",
    "INCOMP::TX22",
    "INCOMP::T72",
    "INCOMP::PNF",
    "INCOMP::DowQ2",
    "INCOMP::MEG-60%",
    "INCOMP::MPG-60%",
]
ATMOSPHERE_PA = 101325


def known_mm2_s(liquid: str, at_c: float) -> float:
    state = ("T", at_c + 273.15, "P", ATMOSPHERE_PA, liquid)
    return props_si("V", *state) / props_si("D", *state) * 1e6


def two_points(liquid: str) -> tuple[ViscosityPoint, ViscosityPoint]:
    return tuple(ViscosityPoint(c, known_mm2_s(liquid, c)) for c in (15.0, 30.0))  # type: ignore[return-value]


@outside(
    viscosity_by_temperature.viscosity_at_temperature,
    kind=Kind.LIBRARY,
    source="CoolProp: heat transfer liquids and glycols",
)
@pytest.mark.parametrize("liquid", LIQUIDS)
@pytest.mark.parametrize("at_c", [16.0, 18.0, 20.0, 22.5, 25.0, 28.0])
def test_real_liquids_follow_between_two_points(liquid: str, at_c: float) -> None:
    figure = viscosity_at_temperature(at_c, *two_points(liquid))
    assert isinstance(figure, Value)
    # 1.1 %: Walther's line departs from T72 by 1.01 % in the middle, from the others by less.
    assert figure.value == pytest.approx(known_mm2_s(liquid, at_c), rel=0.011)


@outside(
    viscosity_by_temperature.viscosity_at_temperature,
    kind=Kind.LIBRARY,
    source="CoolProp: heat transfer liquids and glycols",
)
@pytest.mark.parametrize("liquid", LIQUIDS)
@pytest.mark.parametrize("at_c", [5.0, 8.0, 10.0, 12.0, 33.0, 35.0, 40.0])
def test_beyond_the_points_the_estimate_holds_the_truth(liquid: str, at_c: float) -> None:
    figure = viscosity_at_temperature(at_c, *two_points(liquid))
    assert isinstance(figure, Estimate)
    assert figure.low <= known_mm2_s(liquid, at_c) <= figure.high
    assert "beyond" in figure.rule


@outside(
    viscosity_by_temperature.viscosity_at_temperature,
    kind=Kind.LIBRARY,
    source="CoolProp T66: Walther's line errs less than an Arrhenius line",
)
def test_walther_is_nearer_than_arrhenius() -> None:
    cool, warm = two_points("INCOMP::T66")
    share = (1 / 308.15 - 1 / 288.15) / (1 / 303.15 - 1 / 288.15)
    arrhenius = cool.viscosity_mm2_s * (warm.viscosity_mm2_s / cool.viscosity_mm2_s) ** share
    known = known_mm2_s("INCOMP::T66", 35.0)
    figure = viscosity_at_temperature(35.0, cool, warm)
    assert isinstance(figure, Estimate)
    assert abs(figure.likely / known - 1) < abs(arrhenius / known - 1) / 3


@outside(
    viscosity_by_temperature.one_point_band,
    kind=Kind.LIBRARY,
    source="ASTM D4212 8.1 (up to 5 % a degree F), held against the liquids of CoolProp",
)
@pytest.mark.parametrize("liquid", LIQUIDS)
@pytest.mark.parametrize("at_c", [18.0, 19.5, 20.5, 24.0, 30.0])
def test_no_liquid_moves_by_more_than_the_band(liquid: str, at_c: float) -> None:
    band = one_point_band(at_c, ViscosityPoint(20.0, known_mm2_s(liquid, 20.0)))
    assert isinstance(band, Estimate)
    assert band.low <= known_mm2_s(liquid, at_c) <= band.high


@outside(
    viscosity_by_temperature.one_point_band,
    kind=Kind.LIBRARY,
    source="CoolProp T66 against ASTM D4212 8.1: it moves by more",
)
def test_a_thick_oil_in_the_cold_leaves_the_band_as_the_docstring_admits() -> None:
    band = one_point_band(12.0, ViscosityPoint(20.0, known_mm2_s("INCOMP::T66", 20.0)))
    assert isinstance(band, Estimate)
    assert known_mm2_s("INCOMP::T66", 12.0) > band.high
    assert "in the cold" in (one_point_band.__doc__ or "")


def test_a_degree_fahrenheit_is_five_percent() -> None:
    band = one_point_band(20.0 - 1 / 1.8, ViscosityPoint(20.0, 100.0))
    assert isinstance(band, Estimate)
    assert band.high == pytest.approx(105.0, rel=1e-12)  # floating point only
    assert band.low == 100.0


def test_one_point_is_never_corrected() -> None:
    point = ViscosityPoint(20.0, 80.0)
    figure = viscosity_at_temperature(25.0, point)
    assert isinstance(figure, Outside) and "25 C" in plain(figure.advice)
    same = viscosity_at_temperature(20.05, point)
    assert isinstance(same, Value) and same.value == 80.0
    assert isinstance(one_point_band(31.0, point), Outside)


@pytest.mark.parametrize(
    ("first", "second", "at_c", "says"),
    [
        ((20.0, 80.0), (22.0, 70.0), 21.0, "apart"),
        ((20.0, 80.0), (30.0, 81.0), 25.0, "not the thinner"),
        ((20.0, 80.0), (30.0, 60.0), 41.0, "too far"),
        ((20.0, 80.0), (24.0, 70.0), 29.0, "too far"),
        ((20.0, 2.5), (30.0, 1.9), 25.0, "thinner than"),
    ],
)
def test_refusals(
    first: tuple[float, float], second: tuple[float, float], at_c: float, says: str
) -> None:
    figure = viscosity_at_temperature(at_c, ViscosityPoint(*first), ViscosityPoint(*second))
    assert isinstance(figure, Outside) and says in figure.reason


liquids = st.tuples(st.floats(2.0, 5000.0), st.floats(1.05, 8.0), st.floats(5.0, 20.0))


@given(liquids, st.floats(0.0, 1.0))
def test_the_line_goes_through_both_points_and_falls(
    liquid: tuple[float, float, float], share: float
) -> None:
    thin, ratio, apart = liquid
    cool, warm = ViscosityPoint(15.0, thin * ratio), ViscosityPoint(15.0 + apart, thin)
    # Either way round it is the same line.
    for pair in ((cool, warm), (warm, cool)):
        for point in pair:
            figure = viscosity_at_temperature(point.temperature_c, *pair)
            assert isinstance(figure, Value)
            # Rounding, magnified by undoing two logarithms.
            assert figure.value == pytest.approx(point.viscosity_mm2_s, rel=1e-9)
    between = viscosity_at_temperature(15.0 + share * apart, cool, warm)
    assert isinstance(between, Value)
    assert thin * (1 - 1e-9) <= between.value <= thin * ratio * (1 + 1e-9)


@given(st.floats(-10.0, 10.0), st.floats(1.0, 1000.0))
def test_the_band_begins_at_the_measurement(warmer_c: float, thick: float) -> None:
    band = one_point_band(20.0 + warmer_c, ViscosityPoint(20.0, thick))
    assert isinstance(band, Estimate)
    assert thick in (band.low, band.high)
    assert math.isclose(band.likely**2, band.low * band.high, rel_tol=1e-9)


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), -300.0])
def test_bad_numbers_get_a_sentence(bad: float) -> None:
    good = ViscosityPoint(20.0, 80.0)
    for call in (
        lambda: viscosity_at_temperature(bad, good),
        lambda: viscosity_at_temperature(20.0, ViscosityPoint(bad, 80.0)),
        lambda: viscosity_at_temperature(20.0, good, ViscosityPoint(30.0, bad)),
        lambda: one_point_band(bad, good),
    ):
        with pytest.raises(BadInput, match=r"\.$"):
            call()
