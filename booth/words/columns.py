"""Text in columns of a terminal: how wide it is, broken between words, filled up. Pure."""

from __future__ import annotations

import unicodedata


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
    """
    lines: list[str] = []
    line = ""
    for word in text.split():
        joined = f"{line} {word}" if line else word
        if cells(joined) <= width:
            line = joined
            continue
        if line:
            lines.append(line)
        *whole, line = _pieces(word, width)
        lines += whole
    return [*lines, line] if line or not lines else lines


def _pieces(word: str, width: int) -> list[str]:
    pieces = [""]
    for char in word:
        if pieces[-1] and cells(pieces[-1] + char) > width:
            pieces.append("")
        pieces[-1] += char
    return pieces
