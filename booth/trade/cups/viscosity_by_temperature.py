"""Kinematic viscosity at another temperature: from two measured points, and never from one."""

from __future__ import annotations

import math
from dataclasses import dataclass

from booth.trade.result import Estimate, Figure, Outside, Said, Value, require

#: ASTM D341: log10 log10 (nu + 0.7) is a straight line over log10 of the absolute temperature.
WALTHER_SHIFT = 0.7
#: Below this the form needs further terms [mm2/s] (ASTM D341, from memory, not checked).
WALTHER_LEAST_MM2_S = 2.0
KELVIN = 273.15
#: Two points closer than this say more of the thermometer than of the liquid [K]. Common practice,
#: no source.
LEAST_APART_C = 3.0
#: How far beyond the two points an estimate is still given [K], and its doubt a degree beyond.
#: Against seven liquids of a reference library, from points at 15 and 30 C, the greatest error is
#: 1.0 % a degree beyond; half as much again is allowed for liquids not among them.
FURTHEST_BEYOND_C = 10.0
DOUBT_PER_C = 0.015
#: ASTM D4212 8.1: a viscosity can move by up to 5 % a degree Fahrenheit.
MOST_PER_F = 0.05
F_PER_C = 1.8
#: Beyond this many degrees a band of 5 % a degree Fahrenheit is too wide to be of use [K].
BAND_REACH_C = 10.0
#: A thermometer of the shop reads no finer [K]: closer than this is the same temperature.
SAME_C = 0.1

_WALTHER = "Walther's line through two measured points (ASTM D341 form, constant 0.7)"
_ONE_POINT = "ASTM D4212 8.1: up to 5 % a degree Fahrenheit (9 % a degree Celsius)"
_ABSOLUTE_ZERO_C = -KELVIN


@dataclass(frozen=True, slots=True)
class ViscosityPoint:
    """A measurement: temperature in the stream [degC], kinematic viscosity [mm2/s]."""

    temperature_c: float
    viscosity_mm2_s: float


def _checked(point: ViscosityPoint) -> ViscosityPoint:
    require("The temperature of the liquid", point.temperature_c, above=_ABSOLUTE_ZERO_C, unit="C")
    require("The viscosity", point.viscosity_mm2_s, above=0.0, unit="mm2/s")
    return point


def viscosity_at_temperature(
    at_c: float, first: ViscosityPoint, second: ViscosityPoint | None = None
) -> Figure:
    """Give the kinematic viscosity at a temperature, from two measured points.

    Args:
        at_c: temperature wanted [degC].
        first: a measurement of this very mix.
        second: another one at least 3 K away, of the same mix; None where there is none.

    Returns: Value [mm2/s] between the two points: ``log10 log10(nu + 0.7) = A - B log10(T)``, T in
        kelvin; Estimate up to 10 K beyond them (and not further than they are apart), 1.5 % wider
        each way for each degree beyond; Outside further off, with one point only (but at its own
        temperature), and where the two points contradict each other.
    Range: 2 mm2/s or more, no solvent lost between the two measurements. Within two points from 15
        to 30 C real liquids follow to about 1 %.
    Source: ASTM D341 (Walther's equation); ASTM D4212 8.2 (a curve is measured for each liquid).

    >>> oil = ViscosityPoint(15.0, 201.888), ViscosityPoint(30.0, 59.507)
    >>> round(viscosity_at_temperature(22.5, *oil).value, 1)  # a reference library has 104.1
    104.7
    >>> print(viscosity_at_temperature(25.0, oil[0]).reason)
    One measurement does not say how this liquid changes with temperature.
    """
    require("The temperature wanted", at_c, above=_ABSOLUTE_ZERO_C, unit="C")
    _checked(first)
    if second is None:
        if abs(at_c - first.temperature_c) <= SAME_C:
            return Value(first.viscosity_mm2_s, "mm2/s", "measured at this temperature")
        return Outside(
            "One measurement does not say how this liquid changes with temperature.",
            f"Measure at {Said(at_c, 'C')}, or measure once more at least "
            f"{Said(LEAST_APART_C, 'K')} away.",
            _ONE_POINT,
        )
    cool, warm = sorted((first, _checked(second)), key=lambda point: point.temperature_c)
    apart_c = warm.temperature_c - cool.temperature_c
    beyond_c = max(cool.temperature_c - at_c, at_c - warm.temperature_c, 0.0)
    likely = None
    if apart_c < LEAST_APART_C:
        reason = f"The two measurements are less than {Said(LEAST_APART_C, 'K')} apart."
        advice = "Measure once more, warmer or colder."
    elif warm.viscosity_mm2_s >= cool.viscosity_mm2_s:
        reason = "The warmer liquid was not the thinner one, so one of the two is wrong."
        advice = "Stir, let the cup and the liquid come to one temperature, and measure both again."
    elif beyond_c > min(FURTHEST_BEYOND_C, apart_c):
        ends = " and ".join(Said(each.temperature_c, "C") for each in (cool, warm))
        reason = f"{Said(at_c, 'C')} lies too far beyond the two measurements ({ends})."
        advice = "Measure nearer to this temperature."
    else:
        least = Said(WALTHER_LEAST_MM2_S, "mm2/s")
        reason = f"The liquid is thinner than the {least} from which the rule holds."
        advice = "Measure at the temperature wanted."
        likely = _on_the_line(at_c, cool, warm)
    if likely is None or likely < WALTHER_LEAST_MM2_S:
        return Outside(reason, advice, _WALTHER)
    if beyond_c == 0.0:
        return Value(likely, "mm2/s", _WALTHER)
    doubt = DOUBT_PER_C * beyond_c
    rule = f"{_WALTHER}, {Said(float(f'{beyond_c:.3g}'), 'K')} beyond them"
    return Estimate(likely, likely * (1.0 - doubt), likely * (1.0 + doubt), "mm2/s", rule)


def _on_the_line(at_c: float, cool: ViscosityPoint, warm: ViscosityPoint) -> float | None:
    """The viscosity on the line through two points, None where they cannot be those of a liquid."""
    if warm.viscosity_mm2_s < WALTHER_LEAST_MM2_S:
        return None
    at, start, end = (
        math.log10(each + KELVIN) for each in (at_c, cool.temperature_c, warm.temperature_c)
    )
    high, low = (
        math.log10(math.log10(point.viscosity_mm2_s + WALTHER_SHIFT)) for point in (cool, warm)
    )
    height = high + (at - start) / (end - start) * (low - high)
    try:
        return math.pow(10.0, math.pow(10.0, height)) - WALTHER_SHIFT
    except OverflowError:
        return None


def one_point_band(at_c: float, point: ViscosityPoint) -> Estimate | Outside:
    """Give the widest band that one measurement leaves at another temperature.

    It is no correction: it shows why one is not made. Colder is thicker, by anything from nothing
    to 5 % a degree Fahrenheit; warmer is thinner in the same way.

    Args:
        at_c: temperature wanted [degC].
        point: the one measurement.

    Returns: Estimate [mm2/s] from no change to 5 % a degree Fahrenheit, compounded; its `likely` is
        no more than the middle of the band (in proportion). Outside beyond 10 K.
    Range: within 10 K of the measurement, where the band is 2.4 times as high as low. A thick oil
        in the cold can move by more still.
    Source: ASTM D4212 8.1.

    >>> band = one_point_band(20.0, ViscosityPoint(25.0, 100.0))
    >>> round(band.low), round(band.high)
    (100, 155)
    """
    require("The temperature wanted", at_c, above=_ABSOLUTE_ZERO_C, unit="C")
    _checked(point)
    warmer_c = at_c - point.temperature_c
    if abs(warmer_c) > BAND_REACH_C:
        return Outside(
            f"{Said(float(f'{abs(warmer_c):.3g}'), 'K')} away from the one measurement nothing useful "
            "can be said.",
            f"Measure at {Said(at_c, 'C')}.",
            _ONE_POINT,
        )
    factor = (1.0 + MOST_PER_F) ** (F_PER_C * abs(warmer_c))
    ends = (point.viscosity_mm2_s, point.viscosity_mm2_s * factor ** (-1 if warmer_c > 0 else 1))
    return Estimate(math.sqrt(ends[0] * ends[1]), min(ends), max(ends), "mm2/s", _ONE_POINT)
