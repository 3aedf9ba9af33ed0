"""The public face of the trade: every function documented, checked from outside, its constants named."""

from __future__ import annotations

import ast
import dataclasses
import doctest
import inspect
import math
import re
import textwrap
from collections.abc import Iterator
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

import pytest

import booth.trade
from booth.figure.docs import calls
from booth.trade.air.air_base import AirBase
from booth.trade.cups.viscosity_by_temperature import ViscosityPoint
from booth.trade.delivery.needle import NeedleCatch
from booth.trade.delivery.water import WaterPaintPair
from booth.trade.mixing.components import Component
from booth.trade.mixing.mixed_batch import BatchAge
from booth.trade.result import BadInput
from booth.trade.thinning.thinning_fit import ThinningPoint
from booth.trade.weather.weather_limits import Bounds
from tests.trade.outside import CHECKED, import_all_tests
from tests.trade.walk import FUNCTIONS, MODULES, PACKAGE, parameters, published

SECTIONS = ("Args", "Returns", "Range", "Source")

#: Public functions without an outside check, with the reason.
NOTHING_TO_CHECK = {
    "booth.trade.result.require": "it checks a number, and computes nothing",
}


def test_the_walk_finds_the_trade() -> None:
    assert len(FUNCTIONS) > 90
    assert "booth.trade.cups.efflux_time.viscosity_from_efflux" in FUNCTIONS


@pytest.mark.parametrize("name", sorted(MODULES))
def test_each_module_says_what_it_is_and_publishes_its_own(name: str) -> None:
    module = MODULES[name]
    assert module.__doc__
    for each in published(module):
        one = getattr(module, each)
        if isinstance(one, FunctionType | type):
            assert one.__module__ == module.__name__, each


def test_what_other_layers_use_is_public() -> None:
    """Nobody outside takes what begins with an underscore, or from where it is not defined."""
    for path in PACKAGE.parent.rglob("*.py"):
        if path.is_relative_to(PACKAGE):
            continue
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.ImportFrom) or node.module is None:
                continue
            if not node.module.startswith("booth.trade."):
                continue
            inside = node.module.removeprefix("booth.trade.")
            if inside not in MODULES:  # a folder: its modules are taken whole
                assert all(f"{inside}.{alias.name}" in MODULES for alias in node.names)
                continue
            names = published(MODULES[inside])
            for alias in node.names:
                assert alias.name in names, f"{path.name}: {alias.name}"


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_each_function_is_documented_in_full(name: str) -> None:
    function = FUNCTIONS[name]
    doc = inspect.getdoc(function) or ""
    purpose = doc.split("\n\n", 1)[0]
    assert purpose.rstrip().endswith("."), "no purpose in a sentence"
    found = re.findall(rf"^({'|'.join(SECTIONS)}):", doc, re.MULTILINE)
    expected = [each for each in SECTIONS if each != "Args" or parameters(function)]
    assert found == expected, "sections missing, twice or out of order"
    for section in expected:
        assert _section(doc, section), f"{section} is empty"


def _section(doc: str, name: str) -> str:
    lines = doc.splitlines()
    start = next(i for i, line in enumerate(lines) if line.startswith(f"{name}:"))
    first, text = lines[start].removeprefix(f"{name}:").strip(), []
    for line in lines[start + 1 :]:
        if not line or re.match(rf"({'|'.join(SECTIONS)}):", line):
            break
        text.append(line)
    return (first + "\n" + textwrap.dedent("\n".join(text))).strip()


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_each_parameter_is_explained_under_its_name(name: str) -> None:
    doc = inspect.getdoc(FUNCTIONS[name]) or ""
    for parameter in parameters(FUNCTIONS[name]):
        # 'air_c, humidity_percent: today's air' explains two.
        heading = rf"(^|; )(\w+, )*{parameter.name}(, \w+)*: ?\S"
        assert re.search(heading, _section(doc, "Args"), re.MULTILINE), parameter.name


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_each_number_is_documented_with_its_unit(name: str) -> None:
    """A unit in brackets for what goes in as a number, and for the number that comes out."""
    function = FUNCTIONS[name]
    doc = inspect.getdoc(function) or ""
    numbers = [p for p in parameters(function) if "float" in str(p.annotation)]
    if numbers and name not in NOTHING_TO_CHECK:
        assert "[" in _section(doc, "Args")
    returned = str(inspect.signature(function).return_annotation)
    if name not in NOTHING_TO_CHECK and re.search(r"\b(float|Value|Estimate)\b", returned):
        assert "[" in _section(doc, "Returns"), "no unit in Returns"


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_each_example_shows_a_result(name: str) -> None:
    """That the examples are right is run by pytest itself (--doctest-modules)."""
    examples = doctest.DocTestParser().get_examples(inspect.getdoc(FUNCTIONS[name]) or "")
    assert any(each.want.strip() or each.exc_msg for each in examples)
    short = FUNCTIONS[name].__name__
    assert any(short in each.source for each in examples), "the example does not call it"


#: Editions that have been replaced, and the words that say so.
REPLACED = {
    "ASTM D1200-94(2005)": "old edition",
    "IEC 60079-20-1:2010": "80079-20-1:2017",
    "MIL-HDBK-1110": "UFC 3-190-06",
    "UFGS 09971": "old edition",
}


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_an_edition_that_was_replaced_is_said_to_be(name: str) -> None:
    source = " ".join(_section(inspect.getdoc(FUNCTIONS[name]) or "", "Source").split())
    for edition, words in REPLACED.items():
        if edition in source:
            assert words in source, edition


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_a_source_is_read_or_from_memory_and_never_nobody_s(name: str) -> None:
    doc = inspect.getdoc(FUNCTIONS[name]) or ""
    assert "recalled" not in doc
    for nobody in (
        "printed example",
        "published study",
        "a page",
        "a maker",
        "a laboratory's page",
    ):
        assert nobody not in doc


def test_what_every_function_refuses_is_said_once() -> None:
    said = " ".join((booth.trade.__doc__ or "").split())
    assert "Every function raises BadInput" in said
    assert "not finite" in said


def _with_a_number_lost(values: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Give the arguments of a call anew, once for each number in them, that one not a number."""
    for name, value in values.items():
        if isinstance(value, (int, float)) and not isinstance(value, bool):
            yield {**values, name: math.nan}
        elif isinstance(value, (list, tuple)) and value and isinstance(value[0], (int, float)):
            yield {**values, name: [*value[:-1], math.nan]}
        elif dataclasses.is_dataclass(value) and not isinstance(value, type):
            yield from ({**values, name: each} for each in _lost_inside(value))
        elif isinstance(value, (list, tuple)) and value and dataclasses.is_dataclass(value[0]):
            for each in _lost_inside(value[0]):
                yield {**values, name: [each, *value[1:]]}


def _lost_inside(value: Any) -> Iterator[Any]:
    """Give what a painter enters anew with a number lost: not what the trade itself computed."""
    if not isinstance(value, ENTERED):
        return
    for field in dataclasses.fields(value):
        # A density is looked at only where it is needed.
        number = isinstance(getattr(value, field.name), (int, float))
        if number and field.name != "density_g_ml":
            yield dataclasses.replace(value, **{field.name: math.nan})


#: Types whose numbers a painter enters, and that do not check them themselves.
ENTERED = (
    *(NeedleCatch, ThinningPoint, ViscosityPoint, WaterPaintPair),
    *(AirBase, BatchAge, Bounds, Component),
)


#: Functions that do not look at some number they are given, with the reason.
NOT_LOOKED_AT = {
    **NOTHING_TO_CHECK,
    "booth.trade.mixing.mixed_batch.mixed_volume_ml": "the parts are in the amounts of the table",
}


@pytest.mark.parametrize("name", sorted(set(FUNCTIONS) - set(NOT_LOOKED_AT)))
def test_every_function_refuses_what_is_not_a_number(name: str) -> None:
    function = FUNCTIONS[name]
    for values in calls(function):
        for lost in _with_a_number_lost(dict(values)):
            bound = inspect.signature(function).bind_partial()
            bound.arguments.update(lost)
            with pytest.raises(BadInput):
                function(*bound.args, **bound.kwargs)


@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_each_source_names_something(name: str) -> None:
    """A standard, a regulation, a law of nature or of geometry, a person, or the lack of any."""
    source = _section(inspect.getdoc(FUNCTIONS[name]) or "", "Source")
    assert len(source) > 10
    assert not re.fullmatch(r"as for \w+\.?", source), "it only points elsewhere"


def test_each_function_is_checked_from_outside() -> None:
    import_all_tests()
    unchecked = set(FUNCTIONS) - set(CHECKED)
    assert unchecked == set(NOTHING_TO_CHECK)
    assert set(CHECKED) - set(FUNCTIONS) == set(), "checks of what is not public"


def test_each_outside_check_names_its_source() -> None:
    import_all_tests()
    for name, checks in CHECKED.items():
        for check in checks:
            assert len(check.source.strip()) > 5, name


#: Numbers that are part of the mathematics or of a decimal unit, not of anybody's publication.
PLAIN = {0, 1, 2, 3, -1, 0.5, 10, 60, 100, 1000, 3600}
#: (module, function): the numbers in it, and why they stand there.
SHAPES = "the formula of a model shape, written out in its `fact`"
ALLOWED: dict[tuple[str, str], tuple[set[float], str]] = {
    ("pattern.overlap_numerics", "least_value"): ({4}, "just inside the ends of a piece"),
    ("film.part_area", "circle_area_m2"): ({4}, "pi d^2 / 4"),
    ("film.part_area", "cylinder_area_m2"): ({4}, "pi d^2 / 4"),
    ("cups.cup_table", "formula_s"): ({4}, "the root of a quadratic equation"),
    ("pattern.overlap", "most_even_overlap"): ({6}, "decimals to which overlaps are compared"),
    ("pattern.fan_profile", "_heavy_middle"): ({4}, SHAPES),
    ("pattern.fan_profile", "_heavy_both_ends"): ({4}, SHAPES),
    ("pattern.fan_profile", "<lambda>"): ({4, 1.5, 6}, SHAPES),
}


def _literals(module: ModuleType) -> Iterator[tuple[str, float, int]]:
    """Give the numbers in the bodies of functions and lambdas: innermost function, number, line."""
    tree = ast.parse(Path(module.__file__ or "").read_text("utf-8"))

    def walk(node: ast.AST, inside: str | None) -> Iterator[tuple[str, float, int]]:
        for child in ast.iter_child_nodes(node):
            if isinstance(child, ast.FunctionDef):
                for statement in child.body:
                    yield from walk(ast.Module([statement], []), child.name)
            elif isinstance(child, ast.Lambda):
                yield from walk(ast.Expression(child.body), inside or "<lambda>")
            elif isinstance(child, ast.Constant):
                number = child.value
                if inside and isinstance(number, (int, float)) and not isinstance(number, bool):
                    yield inside, number, child.lineno
            else:
                yield from walk(child, inside)

    yield from walk(tree, None)


@pytest.mark.parametrize("name", sorted(MODULES))
def test_published_numbers_are_named_data(name: str) -> None:
    unused = {key for key in ALLOWED if key[0] == name}
    for function, number, line in _literals(MODULES[name]):
        if number in PLAIN:
            continue
        numbers, _ = ALLOWED.get((name, function), (set(), ""))
        assert number in numbers, f"{name}.py:{line}: {number} in {function} wants a name"
        unused.discard((name, function))
    assert not unused, "exceptions for what is not there"
