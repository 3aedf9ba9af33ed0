"""The pours of a batch, one row each: what was poured, what is poured now, what comes."""

from __future__ import annotations

from typing import ClassVar

from rich.cells import cell_len
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, exactly, exactly_rows
from booth.widgets.text import pad, plain
from booth.words.pictures import PourRow
from booth.words.tone import TONE_CLASSES, Tone, tone_css

LATER, WORDS = "pour-table--later", "pour-table--words"
MOST_ROWS = 6
LEAST_NAME, MOST_NAME = 8, 28
LEAST_FIGURE, GAP = 9, 2


def lay_out(rows: tuple[PourRow, ...], width: int, height: int) -> list[Row]:
    """Give the table for a size: a row of words, then the pours, the one to pour now in sight."""
    if width <= 0 or height <= 0 or not rows:
        return exactly_rows([], max(width, 0), max(height, 0))
    # A column is as wide as its longest figure, and two cells part it from the one before.
    pour, mark = (
        max(LEAST_FIGURE, *(cell_len(plain(figure)) for figure in column)) + GAP
        for column in ([row.amount for row in rows], [row.mark for row in rows])
    )
    longest = max(cell_len(plain(row.name)) for row in rows)
    name_width = min(MOST_NAME, max(LEAST_NAME, min(longest, width - pour - mark - 2)))
    # The table stands in the middle, as the figure above it does.
    left = max(0, (width - name_width - pour - mark - 2) // 2)
    head = (" " * (left + 2 + name_width) + pad("pour", pour, "right"), WORDS)
    drawn: list[Row] = [exactly((head, (pad("up to", mark, "right"), WORDS)), width)]
    at = next((n for n, row in enumerate(rows) if row.tone is Tone.READY), len(rows) - 1)
    room = height - 1
    first = min(max(0, at - room + 2), max(0, len(rows) - room))
    for row in rows[first : first + room]:
        style = LATER if row.tone is Tone.PLAIN else row.tone.css
        text = pad(row.name, name_width) + pad(row.amount, pour, "right")
        drawn.append(
            exactly(
                (
                    (" " * left, ""),
                    (f"{row.tone.shape} {text}", style),
                    (pad(row.mark, mark, "right"), style),
                ),
                width,
            )
        )
    return exactly_rows(drawn, width, height)


class PourTable(Drawn):
    """Draws the pours."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {LATER, WORDS, *TONE_CLASSES}
    DEFAULT_CSS = """
PourTable { height: 0; width: 1fr; background: $background; }
PourTable > .pour-table--later { color: $foreground; }
PourTable > .pour-table--words { color: $quiet; }
""" + tone_css("PourTable")

    rows: reactive[tuple[PourRow, ...]] = reactive((), repaint=False)

    def watch_rows(self, before: tuple[PourRow, ...], now: tuple[PourRow, ...]) -> None:
        if len(before) != len(now):
            self.styles.height = min(len(now), MOST_ROWS) + 1 if now else 0
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.rows, width, height)
