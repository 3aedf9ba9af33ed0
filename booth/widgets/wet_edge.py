"""The wet edge: a field filled from the left, in which figure and ground change places. Pure.

The edge stands on an eighth of a cell. Right of it ink stands on the ground; left of it the ground's
colour stands on the ink, by reverse video, so that it is seen without any colour too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from rich.cells import cell_len

from booth.widgets.lettering.bigfigure import QUARTERS
from booth.widgets.rows import ACROSS, QUIET, Piece, Row, merge
from booth.words.shown import Tone

EIGHTHS = 8
#: What is plainly a cell a character: most rows are nothing else.
NARROW = re.compile("[ -~─-▟°µ²³·»…→]*")
#: The left half of a cell in the bits of QUARTERS.
LEFT_HALF = 1 | 4
#: So many cells a figure may stand aside, the least first.
ASIDE = (0, 1, -1, 2, -2)


def ink(tone: Tone) -> str:
    """The style of what stands before the edge."""
    return f"${tone.css}"


def filled(tone: Tone) -> str:
    """The style of what the edge has passed."""
    return f"{ink(tone)} reverse"


def eighths(edge: float | None, width: int) -> int:
    """Where the edge stands, in eighths of a cell from the left; it moves when this does."""
    return 0 if edge is None else round(min(max(edge, 0.0), 1.0) * width * EIGHTHS)


def cut(char: str, at: int) -> tuple[str, bool]:
    """Give the cell that the edge crosses `at` so many eighths: its character, and whether reversed.

    A cell that is all ground or all ink is cut on the very eighth. One that holds a part of a figure
    is cut at the nearest of its borders and its middle, where blocks of quarters can draw it; one
    that holds a letter at the nearer border.
    """
    if char == " ":
        return ACROSS[at], False
    if char == "█":
        return ACROSS[at], True
    halves = round(at / 4)
    if halves == 1 and char in QUARTERS:
        return QUARTERS[QUARTERS.index(char) ^ LEFT_HALF], False
    return char, at >= EIGHTHS / 2


def pass_over(cells: Sequence[str], at: int, before: str, behind: str) -> Row:
    """Give a row of cells with the edge at so many eighths of its width.

    before: the style of what it has not reached; behind: of what it has passed.
    """
    whole, part = divmod(at, EIGHTHS)
    # A character of two cells is not torn: the cell after it is empty.
    while whole < len(cells) and cells[whole] == "":
        whole, part = whole + 1, 0
    pieces: list[Piece] = [("".join(cells[:whole]), behind)]
    if whole < len(cells) and part and (whole + 1 == len(cells) or cells[whole + 1] != ""):
        char, reversed_ = cut(cells[whole], part)
        pieces.append((char, behind if reversed_ else before))
        whole += 1
    return merge((*pieces, ("".join(cells[whole:]), before)))


def cells_of(text: str) -> list[str]:
    """A text as cells: after a character of two cells stands an empty one; accents join theirs."""
    if NARROW.fullmatch(text):
        return list(text)
    cells: list[str] = []
    for char in text:
        wide = cell_len(char)
        if wide == 0 and cells:
            at = len(cells) - 1 - (cells[-1] == "" and len(cells) > 1)
            cells[at] += char
        else:
            cells += [char, *[""] * (wide - 1)]
    return cells


def aside(lines: Sequence[str], x: int, at: int) -> int:
    """Give how many cells a figure at `x` is to stand aside, so that no stroke is lost at the edge.

    Where the edge runs along the border of a stroke, the stroke has on its other side what it is drawn
    in itself. It is moved only where that happens over more than half of its height.
    """
    cut_at = round(at / 4)

    def lost(by: int) -> int:
        half = cut_at - 2 * (x + by)
        return sum(len(_inked(line, half - 1) ^ _inked(line, half)) for line in lines)

    return min(ASIDE, key=lost) if lost(0) > len(lines) else 0


def _inked(line: str, half: int) -> set[int]:
    """Which of the two quarters of a half of a cell are ink, the upper one 0, the lower one 1."""
    char = line[half // 2] if 0 <= half < 2 * len(line) else " "
    bits = QUARTERS.index(char) if char in QUARTERS else 0
    return {row for row in (0, 1) if bits & (1 << (2 * row + half % 2))}


class Field:
    """Cells of a size, all ground, onto which blocks and words are put."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self._cells = [[" "] * width for _ in range(height)]

    def put(self, x: int, y: int, lines: Iterable[str]) -> None:
        """Put lines with their upper left corner there; what lies outside is left out."""
        for row, line in enumerate(lines, y):
            if not 0 <= row < self.height or x < 0:
                continue
            cells = cells_of(line)
            if x + len(cells) <= self.width:
                self._cells[row][x : x + len(cells)] = cells

    def rows(self, edge: float | None, tone: Tone, dim_from: int | None = None) -> list[Row]:
        """All of it, with the edge there; from the row `dim_from` on nothing is measured yet."""
        at = eighths(edge, self.width)
        end = self.height if dim_from is None else dim_from
        return [
            pass_over(cells, at, ink(tone) if y < end else QUIET, filled(tone))
            for y, cells in enumerate(self._cells)
        ]


def behind_words(row: Row, edge: float | None, width: int, tone: Tone, style: str = "") -> Row:
    """A row of words with a small edge behind it: what it has passed is reversed in its tone, or in
    another style."""
    style = style or ink(tone)
    if not eighths(edge, width):
        return merge(row)
    whole, part = divmod(eighths(edge, width), EIGHTHS)
    pieces: list[Piece] = []
    at = 0
    for text, own in row:
        cells = cells_of(text)
        cut_at = min(max(whole - at, 0), len(cells))
        if cut_at < len(cells) and cells[cut_at] == "":
            cut_at += 1  # a character of two cells is not torn
        pieces.append(("".join(cells[:cut_at]), f"{style} reverse"))
        rest = cells[cut_at:]
        if part and at + cut_at == whole and rest[:1] == [" "]:
            pieces.append((ACROSS[part], style))
            rest = rest[1:]
        pieces.append(("".join(rest), own))
        at += len(cells)
    return merge(pieces)
