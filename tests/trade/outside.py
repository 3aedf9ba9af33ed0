"""The register of outside checks: which public function is held against which source, and by which
test.

``python -m tests.trade.outside`` prints it as a table.
"""

from __future__ import annotations

import enum
import importlib
from collections.abc import Callable
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

T = TypeVar("T", bound=Callable[..., object])


class Kind(enum.StrEnum):
    """What sort of outside a check has. The first four can contradict the program by themselves."""

    #: Figures that somebody measured, or worked and printed, and that are not the formula's own
    #: list.
    DATA = "independent data"
    #: A general-purpose library that reckons it in its own way.
    LIBRARY = "library"
    #: What has to hold whatever the figures: conservation, geometry, order.
    THEOREM = "theorem"
    #: The thing itself played through, drop by drop or film by film.
    SIMULATION = "simulation"
    #: The published list or limit that the program carries, typed a second time.
    COPIED = "copied list"
    #: The program's own rule or a definition, worked once more by hand.
    DEFINITION = "definition"


#: Kinds that can contradict the program.
REAL = frozenset({Kind.DATA, Kind.LIBRARY, Kind.THEOREM, Kind.SIMULATION})


class Check(NamedTuple):
    """One check of one function: its kind, its source, the test that makes it."""

    kind: Kind
    source: str
    test: Callable[..., Any]


#: function -> its checks, filled as the test modules are imported.
CHECKED: dict[str, list[Check]] = {}


def outside(*functions: Callable[..., object], kind: Kind, source: str) -> Callable[[T], T]:
    """Mark a test as holding `functions` against something this project did not write.

    `source` names it: a standard with edition and table, a regulation, a handbook's worked example,
    a reference library, a theorem, or 'common practice, no source'; 'from memory' marks a value
    that was not looked up for this check.
    """

    def mark(test: T) -> T:
        for function in functions:
            name = f"{function.__module__}.{function.__qualname__}"
            CHECKED.setdefault(name, []).append(Check(kind, source, test))
        return test

    return mark


def import_all_tests() -> None:
    for path in sorted(Path(__file__).parent.glob("test_*.py")):
        importlib.import_module(f"tests.trade.{path.stem}")


def table() -> str:
    """Give the register as lines: function, kind, source."""
    import_all_tests()
    lines = []
    for name in sorted(CHECKED):
        lines += [
            f"{name.removeprefix('booth.trade.'):60} {check.kind:17} {check.source}"
            for check in CHECKED[name]
        ]
    return "\n".join(lines)


def counts() -> dict[str, int]:
    """Give how many functions have each kind as the strongest of their checks, in order of Kind."""
    import_all_tests()
    order = list(Kind)
    found = dict.fromkeys((str(kind) for kind in Kind), 0)
    for checks in CHECKED.values():
        found[min((check.kind for check in checks), key=order.index)] += 1
    return found


if __name__ == "__main__":
    # Run as a module this file is another one than the one that the tests import.
    register = importlib.import_module("tests.trade.outside")

    print(register.table())
    print()
    for kind, count in register.counts().items():
        print(f"{kind:17} {count}")
