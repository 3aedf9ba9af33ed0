"""The register of outside checks: what kind each is, and that each can fail."""

from __future__ import annotations

import ast
import contextlib
import dataclasses
import enum
import inspect
import io
import itertools
import sys
import textwrap
from collections.abc import Callable, Iterator
from typing import Any

import pytest
from hypothesis import Phase, settings

from tests.trade.outside import CHECKED, REAL, Check, Kind, import_all_tests, table
from tests.trade.walk import FUNCTIONS

import_all_tests()

#: Functions without a check of the first four kinds, and why there can be none.
NO_OTHER = {
    "booth.trade.air.hvlp.hvlp_cap_pressure": "a limit of a regulation, and nothing but that",
    "booth.trade.air.trigger_time.receiver_needed_kpa": "a rule of thumb that nobody has published",
    "booth.trade.faults.ranked_causes.fault_named": "names are what the handbooks call the faults",
    "booth.trade.film.transfer_efficiency.default_band": "published figures and a band round them",
    "booth.trade.pattern.pattern_reading.reading": "words of a manual; they compute nothing",
    "booth.trade.ventilation.booth_face.design_velocity_m_s": "a table of a regulation",
}


def test_each_function_has_a_check_that_can_contradict_it_or_a_reason() -> None:
    real = {name for name, checks in CHECKED.items() if any(each.kind in REAL for each in checks)}
    assert set(CHECKED) - real == set(NO_OTHER)
    assert len(real) >= 120
    assert all(len(reason.split()) > 3 for reason in NO_OTHER.values())


def test_the_register_prints_as_a_table() -> None:
    printed = table().splitlines()
    assert len(printed) == sum(len(checks) for checks in CHECKED.values())
    for name in CHECKED:
        assert any(line.startswith(name.removeprefix("booth.trade.")) for line in printed)
    assert all(any(str(kind) in line for kind in Kind) for line in printed)


#: Words that name nobody: a source is a publication, a library, a theorem, or says that it is none.
NOBODY = (
    "printed example",
    "a laborator",
    "a coating maker",
    "published table",
    "textbook",
    "(seen)",
)


@pytest.mark.parametrize("name", sorted(CHECKED))
def test_a_source_names_its_publication_or_the_check_is_a_copied_list(name: str) -> None:
    for check in CHECKED[name]:
        assert "recalled" not in check.source, check.source
        if check.kind in REAL:
            assert not any(words in check.source for words in NOBODY), check.source
            assert "worked by hand" not in check.source, check.source
            assert "common practice" not in check.source, check.source


#: Libraries that reckon in their own way; what is read through tests.reference is one of them.
LIBRARIES = (
    *("chemicals", "CoolProp", "fluids", "iapws", "numpy", "pint", "psychrolib", "scipy"),
    *("UNITS", "props_si", "props_ha"),
)


def _tree(check: Check) -> ast.Module:
    return ast.parse(textwrap.dedent(inspect.getsource(_bare(check.test))))


def _bare(test: Callable[..., Any]) -> Callable[..., Any]:
    """The test as it was written, without hypothesis around it."""
    inner = getattr(getattr(test, "hypothesis", None), "inner_test", None)
    return inner or inspect.unwrap(test)


def _own_constants(check: Check) -> set[str]:
    """Constants of the trade that a check reads, to work the program's own rule again."""
    module = sys.modules[_bare(check.test).__module__]
    found = set()
    for node in ast.walk(_tree(check)):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            owner = getattr(module, node.value.id, None)
            if getattr(owner, "__name__", "").startswith("booth.trade."):
                value = getattr(owner, node.attr, None)
                if isinstance(value, int | float) or node.attr.startswith("_"):
                    found.add(f"{node.value.id}.{node.attr}")
    return found


def _imports(module: Any) -> dict[str, str]:
    """The names that a module takes from elsewhere, each with the package it is from."""
    found = {}
    for node in ast.walk(ast.parse(inspect.getsource(module))):
        if isinstance(node, ast.ImportFrom) and node.module:
            top = node.module.split(".")[0]
            found.update({alias.asname or alias.name: top for alias in node.names})
        elif isinstance(node, ast.Import):
            found.update(
                {a.asname or a.name.split(".")[0]: a.name.split(".")[0] for a in node.names}
            )
    return found


def _borrowed(check: Check) -> set[str]:
    """Libraries that a check reckons with, by itself or by what it calls of its module."""
    module = sys.modules[_bare(check.test).__module__]
    imported = _imports(module)
    made = {
        name.id: node
        for node in ast.parse(inspect.getsource(module)).body
        if isinstance(node, ast.Assign | ast.FunctionDef | ast.AnnAssign)
        for name in (
            [ast.Name(node.name)]
            if isinstance(node, ast.FunctionDef)
            else [*getattr(node, "targets", []), getattr(node, "target", None)]
        )
        if isinstance(name, ast.Name)
    }
    seen: set[str] = set()
    found: set[str] = set()
    left: list[ast.AST] = [_tree(check)]
    while left:
        for node in ast.walk(left.pop()):
            if not isinstance(node, ast.Name) or node.id in seen:
                continue
            seen.add(node.id)
            if node.id in LIBRARIES or imported.get(node.id) in LIBRARIES:
                found.add(node.id)
            elif node.id in made:
                left.append(made[node.id])
    return found


def _checks(*kinds: Kind) -> Iterator[Any]:
    seen = set()
    for name in sorted(CHECKED):
        for check in CHECKED[name]:
            if check.kind in kinds and (check.test, check.kind) not in seen:
                seen.add((check.test, check.kind))
                yield pytest.param(check, id=_bare(check.test).__name__)


@pytest.mark.parametrize("check", _checks(*REAL))
def test_a_check_does_not_work_the_program_s_own_rule_again(check: Check) -> None:
    assert _own_constants(check) == set()


@pytest.mark.parametrize("check", _checks(Kind.LIBRARY))
def test_a_check_against_a_library_uses_one(check: Check) -> None:
    assert _borrowed(check), "no library reckons in it"


def test_a_check_that_borrows_the_program_s_constant_is_found() -> None:
    from booth.trade.waits import wait_by_rule

    assert wait_by_rule.RECOAT_HALVES_PER_K > 0

    def circular() -> None:
        assert wait_by_rule.scaled_s(1.0, 0.0, wait_by_rule.RECOAT_HALVES_PER_K, 1.0)

    sys.modules[__name__].wait_by_rule = wait_by_rule  # type: ignore[attr-defined]
    assert _own_constants(Check(Kind.THEOREM, "none", circular)) == {
        "wait_by_rule.RECOAT_HALVES_PER_K"
    }


def _off(value: Any, factor: float, words: bool) -> Any:
    """A result as a faulty function gives it: numbers times `factor`, or words turned round."""
    if isinstance(value, bool):
        return not value if words else value
    if isinstance(value, enum.Enum):
        members = list(type(value))
        return members[(members.index(value) + 1) % len(members)] if words else value
    if isinstance(value, str):
        return value[::-1] if words else value
    if isinstance(value, int):
        return value + 1 if factor > 1 else value - 1
    if isinstance(value, float):
        return value * factor
    if isinstance(value, tuple | list):
        parts = [_off(each, factor, words) for each in value]
        return type(value)(*parts) if hasattr(value, "_fields") else type(value)(parts)
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        made = object.__new__(type(value))  # no check of its own may save it
        for field in dataclasses.fields(value):
            object.__setattr__(made, field.name, _off(getattr(value, field.name), factor, words))
        return made
    if inspect.isfunction(value):
        return lambda *given: _off(value(*given), factor, words)
    return value


def _mutant(function: Callable[..., Any], factor: float, words: bool) -> Callable[..., Any]:
    def off(*args: Any, **kwargs: Any) -> Any:
        return _off(function(*args, **kwargs), factor, words)

    return off


@contextlib.contextmanager
def _replaced(function: Callable[..., Any], by: Callable[..., Any]) -> Iterator[None]:
    """Put `by` in the place of a function wherever the program and the tests know it."""
    places = [
        (module, name)
        for module_name, module in list(sys.modules.items())
        if module_name.startswith(("booth.trade.", "tests.trade."))
        for name, value in list(vars(module).items())
        if value is function
    ]
    for module, name in places:
        setattr(module, name, by)
    try:
        yield
    finally:
        for module, name in places:
            setattr(module, name, function)


def _calls(test: Callable[..., Any]) -> Iterator[Callable[[], Any]]:
    """Give each call of a test that its parameters make."""
    marks = [each for each in getattr(test, "pytestmark", []) if each.name == "parametrize"]
    tables = []
    for mark in marks:
        names, rows = mark.args[0], mark.args[1]
        names = [each.strip() for each in names.split(",")] if isinstance(names, str) else names
        tables.append(
            [
                dict(zip(names, row if len(names) > 1 else [row], strict=True))
                for row in (
                    each.values if hasattr(each, "values") and hasattr(each, "marks") else each
                    for each in rows
                )
            ]
        )
    for chosen in itertools.product(*tables):
        arguments = {key: value for row in chosen for key, value in row.items()}
        yield lambda arguments=arguments: test(**arguments)


def _fails(test: Callable[..., Any]) -> bool:
    with contextlib.redirect_stdout(io.StringIO()), _quickly(test):
        for call in _calls(test):
            try:
                call()
            except Exception:
                return True
    return False


#: Properties looked at no further than to the first failure: nothing is made smaller, nothing
#: explained.
QUICK = settings(
    max_examples=20,
    deadline=None,
    database=None,
    derandomize=True,
    phases=(Phase.explicit, Phase.generate),
)


@contextlib.contextmanager
def _quickly(test: Any) -> Iterator[None]:
    """Let a property run by QUICK: hypothesis keeps the settings of a test beside it."""
    if not hasattr(test, "hypothesis"):
        yield
        return
    kept = test._hypothesis_internal_use_settings
    test._hypothesis_internal_use_settings = QUICK
    try:
        yield
    finally:
        test._hypothesis_internal_use_settings = kept


@pytest.mark.parametrize("name", sorted(CHECKED))
def test_a_function_that_is_off_fails_a_check_of_its_strongest_kinds(name: str) -> None:
    """Every number it gives a twentieth too large; where it gives none, every word turned round."""
    function = FUNCTIONS[name]
    checks = [each for each in CHECKED[name] if each.kind in REAL] or CHECKED[name]
    # What needs no drawing is quickest asked.
    checks = sorted(checks, key=lambda each: hasattr(each.test, "hypothesis"))
    words = name in WORDS
    with _replaced(function, _mutant(function, 1.05, words)):
        assert any(_fails(check.test) for check in checks), "it is off, and no check fails"


#: Twice as much, half as much, or other words: what no check may let pass.
FAR_OFF = ((2.0, False), (0.5, False), (2.0, True))


@pytest.mark.parametrize("name", sorted(CHECKED))
def test_each_check_of_a_function_can_fail(name: str) -> None:
    """One that holds whatever the function answers is no check of it."""
    function = FUNCTIONS[name]
    for check in CHECKED[name]:
        found = False
        for factor, words in FAR_OFF:
            with _replaced(function, _mutant(function, factor, words)):
                found = found or _fails(check.test)
        assert found, f"{_bare(check.test).__name__} cannot fail"


#: Functions that answer with words, names or a choice: no number of theirs can be off.
WORDS = {
    "booth.trade.air.hvlp.hvlp_cap_pressure",
    "booth.trade.cups.cup_choice.suggest_cup_for_out_of_range",
    "booth.trade.cups.cup_names.cup_named",
    "booth.trade.faults.ranked_causes.fault_named",
    "booth.trade.faults.ranked_causes.next_question",
    "booth.trade.film.wet_gauge.judge_film",
    "booth.trade.pattern.pattern_reading.reading",
    "booth.trade.pattern.pattern_reading.seen_in_zones",
    "booth.trade.ventilation.solvents.solvent_names",
}
