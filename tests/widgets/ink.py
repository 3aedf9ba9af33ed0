"""What was drawn in blocks, read back from the cells of a field: which words, and how high."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import groupby

from booth.widgets.lettering.bigfigure import (
    NARROWEST,
    QUARTERS,
    WIDEST,
    _compose,
    _normal,
    _total,
    draw,
)
from booth.widgets.lettering.pen import STEP, Pen
from booth.widgets.rows import ACROSS, Row
from booth.widgets.wet_edge import EIGHTHS, cells_of, eighths

EIGHTH_BLOCKS = set(ACROSS[1:8]) - {"▌"}
MANY_ROWS, MARGINS = 12, 16
LEFT, RIGHT = (1, 4), (2, 8)


def ink_of(rows: Sequence[Row], edge: float | None) -> list[str]:
    """The pixels that are ink, two across and two down a cell: the edge is taken away again."""
    lines: list[str] = []
    for row in rows:
        upper, lower = [], []
        cells = [(cell, "reverse" in style) for text, style in row for cell in cells_of(text)]
        at = eighths(edge, len(cells))
        for column, (cell, reverse) in enumerate(cells):
            bits = _ink(cell or " ", reverse, at - EIGHTHS * column)
            upper += [bool(bits & 1), bool(bits & 2)]
            lower += [bool(bits & 4), bool(bits & 8)]
        lines += ["".join("#" if on else "." for on in half) for half in (upper, lower)]
    return lines


def _ink(cell: str, reverse: bool, at: int) -> int:
    """The quarters of a cell that are ink; at: how many eighths of it the edge has passed."""
    if 0 < at < EIGHTHS and cell in EIGHTH_BLOCKS:
        return 15 if reverse else 0  # cut on the very eighth: all ink, or all ground
    bits = QUARTERS.index(cell) if cell in QUARTERS else 0
    if 0 < at < EIGHTHS and round(at / 4) == 1:
        shown = bits ^ (15 if reverse else 0)
        return shown ^ (1 | 4)
    return bits


def height_of(text: str, ink: Sequence[str], least: int = 3, most: int = 0, like: str = "") -> int:
    """How many rows high the text stands in the ink, in the house's own lettering; 0 where it does
    not stand there. Looked for from `least` up to `most` rows, or to all there are."""
    wide = len(ink[0]) // 2 if ink else 0
    for rows in sorted({rows for rows in _bands(ink) if least <= rows <= (most or rows)}):
        drawn: Iterable[Sequence[str]]
        if rows > MANY_ROWS:  # only a figure is so high, and it is set as the panel sets it
            rooms = range(wide - 4, max(wide - MARGINS, 0), -1)
            drawn = (draw(text, room, rows, like=like) for room in rooms)
        else:
            drawn = _lettered(text, rows, wide)
        if any(len(lines) == rows and _stands(lines, ink) for lines in drawn):
            return rows
    return 0


def _bands(ink: Sequence[str]) -> list[int]:
    """How high each stretch of rows is that holds ink."""
    filled = [
        "#" in upper or "#" in lower for upper, lower in zip(ink[::2], ink[1::2], strict=True)
    ]
    return [len(list(rows)) for on, rows in groupby(filled) if on]


def _lettered(text: str, rows: int, wide: int) -> Iterator[Sequence[str]]:
    """The text in every lettering of that height, from the widest that fits."""
    widest, narrowest = round(rows * 2 * WIDEST / STEP), round(rows * 2 * NARROWEST / STEP) - 3
    for step in range(widest, narrowest, -1):
        for tall in (2 * rows, 2 * rows - 1):
            pen = Pen.of_figure(max(3.0, step * STEP), tall)
            if _total(_normal(text), pen) <= wide:
                yield _composed(_normal(text), pen)


#: Tests look for the same words again and again.
_composed = lru_cache(maxsize=None)(_compose)


def _stands(lines: Sequence[str], ink: Sequence[str]) -> bool:
    wanted: list[str] = []
    for line in lines:
        bits = [QUARTERS.index(char) for char in line]
        for pair in (LEFT[:1] + RIGHT[:1], LEFT[1:] + RIGHT[1:]):
            wanted.append("".join("#" if b & bit else "." for b in bits for bit in pair))
    for top in range(0, len(ink) - len(wanted) + 1, 2):
        at = ink[top].find(wanted[0])
        while at >= 0:
            if all(ink[top + n].startswith(each, at) for n, each in enumerate(wanted)):
                return True
            at = ink[top].find(wanted[0], at + 1)
    return False
