"""Keys that take a number: with its unit in a text, or bare where it is a count, parts or a percentage."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from booth.files.faults import in_words
from booth.toml.key import At, Key
from booth.toml.typed import in_unit, typed
from booth.units import EntryError, Kind, System, read, show

#: Two quantities and the words between them.
MOST_QUANTITY = 80
#: No value is as large as this.
BEYOND = 1e15
#: Digits of a bare number that is written.
DIGITS = 6

RANGE_TO = re.compile(r"\s*(?P<low>\S.*?)\s+to\s+(?P<high>\S.*?)\s*", re.DOTALL)
UNITLESS = re.compile(r"[-+\u2212\s\d.,/:]*")
#: A number and its unit; of two, as in 1 ft 2 in, none is the unit of the file.
UNIT = re.compile(r"[-+\u2212 \d.,/]+(?P<unit>[^\W\d]\D*|°?[CF]|%)")

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
    keeps is so many times smaller; no_share: half a percent is a slip, a half was meant.
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
        if self.kind not in BARE and text.strip() and UNITLESS.fullmatch(text):
            advice = f"Write the unit: {self.example}."
            if ":" in text:
                advice = 'Write the unit, as in "90 s" or "1 h 30 min".'
            at.add(f"{in_words(whole)} without a unit", self.wanted, advice)
            return None
        try:
            # Which system is meant does not matter: no number without a unit comes here.
            value = read(text, self.kind, System.METRIC).value
        except EntryError as error:
            sentence = re.split(r"\s(?:Expected|Check number)\b", str(error))[0]
            self.refuse(whole, at, self.advice(text) or sentence)
            return None
        unit = UNIT.fullmatch(text)
        if unit and text.isprintable():
            at.faults.units.setdefault(self.kind, unit["unit"].rstrip())
        return value

    def advice(self, text: str) -> str:
        """What to do about a text that is no quantity, where its look says that."""
        return "This key takes one value, not a range." if RANGE_TO.fullmatch(text) else ""

    def judge(self, value: Any, at: At, found: str = "") -> None:
        self.judge_ends((value,), at, found or self.shown(value))

    def shown(self, value: Any) -> str:
        # A whole number of a log may have thousands of digits, which no format takes.
        is_beyond = isinstance(value, int | float) and abs(value) >= BEYOND
        return in_words(value) if is_beyond else super().shown(value)

    def judge_ends(self, ends: Sequence[float], at: At, found: str) -> bool:
        """Tell what is wrong with one of some values of the model; give whether all are right."""
        if not all(abs(end) < BEYOND and self.low <= end * self.per <= self.high for end in ends):
            unit = at.faults.units.get(self.kind, "")
            low, high = (_bound(end, self.kind, unit) for end in (self.low, self.high))
            advice = "" if self.kind in BARE else "Check number and unit."
            at.add(found, f"{self.says}, from {low} to {high}", advice)
        elif self.no_share and any(0 < end < 1 for end in ends):
            meant = " to ".join(f"{end * 100:g}" for end in dict.fromkeys(ends))
            meant = f'"{meant} %"' if len(set(ends)) > 1 else meant
            at.add(found, "percent, not a share", f"Write {meant}.")
        else:
            return True
        return False

    def write(self, value: Any, system: System) -> Any:
        if self.kind in BARE and self.kind is not Kind.TURNS:
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


def _bound(value: float, kind: Kind, unit: str) -> str:
    if kind in BARE:
        return f"{value:g}"
    if kind is not Kind.TIME:
        # As the file has it: who wrote mil is not told of micrometres.
        return in_unit(value, kind, unit) if unit else show(value, kind, System.METRIC)
    for seconds, unit in ((86400, "d"), (3600, "h"), (60, "min")):
        if value >= seconds:
            return f"{value / seconds:g} {unit}"
    return f"{value:g} s"
