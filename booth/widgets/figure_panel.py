"""The figure that matters now: a field that is its own gauge, as large as the window allows.

From the top: whose it is and how it stands, the figure, a scale along the foot, the explanation.
When rows get scarce the explanation goes first; figure, name and state stay to the last row.
"""

from __future__ import annotations

import textwrap
from functools import lru_cache

from rich.cells import cell_len
from textual.geometry import Size

from booth.widgets import scale
from booth.widgets.heads import Band, head_text, heads, signals, unsaid
from booth.widgets.lettering.bigfigure import LEAST_ROWS, draw, set_words
from booth.widgets.lettering.glyphs import NARROW_ONE
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, Row, blank, exactly, sized, toned
from booth.widgets.text import LEFT_OUT, plain
from booth.widgets.wet_edge import Field, aside, eighths
from booth.words.shown import Readout, Tone

#: Letters that are read from six metres [rows], as a share of the window's rows: 28 mm of the
#: 174 mm that a 14-inch screen is high; 16 minutes of arc, the least for reading (ISO 9241-303,
#: from memory).
SIX_METRES = 28 / 174
#: Text is read in columns no wider than this.
MOST_TEXT = 96
#: So many rows of it are worth a shorter name.
LEAST_TEXT = 2
SIDE = 2


def letters_of(window_rows: int) -> int:
    """How high letters have to be in a window [rows]."""
    return max(LEAST_ROWS, round(window_rows * SIX_METRES))


def _one_line(readout: Readout, width: int) -> Row:
    tone = toned(readout.tone)
    figure = f"{plain(readout.figure)} {plain(readout.unit)}".strip()
    row: Row = ((figure, tone),)
    said = (signals(readout)[:1], tone), ((plain(readout.whose) or plain(readout.label),), HEAD)
    for texts, style in said:
        if any(texts):
            row = (*row, ("  ", ""), (texts[0], style)) if row[0][0] else ((texts[0], style),)
    return exactly(row, width)


@lru_cache(maxsize=16)
def _wrapped(label: str, lines: tuple[str, ...], width: int) -> list[tuple[str, str]]:
    """Label and explanation in rows of whole words, each line beginning a row of its own."""
    room = max(min(width - 2 * SIDE, MOST_TEXT), 1)
    told = [(plain(label), HEAD)] if plain(label).strip() else []
    told += [(plain(line), "") for line in lines]
    return [
        (row, style)
        for line, style in told
        for row in textwrap.wrap(line, room, max_lines=3, placeholder=LEFT_OUT) or [""]
    ]


def _cut(rows: list[tuple[str, str]], count: int) -> list[tuple[str, str]]:
    """The first rows; an ellipsis where a sentence was cut off behind the last of them."""
    if count <= 0 or count >= len(rows):
        return rows[: max(count, 0)]
    text, style = rows[count - 1]
    return [*rows[: count - 1], (f"{text}{LEFT_OUT}", style)]


def counts(readout: Readout) -> bool:
    """Whether the figure moves on by itself: then all its numerals are of one width."""
    return readout.tone is Tone.RUNNING or ":" in readout.figure


def lettered(readout: Readout) -> str:
    """The figure as it is set: where it stands still, without a gap beside its 1."""
    figure = readout.figure
    return figure if counts(readout) else figure.replace("1", NARROW_ONE)


def _set(readout: Readout, width: int, height: int) -> list[str]:
    lines = draw(lettered(readout), width, height, like=readout.like)
    return lines if len(lines) > 1 else draw(readout.figure, width, height, like=readout.like)


def _figure(readout: Readout, width: int, height: int, letters: int) -> tuple[list[str], bool]:
    """The figure in blocks, and whether its unit stands beneath and not beside it."""
    if not readout.figure.strip() or height <= 0:
        return [], False
    if readout.in_words:
        words = set_words(plain(readout.figure), width, height, min(letters, height))
        return list(words or draw(readout.figure, width, height)), False
    unit = plain(readout.unit)
    space = cell_len(unit) + 1 if unit else 0
    beside = _set(readout, width - space, height)
    below = _set(readout, width, height - 1) if unit else []
    return (below, True) if len(below) > max(len(beside), LEAST_ROWS - 1) else (beside, False)


def _bands(
    readout: Readout, width: int, height: int, letters: int, most: int
) -> tuple[tuple[Band, ...], int]:
    """The bands of a field of that height, and how high each is."""
    # Figure and heads, a row between them and beneath: two bands, one, one of smaller letters.
    least = letters if readout.figure.strip() else 0
    for count in range(most, 0, -1):
        found = heads(readout, width, letters, count)
        if height >= len(found) * (letters + 1) + least:
            return found, letters
    small = (height - 1) // 2 if least else height
    if small >= LEAST_ROWS:
        return heads(readout, width, small, 1), small
    return (head_text(readout, width),), 1


def _put_field(field: Field, readout: Readout, letters: int, most: int) -> tuple[int, int]:
    """Draw heads and figure; gives the rows that stay free, and where the figure begins."""
    width = field.width - 2 * SIDE if field.width > 8 * SIDE else field.width
    left = (field.width - width) // 2
    bands, rows = _bands(readout, width, field.height, letters, most)
    bands = tuple(band for band in bands if band)
    used = len(bands) * (rows + 1)
    top = int(field.height > used + letters + 1 and rows > 1)
    y = top
    for band in bands:
        for block in band:
            field.put(left + block.x, y, block.lines)
        y += rows + 1
    y = min(y, field.height) - int(rows == 1 and bool(bands))
    room = field.height - y
    lines, beneath = _figure(readout, width, room - int(room > letters), letters)
    if not lines:
        return room, y
    unit, tall = plain(readout.unit), len(lines) + beneath
    wide = cell_len(lines[0])
    if not counts(readout):
        wide = max(cell_len(line.rstrip()) for line in lines)
    free = room - tall
    x, y = left + max(0, (width - wide) // 2), y + free // 2
    if not counts(readout) and readout.edge is not None:  # one that moves passes by itself
        x += aside(lines, x, eighths(readout.edge, field.width))
    x = min(max(x, left), left + max(0, width - wide))
    if unit and not beneath:
        x = min(x, left + width - wide - 1 - cell_len(unit))
        field.put(x + wide + 1, y + len(lines) - 1, [unit])
    elif unit:
        field.put(left + max(0, (width - cell_len(unit)) // 2), y + len(lines), [unit])
    field.put(x, y, lines)
    return free, y


def lay_out(readout: Readout, width: int, height: int, letters: int = LEAST_ROWS) -> list[Row]:
    """Give the panel for a size. letters: how high name, state and figure are at least [rows]."""
    return _sized((readout, letters), width, height)


@sized
def _sized(shown: tuple[Readout, int], width: int, height: int) -> list[Row]:
    readout, letters = shown
    if height == 1:
        return [_one_line(readout, width)]
    foot = scale.ROWS if readout.band is not None or readout.marks else 0
    text = _wrapped(readout.label, readout.lines, width)
    # Two bands only where the first of the words still have room.
    figure = letters + 1 if readout.figure.strip() else 0
    two = len(heads(readout, max(width - 2 * SIDE, 1), letters, 2)) * (letters + 1)
    most = 2 if height - foot >= two + figure + min(len(text), LEAST_TEXT) else 1
    least = min(two, most * (letters + 1)) + figure
    left = unsaid(readout, heads(readout, max(width - 2 * SIDE, 1), letters, most))
    if left:
        label = f"{left}: {readout.label}" if readout.label.strip() else left
        text = _wrapped(label, readout.lines, width)
    if height - foot < least:
        foot = 0
    spare = height - foot - least
    if not readout.figure.strip():
        lines = min(len(text), max(spare, 0))
    else:
        # The figure is larger than the letters before more than the first words are read.
        free = max(spare - letters // 2 - 1, min(LEAST_TEXT, spare))
        lines = max(0, min(len(text), free, max(2, height // 4)))
    gap = int(bool(lines) and not foot and spare > lines)
    field = Field(width, height - foot - lines - gap)
    free, below = _put_field(field, readout, letters, most)
    if lines < len(text) and free > 2:
        # The figure is as wide as it can be: the words take what height is left.
        lines += min(len(text) - lines, free - 2)
        field = Field(width, height - foot - lines - gap)
        _, below = _put_field(field, readout, letters, most)
    rows = field.rows(readout.edge, readout.tone, below if readout.wanted else None)
    if foot:
        rows += scale.scale_rows(readout, width)
    rows += blank(width, gap)
    side = " " * min(SIDE, width)
    return rows + [exactly(((side, ""), each), width) for each in _cut(text, lines)]


class FigurePanel(Drawn):
    """Draws a Readout."""

    def _drawn(self, size: Size) -> tuple[Row, ...]:
        letters = letters_of(self.app.size.height)
        return tuple(lay_out(self.shown, *size, letters)) if self.shown else ()
