"""What a result of the trade is told as: by its type, its names and their units.

A type that is told in words of its own is registered in ``results_told``.
"""

from __future__ import annotations

import dataclasses
import enum
import functools
from collections.abc import Sequence
from typing import Any

from booth.figure import docs
from booth.figure.answer import Answer, Item
from booth.figure.docs import Function
from booth.figure.exceptions import FIGURES, LACKING
from booth.figure.shapes import COUNT, NUMBER, UNITS, Shape, shape_of, words_of
from booth.trade.result import Estimate, Outside, Value

#: Fields that are sentences beside the figures, and fields that are the rule.
NOTES = ("caution", "criterion", "note", "sentence", "words")
RULES = ("rule", "source")


def shape_for(shape: Shape | None, unit: str = "") -> Shape:
    """Give the shape that a name says, unless the figure itself says another unit."""
    if shape is not None and unit in ("", shape.unit):
        return shape
    return UNITS.get(unit, NUMBER)


def tell(function: Function, found: Any, label: str) -> Answer:
    """Give the answer for what a function gave, in the unit of its name or of its docstring."""
    shape = shape_of(function.__name__) or UNITS.get(docs.unit(function))
    if shape is None and isinstance(found, float) and not function.__doc__:
        lost = "Python was told to drop the docstrings, and with them the unit of this figure."
        return Answer(outside=Outside(lost, "Start Python without -OO.", docs.STRIPPED))
    return told(found, shape, label)


def joined(answers: Sequence[Answer]) -> Answer:
    """Give several answers as one: all figures and notes, each rule once."""
    rules = dict.fromkeys(each.rule for each in answers if each.rule)
    return Answer(
        tuple(item for each in answers for item in each.items),
        "; ".join(rules),
        tuple(dict.fromkeys(note for each in answers for note in each.notes)),
        next((each.outside for each in answers if each.outside is not None), None),
    )


@functools.singledispatch
def told(found: Any, shape: Shape | None, label: str) -> Answer:
    """Give the answer for a result. shape: of a plain number; label: what it is called."""
    if not dataclasses.is_dataclass(found):
        raise TypeError(f"nothing here tells {found!r}")
    parts: list[Answer] = []
    for field in sorted(dataclasses.fields(found), key=lambda field: field.name == "count"):
        value = getattr(found, field.name)
        key = f"{type(found).__name__}.{field.name}"
        called = FIGURES.get(key) or words_of(field.name)
        if field.name in RULES:
            parts.insert(0, Answer(rule=value))
        elif field.name in NOTES:
            parts.append(Answer(notes=(value,)))
        elif value is not None:
            parts.append(told(value, shape_of(field.name), called))
        elif key in LACKING:
            parts.append(Answer((Item(called, LACKING[key]),)))
    whole = joined(parts)
    return dataclasses.replace(whole, rule=next((each.rule for each in parts if each.rule), ""))


@told.register
def _answer(found: Answer, shape: Shape | None, label: str) -> Answer:
    return found


@told.register
def _outside(found: Outside, shape: Shape | None, label: str) -> Answer:
    return Answer((), found.rule, outside=found)


@told.register
def _value(found: Value, shape: Shape | None, label: str) -> Answer:
    return Answer((Item(label, found.value, shape_for(shape, found.unit)),), found.rule)


@told.register
def _estimate(found: Estimate, shape: Shape | None, label: str) -> Answer:
    unit = shape_for(shape, found.unit)
    item = Item(label, found.likely, unit, found.low, found.high, estimate=True)
    return Answer((item,), found.rule)


@told.register(float)
@told.register(int)
def _number(found: float, shape: Shape | None, label: str) -> Answer:
    unit = COUNT if isinstance(found, int) else shape_for(shape)
    return Answer((Item(label, found, unit, tight=label == "to"),))


@told.register(bool)
@told.register(str)
def _word(found: bool | str, shape: Shape | None, label: str) -> Answer:
    return Answer((Item(label, found.value if isinstance(found, enum.Enum) else found),))


@told.register(tuple)
@told.register(list)
def _several(found: Sequence[Any], shape: Shape | None, label: str) -> Answer:
    if all(isinstance(each, str) for each in found):
        if any(each.endswith(".") for each in found):
            return Answer(tuple(Item(f"{place}.", each) for place, each in enumerate(found, 1)))
        return Answer((Item(label, ", ".join(found)),))
    first, *others = label.split("|")
    labels = [first, *(others or [label] * len(found))]
    return joined([told(each, shape, called) for each, called in zip(found, labels, strict=False)])
