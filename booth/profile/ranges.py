"""Keys that only profiles have: ranges, and times that hold at a temperature."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any

from booth.files.faults import nearest, quoted
from booth.profile.model import AtTemperature, Range, WaitRule
from booth.toml.key import At, Key
from booth.toml.quantity import MOST_QUANTITY, RANGE_TO, UNITLESS, Quantity
from booth.toml.table import MOST_ITEMS, Many, Table
from booth.toml.typed import number_in, unit_for
from booth.units import EntryError, Kind, System, read

__all__ = ["Span", "TimeAt", "Wait", "time_at", "typed_range", "wait"]

ONE_END = re.compile(r"\s*at\s+(?P<end>least|most)\s+(?P<value>\S.*?)\s*", re.DOTALL)
NUMBER = re.compile(r"[-+\u2212\s]*[\d.,/\s]*")
HYPHENED = re.compile(r"\s*(?P<low>\d[\d.,]*)\s*[-\u2013]\s*(?P<high>\d[\d.,]*\s*[^\d/].*)")
TIME_AT = re.compile(r"\s*(?P<time>.*\S)\s+at\s+(?P<at>\S.*?)\s*", re.DOTALL)


@dataclass(frozen=True)
class Span(Quantity):
    """A range: a text, or a table of low and high. limit: one value would be none."""

    limit: bool = field(default=False, kw_only=True)

    @property
    def wanted(self) -> str:
        ends = ", at least or at most" if self.limit else ""
        return f"a range with its unit{ends}, in quotation marks, such as {self.example}"

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
        return Range(end, end)

    @property
    def _ends(self) -> Table:
        low = Quantity(self.says, self.example, self.kind, self.low, self.high, attribute="low")
        return Table(keys={"low": low, "high": replace(low, attribute="high")}, make=Range)

    def judge(self, value: Range, at: At, found: str = "") -> None:
        found = found or self.shown(value)
        ends = [end for end in (value.low, value.high) if end is not None]
        if not ends:
            at.add(found, self.wanted)
        elif not all(map(self.holds, ends)):
            at.add(found, self.bounds, "Check number and unit.")
        elif ends != sorted(ends):
            at.add(f"{found}, upside down", "the lower value first", "Exchange the two.")

    def write(self, value: Range, system: System) -> str:
        return typed_range(value, self.kind, system, self.unit, single=not self.limit)

    def advice(self, text: str) -> str:
        match = HYPHENED.fullmatch(text)
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
    unit = unit or unit_for(ends, kind, system)
    texts = [number_in(unit, end, kind) for end in ends]
    if both.low is None:
        return f"at most {texts[0]} {unit}"
    if both.high is None:
        return f"at least {texts[0]} {unit}"
    if single and both.low == both.high:
        return f"{texts[0]} {unit}"
    return f"{texts[0]} to {texts[1]} {unit}"


@dataclass(frozen=True)
class TimeAt(Table):
    """A time and the temperature at which it holds, in a table of one line."""

    called = "a time and the temperature at which it holds"

    def parse(self, value: Any, at: At) -> Any:
        if isinstance(value, dict):
            return super().parse(value, at)
        self.refuse(value, at, _time_at(value) if isinstance(value, str) else "")
        return None

    def missing(self, name: str, at: At) -> None:
        at.add(f"no {name}", self.wanted)


def time_at(says: str, example: str, low_s: float, high_s: float) -> TimeAt:
    """Give the key of a time between two bounds [s], at a temperature from frost to a baking oven."""
    keys = {
        "time": Quantity("a time", '"10 min"', Kind.TIME, low_s, high_s),
        "at": Quantity("a temperature", '"70 F"', Kind.TEMPERATURE, -40, 250),
    }
    return TimeAt(says, example, keys=keys, make=AtTemperature)


@dataclass(frozen=True)
class Rows(Many):
    """Times by ascending temperature."""

    @property
    def wanted(self) -> str:
        return "a list of { at = ..., time = ... }, coldest first"

    def judge(self, value: Sequence[AtTemperature], at: At, found: str = "") -> None:
        super().judge(value, at, found)
        if not value:
            at.add("an empty list", self.wanted)
        for number, (row, next_row) in enumerate(pairwise(value[:MOST_ITEMS]), start=1):
            if next_row.at_c <= row.at_c:
                same = math.isclose(row.at_c, next_row.at_c, abs_tol=1e-9)
                found = "the same temperature again" if same else "a colder row after a warmer one"
                at[number]["at"].add(found, "each temperature once, coldest first")


@dataclass(frozen=True)
class Wait(Key):
    """A time at a temperature, or a table of them. single: how the one is read; table: how the other."""

    single: TimeAt = field(default=TimeAt(), kw_only=True)
    table: Table = field(default=Table(), kw_only=True)
    called = "a time and its temperature, or a table of them"

    def parse(self, value: Any, at: At) -> Any:
        is_other = isinstance(value, dict) and not self.single.keys.keys() & value.keys()
        if is_other and any(nearest(name, self.table.keys) for name in value):
            return self.table.read(value, at)
        row = self.single.read(value, at)
        return None if row is None else WaitRule((row,))

    def judge(self, value: WaitRule, at: At, found: str = "") -> None:
        if len(value.rows) == 1:
            self.single.judge(value.rows[0], at)
        else:
            self.table.judge(value, at)

    def write(self, value: WaitRule, system: System) -> dict[str, Any]:
        if value.is_table:
            return self.table.write(value, system)
        return self.single.write(value.rows[0], system)


def wait(says: str, example: str, low_s: float, high_s: float) -> Wait:
    """Give the key of a wait between two bounds [s]."""
    single = time_at(says, example, low_s, high_s)
    # A row of a table begins with its temperature, as on a data sheet.
    row = replace(single, keys={name: single.keys[name] for name in ("at", "time")})
    table = Table(keys={"table": Rows(one=row, attribute="rows")}, make=WaitRule)
    return Wait(says, example, single=single, table=table)


def _time_at(text: str) -> str:
    """How a text is written that should have been a time and its temperature."""
    both = TIME_AT.fullmatch(text)
    if both and _is(both["time"], Kind.TIME) and _is(both["at"], Kind.TEMPERATURE):
        return f"Write {{ time = {quoted(both['time'])}, at = {quoted(both['at'])} }}."
    time = quoted(text) if _is(text, Kind.TIME) else '"10 min"'
    return f'Say at which temperature: {{ time = {time}, at = "70 F" }}.'


def _is(text: str, kind: Kind) -> bool:
    """Whether a text is a quantity of this kind, its unit named."""
    try:
        read(text, kind, System.US)
    except EntryError:
        return False
    return UNITLESS.fullmatch(text) is None
