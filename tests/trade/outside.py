"""The register of outside checks: which public function is held against which source, and by which test."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

T = TypeVar("T", bound=Callable[..., object])

#: function -> the sources it is checked against, filled as the test modules are imported.
CHECKED: dict[str, list[str]] = {}


def outside(*functions: Callable[..., object], source: str) -> Callable[[T], T]:
    """Mark a test as holding `functions` against something this project did not write.

    `source` names it: a standard with edition and table, a regulation, a handbook's worked example,
    a reference library, or 'common practice, no source'; '(recalled)' marks a value from memory.
    """

    def mark(test: T) -> T:
        for function in functions:
            name = f"{function.__module__}.{function.__qualname__}"
            CHECKED.setdefault(name, []).append(source)
        return test

    return mark
