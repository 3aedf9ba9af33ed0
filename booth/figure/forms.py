"""Answers as data: which keys there are follows from the type of what the trade gives.

Each form gives the value as JSON and the JSON Schema of it, so that the two cannot part.
"""

from __future__ import annotations

import dataclasses
import enum
import math
import types
import typing
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from booth.figure.exceptions import LACKING
from booth.figure.results import CAUTIONS, NOTES, RULES
from booth.figure.shapes import NUMBER, shape_of, words_of
from booth.trade.cups.cup_table import Cup
from booth.trade.faults.evidence import Reading
from booth.trade.faults.ranked_causes import RankedCause, Standing
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.result import Estimate, Outside, Value
from booth.trade.weather.weather_limits import LimitCheck

#: Units as results of the trade name them, in the words of the table of units.
UNIT_WORDS = {"C": "degC", "m2/L": "m2/l"}
#: Keys other than the names of fields.
KEYS = {"RunStatistics.spread_fraction": "spread_over_mean", "WaitTime.seconds": "wait"}
NOT_SAID = "there is none"


class Form(typing.Protocol):
    """One value of an answer. plain: as JSON; schema: what that JSON is."""

    def plain(self, value: Any, unit: str) -> Any:
        """Give it as JSON; `unit` is that of a number whose name does not say it."""

    def schema(self) -> dict[str, Any]:
        """Give its JSON Schema."""


def _number(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its unit beside it. unit: '' where only the value says it; reason: for none."""

    unit: str = ""
    whole: bool = False
    reason: str = NOT_SAID

    def plain(self, value: Any, unit: str) -> dict[str, Any]:
        found: dict[str, Any] = {"value": None, "unit": self.unit or unit or NUMBER.unit}
        found["estimate"] = isinstance(value, Estimate | EfficiencyBand)
        if isinstance(value, Value | Estimate):
            found["unit"] = UNIT_WORDS.get(value.unit, value.unit)
        if isinstance(value, Estimate | EfficiencyBand):
            found |= {"value": value.likely, "low": value.low, "high": value.high}
        else:
            found["value"] = _number(value.value if isinstance(value, Value) else value)
        if found["value"] is None:
            found["reason"] = self.reason
        return found

    def schema(self) -> dict[str, Any]:
        number: dict[str, Any] = {"type": ["integer" if self.whole else "number", "null"]}
        unit: dict[str, Any] = {"const": self.unit} if self.unit else {"type": "string"}
        return {
            "type": "object",
            "properties": {
                "value": number,
                "unit": unit,
                "estimate": {"type": "boolean"},
                "low": {"type": "number"},
                "high": {"type": "number"},
                "reason": {"type": "string"},
            },
            "required": ["value", "unit", "estimate"],
            "if": {"properties": {"value": {"type": "null"}}},
            "then": {"required": ["reason"]},
            "additionalProperties": False,
        }


@dataclass(frozen=True, slots=True)
class Word:
    """A text, or one of some words."""

    words: tuple[str, ...] = ()
    told: Callable[[Any], str] = str

    def plain(self, value: Any, unit: str) -> str:
        return self.told(value)

    def schema(self) -> dict[str, Any]:
        return {"type": "string"} | ({"enum": list(self.words)} if self.words else {})


@dataclass(frozen=True, slots=True)
class Flag:
    """Yes or no; `open`: it may be that it cannot be said, for which there is a reason."""

    reason: str = ""

    def plain(self, value: Any, unit: str) -> Any:
        if not self.reason:
            return value
        return {"value": value} | ({"reason": self.reason} if value is None else {})

    def schema(self) -> dict[str, Any]:
        if not self.reason:
            return {"type": "boolean"}
        open_ = {"value": {"type": ["boolean", "null"]}, "reason": {"type": "string"}}
        return {"type": "object", "properties": open_, "required": ["value"]}


@dataclass(frozen=True, slots=True)
class Several:
    """Any number of one form."""

    each: Form

    def plain(self, value: Any, unit: str) -> list[Any]:
        return [self.each.plain(one, unit) for one in value]

    def schema(self) -> dict[str, Any]:
        return {"type": "array", "items": self.each.schema()}


@dataclass(frozen=True, slots=True)
class Record:
    """Values by their keys. fields: where each is found; needed: keys that are always there."""

    parts: Mapping[str, Form]
    fields: Mapping[str, str]
    needed: tuple[str, ...]

    def plain(self, value: Any, unit: str) -> dict[str, Any]:
        own = getattr(value, "unit", None) or getattr(getattr(value, "measure", None), "unit", None)
        unit = UNIT_WORDS.get(own, own) if own else unit
        found = {}
        for key, form in self.parts.items():
            one = _field(value, self.fields[key])
            if one is not None or key in self.needed:
                found[key] = form.plain(one, unit)
        if getattr(value, "estimate", False) is True:
            for key, form in self.parts.items():
                if isinstance(form, Figure):
                    found[key]["estimate"] = True
        return found

    def schema(self) -> dict[str, Any]:
        return {
            "type": "object",
            "properties": {key: form.schema() for key, form in self.parts.items()},
            "required": list(self.needed),
            "additionalProperties": False,
        }


def _field(value: Any, name: str) -> Any:
    return value[int(name)] if name.isdigit() else getattr(value, name)


@dataclass(frozen=True, slots=True)
class _Cause:
    cause: str
    standing: Standing
    figures_for: Sequence[Reading]
    figures_against: Sequence[Reading]
    do_now: str | None


@dataclass(frozen=True, slots=True)
class _Check:
    name: str
    measured: float
    at_least: float | None
    at_most: float | None
    unit: str
    within: bool


@dataclass(frozen=True, slots=True)
class Recast:
    """A value told in other fields than its own."""

    form: Form
    make: Callable[[Any], Any]

    def plain(self, value: Any, unit: str) -> Any:
        return self.form.plain(self.make(value), unit)

    def schema(self) -> dict[str, Any]:
        return self.form.schema()


def _cause(found: RankedCause) -> _Cause:
    now = found.cause.now if found.standing is Standing.SHOWN else None
    evidence = found.figures_for, found.figures_against
    return _Cause(found.cause.words, found.standing, *evidence, now)


def _check(found: LimitCheck) -> _Check:
    unit = "K" if "margin" in found.name else found.unit
    return _Check(found.name, found.measured, found.low, found.high, unit, found.ok)


_RECAST: dict[Any, tuple[Any, Callable[[Any], Any]]] = {
    RankedCause: (_Cause, _cause),
    LimitCheck: (_Check, _check),
}


def form_of(hint: Any, name: str, owner: str = "", unit: str = "") -> Form:
    """Give the form of a type under the name of a field. unit: where the name says none.

    Raises TypeError for a type that no form is known for.
    """
    kinds = [each for each in _members(hint) if each not in (types.NoneType, Outside)]
    kind = kinds[0]
    reason = LACKING.get(f"{owner}.{name}" if owner else name, NOT_SAID)
    if kind in _RECAST:
        shown, make = _RECAST[kind]
        return Recast(form_of(shown, name), make)
    if kind in (float, Value, Estimate, EfficiencyBand, int):
        shape = shape_of(name)
        own = unit if shape is None else shape.unit
        own = "1" if kind is EfficiencyBand or (kind is int and not own) else own
        return Figure(own, kind is int, reason)
    if kind is bool:
        return Flag(reason if types.NoneType in _members(hint) else "")
    if kind is Cup:
        return Word(told=lambda cup: cup.name)
    if isinstance(kind, type) and issubclass(kind, enum.Enum):
        return Word(tuple(each.value for each in kind), lambda found: found.value)
    if kind is str:
        return Word()
    inside = [each for each in typing.get_args(kind) if each is not Ellipsis]
    if len(inside) == 1:
        return Several(form_of(inside[0], name, owner))
    if dataclasses.is_dataclass(kind):
        return _record(kind)
    raise TypeError(f"no form is known for {name}, a {hint}")


def _members(hint: Any) -> tuple[Any, ...]:
    union = isinstance(hint, types.UnionType) or typing.get_origin(hint) is typing.Union
    return typing.get_args(hint) if union else (hint,)


def _record(kind: Any) -> Record:
    owner, hints = kind.__name__, typing.get_type_hints(kind)
    parts, fields, needed = {}, {}, []
    whole = {field for field in hints if field == "unit" or field in (*RULES, *NOTES, *CAUTIONS)}
    for field, hint in hints.items():
        if field in whole or hint is types.NoneType:
            continue
        key = KEYS.get(f"{owner}.{field}") or words_of(field).replace(" ", "_")
        if key in parts:
            raise TypeError(f"{owner} has two values of one key, {key}: give one another in KEYS")
        parts[key], fields[key] = form_of(hint, field, owner), field
        if types.NoneType not in _members(hint) or f"{owner}.{field}" in LACKING:
            needed.append(key)
    return Record(parts, fields, tuple(needed))


def values_of(hint: Any, name: str, key: str, unit: str) -> Record:
    """Give the form of all values of an answer: a record's own keys, or `key` for one value.

    name: of the function, which may say the unit; key: may be several, parted by a bar.
    """
    kind = next((each for each in _members(hint) if each not in (types.NoneType, Outside)), None)
    if kind is None:  # it only ever says why there is no figure
        return Record({}, {}, ())
    inside = [each for each in typing.get_args(kind) if each is not Ellipsis]
    keys = key.split("|")
    if len(inside) > 1 and len(inside) == len(keys):
        parts = {key: form_of(each, name) for key, each in zip(keys, inside, strict=True)}
        return Record(parts, {key: str(n) for n, key in enumerate(parts)}, ())
    if dataclasses.is_dataclass(kind) and kind not in (Value, Estimate, EfficiencyBand):
        return _record(kind)
    return Record({keys[0]: form_of(hint, name, unit=unit)}, {keys[0]: "0"}, (keys[0],))
