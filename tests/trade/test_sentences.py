"""What the trade says is in the painter's units: every refusal, reason and rule of every function."""

from __future__ import annotations

import ast
import dataclasses
import inspect
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from booth.figure.docs import calls
from booth.trade import result
from booth.trade.result import BadInput, Said, require
from booth.units import System, sentences
from booth.units.sentences import in_units
from tests.trade.walk import FUNCTIONS, PACKAGE

#: Units of the trade that no painter with US units reads. Grams, turns, seconds and mm2/s (which the
#: screen shows so in both systems) are read by both.
METRIC = r"°C|C|K|kPa|Pa|bar|um|µm|mm|cm|m|ml|l|ml/min|l/min|m/s|mm/s|m3/h|m³/h|m2|m²|m3|m³|g/ml"
FOREIGN = {
    System.US: re.compile(rf"\d ?(?:{METRIC})(?![\w/²³°])"),
    System.METRIC: re.compile(r"\d ?(?:°F|F|psi|psig|mil|in|ft|ft/min|cfm|fl oz|gal)(?![\w/²³°])"),
}
#: What stands as its source has it: the text of a standard or code, and names of cups.
QUOTED = (
    r"ISO \d( mm)?",
    r"DIN \d( mm)?",
    r"0\.1 to 10 psig? at the (air )?cap",
    r"(Above|Below|Within the) [\d. to]+ psi at the cap",
    r"100 ft/min average over the open front",
    r"\d+ °?F\b[^;,)]*ASME",
    r"0\.25 in 40 CFR 60\.313",
)
#: Numbers put in the place of those of an example: too small, too large, of another order.
ODD = (-1e5, -1.0, 0.0, 1e-9, 0.4, 3.0, 41.7, 861.845, 1e4, 1e9)


def _odd(values: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """The arguments of a call anew, once for each number in them and each odd one."""
    yield values
    for name, value in values.items():
        for odd in ODD:
            if isinstance(value, int | float) and not isinstance(value, bool):
                yield {**values, name: odd}
            elif isinstance(value, list | tuple) and value and isinstance(value[0], int | float):
                yield {**values, name: [odd, *value[1:]]}


def _texts(found: Any) -> Iterator[str]:
    """Every sentence in a result."""
    if isinstance(found, str):
        yield found
    elif dataclasses.is_dataclass(found) and not isinstance(found, type):
        for field in dataclasses.fields(found):
            yield from _texts(getattr(found, field.name))
    elif isinstance(found, list | tuple):
        for each in found:
            yield from _texts(each)


def said_by(name: str) -> set[str]:
    """What a function says of its own examples, and of them with odd numbers in them."""
    function, said = FUNCTIONS[name], set()
    for example in calls(function):
        for values in _odd(dict(example)):
            bound = inspect.signature(function).bind_partial()
            bound.arguments.update(values)
            try:
                said.update(_texts(function(*bound.args, **bound.kwargs)))
            except BadInput as fault:
                said.add(fault.sentence)
            except (TypeError, KeyError, AttributeError, OverflowError):
                continue  # an odd number of parts or rows is no number to be refused in a sentence
    return said


@pytest.mark.parametrize("system", System)
@pytest.mark.parametrize("name", sorted(set(FUNCTIONS) - {"booth.trade.result.require"}))
def test_every_sentence_is_in_the_painters_units(name: str, system: System) -> None:
    for said in said_by(name):
        shown = in_units(said, system)
        assert sentences.JOIN not in shown
        own = re.sub("|".join(QUOTED), "", shown)
        assert FOREIGN[system].search(own) is None, shown


def test_the_walk_hears_refusals_and_rules() -> None:
    """Of most functions it hears something; 125 psi and 40 C are among what it is for."""
    heard = {name: said_by(name) for name in FUNCTIONS}
    assert sum(any(sentences.JOIN in each for each in said) for said in heard.values()) > 60


# -- how they are written --------------------------------------------------------------------------

_UNIT = rf"(?:{METRIC}|F|psi|psig|mm2/s|g|s|min|h)(?![\w/²³°])"
#: Literals with a number and its unit that quote a source, or are no sentence.
AS_THEY_STAND = {
    "air/air_base.py": "names of standard airs, as their sources have them",
    "air/hvlp.py": "the limits of 40 CFR 63 in its own units",
    "cups/cup_table.py": "names of cups, and what a range was published as",
    "mixing/components.py": "100 ml on the scale, in both systems",
}


@pytest.mark.parametrize("path", sorted(PACKAGE.rglob("*.py")), ids=lambda path: path.stem)
def test_a_quantity_in_a_sentence_is_said_as_one(path: Path) -> None:
    """Never a bare number with a unit behind it: that would reach the painter as it is."""
    tree, name = ast.parse(path.read_text("utf-8")), str(path.relative_to(PACKAGE))
    docs = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.FunctionDef | ast.ClassDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    bare = []
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            for value, after in zip(node.values, node.values[1:], strict=False):
                behind = isinstance(value, ast.FormattedValue) and isinstance(after, ast.Constant)
                if behind and re.match(rf" {_UNIT}", str(getattr(after, "value", ""))):
                    bare.append(ast.unparse(node))
        elif isinstance(node, ast.Constant) and id(node) not in docs:
            bare += [text for text in [str(node.value)] if re.search(rf"\d {_UNIT}", text)]
    if name in AS_THEY_STAND:
        assert bare, "nothing is quoted there any more: take it off the list"
    else:
        assert not bare, bare


# -- the door --------------------------------------------------------------------------------------


def test_both_ends_of_the_door_agree() -> None:
    assert sentences.JOIN == result.JOIN and Said(1.5, "kPa") == f"1.5{sentences.JOIN}kPa"


def test_a_refusal_is_told_in_either_system() -> None:
    """125 psi were typed (1 psi is 6.894757 kPa, NIST SP 811 appendix B.8)."""
    with pytest.raises(BadInput) as refused:
        require("The inlet", 125 * 6.894757, 0.0, 700.0, unit="kPa")
    assert str(refused.value) == "The inlet must be 700 kPa or less; 861.845 kPa was given."
    us, metric = (in_units(refused.value, each) for each in System)
    assert us == "The inlet must be 101.5 psi or less; 125 psi was given."
    assert metric == "The inlet must be 7 bar or less; 8.618 bar was given."


@pytest.mark.parametrize(
    ("number", "unit", "us", "metric"),
    [
        (20.0, "C", "68 °F", "20 °C"),
        (-40.0, "C", "-40 °F", "-40 °C"),
        (10.0, "K", "18 °F", "10 °C"),  # a difference: 9/5, and no 32
        (25.4, "um", "1 mil", "25.4 µm"),
        (12.7, "mm", "0.5 in", "12.7 mm"),
        (508.0, "mm/s", "100 ft/min", "0.508 m/s"),
        (0.25, "turns", "0.25 turns", "0.25 turns"),
        (100.0, "mm2/s", "100 mm²/s", "100 mm²/s"),
        (22.0, "s", "22 s", "22 s"),
        (7200.0, "s", "2 h", "2 h"),
        (5e12, "kPa", "7.252e+11 psi", "5e+10 bar"),
    ],
)
def test_one_quantity_in_both_systems(number: float, unit: str, us: str, metric: str) -> None:
    """By definition: 25.4 mm an inch, 9/5 and 32 for Fahrenheit; 30.48 cm a foot."""
    said = f"It is {Said(number, unit)}."
    assert in_units(said, System.US) == f"It is {us}."
    assert in_units(said, System.METRIC) == f"It is {metric}."


def test_what_is_quoted_and_what_has_no_quantity_stays() -> None:
    for text in ("the stricter of 5 F and 3 C", "Stir it well.", ""):
        assert all(in_units(text, each) == text for each in System)
