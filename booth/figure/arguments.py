"""Arguments from a signature: a name says the word and the unit, a type says how it is read."""

from __future__ import annotations

import dataclasses
import enum
import inspect
import types
import typing
from collections.abc import Callable, Iterable, Mapping
from dataclasses import MISSING
from typing import Any

import msgspec

from booth.figure import docs, exceptions, readers
from booth.figure.docs import Function
from booth.figure.meanings import MEANINGS
from booth.figure.readers import Amount, Part, Reader, quantity
from booth.figure.shapes import NUMBER, ending, shape_of, spelt, words_of

#: What the last word of a limit says of it.
_LIMITS = {"low": "least {} asked for", "high": "most {} asked for", "wanted": "{} wanted"}


class Argument(msgspec.Struct, frozen=True):
    """One argument of a subject.

    parameter, field: what it becomes, of a parameter the one field of it; optional: may be left
    out, and is then given by name only; default: its value when it is left out, None where nothing
    is assumed; many: takes every value that is left; expand: what one typed word stands for.
    """

    name: str
    parameter: str
    reader: Reader
    meaning: str
    field: str = ""
    optional: bool = False
    default: Any = None
    many: bool = False
    expand: Callable[[str], list[str]] | None = None

    def words(self, text: str) -> list[str]:
        """Give the words that one typed word stands for: ``4:1`` for two components."""
        return self.expand(text) if self.expand else [text]


def arguments_of(function: Function, explained: Iterable[Function]) -> tuple[Argument, ...]:
    """Give the arguments: those needed, of them the one that takes many last; then the others.

    explained: functions whose docstrings say what a parameter means. Raises TypeError for a
    parameter that has to be given and that no reader is known for, and for two of one name.
    """
    found: list[Argument] = []
    asked, hints = function.__name__, typing.get_type_hints(function)
    meanings = {k: v for each in explained for k, v in docs.arguments(each).items()}
    parameters = inspect.signature(function).parameters
    for name, parameter in parameters.items():
        if name.endswith("_by") and name.removesuffix("_by") in parameters:
            continue  # an amount says by itself whether it is a volume or a weight
        kinds = _plain(hints[name])
        if _may_lack_all(kinds):
            found += _fields(name, kinds)
            continue
        default = exceptions.DEFAULTS.get((asked, name), parameter.default)
        if default is parameter.empty:
            default = exceptions.ASSUMED.get(kinds, default)
        optional = default is not parameter.empty and (asked, name) not in exceptions.NEEDED
        inside = typing.get_args(kinds)
        many, kinds = (True, inside[0]) if len(inside) == 1 else (False, kinds)
        reader = exceptions.READERS.get(name) or _reader(name, kinds)
        if reader is not None:
            own = exceptions.WORDS.get(asked, {})
            argument = Argument(
                own.get(name) or exceptions.PARAMETERS.get(name) or _word(name),
                name,
                reader,
                MEANINGS.get((asked, name)) or meanings.get(name, words_of(name)),
                optional=optional,
                default=default if optional else None,
                many=many and name not in exceptions.READERS,
                expand=exceptions.EXPANDED.get(name),
            )
            found.append(argument)
        elif not optional:
            raise TypeError(f"{asked} takes {name}, and no reader is known for it")
    if len({each.name for each in found}) < len(found):
        raise TypeError(f"{asked} has two arguments of one name: give one another word")
    return tuple(sorted(found, key=lambda each: (each.optional, each.many)))


def call(function: Function, arguments: tuple[Argument, ...], given: Mapping[str, Any]) -> Any:
    """Call a function with the values given by the names of its arguments."""
    hints = typing.get_type_hints(function)
    values: dict[str, Any] = {}
    fields: dict[str, dict[str, Any]] = {}
    for each in arguments:
        place, key = values, each.parameter
        if each.field:
            place, key = fields.setdefault(each.parameter, {}), each.field
        if each.name in given:
            place[key] = given[each.name]
    for name, found in fields.items():
        values[name] = _plain(hints[name])(**found)
    for name, value in tuple(values.items()):
        if isinstance(value, Amount) and hints[name] is not Amount:
            if f"{name}_by" in hints:
                values[name], values[f"{name}_by"] = value
            else:
                values[name] = value.in_measure(values["measure"], f"What is {name}")
    return function(**values)


def _word(name: str) -> str:
    return words_of(name).replace(" ", "-")


def _plain(hint: Any) -> Any:
    """Give the first type of a union that is not None, where the union is no type of its own."""
    if hint in exceptions.TYPES or not isinstance(hint, types.UnionType):
        return hint
    return next(each for each in typing.get_args(hint) if each is not types.NoneType)


def _may_lack_all(kinds: Any) -> bool:
    return dataclasses.is_dataclass(kinds) and all(
        field.default is not MISSING for field in dataclasses.fields(kinds)
    )


def _fields(name: str, kinds: Any) -> list[Argument]:
    """Give an argument for each field of a type whose fields may all be left out.

    A field without a unit of its own has that of the parameter, and its word before its own.
    """
    found = []
    for field, hint in typing.get_type_hints(kinds).items():
        shape = None if ending(field) else shape_of(name)
        word = _word(f"{name}_{field}" if shape else field)
        reader = quantity(shape) if shape else _reader(field, _plain(hint))
        first, _, last = word.rpartition("-")
        measured = f"{spelt(word.replace('-', ' '))}, as measured"
        meaning = _LIMITS.get(last, measured).format(first.replace("-", " "))
        if reader is not None:
            found.append(Argument(word, name, reader, meaning, field, optional=True))
    return found


def _reader(name: str, hint: Any) -> Reader | None:
    """Give what reads a value of a type under a name, None where nothing can."""
    if hint in exceptions.TYPES:
        return exceptions.TYPES[hint]
    if hint is float:
        return quantity(shape_of(name) or NUMBER)
    if isinstance(hint, type) and issubclass(hint, enum.Enum):
        return readers.choice({each.name.lower().replace("_", "-"): each for each in hint})
    if typing.get_origin(hint) is tuple and name in exceptions.GROUPS:
        names = zip(exceptions.GROUPS[name], typing.get_args(hint), strict=True)
        parts = [Part(_word(field), _needed(field, kinds)) for field, kinds in names]
        return readers.group(parts, lambda *values: values, tuple)
    if dataclasses.is_dataclass(hint):
        hints = typing.get_type_hints(hint)
        parts = [
            Part(_word(field.name), _needed(field.name, hints[field.name]), field.default is None)
            for field in dataclasses.fields(hint)
        ]
        make = typing.cast(Callable[..., Any], hint)
        return readers.group(parts, make, lambda made: [getattr(made, each) for each in hints])
    return None


def _needed(name: str, hint: Any) -> Reader:
    reader = _reader(name, _plain(hint))
    if reader is None:
        raise TypeError(f"no reader is known for {name}, a {hint}")
    return reader
