"""What the docstrings of the trade say, so that it is written once: purpose, arguments, sources."""

from __future__ import annotations

import ast
import inspect
import re
import sys
from collections.abc import Callable, Iterator
from typing import Any

from booth.figure.shapes import words_of

Function = Callable[..., Any]

_SECTION = re.compile(r"^(Args|Returns|Range|Source):\s*(.*)$")
_ARGUMENT = re.compile(r"^    (\w+(?:, \w+)*):\s*(.*)$")
_UNIT = re.compile(r"\[([^\]]+)\]")
_FORMULA = re.compile(r"``([^`]* [^`]*)``")
#: "As for dry_film_um" in a docstring, which a painter cannot look up.
_ELSEWHERE = re.compile(r"\b[Aa]s (?:for (?:\w+\.)?([a-z]\w+)|([a-z]\w*_\w+))")
_NAME = re.compile(r"\b[a-z][a-z0-9]*_\w+")
#: Under ``python -OO`` there are no docstrings.
STRIPPED = "not at hand: Python was told to drop it (-OO)"


def _lines(function: Function) -> dict[str, list[str]]:
    """Give the lines of each section by its name; '' is what stands before and behind them."""
    found: dict[str, list[str]] = {"": []}
    name = ""
    for line in (inspect.getdoc(function) or "").splitlines():
        heading = _SECTION.match(line)
        if heading:
            name = heading[1]
            found[name] = [heading[2]]
        elif not line:
            name = ""
        else:
            found[name].append(line)
    return found


def _flat(lines: list[str]) -> str:
    return " ".join(" ".join(lines).split())


def _plain(text: str) -> str:
    """Give a text of the trade as a painter reads it: no quotes, and no names of the code."""
    return _NAME.sub(lambda found: words_of(found[0]).removesuffix(" at"), text.replace("`", ""))


def purpose(function: Function) -> str:
    """Give the first sentence of a docstring as what is asked for: 'the dew point of the air'."""
    doc = _flat((inspect.getdoc(function) or STRIPPED).split("\n\n", 1)[0].splitlines())
    told = _plain(doc.removeprefix("Give ")).rstrip(".")
    return told[0].lower() + told[1:]


def formula(function: Function) -> str:
    """Give the formula that a docstring writes in double backquotes; '' where it has none."""
    lines = _lines(function)
    told = _flat([*lines[""], *lines.get("Returns", []), *lines.get("Source", [])])
    found = _FORMULA.search(told)
    return found[1] if found else ""


def unit(function: Function) -> str:
    """Give the unit of a result as ``ml/min``, '' where the docstring names none."""
    found = _UNIT.search(_flat(_lines(function).get("Returns", [])))
    return found[1] if found else ""


def arguments(function: Function) -> dict[str, str]:
    """Give what each parameter means, without its unit and its limits."""
    found: dict[str, list[str]] = {}
    names: tuple[str, ...] = ()
    for line in _lines(function).get("Args", []):
        heading = _ARGUMENT.match(line)
        if heading:
            names = tuple(heading[1].split(", "))
            found.update({name: [heading[2]] for name in names})
        elif names:
            for name in names:
                found[name].append(line)
    return {
        name: _plain(_flat(lines).split(" [")[0].split("; ")[0]).rstrip(".,:")
        for name, lines in found.items()
    }


def _named(name: str, function: Function) -> Any:
    """Give what a function calls by a name, or else the trade."""
    near = getattr(function, "__globals__", {})
    if name in near:
        return near[name]
    trade = [module for each, module in sys.modules.items() if each.startswith("booth.trade.")]
    return next((vars(module)[name] for module in trade if name in vars(module)), None)


def section(function: Function, name: str) -> str:
    """Give one section of a docstring as one line; where it points to another function's, that."""
    lines = _lines(function)
    text = _flat(lines[name]) if name in lines else STRIPPED

    def there(found: re.Match[str]) -> str:
        other = _named(found[1] or found[2], function)
        if not callable(other) or other is function:
            return found[0]
        told = section(other, name).rstrip(".")
        return told if found.start() == 0 else told[0].lower() + told[1:]

    return _plain(_ELSEWHERE.sub(there, text)).rstrip(".")


def calls(function: Function) -> Iterator[dict[str, Any]]:
    """Give the arguments of each call of a function in its own example, by parameter.

    The example is what the tests run as well; here only what a call rests on is run, not the call.
    """
    names = dict(getattr(inspect.unwrap(function), "__globals__", {}))
    bind = inspect.signature(function).bind
    for statement in ast.parse(_source(function)).body:
        for node in ast.walk(statement):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == function.__name__:
                given = ast.unparse(ast.Call(ast.Name("bind"), node.args, node.keywords))
                yield eval(given, {**names, "bind": bind}).arguments
        if isinstance(statement, (ast.Assign, ast.ImportFrom)):
            exec(ast.unparse(statement), names)


def _source(function: Function) -> str:
    lines = (line.strip() for line in (inspect.getdoc(function) or "").splitlines())
    return "\n".join(line[4:] for line in lines if line.startswith((">>> ", "... ")))
