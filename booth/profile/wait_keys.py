"""The keys of waits: a time at a temperature, a table of them, or a sign that ends them."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import msgspec

from booth.files.faults import nearest, quoted
from booth.profile.model import AtTemperature, Range, WaitRule
from booth.profile.ranges import Span
from booth.toml.key import At, Key, Text
from booth.toml.quantity import UNITLESS, Quantity
from booth.toml.table import MOST_ITEMS, Many, Table
from booth.units import EntryError, Kind, System, read

TIME_AT = re.compile(r"\s*(?P<time>.*\S)\s+at\s+(?P<at>\S.*?)\s*", re.DOTALL)
UNTIL = re.compile(r"\s*until\s+(?P<sign>\S.*?)\s*", re.DOTALL | re.IGNORECASE)


class _Line(msgspec.Struct, frozen=True):
    """A row of a wait as a file has it; until: beside a single row only."""

    time_s: Range
    at_c: float | None = None
    at_percent: float | None = None
    until: str = ""


def _line(row: AtTemperature, until: str = "") -> _Line:
    return _Line(Range(row.time_s, row.most_s), row.at_c, row.at_percent, until)


def _row(line: _Line) -> AtTemperature:
    low, high = line.time_s.low, line.time_s.high
    assert low is not None  # a time has both ends
    return AtTemperature(line.at_c, low, high if high != low else None, line.at_percent)


@dataclass(frozen=True)
class TimeAt(Table):
    """A time and the temperature (and humidity) at which it holds, in a table of one line."""

    make: Any = field(default=_Line, kw_only=True)
    called = "a time and the temperature at which it holds"

    def read(self, value: Any, at: At) -> Any:
        line = super().read(value, at)
        return None if line is None else _row(line)

    def judge(self, value: AtTemperature, at: At, found: str = "") -> None:
        super().judge(_line(value), at)
        if "at" in self.needed and value.at_c is None:
            self.missing("at", at)

    def write(self, value: AtTemperature, system: System) -> dict[str, Any]:
        return super().write(_line(value), system)

    def missing(self, name: str, at: At) -> None:
        at.add(f"no {name}", self.wanted)


@dataclass(frozen=True)
class Rows(Many):
    """Times by ascending temperature and, of one temperature, by ascending humidity."""

    @property
    def wanted(self) -> str:
        return "a list of { at = ..., time = ... }, coldest first"

    def judge(self, value: Sequence[AtTemperature], at: At, found: str = "") -> None:
        super().judge(value, at, found)
        if not value:
            at.add("an empty list", self.wanted)
        each = "each temperature once, coldest first"
        for number, (row, after) in enumerate(pairwise(value[:MOST_ITEMS]), start=1):
            if row.at_c is None or after.at_c is None:
                continue  # that it is missing was told
            same = math.isclose(row.at_c, after.at_c, abs_tol=1e-9)
            if (row.at_percent is None) is not (after.at_percent is None):
                expected = "a humidity in every row, or in none"
                at[number].add("a row with, and a row without a humidity", expected)
            elif not same and after.at_c < row.at_c:
                at[number]["at"].add("a colder row after a warmer one", each)
            elif same and row.at_percent is None:
                at[number]["at"].add("the same temperature again", each)
            elif same and (after.at_percent or 0.0) <= (row.at_percent or 0.0):
                found = "no damper row of the same temperature"
                at[number]["humidity"].add(
                    found, "each humidity of a temperature once, driest first"
                )


@dataclass(frozen=True)
class Wait(Key):
    """A time at a temperature, a table of them, or a sign that ends it; the last beside the others.

    single, table, sign: how each is read; bare: a text with no temperature will do.
    """

    single: TimeAt = field(default=TimeAt(), kw_only=True)
    table: Table = field(default=Table(), kw_only=True)
    sign: Table = field(default=Table(), kw_only=True)
    bare: bool = field(default=False, kw_only=True)
    called = "a time and its temperature, a table of them, or a sign to wait for"

    def parse(self, value: Any, at: At) -> Any:
        if not isinstance(value, dict):
            return self._text(value, at)
        if not value.keys() & {"time", "at", "humidity"}:
            # Which form is meant shows by its key, even where that is misspelled.
            if "table" in value or any(nearest(name, ("table",)) for name in value):
                return self.table.read(value, at)
            if value and all(nearest(name, self.sign.keys) for name in value):
                return self.sign.read(value, at)
        row = self.single.read(value, at)
        return None if row is None else WaitRule((row,), value.get("until", ""))

    def _text(self, value: Any, at: At) -> WaitRule | None:
        if not isinstance(value, str) or not self.bare or TIME_AT.fullmatch(value):
            self.refuse(value, at, _advice(value) if isinstance(value, str) else "")
            return None
        time = self.single.keys["time"].read(value, at)
        return None if time is None else WaitRule((_row(_Line(time)),))

    def judge(self, value: WaitRule, at: At, found: str = "") -> None:
        if len(value.rows) == 1:
            self.single.judge(value.rows[0], at)
        elif value.rows or not value.until:
            self.table.judge(value, at)
        if value.until and len(value.rows) < 2:
            self.sign.judge(value, at)

    def write(self, value: WaitRule, system: System) -> Any:
        if value.is_table:
            return self.table.write(value, system)
        time = self.single.write(value.rows[0], system) if value.rows else {}
        written = {**time, **self.sign.write(value, system)}
        return written["time"] if self.bare and written.keys() == {"time"} else written


def wait(says: str, example: str, low_s: float, high_s: float, bare: bool = False) -> Wait:
    """Give the key of a wait between two bounds [s], at a temperature from frost to a baking oven.

    bare: the sheet may name no temperature.
    """
    time = Span("a time", '"10 min"', Kind.TIME, low_s, high_s, closed=True)
    at = Quantity("a temperature", '"70 F"', Kind.TEMPERATURE, -40, 250)
    humidity = Quantity("relative humidity", '"50 %"', Kind.PERCENT, 0, 100, attribute="at_percent")
    until: dict[str, Key] = {"until": Text("the sign that ends it", '"matt all over"')}
    keys: dict[str, Key] = {"time": time, "at": at, "humidity": humidity}
    single = TimeAt(says, example, keys=keys | until, needs=() if bare else ("at",))
    # A row of a table begins with its temperature, as on a data sheet.
    row = TimeAt(says, example, keys={"at": at, "humidity": humidity, "time": time}, needs=("at",))
    rows: dict[str, Key] = {"table": Rows(one=row, attribute="rows")}
    table = Table(keys=rows | until, make=WaitRule, needs=("table",))
    sign = Table(keys=until, make=WaitRule, needs=("until",))
    return Wait(says, example, single=single, table=table, sign=sign, bare=bare)


def _advice(text: str) -> str:
    """How a text is written that should have been a time and its temperature, or a sign."""
    both = TIME_AT.fullmatch(text)
    if both and _is(both["time"], Kind.TIME) and _is(both["at"], Kind.TEMPERATURE):
        return f"Write {{ time = {quoted(both['time'])}, at = {quoted(both['at'])} }}."
    sign = UNTIL.fullmatch(text)
    if sign:
        return f"Write {{ until = {quoted(sign['sign'])} }}."
    time = quoted(text) if _is(text, Kind.TIME) else '"10 min"'
    return f'Say at which temperature: {{ time = {time}, at = "70 F" }}.'


def _is(text: str, kind: Kind) -> bool:
    """Whether a text is a quantity of this kind, or a range, its unit named."""
    text = text.rpartition(" to ")[2]
    try:
        read(text, kind, System.US)
    except EntryError:
        return False
    return UNITLESS.fullmatch(text) is None
