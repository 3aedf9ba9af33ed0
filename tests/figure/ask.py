"""The command as a test calls it: exit code and both streams, or the JSON of an answer."""

from __future__ import annotations

import io
import json
import shlex
import sys
from collections.abc import Iterator
from contextlib import redirect_stderr, redirect_stdout
from typing import Any
from unittest.mock import patch

from booth.figure import main
from booth.figure.catalogue import subjects
from booth.figure.subject import Subject

SUBJECTS = subjects()


def run(words: list[str], typed: str = "") -> tuple[int, str, str]:
    """Give exit code, standard output and standard error of a call; typed: on standard input."""
    out, err = io.StringIO(), io.StringIO()
    with patch.object(sys, "stdin", io.StringIO(typed)), redirect_stdout(out), redirect_stderr(err):
        code = main(words)
    return code, out.getvalue(), err.getvalue()


def refuse(constant: str) -> None:
    raise AssertionError(f"{constant} is no JSON")


def ask(words: str, *options: str, code: int = 0) -> dict[str, Any]:
    """Give the JSON of an answer."""
    ended, out, err = run([*shlex.split(words), "--json", *options])
    assert (ended, err) == (code, "")
    found: dict[str, Any] = json.loads(out, parse_constant=refuse)
    return found


def at(values: Any, path: str) -> Any:
    """Give what stands at a path such as ``pours.0.amount``; of a figure its number."""
    for key in path.split("."):
        values = values[int(key) if key.isdigit() else key]
    return values["value"] if isinstance(values, dict) and "value" in values else values


def numbers(values: Any) -> Iterator[dict[str, Any]]:
    """Give every figure among the values of an answer."""
    if isinstance(values, dict) and "unit" in values and "value" in values:
        yield values
    elif isinstance(values, dict | list):
        for each in values.values() if isinstance(values, dict) else values:
            yield from numbers(each)


def examples() -> Iterator[tuple[Subject, str]]:
    for subject in SUBJECTS.values():
        for example in subject.examples:
            yield subject, f"{subject.name} {example}".strip()


EXAMPLES = list(examples())
LINES = [line for _, line in EXAMPLES]
