"""Subjects: dew point, margin, drying power, and the limits of the day."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, several
from booth.figure.shapes import Shape
from booth.figure.subject import Given, Subject, may, need
from booth.trade.weather import humid_air, weather_limits
from booth.trade.weather.weather_limits import Bounds, LimitCheck

_AIR = need("air", shapes.TEMPERATURE, "air temperature")
_HUMIDITY = need("humidity", shapes.PERCENT, "relative humidity")
_PART = need("part", shapes.TEMPERATURE, "of the part itself")
_MAGNUS = "Magnus form, 610.94 Pa exp(17.625 t / (t + 243.04 C))"
_SHAPES: dict[str, Shape] = {
    "air": shapes.TEMPERATURE,
    "humidity": shapes.PERCENT,
    "part": shapes.TEMPERATURE,
    "dew margin": shapes.DIFFERENCE,
}


def _drying(given: Given) -> Answer:
    power = humid_air.drying_power_pa(given["air"], given["humidity"])
    share = humid_air.relative_drying_power(
        given["air"], given["humidity"], given["reference-air"], given["reference-humidity"]
    )
    items = (
        Item("drying power", power, shapes.VAPOUR_PRESSURE),
        Item("of the reference air's", share, shapes.SHARE),
    )
    return several(f"saturation pressure x (1 - RH); {_MAGNUS}", items)


def _bounds(given: Given, name: str) -> Bounds:
    return Bounds(given.get(f"{name}-low"), given.get(f"{name}-high"))


def _check(check: LimitCheck) -> tuple[Item, ...]:
    shape = _SHAPES[check.name]
    items = [Item(check.name, check.measured, shape)]
    if check.low is not None:
        items.append(Item("against at least", check.low, shape, tight=True))
    if check.high is not None:
        items.append(Item("against at most", check.high, shape, tight=True))
    return (*items, Item("is", "within" if check.ok else "NOT within", tight=True))


def _weather(given: Given) -> Answer:
    found = weather_limits.weather_verdict(
        given["air"],
        given["humidity"],
        given["part"],
        air=_bounds(given, "air"),
        humidity=_bounds(given, "humidity"),
        part=_bounds(given, "part"),
        **given.some(least_margin_c="margin"),
    )
    items = [Item("dew point", found.dew_point_c, shapes.TEMPERATURE)]
    for check in found.checks:
        items += _check(check)
    rules = "; ".join(dict.fromkeys(check.rule for check in found.checks))
    return several(
        f"{_MAGNUS}; limits: {rules}", items, "limits met are not the same as good to spray"
    )


SUBJECTS = (
    Subject(
        "dew-point",
        "the dew point of the air",
        (_AIR, _HUMIDITY),
        lambda given: exact(
            "dew point",
            humid_air.dew_point_c(given["air"], given["humidity"]),
            shapes.TEMPERATURE,
            _MAGNUS,
        ),
        (humid_air.dew_point_c,),
        ("72F 45%", "25C 60%"),
    ),
    Subject(
        "dew-margin",
        "how far the part is above the dew point",
        (_AIR, _HUMIDITY, _PART),
        lambda given: exact(
            "dew margin",
            humid_air.dew_margin_c(given["air"], given["humidity"], given["part"]),
            shapes.DIFFERENCE,
            f"part less dew point; {_MAGNUS}",
        ),
        (humid_air.dew_margin_c,),
        ("20C 85% 20C",),
    ),
    Subject(
        "saturation",
        "the vapour pressure of water in saturated air",
        (_AIR,),
        lambda given: exact(
            "saturation pressure",
            humid_air.saturation_pressure_pa(given["air"]),
            shapes.VAPOUR_PRESSURE,
            _MAGNUS,
        ),
        (humid_air.saturation_pressure_pa,),
        ("20C",),
    ),
    Subject(
        "drying-power",
        "the drying power of the air, for waterborne products",
        (
            _AIR,
            _HUMIDITY,
            may("reference-air", shapes.TEMPERATURE, "of the data sheet's air", default="23C"),
            may("reference-humidity", shapes.PERCENT, "of the data sheet's air", default="50%"),
        ),
        _drying,
        (humid_air.drying_power_pa, humid_air.relative_drying_power),
        ("15C 75%",),
        also=(humid_air.relative_drying_power,),
    ),
    Subject(
        "weather",
        "air and part against the product's limits and the dew point",
        (
            _AIR,
            _HUMIDITY,
            _PART,
            may("air-low", shapes.TEMPERATURE, "least air temperature of the product"),
            may("air-high", shapes.TEMPERATURE, "greatest"),
            may("humidity-low", shapes.PERCENT, "least humidity of the product"),
            may("humidity-high", shapes.PERCENT, "greatest"),
            may("part-low", shapes.TEMPERATURE, "least part temperature of the product"),
            may("part-high", shapes.TEMPERATURE, "greatest"),
            may("margin", shapes.DIFFERENCE, "least dew margin of the product"),
        ),
        _weather,
        (weather_limits.weather_verdict,),
        ("20C 83.5% 20C", "20C 60% 20C humidity-high=65%"),
    ),
)
