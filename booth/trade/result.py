"""What a computation of the trade may answer: a value, an estimate, or a refusal with its reason.

A screen cannot misread these: an estimate has no ``value`` to take for granted, a refusal has no
number at all. Each carries its unit and the rule it rests on.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Self

#: Between a number and its unit in a sentence of the trade, and nowhere else in one.
JOIN = "\N{NO-BREAK SPACE}"


class Said(str):
    """A number with its unit in a sentence, in the trade's own unit (a difference of temperature in K).

    Whoever shows the sentence puts it into the painter's units (``units.sentences``); what a source
    says is quoted with a plain space and stays as it is.
    """

    __slots__ = ()

    def __new__(cls, number: float, unit: str) -> Self:
        return super().__new__(cls, f"{number:g}{JOIN}{unit}" if unit else f"{number:g}")


class BadInput(ValueError):
    """A number that the computation cannot take; the message is a sentence for a painter.

    sentence: as it is put into the painter's units; the message itself has the trade's own.
    """

    @property
    def sentence(self) -> str:
        return super().__str__()

    def __str__(self) -> str:
        return self.sentence.replace(JOIN, " ")


#: What the rounding of floating-point numbers may make of a whole one.
ROUNDING = 1e-9
#: No quantity of the trade, in the units of the trade, is larger than this, nor nearer to a limit
#: that it has to be above: what is was mistyped. Within them no sum, product or quotient here runs
#: out of floating-point numbers. This program's own choice.
LARGEST = 1e15
SMALLEST = 1e-30


@dataclass(frozen=True, slots=True)
class Value:
    """A figure that follows from what was measured by a published rule.

    value: the number; unit: its unit, as in ``mm2/s``; rule: the rule and where it is published.
    """

    value: float
    unit: str
    rule: str


@dataclass(frozen=True, slots=True)
class Estimate:
    """A figure that rests on a rule of thumb, or on rules that disagree: ``low <= likely <= high``.

    rule: which rule of thumb; never to be shown without the word 'estimate'.
    """

    likely: float
    low: float
    high: float
    unit: str
    rule: str


@dataclass(frozen=True, slots=True)
class Outside:
    """No figure: the input lies outside the limits of the rule.

    reason: a sentence saying which limit; advice: a sentence saying what to do instead.
    """

    reason: str
    advice: str
    rule: str


Figure = Value | Estimate | Outside


def require(
    name: str,
    number: float,
    low: float = -math.inf,
    high: float = math.inf,
    *,
    above: float | None = None,
    below: float | None = None,
    unit: str = "",
) -> float:
    """Give `number` back if it is finite and within its limits.

    Args:
        name: what the sentence calls it, as ``The delivery``.
        number: the number, in the unit the caller has it in.
        low, high: least and greatest allowed.
        above, below: limits that are themselves not allowed; None where there are none.
        unit: for the sentence.

    Returns: the number, unchanged, as a float; its unit is the caller's.
    Range: any finite number up to 1e15; at least 1e-30 above what it has to be above.
    Source: none; it checks a number, and computes nothing.

    >>> require("The delivery", 180, above=0.0, unit="ml/min")
    180.0
    >>> require("The delivery", -1.0, 0.0, unit="ml/min")
    Traceback (most recent call last):
        ...
    booth.trade.result.BadInput: The delivery must be 0 ml/min or more; -1 ml/min was given.
    """
    if isinstance(number, bool) or not isinstance(number, (int, float)):
        raise BadInput(f"{name} must be a number, not {number!r}.")
    if isinstance(number, int) and abs(number) > LARGEST:  # maybe beyond what a float can be
        raise BadInput(f"{name} is too large to reckon with.")
    if not math.isfinite(number):
        raise BadInput(f"{name} must be a finite number, not {number}.")
    if above is not None and not number > above:
        raise BadInput(f"{name} must be above {Said(above, unit)}; {Said(number, unit)} was given.")
    if below is not None and not number < below:
        raise BadInput(f"{name} must be below {Said(below, unit)}; {Said(number, unit)} was given.")
    if number < low:
        raise BadInput(f"{name} must be {Said(low, unit)} or more; {Said(number, unit)} was given.")
    if number > high:
        raise BadInput(
            f"{name} must be {Said(high, unit)} or less; {Said(number, unit)} was given."
        )
    # Where 0 is allowed a number may be as small as it likes: nothing is divided by it.
    small = above is not None and number - above < SMALLEST
    if small or abs(number) > LARGEST:
        size = "small" if small else "large"
        raise BadInput(f"{name} is too {size} to reckon with: {Said(number, unit)} was given.")
    return float(number)


def _count(name: str, number: float, low: int, high: int) -> int:
    """Give `number` back as a whole one if it is, and within its limits."""
    if require(name, number, low, high) != int(number):
        raise BadInput(f"{name} must be a whole number; {number:g} was given.")
    return int(number)


def _whole_up(number: float) -> int:
    """The next whole count up; the rounding of floating-point division does not raise it."""
    return math.ceil(number - ROUNDING)
