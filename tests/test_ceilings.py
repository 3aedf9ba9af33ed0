"""Nothing grows past what can be taken in at one look; what may be larger is named here, with why."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "booth"
MOST_LINES_OF_A_CLASS, MOST_METHODS = 150, 15
MOST_LINES_OF_A_MODULE = 300
MOST_UNFORMATTED = 10
MOST_EXCEPTIONS = 3
#: A class as module.Class, a module by its name; each with the reason why it may be larger.
EXCEPTIONS: dict[str, str] = {}


def modules() -> Iterator[tuple[str, Path]]:
    for path in sorted(PACKAGE.rglob("*.py")):
        yield ".".join(path.relative_to(ROOT).with_suffix("").parts), path


def classes(path: Path) -> Iterator[ast.ClassDef]:
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.ClassDef):
            yield node


def lines_of(node: ast.ClassDef) -> int:
    first = min([node.lineno, *(each.lineno for each in node.decorator_list)])
    return (node.end_lineno or first) - first + 1


def methods_of(node: ast.ClassDef) -> int:
    return sum(isinstance(each, ast.FunctionDef | ast.AsyncFunctionDef) for each in node.body)


def too_large() -> dict[str, str]:
    """Everything past its ceiling, and how far."""
    found = {}
    for name, path in modules():
        lines = len(path.read_text("utf-8").splitlines())
        if lines > MOST_LINES_OF_A_MODULE:
            found[name] = f"{lines} lines, at most {MOST_LINES_OF_A_MODULE}"
        for node in classes(path):
            lines, methods = lines_of(node), methods_of(node)
            if lines > MOST_LINES_OF_A_CLASS or methods > MOST_METHODS:
                found[f"{name}.{node.name}"] = (
                    f"{lines} lines and {methods} methods, at most "
                    f"{MOST_LINES_OF_A_CLASS} and {MOST_METHODS}"
                )
    return found


def test_no_class_and_no_module_is_larger_than_it_may_be() -> None:
    beyond = {name: how for name, how in too_large().items() if name not in EXCEPTIONS}
    assert not beyond, "\n".join(f"{name}: {how}" for name, how in beyond.items())


def test_the_exceptions_are_few_and_each_is_still_one() -> None:
    assert len(EXCEPTIONS) <= MOST_EXCEPTIONS
    assert set(EXCEPTIONS) <= set(too_large()), "what fits again needs no exception"


def test_nearly_everything_is_formatted_as_the_formatter_does_it() -> None:
    mark = "fmt" + ": skip"
    found = [
        f"{path.relative_to(ROOT)}:{number}"
        for folder in ("booth", "tests")
        for path in sorted((ROOT / folder).rglob("*.py"))
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if f"# {mark}" in line
    ]
    assert len(found) <= MOST_UNFORMATTED, f"{len(found)}:\n" + "\n".join(found)
