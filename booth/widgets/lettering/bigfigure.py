"""Figures and words in blocks, as large as the space allows. Pure: text and a size in, lines out."""

from __future__ import annotations

import math
import unicodedata
from functools import lru_cache

from booth.widgets.lettering.glyphs import GLYPHS, SQUARE
from booth.widgets.lettering.marks import (
    LEAST_WIDE,
    has_marks_drawn,
    parts_of,
    room_of,
    with_marks,
)
from booth.widgets.lettering.pen import STEP, Bitmap, Pen, snap
from booth.widgets.text import fit, plain
from booth.words.afar import without_loose_end

LEAST_ROWS = 3
MOST_ROWS = 40
# A figure's width as a share of its height: the widest that still looks like lettering, and the
# narrowest that is still read from across the shop.
WIDEST, NARROWEST = 0.64, 0.5

ALIKE = str.maketrans({"−": "-", "–": "-", "—": "-", "’": "'", "\u00a0": " ", "Ð": "Đ"})
# Bits: upper left 1, upper right 2, lower left 4, lower right 8.
QUARTERS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"


def _normal(text: str) -> str:
    return unicodedata.normalize("NFC", plain(text).upper().translate(ALIKE))


@lru_cache(maxsize=512)
def _is_drawn(char: str) -> bool:
    """Whether there is a letter in blocks for it, with all its marks: without one it is another."""
    base, marks = parts_of(char)
    return char in GLYPHS or (base in GLYPHS and has_marks_drawn(marks))


def can_draw(text: str) -> bool:
    return all(map(_is_drawn, _normal(text)))


def _pen(char: str, figure: Pen) -> Pen:
    if char not in GLYPHS:
        pen = _pen(parts_of(char)[0], figure)
        return pen.wide(max(pen.w, LEAST_WIDE * figure.sx))
    share = GLYPHS[char].share
    if share == SQUARE:
        # On the glass; in three rows a little less, so that a long word still fits.
        return figure.wide(figure.h * (0.8 if figure.h >= 8 else 0.67))
    return figure.wide(figure.w * share)


@lru_cache(maxsize=1024)
def _glyph(char: str, figure: Pen) -> Bitmap:
    if char not in GLYPHS:
        base, marks = parts_of(char)
        room = room_of(figure.h)
        body = _glyph(base, figure.high(figure.h - room * len(marks)))
        return with_marks(body, marks, room, round(figure.sx / STEP))
    glyph = GLYPHS[char]
    return _pen(char, figure).draw(glyph.strokes if figure.slanted or not glyph.low else glyph.low)


def _total(text: str, figure: Pen) -> float:
    return sum(_pen(char, figure).w for char in text) + figure.gap * (len(text) - 1)


@lru_cache(maxsize=512)
def _choose(texts: tuple[str, ...], width: int, height: int) -> Pen | None:
    """The largest lettering in which every one of the texts fits; None where none does."""
    for tall in range(2 * min(height, MOST_ROWS), 2 * LEAST_ROWS - 1, -1):
        wide, narrowest = max(3.0, snap(tall * WIDEST)), max(3.0, tall * NARROWEST)
        while wide >= narrowest:
            figure = Pen.of_figure(wide, tall)
            if all(_total(text, figure) <= width for text in texts):
                return figure
            wide -= STEP
    return None


def _line(upper: list[bool], lower: list[bool]) -> str:
    return "".join(
        QUARTERS[upper[i] + 2 * upper[i + 1] + 4 * lower[i] + 8 * lower[i + 1]]
        for i in range(0, len(upper), 2)
    )


def _compose(text: str, figure: Pen) -> list[str]:
    gap = [False] * round(figure.gap / STEP)
    rows: list[list[bool]] = []
    for y in range(figure.h):
        row: list[bool] = []
        for position, char in enumerate(text):
            row += (gap if position else []) + list(_glyph(char, figure)[y])
        rows.append(row + [False] * (len(row) % 2))
    if len(rows) % 2:
        rows.insert(0, [False] * len(rows[0]))
    return [_line(upper, lower) for upper, lower in zip(rows[::2], rows[1::2], strict=True)]


@lru_cache(maxsize=256)
def _drawn(text: str, like: str, width: int, height: int) -> tuple[str, ...]:
    if can_draw(text) and text.strip() and width > 0:
        figure, model = _normal(text), _normal(like)
        texts = (figure, model) if like and can_draw(like) else (figure,)
        lettering = _choose(texts, width, height) or _choose((figure,), width, height)
        if lettering is not None:
            return tuple(_compose(figure, lettering))
    return (fit(text, width),) if height > 0 and width > 0 else ()


@lru_cache(maxsize=256)
def side_by_side(
    texts: tuple[str, ...], width: int, rows: int, gap: int
) -> tuple[tuple[str, ...], ...]:
    """Draw texts in one lettering exactly `rows` high that stand beside one another in `width` cells.

    gap: the least room between two of them [cells]. Nothing where they do not fit so, or where one
    cannot be drawn.
    """
    drawn = tuple(_normal(text) for text in texts)
    if rows < LEAST_ROWS or not all(can_draw(text) and text.strip() for text in texts):
        return ()
    tall = 2 * rows
    wide, room = max(3.0, snap(tall * WIDEST)), width - gap * (len(texts) - 1)
    while wide >= max(3.0, tall * NARROWEST):
        figure = Pen.of_figure(wide, tall)
        if sum(math.ceil(_total(text, figure)) for text in drawn) <= room:
            return tuple(tuple(_compose(text, figure)) for text in drawn)
        wide -= STEP
    return ()


@lru_cache(maxsize=64)
def set_words(text: str, width: int, height: int, least: int) -> tuple[str, ...]:
    """Set words in rows of letters, a blank row between two, as large as all of them fit.

    Where they do not fit in letters `least` rows high, as many whole words as do; nothing where not
    even the first does.
    """
    words = tuple(text.split())
    for rows in range(min(height, MOST_ROWS), least, -1):
        lines, left = _in_lines(words, width, rows, (height + 1) // (rows + 1))
        if lines and not left:
            return _stacked(lines)
    lines, left = _in_lines(words, width, least, (height + 1) // (least + 1))
    if left:
        kept = without_loose_end(list(words[: len(words) - left]))
        lines, _ = _in_lines(tuple(kept), width, least, len(lines))
    return _stacked(lines)


def _in_lines(
    words: tuple[str, ...], width: int, rows: int, most: int
) -> tuple[list[tuple[str, ...]], int]:
    """Rows of letters of whole words, and how many words are left over."""
    lines: list[tuple[str, ...]] = []
    at = 0
    while at < len(words) and len(lines) < most:
        for end in range(len(words), at, -1):
            found = side_by_side((" ".join(words[at:end]),), width, rows, 0)
            if found:
                lines, at = [*lines, found[0]], end
                break
        else:
            break
    return lines, len(words) - at


def _stacked(lines: list[tuple[str, ...]]) -> tuple[str, ...]:
    wide = max((len(line[0]) for line in lines), default=0)
    rows = [row.center(wide) for line in lines for row in (*line, "")]
    return tuple(rows[:-1])


def draw(text: str, width: int, height: int, *, like: str = "") -> list[str]:
    """Draw `text` in blocks, as large as fits into `width` x `height` cells.

    Gives lines of equal length, no more of either than there is room for; one line of plain text
    where not even three rows or the narrowest figures fit, or where a character cannot be drawn.
    With `like` the size is chosen so that this text fits too: a countdown drawn like "00:00" keeps
    its size from ten minutes to the last second.
    """
    return list(_drawn(text, like, width, height))
