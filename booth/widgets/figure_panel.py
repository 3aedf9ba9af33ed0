"""The figure that matters now, as large as the window allows, its state as word and shape."""

from __future__ import annotations

import textwrap
from typing import ClassVar

from rich.cells import cell_len
from textual.reactive import reactive

from booth.widgets.lettering.bigfigure import LEAST_ROWS, draw
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, blank, exactly, exactly_rows, merge
from booth.widgets.text import ELLIPSIS, fit, plain
from booth.words.readout import Readout
from booth.words.tone import TONE_CLASSES, Tone, tone_css

LABEL, UNIT, LINES = "figure-panel--label", "figure-panel--unit", "figure-panel--lines"
# From this many rows on the word is drawn in blocks too, in a quarter of them.
WORD_IN_BLOCKS_FROM = 9
TALLEST_WORD = 8


def _signal(readout: Readout) -> str:
    """The shape and the word of the state."""
    word = plain(readout.shown_word)
    shape = readout.tone.shape
    return f"{shape} {word}" if word else ""


def _one_line(readout: Readout, width: int) -> Row:
    tone = readout.tone.css
    figure = f"{plain(readout.figure)} {plain(readout.unit)}".strip()
    row: Row = ((figure, tone),)
    for text, style in ((_signal(readout), tone), (plain(readout.label), LABEL)):
        if text:
            row = (*row, ("  ", ""), (text, style))
    return exactly(row, width)


def _block(text: str, like: str, width: int, height: int) -> list[str]:
    """The text in blocks, or nothing where it would come out as plain text."""
    lines = draw(text, width, height, like=like)
    return lines if len(lines) >= LEAST_ROWS else []


def _figure_rows(readout: Readout, width: int, height: int) -> list[Row]:
    """The figure, its unit beside it on the base line or beneath: whichever leaves it larger."""
    tone, unit = readout.tone.css, plain(readout.unit)
    space = cell_len(unit) + 1 if unit else 0
    beside = _block(readout.figure, readout.like, width - 2 * space, height)
    below = _block(readout.figure, readout.like, width, height - 1) if unit else []
    if not beside and not below:
        # Narrow: the unit may stand to the right without the figure staying in the middle.
        beside = _block(readout.figure, readout.like, width - space, height)
    if not beside and not below:
        text: Row = ((fit(readout.figure, width), tone),)
        return [exactly((*text, (" ", ""), (unit, UNIT)) if unit else text, width, align="centre")]
    if len(below) > len(beside):
        rows = [exactly(((line, tone),), width, align="centre") for line in below]
        return [*rows, exactly(((unit, UNIT),), width, align="centre")]
    left = max(0, min((width - len(beside[0])) // 2, width - len(beside[0]) - space))
    rows = [exactly(((" " * left, ""), (line, tone)), width) for line in beside]
    if unit:
        last = ((" " * left, ""), (beside[-1], tone), (" ", ""), (unit, UNIT))
        rows[-1] = exactly(merge(last), width)
    return rows


def _word_rows(readout: Readout, width: int, height: int) -> list[Row]:
    """The shape and the word, in blocks where `height` allows, else in one row of text."""
    signal, tone = _signal(readout), readout.tone.css
    if not signal:
        return []
    lines = _block(signal, "", width, height) or [signal]
    return [exactly(((line, tone),), width, align="centre") for line in lines]


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


def lay_out(readout: Readout, width: int, height: int) -> list[Row]:
    """Give the panel for a size: exactly `height` rows of exactly `width` cells.

    From the top: label, figure with unit, word, explanation. When rows get scarce the explanation
    goes first, then the label; the figure and the word stay to the last row.
    """
    if width <= 0 or height <= 0:
        return []
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
        rows.append(exactly(((plain(readout.label), LABEL),), width, align="centre"))
    rows += blank(width, free // 2) + figure + blank(width, between) + word
    rows += blank(width, free - free // 2 + gap)
    for line in _cut(explained, lines):
        rows.append(exactly(((plain(line), LINES),), width, align="centre"))
    return exactly_rows(rows, width, height)


class FigurePanel(Drawn):
    """Draws a Readout. Its tone is also a class on the widget, for the rules of a screen."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {LABEL, UNIT, LINES, *TONE_CLASSES}
    DEFAULT_CSS = """
FigurePanel { height: 1fr; width: 1fr; background: $background; color: $foreground; }
FigurePanel > .figure-panel--label { color: $quiet; text-style: bold; }
FigurePanel > .figure-panel--unit { color: $foreground; text-style: bold; }
FigurePanel > .figure-panel--lines { color: $foreground; }
""" + tone_css("FigurePanel")

    readout: reactive[Readout] = reactive(Readout("–"), repaint=False)

    def __init__(
        self,
        readout: Readout | None = None,
        *,
        name: str | None = None,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(name=name, id=id, classes=classes)
        if readout is not None:
            self.readout = readout
        self._mark(self.readout.tone)

    def _mark(self, tone: Tone) -> None:
        if not self.has_class(tone.css):
            self.remove_class(*TONE_CLASSES).add_class(tone.css)

    def watch_readout(self, readout: Readout) -> None:
        self._mark(readout.tone)
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.readout, width, height)
