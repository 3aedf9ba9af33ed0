"""Rows as data, pieces of text each with its style: a test reads them, a widget gives them colour. Pure.

A style is written as the toolkit writes it, in colours of the theme; "" is plain text.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

from rich.cells import cell_len

from booth.widgets.text import fit, plain
from booth.words.shown import Tone

Piece = tuple[str, str]
Row = tuple[Piece, ...]
T = TypeVar("T")

QUIET, STRONG, HEAD = "$quiet", "bold $foreground", "bold $quiet"
MARKED = "bold $background on $foreground"

ACROSS = " ▏▎▍▌▋▊▉█"
UPWARD = " ▁▂▃▄▅▆▇█"


def sized(draw: Callable[[T, int, int], list[Row]]) -> Callable[[T, int, int], list[Row]]:
    """Make of what `draw` gives exactly `height` rows of exactly `width` cells; none without room."""

    def lay_out(shown: T, width: int, height: int) -> list[Row]:
        if width <= 0 or height <= 0:
            return []
        rows = [exactly(row, width) for row in draw(shown, width, height)[:height]]
        return rows + blank(width, height - len(rows))

    return lay_out


def strings(rows: Iterable[Row]) -> list[str]:
    return ["".join(text for text, _ in row) for row in rows]


def width_of(row: Row) -> int:
    return sum(cell_len(text) for text, _ in row)


def merge(cells: Iterable[Piece]) -> Row:
    """Join neighbouring pieces of one style."""
    joined: list[Piece] = []
    for text, style in cells:
        if not text:
            continue
        if joined and joined[-1][1] == style:
            joined[-1] = (joined[-1][0] + text, style)
        else:
            joined.append((text, style))
    return tuple(joined)


def crop(row: Row, width: int) -> Row:
    """Give the row in at most `width` cells, an ellipsis where words were left out."""
    if width_of(row) <= width:
        return row
    said = [(plain(text), style) for text, style in row]
    kept = fit("".join(text for text, _ in said), width)
    pieces: list[Piece] = []
    for text, style in said:
        if kept:
            pieces.append((kept[: len(text)], style))
            kept = kept[len(text) :]
    return tuple(pieces)


def exactly(row: Row, width: int, style: str = "", align: str = "left") -> Row:
    """Give the row in exactly `width` cells, filled up with blanks of `style`."""
    row = crop(row, width)
    spare = width - width_of(row)
    before = {"left": 0, "right": spare, "centre": spare // 2}[align]
    return merge(((" " * before, style), *row, (" " * (spare - before), style)))


def centred(text: str, style: str, width: int) -> Row:
    return exactly(((text, style),), width, align="centre")


def spread(left: Row, right: Row, width: int, style: str = "") -> Row:
    """Give `left` at the left edge and `right` whole at the right edge; the left one gives way."""
    right = crop(right, width)
    room = width - width_of(right)
    return merge((*exactly(left, room, style), *right))


def upward(level: float, rows: int) -> list[str]:
    """Give one column filled from below to `level` rows, in eighths, from the top row down."""
    eighths = round(min(max(level, 0.0), float(rows)) * 8)
    return [UPWARD[min(max(eighths - 8 * below, 0), 8)] for below in range(rows - 1, -1, -1)]


def blank(width: int, count: int) -> list[Row]:
    return [((" " * width, ""),)] * count


def first_in_sight(count: int, at: int, height: int, before: int) -> int:
    """Give the first of `count` lines to draw, so that up to `before` stand before the one at `at`."""
    return min(max(0, at - before), max(0, count - height))


def toned(tone: Tone) -> str:
    """The style of a word or figure in this state."""
    return f"bold ${tone.css}"


def inked(tone: Tone) -> str:
    """The style of a line or a block in the colour of this state."""
    return f"${tone.css}"


def filled(tone: Tone) -> str:
    """The style of a block filled with the colour of this state."""
    return f"$background on ${tone.css}"
