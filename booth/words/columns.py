"""Text in columns of a terminal: how wide it is, broken between words, filled up. Pure."""

from __future__ import annotations

import re
import unicodedata

#: What is not parted from the number before it.
UNITS = frozenset(
    [
        "%",
        "°C",
        "°F",
        "K",
        "s",
        "min",
        "h",
        "d",
        "µm",
        "mil",
        "mm",
        "cm",
        "m",
        "in",
        "ft",
        "ml",
        "l",
        "oz",
        "fl",
        "g",
        "psi",
        "kPa",
        "bar",
        "turn",
        "turns",
    ]
)
NUMBER = re.compile(r"~?[-+]?\d[\d.,:]*")


def cells(text: str) -> int:
    """Give how many columns a text takes: accents none, wide characters two (UAX #11)."""
    return sum(
        0 if unicodedata.combining(char) else 2 if unicodedata.east_asian_width(char) in "WF" else 1
        for char in text
    )


def filled_up(text: str, width: int) -> str:
    """Give a text in at least `width` columns, blanks behind it."""
    return text + " " * (width - cells(text))


def broken(text: str, width: int) -> list[str]:
    """Give a text in lines of at most `width` columns, broken between words; a word that is longer
    than a line is broken where the line ends. No text is one empty line.

    >>> broken("left door, hood", 10)
    ['left door,', 'hood']
    >>> broken("unbreakable", 6)
    ['unbrea', 'kable']
    >>> broken("two-pack-clear-3fa2", 16)
    ['two-pack-clear-', '3fa2']
    >>> broken("humidity 48 %, dry", 12)
    ['humidity', '48 %, dry']
    """
    lines: list[str] = []
    line = ""
    for word in _words(text):
        joined = f"{line} {word}" if line else word
        if cells(joined) <= width:
            line = joined
            continue
        if line:
            lines.append(line)
        *whole, line = _pieces(word, width)
        lines += whole
    return [*lines, line] if line or not lines else lines


def _words(text: str) -> list[str]:
    """The words of a text, a number with its unit as one: '48 %', '6.7 fl oz/min'."""
    found: list[str] = []
    for word in text.split():
        before = found[-1].split()[-1] if found else ""
        is_unit = word.rstrip(",;:.)").partition("/")[0] in UNITS
        if is_unit and (NUMBER.fullmatch(before.lstrip("(")) or before == "fl"):
            found[-1] = f"{found[-1]} {word}"
        else:
            found.append(word)
    return found


def _pieces(word: str, width: int) -> list[str]:
    """A word in pieces that fit, after a hyphen where it has one."""
    pieces = [""]
    for char in word:
        if pieces[-1] and cells(pieces[-1] + char) > width:
            whole, hyphen, rest = pieces[-1].rpartition("-")
            pieces[-1:] = [whole + hyphen, rest] if whole else [pieces[-1], ""]
        pieces[-1] += char
    return pieces
