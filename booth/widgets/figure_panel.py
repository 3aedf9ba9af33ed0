"""The figure that matters now, as large as the window allows, its state as word and shape."""

from __future__ import annotations

import textwrap

from rich.cells import cell_len

from booth.widgets.lettering.bigfigure import LEAST_ROWS, draw
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, STRONG, Row, blank, centred, exactly, merge, sized, toned
from booth.widgets.text import ELLIPSIS, fit, plain
from booth.words.shown import Readout

# From this many rows on the word is drawn in blocks too, in a quarter of them.
WORD_IN_BLOCKS_FROM = 9
TALLEST_WORD = 8


def _signal(readout: Readout) -> str:
    """The shape and the word of the state."""
    word = plain(readout.shown_word)
    shape = readout.tone.shape
    return f"{shape} {word}" if word else ""


def _one_line(readout: Readout, width: int) -> Row:
    tone = toned(readout.tone)
    figure = f"{plain(readout.figure)} {plain(readout.unit)}".strip()
    row: Row = ((figure, tone),)
    for text, style in ((_signal(readout), tone), (plain(readout.label), HEAD)):
        if text:
            row = (*row, ("  ", ""), (text, style))
    return exactly(row, width)


def _block(text: str, like: str, width: int, height: int) -> list[str]:
    """The text in blocks, or nothing where it would come out as plain text."""
    lines = draw(text, width, height, like=like)
    return lines if len(lines) >= LEAST_ROWS else []


def _figure_rows(readout: Readout, width: int, height: int) -> list[Row]:
    """The figure, its unit beside it on the base line or beneath: whichever leaves it larger."""
    tone, unit = toned(readout.tone), plain(readout.unit)
    space = cell_len(unit) + 1 if unit else 0
    beside = _block(readout.figure, readout.like, width - 2 * space, height)
    below = _block(readout.figure, readout.like, width, height - 1) if unit else []
    if not beside and not below:
        # Narrow: the unit may stand to the right without the figure staying in the middle.
        beside = _block(readout.figure, readout.like, width - space, height)
    if not beside and not below:
        text: Row = ((fit(readout.figure, width), tone),)
        return [
            exactly((*text, (" ", ""), (unit, STRONG)) if unit else text, width, align="centre")
        ]
    if len(below) > len(beside):
        rows = [centred(line, tone, width) for line in below]
        return [*rows, centred(unit, STRONG, width)]
    left = max(0, min((width - len(beside[0])) // 2, width - len(beside[0]) - space))
    rows = [exactly(((" " * left, ""), (line, tone)), width) for line in beside]
    if unit:
        last = ((" " * left, ""), (beside[-1], tone), (" ", ""), (unit, STRONG))
        rows[-1] = exactly(merge(last), width)
    return rows


def _word_rows(readout: Readout, width: int, height: int) -> list[Row]:
    """The shape and the word, in blocks where `height` allows, else in one row of text."""
    signal, tone = _signal(readout), toned(readout.tone)
    if not signal:
        return []
    lines = _block(signal, "", width, height) or [signal]
    return [centred(line, tone, width) for line in lines]


def _wrapped(lines: tuple[str, ...], width: int) -> list[str]:
    """The explanation in rows of whole words, each line beginning a row of its own."""
    return [
        row
        for line in lines
        for row in textwrap.wrap(plain(line), width, max_lines=3, placeholder=ELLIPSIS) or [""]
    ]


def _cut(rows: list[str], count: int) -> list[str]:
    """The first rows; an ellipsis where a sentence was cut off behind the last of them."""
    if count <= 0 or count >= len(rows):
        return rows[:count]
    return [*rows[: count - 1], f"{rows[count - 1]} {ELLIPSIS}"]


@sized
def lay_out(readout: Readout, width: int, height: int) -> list[Row]:
    """Give the panel for a size.

    From the top: label, figure with unit, word, explanation. When rows get scarce the explanation
    goes first, then the label; the figure and the word stay to the last row.
    """
    if height == 1:
        return [_one_line(readout, width)]
    has_word = bool(_signal(readout))
    label = int(bool(readout.label) and height >= 3)
    spare = height - label - int(has_word) - LEAST_ROWS
    explained = _wrapped(readout.lines, width)
    lines = max(0, min(len(explained), spare, height // 3))
    body = height - label - lines
    gap = int(bool(lines) and body >= WORD_IN_BLOCKS_FROM)
    body -= gap
    word_height = 1
    if has_word and body >= WORD_IN_BLOCKS_FROM:
        word_height = min(max(LEAST_ROWS, body // 4), TALLEST_WORD)
    word = _word_rows(readout, width, word_height)
    between = int(len(word) >= LEAST_ROWS)
    figure = _figure_rows(readout, width, max(1, body - len(word) - between))
    free = body - len(figure) - len(word) - between
    if between and free > 1 and len(word) < len(figure) // 2:
        # The figure is as wide as it can be: the word takes what height is left.
        taller = min(len(word) + free, len(figure) // 2, TALLEST_WORD)
        word = _word_rows(readout, width, taller)
        free = body - len(figure) - len(word) - between
    # Rows the figure cannot use go above and below it and its word, none in between.
    rows: list[Row] = []
    if label:
        rows.append(centred(plain(readout.label), HEAD, width))
    rows += blank(width, free // 2) + figure + blank(width, between) + word
    rows += blank(width, free - free // 2 + gap)
    return rows + [centred(line, "", width) for line in _cut(explained, lines)]


class FigurePanel(Drawn):
    """Draws a Readout."""

    draw = staticmethod(lay_out)
