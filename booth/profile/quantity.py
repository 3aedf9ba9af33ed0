"""One number or one quantity of a profile file, read strictly: in base units, or a fault."""

from __future__ import annotations

import math
import re
from typing import Any

from booth.files.faults import Faults, Path, quoted, said
from booth.profile.keys import Key, Shape
from booth.units import EntryError, Kind, System, read, show

__all__ = [
    "RANGE_TO",
    "UNITLESS",
    "bare_number",
    "no_quantity",
    "one",
    "percent",
    "quantity",
    "too_long",
    "wanted",
]

#: Two quantities and the words between them.
MOST_QUANTITY = 80

RANGE_TO = re.compile(r"\s*(?P<low>\S.*?)\s+to\s+(?P<high>\S.*?)\s*", re.DOTALL)
UNITLESS = re.compile(r"[-+\u2212\s\d.,/:]*")
HYPHENED = re.compile(r"\s*(?P<low>\d[\d.,]*)\s*[-\u2013]\s*(?P<high>\d[\d.,]*\s*[^\d/].*)")

BARE_ALLOWED = "A bare number stands only where a count, parts or a percentage is meant."


def bare_number(value: Any, key: Key, path: Path, faults: Faults) -> float | None:
    """Read a finite bare number within the bounds of `key`."""
    # Python counts true as 1; a painter does not.
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        advice = "Take off the quotation marks and the unit." if isinstance(value, str) else ""
        faults.add(path, said(value), wanted(key), advice)
        return None
    number = _finite(value)
    if number is None or not key.low <= number <= key.high:
        faults.add(path, said(value), f"{key.says}, from {key.low:g} to {key.high:g}")
        return None
    return number


def _finite(value: float) -> float | None:
    try:
        number = float(value)
    except OverflowError:
        return None
    return number if math.isfinite(number) else None


def percent(value: Any, key: Key, path: Path, faults: Faults) -> float | None:
    """Read a percentage: a bare number or a text."""
    if isinstance(value, str):
        return one(value, key, path, faults)
    return bare_number(value, key, path, faults)


def quantity(value: Any, key: Key, path: Path, faults: Faults) -> float | None:
    """Read a text that is a number and its unit."""
    if not isinstance(value, str):
        no_quantity(value, key, path, faults)
        return None
    return one(value, key, path, faults)


def no_quantity(value: Any, key: Key, path: Path, faults: Faults) -> None:
    """Tell that a value is no text, and so no quantity."""
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    faults.add(path, said(value), wanted(key), BARE_ALLOWED if number else "")


def one(text: str, key: Key, path: Path, faults: Faults, whole: str | None = None) -> float | None:
    """Read a text that is one quantity, or the part of `whole` that is one."""
    shown = said(text if whole is None else whole)
    kind = key.kind
    assert kind is not None, key.path
    if too_long(text, path, faults):
        return None
    if kind is not Kind.PERCENT and text.strip() and UNITLESS.fullmatch(text):
        advice = f"Write the unit: {key.example or '10 min'}."
        if ":" in text:
            advice = 'Write the unit, as in "90 s" or "1 h 30 min".'
        faults.add(path, f"{shown} without a unit", wanted(key), advice)
        return None
    try:
        # Which system is meant does not matter: no number without a unit comes here.
        value = read(text, kind, System.METRIC).value
    except EntryError as error:
        sentence = re.split(r"\s(?:Expected|Check number)\b", str(error))[0]
        faults.add(path, shown, wanted(key), _advice(text, sentence, key))
        return None
    if not key.low <= value <= key.high:
        low, high = (_bound(end, kind) for end in (key.low, key.high))
        faults.add(path, shown, f"{key.says}, from {low} to {high}", "Check number and unit.")
        return None
    return value


def too_long(text: str, path: Path, faults: Faults) -> bool:
    """Tell a text that is too long to be a quantity; whether it was."""
    if len(text) <= MOST_QUANTITY:
        return False
    faults.add(path, f"{len(text)} characters", "a number and its unit, or two")
    return True


def _advice(text: str, sentence: str, key: Key) -> str:
    if key.shape in (Shape.RANGE, Shape.LIMITS):
        match = HYPHENED.fullmatch(text)
        if match:
            return f'Write a range with "to": "{match["low"]} to {quoted(match["high"], "")}".'
    elif RANGE_TO.fullmatch(text):
        return "This key takes one value, not a range."
    return sentence


def _bound(value: float, kind: Kind) -> str:
    if kind is Kind.TIME:
        for seconds, unit in ((86400, "d"), (3600, "h"), (60, "min")):
            if value >= seconds:
                return f"{value / seconds:g} {unit}"
        return f"{value:g} s"
    return show(value, kind, System.METRIC)


def wanted(key: Key) -> str:
    """What `key` takes, with an example."""
    what = key.shape
    if key.shape is Shape.PARTS or key.shape is Shape.COUNT:
        return f"{what} ({key.says}), such as {key.example}"
    if key.shape is Shape.TEXT and key.name == key.says:
        return str(what)
    return f"{what}, such as {key.example}" if key.example else str(what)
