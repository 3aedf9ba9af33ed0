"""Ranges, and times that hold at a temperature, read strictly: in base units, or a fault."""

from __future__ import annotations

import math
import re
from typing import Any

from booth.files.faults import Faults, Path, nearest, quoted, said
from booth.profile.keys import Key, Shape
from booth.profile.model import AtTemperature, Range, WaitRule
from booth.profile.quantity import (
    RANGE_TO,
    UNITLESS,
    no_quantity,
    one,
    percent,
    quantity,
    too_long,
    wanted,
)
from booth.units import Kind

__all__ = ["read_at", "read_range", "read_wait"]

#: Bounds of a temperature at which a time holds [degC]: frost to a baking oven.
AT_LOW_C, AT_HIGH_C = -40.0, 250.0
#: A table of times has no more rows.
MOST_ROWS = 60

ONE_END = re.compile(r"\s*at\s+(?P<end>least|most)\s+(?P<value>\S.*?)\s*", re.DOTALL)
NUMBER = re.compile(r"[-+\u2212\s]*[\d.,/\s]*")


def read_range(value: Any, key: Key, path: Path, faults: Faults) -> Range | None:
    """Read a range: a text, or a table of low and high; where it is a limit, never one value."""
    if isinstance(value, dict):
        return _range_of_table(value, key, path, faults)
    if not isinstance(value, str):
        if key.kind is Kind.PERCENT and isinstance(value, (int, float)):
            faults.add(path, said(value), wanted(key), 'Say "at least" or "at most".')
        else:
            no_quantity(value, key, path, faults)
        return None
    if too_long(value, path, faults):
        return None
    one_end = ONE_END.fullmatch(value)
    if one_end:
        end = one(one_end["value"], key, path, faults, value)
        if end is None:
            return None
        return Range(low=end) if one_end["end"] == "least" else Range(high=end)
    both = RANGE_TO.fullmatch(value)
    if both is not None and both["low"].lower() == "up":
        faults.add(path, said(value), wanted(key), f'Write "at most {quoted(both["high"], "")}".')
        return None
    if both is None:
        single = one(value, key, path, faults)
        if single is None:
            return None
        if key.shape is Shape.LIMITS:
            faults.add(path, said(value), wanted(key), 'Say "at least" or "at most".')
            return None
        return Range(single, single)
    low_text = both["low"]
    if UNITLESS.fullmatch(low_text):
        low_text = f"{low_text} {NUMBER.sub('', both['high'], count=1)}"
    before = len(faults)
    high = one(both["high"], key, path, faults, value)
    low = one(low_text, key, path, faults, value) if len(faults) == before else None
    return _in_order(low, high, said(value), path, faults)


def _range_of_table(value: dict[str, Any], key: Key, path: Path, faults: Faults) -> Range | None:
    before = len(faults)
    _only(value, ("low", "high"), path, faults)
    read_end = percent if key.kind is Kind.PERCENT else quantity
    ends = {
        name: read_end(value[name], key, (*path, name), faults)
        for name in ("low", "high")
        if name in value
    }
    if not ends and len(faults) == before:
        faults.add(path, "neither low nor high", wanted(key))
    if len(faults) > before:
        return None
    return _in_order(
        ends.get("low"), ends.get("high"), "low above high", path, faults, open_ended=True
    )


def _in_order(
    low: float | None,
    high: float | None,
    found: str,
    path: Path,
    faults: Faults,
    open_ended: bool = False,
) -> Range | None:
    if not open_ended and (low is None or high is None):
        return None
    if low is not None and high is not None and low > high:
        faults.add(path, f"{found}, upside down", "the lower value first", "Exchange the two.")
        return None
    return Range(low, high)


def read_at(
    value: Any, key: Key, path: Path, faults: Faults, known: tuple[str, ...] = ("time", "at")
) -> AtTemperature | None:
    """Read a time and the temperature at which it holds."""
    if not isinstance(value, dict):
        advice = ""
        if isinstance(value, str):
            advice = f'Say at which temperature: {{ time = {quoted(value)}, at = "70 F" }}.'
        faults.add(path, said(value), wanted(key), advice)
        return None
    before = len(faults)
    _only(value, known, path, faults)
    misspelled = len(faults) > before
    values: list[float | None] = []
    for name, part in (("time", _time_key(key)), ("at", _AT_KEY)):
        if name not in value:
            # It is there, under another name, and that was told.
            if not misspelled:
                faults.add(path, f"no {name}", wanted(key))
            values.append(None)
        else:
            values.append(quantity(value[name], part, (*path, name), faults))
    time_s, at_c = values
    return None if time_s is None or at_c is None else AtTemperature(at_c, time_s)


def _time_key(key: Key) -> Key:
    return Key(key.path, "a time", Shape.QUANTITY, '"10 min"', Kind.TIME, key.low, key.high)


_AT_KEY = Key(
    "at", "a temperature", Shape.QUANTITY, '"70 F"', Kind.TEMPERATURE, AT_LOW_C, AT_HIGH_C
)


def read_wait(value: Any, key: Key, path: Path, faults: Faults) -> WaitRule | None:
    """Read a wait: a time at a temperature, or a table of them by ascending temperature."""
    if not isinstance(value, dict) or "table" not in value:
        row = read_at(value, key, path, faults, ("time", "at", "table"))
        return None if row is None else WaitRule((row,))
    _only(value, ("table",), path, faults)
    rows, place = value["table"], (*path, "table")
    if not isinstance(rows, list) or not rows or len(rows) > MOST_ROWS:
        faults.add(place, said(rows), "a list of { at = ..., time = ... }, coldest first")
        return None
    before = len(faults)
    read_rows = [read_at(each, key, (*place, n), faults) for n, each in enumerate(rows)]
    last: AtTemperature | None = None
    for number, row in enumerate(read_rows):
        if row is None:
            continue
        if last is not None and row.at_c <= last.at_c:
            same = math.isclose(row.at_c, last.at_c, abs_tol=1e-9)
            found = "the same temperature again" if same else "a colder row after a warmer one"
            faults.add((*place, number, "at"), found, "each temperature once, coldest first")
        last = row
    if len(faults) > before:
        return None
    return WaitRule(tuple(row for row in read_rows if row is not None))


def _only(value: dict[str, Any], known: tuple[str, ...], path: Path, faults: Faults) -> None:
    """Tell every key that is not one of `known`."""
    for name in value:
        if name not in known:
            near = nearest(name, known)
            advice = f"Did you mean {near}?" if near else ""
            found = f"an unknown key {quoted(name)}"
            faults.add((*path, name), found, " and ".join(known), advice)
