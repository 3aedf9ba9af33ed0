"""Conversions held against what this project did not write: NIST, scipy, the registry itself."""

from __future__ import annotations

import pytest
from scipy import constants

from booth.units import Kind, System, read, read_amount, shown_value
from booth.units import registry as units_registry
from booth.units.kinds import Dimension
from booth.units.words import Unit, find, tidy, words_of
from tests.reference import UNITS as REGISTRY

US = System.US

#: Factors of NIST SP 811 (2008), Appendix B.8 (recalled; those of scipy below are independent).
#: Printed to seven digits, so a value may be off by half of the last one: 5e-7 of 1.0 at worst.
NIST = [
    ("1 fl oz", Kind.VOLUME, 29.57353),
    ("1 pt", Kind.VOLUME, 473.1765),
    ("1 qt", Kind.VOLUME, 946.3529),
    ("1 gal", Kind.VOLUME, 3785.412),
    ("1 in3", Kind.VOLUME, 16.38706),
    ("1 ft3", Kind.ROOM, 0.02831685),
    ("1 yd3", Kind.ROOM, 0.7645549),
    ("1 oz", Kind.MASS, 28.34952),
    ("1 lb", Kind.MASS, 453.5924),
    ("1 gal/min", Kind.DELIVERY, 3785.412),
    ("1 cfm", Kind.AIR_FLOW, 28.31685),
    ("1 psi", Kind.PRESSURE, 6.894757),
    ("1 bar", Kind.PRESSURE, 100.0),
    ("1 mbar", Kind.PRESSURE, 0.1),
    ("1 kgf/cm2", Kind.PRESSURE, 98.0665),
    ("1 mil", Kind.THICKNESS, 25.4),
    ("1 micron", Kind.THICKNESS, 1.0),
    ("1 in", Kind.LENGTH, 25.4),
    ("1 ft", Kind.PART_LENGTH, 0.3048),
    ("1 yd", Kind.PART_LENGTH, 0.9144),
    ("1 ft/min", Kind.SPEED, 0.00508),
    ("1 in/s", Kind.SPEED, 0.0254),
    ("1 in2", Kind.AREA, 6.4516e-4),
    ("1 ft2", Kind.AREA, 0.09290304),
    ("1 lb/gal", Kind.DENSITY, 0.1198264),
    ("1 cSt", Kind.VISCOSITY, 1.0),
    ("1 St", Kind.VISCOSITY, 100.0),
    ("1 d", Kind.TIME, 86400.0),
    ("1 F", Kind.TEMPERATURE_DIFFERENCE, 0.5555556),
]


@pytest.mark.parametrize(("entry", "kind", "expected"), NIST)
def test_factors_of_nist(entry: str, kind: Kind, expected: float) -> None:
    if kind is Kind.DENSITY:
        # One alone is below what a density field takes: ten times the factor.
        entry, expected = "10 lb/gal", 10 * expected
    assert read(entry, kind, US).value == pytest.approx(expected, rel=5e-7)


#: scipy.constants takes these from CODATA and the definitions of 1959, independently of pint.
#: Both sides are exact up to rounding; an entry is kept to twelve digits.
SCIPY = [
    ("7 fl oz", Kind.VOLUME, 7 * constants.fluid_ounce_US * 1e6),
    ("7 gal", Kind.VOLUME, 7 * constants.gallon_US * 1e6),
    ("7 fl oz/min", Kind.DELIVERY, 7 * constants.fluid_ounce_US * 1e6),
    ("7 cfm", Kind.AIR_FLOW, 7 * constants.foot**3 * 1e3),
    ("7 psi", Kind.PRESSURE, 7 * constants.psi / 1e3),
    ("7 bar", Kind.PRESSURE, 7 * constants.bar / 1e3),
    ("7 mil", Kind.THICKNESS, 7 * constants.mil * 1e6),
    ("7 in", Kind.LENGTH, 7 * constants.inch * 1e3),
    ("7 ft", Kind.PART_LENGTH, 7 * constants.foot),
    ("7 yd", Kind.PART_LENGTH, 7 * constants.yard),
    ("7 lb", Kind.MASS, 7 * constants.lb * 1e3),
    ("7 oz", Kind.MASS, 7 * constants.oz * 1e3),
    ("7 lb/gal", Kind.DENSITY, 7 * constants.lb / constants.gallon_US / 1e3),
    ("7 ft2", Kind.AREA, 7 * constants.foot**2),
    ("7 ft/min", Kind.SPEED, 7 * constants.foot / constants.minute),
    ("7 wk", Kind.TIME, 7 * constants.week),
    ("90 deg", Kind.TURNS, 90 * constants.degree / (2 * constants.pi)),
    ("7 kgf/cm2", Kind.PRESSURE, 7 * constants.kgf / 1e-4 / 1e3),
]


@pytest.mark.parametrize(("entry", "kind", "expected"), SCIPY)
def test_factors_of_scipy(entry: str, kind: Kind, expected: float) -> None:
    assert read(entry, kind, US).value == pytest.approx(expected, rel=1e-11)


@pytest.mark.parametrize("fahrenheit", [-459.67, -40.0, 0.0, 5.0, 32.0, 72.0, 98.6, 212.0])
def test_temperatures_of_scipy(fahrenheit: float) -> None:
    celsius = float(constants.convert_temperature(fahrenheit, "Fahrenheit", "Celsius"))
    # Of a difference of numbers of some hundreds: twelve digits of 459.67 are left.
    assert read(f"{fahrenheit} F", Kind.TEMPERATURE, US).value == pytest.approx(celsius, abs=1e-9)
    assert shown_value(celsius, Kind.TEMPERATURE, US) == pytest.approx(fahrenheit, abs=1e-9)
    kelvin = float(constants.convert_temperature(fahrenheit, "Fahrenheit", "Kelvin"))
    if kelvin > 0:
        entry = f"{kelvin:.6f} K"
        assert read(entry, Kind.TEMPERATURE, US).value == pytest.approx(celsius, abs=1e-6)


def test_a_mil_is_a_thickness_though_the_registry_has_an_angle() -> None:
    # scipy.constants.mil is a thousandth of an inch.
    assert read("2.5 mil", Kind.THICKNESS, US).value == pytest.approx(2.5 * constants.mil * 1e6)
    theirs = REGISTRY.Unit("mil")
    assert not theirs.is_compatible_with("meter"), "were it a length, we need no mil of our own"


def test_a_temperature_difference_is_not_a_temperature() -> None:
    # 5 F is 23 C below the freezing point of water's 32 F by 27 F: 27 x 5/9 = 15.
    assert read("5 F", Kind.TEMPERATURE, US).value == pytest.approx(-15.0)
    # SP 811 (2008) B.8: an interval of 1 degree Fahrenheit is 1/1.8 degree Celsius.
    assert read("5 F", Kind.TEMPERATURE_DIFFERENCE, US).value == pytest.approx(5 / 1.8)
    # MIL-HDBK-1110 9.6.6: 5 F of margin, which is 2.78 C.
    difference = read("5 F", Kind.TEMPERATURE_DIFFERENCE, US).value
    assert difference == pytest.approx(2.78, abs=0.005)


UNITS = dict.fromkeys(unit for dimension in Dimension for unit in words_of(dimension).values())


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: f"{unit.dimension.name}-{unit.key}")
def test_what_is_known_from_the_start_is_what_the_registry_answers(unit: Unit) -> None:
    """The kept pairs are a saving of time, not a second opinion."""
    kept = units_registry._to_reference(unit)
    asked = units_registry._ask(unit)
    # Sixteen digits less a few roundings in either chain of factors.
    assert kept == pytest.approx(asked, rel=1e-13, abs=1e-13)


@pytest.mark.parametrize(
    ("word", "dimension", "expression", "base"),
    [
        ("fl oz/min", Dimension.FLOW, "fluid_ounce / minute", "ml/min"),
        ("gal/h", Dimension.FLOW, "gallon / hour", "ml/min"),
        ("ft3/min", Dimension.FLOW, "foot ** 3 / minute", "ml/min"),
        ("lb/gal", Dimension.DENSITY, "pound / gallon", "g/ml"),
        ("kg/m3", Dimension.DENSITY, "kilogram / meter ** 3", "g/ml"),
        ("ft/min", Dimension.SPEED, "foot / minute", "m/s"),
        ("m2/s", Dimension.KINEMATIC, "meter ** 2 / second", "mm**2/s"),
        ("cst", Dimension.KINEMATIC, "centistokes", "mm**2/s"),
    ],
)
def test_quotients_are_what_the_registry_answers(
    word: str, dimension: Dimension, expression: str, base: str
) -> None:
    unit, reference = find(word, dimension), find(tidy(base), dimension)
    assert unit is not None and reference is not None
    expected = float(REGISTRY.Quantity(1.0, expression).to(base).magnitude)
    scale, offset = units_registry.pair(unit, reference)
    assert scale == pytest.approx(expected, rel=1e-13)
    assert offset == 0


def test_a_full_cup_lasts_the_same_in_both_systems() -> None:
    """20 US fl oz at 6 fl oz/min last 3 min 20 s (common practice, no source)."""
    for cup, delivery in (("20 oz", "6 oz/min"), ("591.470591 ml", "177.4411774 ml/min")):
        volume = read_amount(cup, US).value
        flow = read(delivery, Kind.DELIVERY, System.METRIC).value
        assert volume / flow * 60 == pytest.approx(200.0, abs=0.001)
