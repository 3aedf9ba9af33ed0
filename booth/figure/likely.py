"""No figure that cannot be: what is without end, or more than any shop has, is told as a sentence."""

from __future__ import annotations

import math

import msgspec

from booth.figure.answer import Answer, Item, Manner
from booth.figure.shape import Shape
from booth.trade.result import Outside
from booth.units import System

ADVICE = "Check the numbers and their units."


def checked(answer: Answer) -> Answer:
    """Give the answer, or why there is no figure where one of its numbers cannot be."""
    for item in answer.items:
        for number in (item.value, item.low, item.high):
            plain = isinstance(number, int | float) and not isinstance(number, bool)
            why = _why(item, float(number)) if plain else ""  # type: ignore[arg-type]
            if why:
                return msgspec.structs.replace(answer, outside=Outside(why, ADVICE, answer.rule))
    return answer


def _why(item: Item, number: float) -> str:
    name = item.name or "the figure"
    if math.isnan(number):
        return f"What was typed gives no number for {name}."
    if math.isinf(number):
        return f"What was typed gives {name} without end."
    most = math.inf if item.shape is None else item.shape.most
    if item.shape is None or abs(number) <= most:
        return ""
    told, limit = (_both(item.shape, each) for each in (number, most))
    return f"What was typed gives {name} {told}: more than {limit}, the most that is taken here."


def _both(shape: Shape, number: float) -> str:
    us, metric = (Item("", number, shape).text(Manner((each,), 3)) for each in System)
    return us if us == metric else f"{us} ({metric})"
