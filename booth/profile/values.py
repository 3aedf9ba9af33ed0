"""One value of a profile file, read strictly as its key wants it, or a fault and None."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from booth.files.faults import Faults, Path, nearest, quoted, said
from booth.profile.keys import Key, Shape
from booth.profile.quantity import bare_number, percent, quantity, wanted
from booth.profile.ranges import read_at, read_range, read_wait
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS
from booth.trade.result import BadInput

__all__ = ["read_value"]

MOST_TEXT = 400
MOST_ITEMS = 60


def read_value(value: Any, key: Key, path: Path, faults: Faults) -> Any:
    """Read one value of the file as `key` wants it; None after a fault."""
    reader = _READERS[key.shape]
    return reader(value, key, path, faults)


def _text(value: Any, key: Key, path: Path, faults: Faults) -> str | None:
    if not isinstance(value, str) or not value.strip():
        faults.add(path, said(value), wanted(key))
        return None
    if len(value) > MOST_TEXT:
        faults.add(path, f"{len(value)} characters", f"at most {MOST_TEXT}", "Say it shorter.")
        return None
    return value


def _words(value: Any, key: Key, path: Path, faults: Faults) -> tuple[str, ...] | None:
    if not isinstance(value, list):
        text = isinstance(value, str)
        advice = f"Put it in square brackets: {key.name} = [{quoted(value)}]." if text else ""
        faults.add(path, said(value), wanted(key), advice)
        return None
    if len(value) > MOST_ITEMS:
        faults.add(path, f"a list of {len(value)}", f"at most {MOST_ITEMS} lines")
        return None
    one = Key(key.path, key.says, Shape.TEXT, '"a line"')
    read_ones = [_text(each, one, (*path, n), faults) for n, each in enumerate(value)]
    return tuple(each for each in read_ones if each is not None)


def _flag(value: Any, key: Key, path: Path, faults: Faults) -> bool | None:
    if isinstance(value, bool):
        return value
    faults.add(path, said(value), "true or false, without quotation marks")
    return None


def _count(value: Any, key: Key, path: Path, faults: Faults) -> int | None:
    number = bare_number(value, key, path, faults)
    if number is None:
        return None
    if number != int(number):
        faults.add(path, said(value), wanted(key))
        return None
    return int(number)


def _choice(value: Any, key: Key, path: Path, faults: Faults) -> str | None:
    if isinstance(value, str) and value in key.choices:
        return value
    near = nearest(value, key.choices) if isinstance(value, str) else None
    advice = f'Did you mean "{near}"?' if near else ""
    choices = ", ".join(f'"{each}"' for each in key.choices)
    faults.add(path, said(value), f"one of {choices}", advice)
    return None


def _choices(value: Any, key: Key, path: Path, faults: Faults) -> tuple[str, ...] | None:
    if not isinstance(value, list):
        faults.add(path, said(value), wanted(key))
        return None
    if len(value) > MOST_ITEMS:
        faults.add(path, f"a list of {len(value)}", f"at most {len(key.choices)} words")
        return None
    found: list[str] = []
    for number, each in enumerate(value):
        choice = _choice(each, key, (*path, number), faults)
        if choice in found:
            faults.add((*path, number), f'"{choice}" a second time', "each once", "Delete one.")
        elif choice is not None:
            found.append(choice)
    return tuple(found)


def _cup(value: Any, key: Key, path: Path, faults: Faults) -> str | None:
    text = _text(value, key, path, faults)
    if text is None:
        return None
    try:
        return cup_named(text).name
    except BadInput as error:
        near = nearest(text, [cup.name for cup in CUPS.values()])
        # The first sentence says again what was found; what comes after it helps.
        advice = f'Did you mean "{near}"?' if near else str(error).partition(". ")[2]
        faults.add(path, said(value), wanted(key), advice)
        return None


_READERS: dict[Shape, Callable[[Any, Key, Path, Faults], Any]] = {
    Shape.TEXT: _text,
    Shape.WORDS: _words,
    Shape.FLAG: _flag,
    Shape.COUNT: _count,
    Shape.PARTS: bare_number,
    Shape.PERCENT: percent,
    Shape.QUANTITY: quantity,
    Shape.RANGE: read_range,
    Shape.LIMITS: read_range,
    Shape.AT: read_at,
    Shape.WAIT: read_wait,
    Shape.CHOICE: _choice,
    Shape.CHOICES: _choices,
    Shape.CUP: _cup,
}
