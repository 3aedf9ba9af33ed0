"""What a subject is: a name, its arguments, the functions of the trade it answers, an example."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from booth.figure.answer import Answer
from booth.figure.readers import Quantity, Reader
from booth.figure.shapes import Shape


@dataclass(frozen=True, slots=True)
class Argument:
    """One argument of a subject.

    name; reader; meaning: for the help; optional: may be left out, and is then given by name only;
    default: what is typed for it when it is left out, '' for the function's own; many: takes every
    value that is left.
    """

    name: str
    reader: Reader
    meaning: str
    optional: bool = False
    default: str = ""
    many: bool = False


class Given(Mapping[str, Any]):
    """The values of the arguments, by name; those left out are not there."""

    def __init__(self, values: Mapping[str, Any]) -> None:
        self._values = dict(values)

    def __getitem__(self, name: str) -> Any:
        return self._values[name]

    def __iter__(self) -> Any:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    def some(self, **names: str) -> dict[str, Any]:
        """Give keyword arguments for a function: parameter=argument, those left out omitted."""
        return {to: self[name] for to, name in names.items() if name in self}


@dataclass(frozen=True, slots=True)
class Subject:
    """One thing that can be asked.

    functions: of the trade, the first (and any in `also`) gives purpose, range and source;
    examples: words as typed, the first shown in the list.
    """

    name: str
    says: str
    arguments: tuple[Argument, ...]
    answer: Callable[[Given], Answer]
    functions: tuple[Callable[..., object], ...]
    examples: tuple[str, ...]
    also: tuple[Callable[..., object], ...] = ()

    def argument(self, name: str) -> Argument | None:
        """Give the argument of that name, if any."""
        return next((each for each in self.arguments if each.name == name), None)


def need(name: str, what: Shape | Reader, meaning: str, many: bool = False) -> Argument:
    """An argument that has to be given, in its place or by name."""
    return Argument(name, _reader(what), meaning, many=many)


def may(
    name: str, what: Shape | Reader, meaning: str, default: str = "", many: bool = False
) -> Argument:
    """An argument that may be given, by name."""
    return Argument(name, _reader(what), meaning, optional=True, default=default, many=many)


def _reader(what: Shape | Reader) -> Reader:
    return Quantity(what) if isinstance(what, Shape) else what
