"""Odd numbers: every public function refuses them, or answers with finite figures."""

from __future__ import annotations

import dataclasses
import enum
import inspect
import math
import re
from collections.abc import Iterator, Mapping
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.figure.docs import calls
from booth.trade.cups.cup_table import Cup
from booth.trade.cups.viscosity_by_temperature import ViscosityPoint
from booth.trade.faults.evidence import Evidence, Sign, read_sign
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.pattern.fan_profile import profile_by_name
from booth.trade.pattern.overlap import film_section, steady_part
from booth.trade.result import BadInput
from booth.trade.weather.humid_air import dew_margin_c, dew_point_c
from booth.trade.weather.weather_limits import Bounds
from tests.trade.walk import FUNCTIONS

#: A whole number that no floating-point number reaches.
HUGE = 10**400
#: Zero, the least and the greatest floating-point numbers, what is none, and what is negative.
ODD = (
    *(0.0, -0.0, 5e-324, 1e-308, 1e-200, 1e-31, 1e-29, 1e-12),
    *(1e12, 1e15, 1e16, 1e300, 1e308, HUGE),
    *(math.inf, -math.inf, math.nan),
    *(-1.0, -5e-324, -1e-12, -1e15, -1e300, -1e308),
    # just inside the ends that docstrings name
    *(math.nextafter(1.0, 0.0), math.nextafter(100.0, 0.0), 1e-16, 0.25, 0.95, 1.0, 50.0, 99.9),
)
#: Figures of results that are infinite by their own docstring: no upper end, a bare strip.
ENDLESS = {"FilmInterval.high_um", "FilmStatistics.spread_most_um", "Evenness.max_over_min"}


def _variants(value: Any, odd: float, where: str) -> Iterator[tuple[str, Any]]:
    """Give a value anew for each number in it, however deep, with that number an odd one."""
    if isinstance(value, bool | str | enum.Enum | Cup) or callable(value):
        return  # a cup is data of its standard, and nobody enters it
    if isinstance(value, int | float):
        yield where, odd
    elif isinstance(value, list | tuple):
        for index, each in enumerate(value):
            for place, changed in _variants(each, odd, f"{where}[{index}]"):
                yield place, [*value[:index], changed, *value[index + 1 :]]
    elif isinstance(value, Mapping):
        for key, each in value.items():
            for place, changed in _variants(each, odd, f"{where}[{key!r}]"):
                yield place, {**value, key: changed}
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        for field in dataclasses.fields(value):
            inner = getattr(value, field.name)
            for place, changed in _variants(inner, odd, f"{where}.{field.name}"):
                if isinstance(inner, tuple):
                    changed = tuple(changed)
                try:
                    yield place, dataclasses.replace(value, **{field.name: changed})
                except BadInput as refused:
                    assert str(refused).endswith((".", "?")), place


def _numbers(result: Any, where: str) -> Iterator[tuple[str, float]]:
    """Give every number in an answer with its place."""
    if isinstance(result, bool | str | enum.Enum) or result is None or callable(result):
        return
    if isinstance(result, int | float):
        yield where, result
    elif isinstance(result, list | tuple | frozenset):
        for each in result:
            yield from _numbers(each, where)
    elif dataclasses.is_dataclass(result):
        for field in dataclasses.fields(result):
            place = f"{type(result).__name__}.{field.name}"
            yield from _numbers(getattr(result, field.name), place)


def _asked() -> Iterator[Any]:
    for name in sorted(FUNCTIONS):
        yield pytest.param(name, id=name.removeprefix("booth.trade."))


#: Limits that the code gives, which no painter enters.
OF_THE_CODE = {("booth.trade.result.require", each) for each in ("low", "high", "above", "below")}
_BAND = EfficiencyBand(0.2, 0.3, 0.5, "a band")
#: What an example leaves out though numbers are in it, by the word for its type.
ALSO: Mapping[str, Any] = {
    "Efficiency": _BAND,
    "Bounds | None": Bounds(1.0, 2.0),
    "tuple[float, str] | None": (1.0, "a source"),
    "ViscosityPoint | None": ViscosityPoint(30.0, 60.0),
    "Evidence": Evidence(
        **{
            each.name: 1.0
            for each in dataclasses.fields(Evidence)
            if each.name != "thinner_unmeasured"
        }
    ),
}


def _trials(name: str) -> Iterator[tuple[str, float, dict[str, Any]]]:
    """Give calls of a function, one number of its own example odd: where, the number, all given."""
    annotations = {
        each.name: str(each.annotation)
        for each in inspect.signature(FUNCTIONS[name]).parameters.values()
        if (name, each.name) not in OF_THE_CODE
    }
    for example in calls(FUNCTIONS[name]):
        for parameter, annotation in annotations.items():
            values = [example[parameter]] if parameter in example else []
            if annotation in ALSO:
                values.append(ALSO[annotation])
            elif annotation in ("float", "float | None", "int"):
                values.append(1.0)
            for value in values:
                for odd in ODD:
                    for place, changed in _variants(value, odd, parameter):
                        yield place, odd, {**example, parameter: changed}


@pytest.mark.parametrize("name", _asked())
def test_an_odd_number_is_refused_or_answered_with_finite_figures(name: str) -> None:
    function = FUNCTIONS[name]
    tried = set()
    for place, odd, arguments in _trials(name):
        _hold(function, place, odd, arguments)
        tried.add(re.split(r"[.\[]", place)[0])
    numeric = {
        each.name
        for each in inspect.signature(function).parameters.values()
        if re.search(
            r"\b(float|int|Efficiency|\w+Point|Evidence|Component)\b", str(each.annotation)
        )
        and (name, each.name) not in OF_THE_CODE
    }
    assert numeric <= tried, "numbers of it were not tried"


def _short(odd: float) -> str:
    return "10**400" if odd == HUGE else repr(odd)


def _hold(function: Any, place: str, odd: float, arguments: dict[str, Any]) -> None:
    bound = inspect.signature(function).bind_partial()
    bound.arguments.update(arguments)
    try:
        answer = function(*bound.args, **bound.kwargs)
    except BadInput as refused:
        assert str(refused)[:1].isupper() or str(refused)[:1] in "'\"-0123456789", str(refused)
        assert str(refused).endswith((".", "?")), str(refused)
        return
    except Exception as fault:
        pytest.fail(f"{function.__name__}, {place} = {_short(odd)}: {fault!r}")
    for where, number in _numbers(answer, "the answer"):
        if where not in ENDLESS:
            finite = isinstance(number, int) or math.isfinite(number)
            assert finite, f"{function.__name__}, {place} = {_short(odd)}: {where} is {number}"


@pytest.mark.parametrize("odd", [math.nan, math.inf, 1e308, HUGE])
def test_a_published_limit_that_is_none_is_refused(odd: float) -> None:
    with pytest.raises(BadInput, match=r"\.$"):
        read_sign(Sign.HUMID, Evidence(humidity_percent=85.0), (odd, "a source"))


@given(humidity=st.floats(5e-324, 100.0), air_c=st.floats(-40.0, 50.0))
def test_a_dew_point_lies_between_the_lowest_of_the_formula_and_the_air(
    humidity: float, air_c: float
) -> None:
    """Beyond the pole of the form, where nobody fitted it, it would be hot."""
    try:
        found = dew_point_c(air_c, humidity)
    except BadInput as refused:
        assert "so dry" in str(refused) or "small" in str(refused)
    else:
        assert -40.0 - 1e-6 <= found <= air_c + 1e-6  # the last digits of a logarithm


def test_air_drier_than_the_formula_is_refused_with_a_sentence() -> None:
    with pytest.raises(BadInput, match="so dry that its dew point lies below -40 C"):
        dew_margin_c(20.0, 1e-10, 20.0)
    assert dew_point_c(-40.0, 100.0) == pytest.approx(-40.0)


@pytest.mark.parametrize("count", [0, 1.5, 1e12, 1e300])
def test_passes_and_points_are_counted_within_reason(count: float) -> None:
    even = profile_by_name("even")
    for call in (
        lambda: film_section(even, 0.5, passes=count),  # type: ignore[arg-type]
        lambda: film_section(even, 0.5, samples=count),  # type: ignore[arg-type]
        lambda: steady_part(0.5, count),  # type: ignore[arg-type]
    ):
        with pytest.raises(BadInput, match=r"\.$"):
            call()
