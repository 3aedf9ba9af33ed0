"""Figures and words in blocks, as large as the space allows. Pure: text and a size in, lines out.

Each glyph is a shape bent from uprights, level strokes and bowls; its measures are put on the grid
of quarter cells first and the shape is drawn on them afterwards: strokes stay even at any size.
"""

from __future__ import annotations

from functools import lru_cache

import msgspec

from booth.widgets.lettering.frame import Frame, snap
from booth.widgets.lettering.letters import LETTERS
from booth.widgets.lettering.numerals import NUMERALS
from booth.widgets.lettering.shapes import Bitmap, raster
from booth.widgets.lettering.signs import SIGNS
from booth.widgets.text import fit, plain

LEAST_ROWS = 3
MOST_ROWS = 40
# A figure's width as a share of its height: the widest that still looks like lettering, and the
# narrowest that is still read from across the shop.
WIDEST, NARROWEST = 0.64, 0.5
WEIGHT_UPRIGHT, WEIGHT_LEVEL = 0.18, 0.155

ALIKE = str.maketrans({"−": "-", "–": "-", "—": "-", "’": "'", "\u00a0": " "})
# Bits: upper left 1, upper right 2, lower left 4, lower right 8.
QUARTERS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"


class Measures(msgspec.Struct, frozen=True):
    """One size of lettering; widths in units (a cell is 1 wide and 2 high)."""

    figure: float
    height: int
    upright: float
    level: int
    gap: float
    step: float


def _normal(text: str) -> str:
    return plain(text).translate(ALIKE).upper()


def can_draw(text: str) -> bool:
    return all(c in NUMERALS or c in LETTERS or c in SIGNS for c in _normal(text))


def _level_weight(height: int) -> int:
    """The weight of level strokes: near its share of the height, the counters open and even."""
    wanted = height * WEIGHT_LEVEL
    best = 1
    for weight in range(1, height // 5 + 1):
        # An odd remainder makes the two counters uneven: worth half a pixel of weight.
        def cost(candidate: int) -> float:
            return abs(candidate - wanted) + 0.3 * ((height - 3 * candidate) % 2)

        if cost(weight) < cost(best):
            best = weight
    return best


def _measures(height: int, figure: float, step: float) -> Measures:
    upright = max(1.0, snap(min(height * WEIGHT_UPRIGHT, figure * 0.33), step))
    gap = max(1.0, snap(upright * 0.75, step))
    return Measures(figure, height, upright, _level_weight(height), gap, step)


def _frame(char: str, m: Measures) -> Frame:
    base = Frame(m.figure, m.height, m.upright, m.level, m.step)
    if char in NUMERALS:
        return base
    share = LETTERS[char][1] if char in LETTERS else SIGNS[char][1]
    if isinstance(share, str):
        # A square on the glass; in three rows a little less, so that a long word still fits.
        return Frame(
            snap(m.height * (0.8 if m.height >= 8 else 0.67), m.step),
            m.height,
            m.upright,
            m.level,
            m.step,
        )
    if share < 0:
        return Frame(snap(m.upright * -share, m.step), m.height, m.upright, m.level, m.step)
    return base.wide(share)


@lru_cache(maxsize=1024)
def _glyph(char: str, m: Measures) -> Bitmap:
    frame = _frame(char, m)
    if char in NUMERALS:
        shape = NUMERALS[char](frame)
    else:
        shape = (LETTERS.get(char) or SIGNS[char])[0](frame)
    return raster(shape, frame.w, m.height, m.step)


def _total(text: str, m: Measures) -> float:
    return sum(_frame(char, m).w for char in text) + m.gap * (len(text) - 1)


@lru_cache(maxsize=512)
def _choose(texts: tuple[str, ...], width: int, height: int, step: float) -> Measures | None:
    """The largest lettering in which every one of the texts fits; None where none does."""
    for tall in range(2 * min(height, MOST_ROWS), 2 * LEAST_ROWS - 1, -1):
        widest = max(3.0, snap(tall * WIDEST, step))
        narrowest = max(3.0, tall * NARROWEST)
        figure = widest
        while figure >= narrowest:
            measures = _measures(tall, figure, step)
            if all(_total(text, measures) <= width for text in texts):
                return measures
            figure -= step
    return None


def _line(pixels: list[tuple[list[bool], list[bool]]], row: int) -> str:
    upper, lower = pixels[row]
    return "".join(
        QUARTERS[upper[i] + 2 * upper[i + 1] + 4 * lower[i] + 8 * lower[i + 1]]
        for i in range(0, len(upper), 2)
    )


def _compose(text: str, m: Measures) -> list[str]:
    gap = [False] * round(m.gap / m.step)
    rows: list[list[bool]] = []
    for y in range(m.height):
        row: list[bool] = []
        for position, char in enumerate(text):
            row += (gap if position else []) + list(_glyph(char, m)[y])
        rows.append(row)
    if m.step == 1.0:
        rows = [[pixel for pixel in row for _ in range(2)] for row in rows]
    if len(rows[0]) % 2:
        rows = [[*row, False] for row in rows]
    if len(rows) % 2:
        rows.insert(0, [False] * len(rows[0]))
    pairs = list(zip(rows[::2], rows[1::2], strict=True))
    return [_line(pairs, row) for row in range(len(pairs))]


@lru_cache(maxsize=256)
def _drawn(text: str, like: str, width: int, height: int) -> tuple[str, ...]:
    if can_draw(text) and text.strip() and width > 0:
        figure, model = _normal(text), _normal(like)
        texts = (figure, model) if like and can_draw(like) else (figure,)
        step = 0.5
        measures = _choose(texts, width, height, step) or _choose((figure,), width, height, step)
        if measures is not None:
            return tuple(_compose(figure, measures))
    return (fit(text, width),) if height > 0 and width > 0 else ()


def draw(text: str, width: int, height: int, *, like: str = "") -> list[str]:
    """Draw `text` in blocks, as large as fits into `width` x `height` cells.

    Gives lines of equal length, no more of either than there is room for; one line of plain text
    where not even three rows or the narrowest figures fit, or where a character cannot be drawn.
    With `like` the size is chosen so that this text fits too: a countdown drawn like "00:00" keeps
    its size from ten minutes to the last second.
    """
    return list(_drawn(text, like, width, height))


def size_of(text: str, width: int, height: int) -> tuple[int, int]:
    """Give the width and height in cells that `draw` would use."""
    lines = draw(text, width, height)
    return (max(map(len, lines), default=0), len(lines))
