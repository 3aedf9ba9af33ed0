"""Keys that only profiles have: ranges, whatever they are of. Those of waits are in ``wait_keys``."""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import Any

from booth.files.faults import quoted
from booth.profile.model import Range
from booth.toml.key import At
from booth.toml.quantity import BARE, MOST_QUANTITY, RANGE_TO, UNITLESS, Quantity
from booth.toml.table import Table
from booth.toml.typed import number_in, unit_for
from booth.units import Kind, System

ONE_END = re.compile(r"\s*at\s+(?P<end>least|most)\s+(?P<value>\S.*?)\s*", re.DOTALL)
NUMBER = re.compile(r"[-+\u2212\s]*[\d.,/\s]*")
HYPHENED = re.compile(r"\s*(?P<low>\d[\d.,]*)\s*[-\u2013]\s*(?P<high>\d[\d.,]*\s*[^\d/].*)")
HYPHENED_BARE = re.compile(r"\s*(?P<low>\d[\d.,]*)\s*[-\u2013]\s*(?P<high>\d[\d.,]*)\s*")


@dataclass(frozen=True)
class Span(Quantity):
    """A range: a text, a table of low and high, or one value; bare where one value may be bare.

    limit: one value would be none; closed: both ends are needed.
    """

    limit: bool = field(default=False, kw_only=True)
    closed: bool = field(default=False, kw_only=True)

    @property
    def wanted(self) -> str:
        if self.kind is Kind.COUNT:
            return f"a whole number or a range of them ({self.says}), such as {self.example}"
        ends = ", at least or at most" if self.limit else ""
        unit = "" if self.kind in BARE else " with its unit"
        return f"a range{unit}{ends}, in quotation marks, such as {self.example}"

    def parse(self, value: Any, at: At) -> Any:
        if isinstance(value, dict):
            return self._ends.read(value, at)
        # The patterns below take seconds over ten thousands of blanks.
        if not isinstance(value, str) or len(value) > MOST_QUANTITY:
            return self._one(super().parse(value, at), value, at)
        one_end = ONE_END.fullmatch(value)
        if one_end:
            end = self.parse_text(one_end["value"], at, value)
            return Range(low=end) if one_end["end"] == "least" else Range(high=end)
        both = RANGE_TO.fullmatch(value)
        if both is None:
            return self._one(self.parse_text(value, at, value), value, at)
        if both["low"].lower() == "up":
            self.refuse(value, at, f'Write "at most {quoted(both["high"], "")}".')
            return None
        low_text = both["low"]
        if UNITLESS.fullmatch(low_text):
            low_text = f"{low_text} {NUMBER.sub('', both['high'], count=1)}"
        high = self.parse_text(both["high"], at, value)
        return None if high is None else Range(self.parse_text(low_text, at, value), high)

    def _one(self, end: float | None, value: Any, at: At) -> Range:
        if self.limit and end is not None:
            self.refuse(value, at, 'Say "at least" or "at most".')
        return Range(end, end) if end is None else Range(float(end), float(end))

    @property
    def _ends(self) -> Table:
        low = Quantity(self.says, self.example, self.kind, self.low, self.high, attribute="low")
        return Table(keys={"low": low, "high": replace(low, attribute="high")}, make=Range)

    def judge(self, value: Range, at: At, found: str = "") -> None:
        found = found or self.shown(value)
        ends = [end for end in (value.low, value.high) if end is not None]
        if not ends:
            at.add(found, self.wanted)
        elif not self.judge_ends(ends, at, found):
            pass  # it is told
        elif ends != sorted(ends):
            at.add(f"{found}, upside down", "the lower value first", "Exchange the two.")
        elif self.closed and len(ends) == 1:
            at.add(found, self.wanted, "Say both ends, or the one value that there is.")

    def write(self, value: Range, system: System) -> Any:
        if self.kind in BARE and not self.limit and value.low == value.high is not None:
            return super().write(value.low, system)
        return typed_range(value, self.kind, system, self.unit, single=not self.limit)

    def advice(self, text: str) -> str:
        match = HYPHENED.fullmatch(text) or HYPHENED_BARE.fullmatch(text)
        if not match:
            return ""
        return f'Write a range with "to": "{match["low"]} to {quoted(match["high"], "")}".'


def typed_range(
    both: Range, kind: Kind, system: System, unit: str = "", single: bool = True
) -> str:
    """Give a range with its unit. single: whether one value may stand for a range of one."""
    ends = tuple(end for end in (both.low, both.high) if end is not None)
    if not ends:
        return "neither low nor high"
    if kind is Kind.COUNT:
        texts, unit = [f"{end:g}" for end in ends], ""
    else:
        unit = unit or unit_for(ends, kind, system)
        texts, unit = [number_in(unit, end, kind) for end in ends], f" {unit}"
    if both.low is None:
        return f"at most {texts[0]}{unit}"
    if both.high is None:
        return f"at least {texts[0]}{unit}"
    if single and both.low == both.high:
        return f"{texts[0]}{unit}"
    return f"{texts[0]} to {texts[1]}{unit}"
