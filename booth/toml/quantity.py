"""Keys that take a number: with its unit in a text, or bare where it is a count, parts or a percentage."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, field
from typing import Any

from booth.files.faults import in_words
from booth.toml.key import At, Key
from booth.toml.typed import typed
from booth.units import EntryError, Kind, System, read, show

__all__ = ["RANGE_TO", "UNITLESS", "Quantity"]

#: Two quantities and the words between them.
MOST_QUANTITY = 80
#: No value is as large as this.
BEYOND = 1e15
#: Digits of a bare number that is written.
DIGITS = 6

RANGE_TO = re.compile(r"\s*(?P<low>\S.*?)\s+to\s+(?P<high>\S.*?)\s*", re.DOTALL)
UNITLESS = re.compile(r"[-+\u2212\s\d.,/:]*")

BARE_ALLOWED = "A bare number stands only where a count, parts or a percentage is meant."
#: Kinds that are told by a bare number, and how a sentence calls it; the first two by nothing else.
BARE = {
    Kind.COUNT: "a whole number",
    Kind.RATIO: "a bare number",
    Kind.PERCENT: "a percentage",
    Kind.TURNS: "turns",
}
NO_UNIT = (Kind.COUNT, Kind.RATIO)
#: Units whose name in an attribute is not their own.
SUFFIXES = {"degC": "c", "delta_degC": "c", "%": "percent"}


@dataclass(frozen=True)
class Quantity(Key):
    """A number of one kind from low to high, in the base unit of the kind.

    unit: the one it is written in, where that is not the painter's choice; per: what the model
    keeps is so many times smaller; no_share: 0.5 is not meant as half a percent.
    """

    kind: Kind = Kind.RATIO
    low: float = 0.0
    high: float = 0.0
    unit: str = field(default="", kw_only=True)
    per: float = field(default=1.0, kw_only=True)
    no_share: bool = field(default=False, kw_only=True)
    called = "a quantity with its unit, in quotation marks"

    def kept_as(self, name: str) -> str:
        """As everywhere in this program: the name with the unit behind it, as in ``wet_um``."""
        unit = SUFFIXES.get(self.kind.base, self.kind.base).lower()
        suffix = re.sub(r"\W", "_", f"_{unit}") if unit else ""
        return self.attribute or name.removesuffix(suffix) + suffix

    @property
    def wanted(self) -> str:
        called = BARE.get(self.kind, self.called)
        called += f" ({self.says})" if self.kind in NO_UNIT else ""
        return f"{called}, such as {self.example}"

    def parse(self, value: Any, at: At) -> Any:
        number = _number(value)
        if isinstance(value, str) and self.kind not in NO_UNIT:
            base = self.parse_text(value, at, value)
            return base if base is None or self.per == 1 else base / self.per
        if number is not None and self.kind in BARE:
            return self._bare(number, value, at)
        advice = "" if number is None else BARE_ALLOWED
        self.refuse(
            value, at, "Take off the quotation marks." if isinstance(value, str) else advice
        )
        return None

    def _bare(self, number: float, value: Any, at: At) -> float | None:
        if self.no_share and 0 < number < 1:
            advice = f'Write {number * 100:g}, or "{number:g} %" if that is meant.'
            at.add(in_words(value), "percent, not a share", advice)
        if self.kind is not Kind.COUNT:
            return number
        if not number.is_integer():
            self.refuse(value, at)
            return None
        return int(number)

    def parse_text(self, text: str, at: At, whole: str) -> float | None:
        """Give the base value of a text, which is `whole` or the part of it that is one quantity."""
        if len(text) > MOST_QUANTITY:
            at.add(f"{len(text)} characters", "a number and its unit, or two")
            return None
        if self.kind is not Kind.PERCENT and text.strip() and UNITLESS.fullmatch(text):
            advice = f"Write the unit: {self.example}."
            if ":" in text:
                advice = 'Write the unit, as in "90 s" or "1 h 30 min".'
            at.add(f"{in_words(whole)} without a unit", self.wanted, advice)
            return None
        try:
            # Which system is meant does not matter: no number without a unit comes here.
            return read(text, self.kind, System.METRIC).value
        except EntryError as error:
            sentence = re.split(r"\s(?:Expected|Check number)\b", str(error))[0]
            self.refuse(whole, at, self.advice(text) or sentence)
            return None

    def advice(self, text: str) -> str:
        """What to do about a text that is no quantity, where its look says that."""
        return "This key takes one value, not a range." if RANGE_TO.fullmatch(text) else ""

    def wrong(self, value: Any) -> tuple[str, str] | None:
        if self.holds(value):
            return None
        return self.bounds, "" if self.kind in BARE else "Check number and unit."

    def holds(self, value: float) -> bool:
        """Whether a value of the model is within the bounds."""
        return abs(value) < BEYOND and self.low <= value * self.per <= self.high

    def shown(self, value: Any) -> str:
        # A whole number of a log may have thousands of digits, which no format takes.
        is_beyond = isinstance(value, int | float) and abs(value) >= BEYOND
        return in_words(value) if is_beyond else super().shown(value)

    @property
    def bounds(self) -> str:
        """What it is and between which values, in words."""
        return f"{self.says}, from {_bound(self.low, self.kind)} to {_bound(self.high, self.kind)}"

    def write(self, value: Any, system: System) -> Any:
        share = self.no_share and 0 < value < 1
        if self.kind in BARE and self.kind is not Kind.TURNS and not share:
            rounded = float(f"{value:.{DIGITS}g}")
            # As a painter writes it: 2, not 2.0.
            return int(rounded) if rounded.is_integer() else rounded
        return typed(value * self.per, self.kind, system, self.unit)


def _number(value: Any) -> float | None:
    """Give a bare number of the file; what is too large for one is infinite. None: it is no number."""
    # Python counts true as 1; a painter does not.
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        return None
    try:
        return float(value)
    except OverflowError:
        return math.inf


def _bound(value: float, kind: Kind) -> str:
    if kind in BARE:
        return f"{value:g}"
    if kind is not Kind.TIME:
        return show(value, kind, System.METRIC)
    for seconds, unit in ((86400, "d"), (3600, "h"), (60, "min")):
        if value >= seconds:
            return f"{value / seconds:g} {unit}"
    return f"{value:g} s"
