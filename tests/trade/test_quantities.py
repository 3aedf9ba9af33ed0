"""Each number of the trade carries its unit in its name, or is in the table of DEVELOPERS.md."""

from __future__ import annotations

import dataclasses
import inspect
import re

from tests.trade.walk import FUNCTIONS, PACKAGE, RESULTS, parameters

GUIDE = PACKAGE.parents[1] / "DEVELOPERS.md"


def _tables() -> tuple[dict[str, str], dict[str, str]]:
    """Give the suffixes and the names of DEVELOPERS.md, each with its unit."""
    text = GUIDE.read_text("utf-8")
    section = re.split(r"^## ", text.split("\n## Quantities\n", 1)[1], flags=re.MULTILINE)[0]
    suffixes: dict[str, str] = {}
    names: dict[str, str] = {}
    for line in section.splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
        if not line.startswith("|") or set(cells[0]) <= {"-"}:
            continue
        if cells[0].startswith("`_"):
            suffixes[cells[0].strip("`")] = cells[1]
        elif cells[0] != "Quantity" and len(cells) == 4:
            for each in re.findall(r"`([a-z0-9_]+)`", cells[3]):
                names[each] = cells[2]
    return suffixes, names


def _numbers() -> dict[str, set[str]]:
    """Give the names of all numbers that go into the trade or come out of it, with their users."""
    found: dict[str, set[str]] = {}
    for name, function in FUNCTIONS.items():
        for parameter in parameters(function):
            if _is_number(str(parameter.annotation)):
                found.setdefault(parameter.name, set()).add(name)
    for name, result in RESULTS.items():
        for field in dataclasses.fields(result):
            if _is_number(str(field.type)):
                found.setdefault(field.name, set()).add(name)
        for each, value in vars(result).items():
            if isinstance(value, property) and value.fget is not None:
                returned = inspect.signature(value.fget).return_annotation
                if _is_number(str(returned)):
                    found.setdefault(each, set()).add(name)
    return found


def _is_number(annotation: str) -> bool:
    return bool(re.search(r"\b(float|int|Efficiency)\b", annotation))


def test_each_number_carries_its_unit_or_is_in_the_table_of_quantities() -> None:
    suffixes, names = _tables()
    for name, users in _numbers().items():
        known = name in names or any(name.endswith(suffix) for suffix in suffixes)
        assert known, f"{name}, used by {sorted(users)}, has no unit anywhere"


def test_the_table_of_quantities_names_nothing_that_is_gone() -> None:
    suffixes, names = _tables()
    numbers = _numbers()
    assert set(names) - set(numbers) == set()
    functions = {function.__name__ for function in FUNCTIONS.values()}
    for suffix in suffixes:
        assert any(each.endswith(suffix) for each in {*numbers, *functions}), suffix
