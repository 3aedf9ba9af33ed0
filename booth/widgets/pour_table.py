"""The pours of a batch, one row each: what was poured, what is poured now, what comes."""

from __future__ import annotations

from rich.cells import cell_len

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, first_in_sight, sized
from booth.widgets.styles import QUIET, toned
from booth.widgets.text import pad, plain
from booth.words.pictures import Pours
from booth.words.tone import Tone

MOST_ROWS = 6
LEAST_NAME, MOST_NAME = 8, 28
LEAST_FIGURE, GAP = 9, 2


@sized
def lay_out(pours: Pours, width: int, height: int) -> list[Row]:
    """Give the table for a size: a row of words, then the pours, the one to pour now in sight."""
    rows = pours.rows
    if not rows:
        return []
    # A column is as wide as its longest figure, and two cells part it from the one before.
    pour, mark = (
        max(LEAST_FIGURE, *(cell_len(plain(figure)) for figure in column)) + GAP
        for column in ([row.amount for row in rows], [row.mark for row in rows])
    )
    longest = max(cell_len(plain(row.name)) for row in rows)
    name_width = min(MOST_NAME, max(LEAST_NAME, min(longest, width - pour - mark - 2)))
    # The table stands in the middle, as the figure above it does.
    left = max(0, (width - name_width - pour - mark - 2) // 2)
    head = (" " * (left + 2 + name_width) + pad("pour", pour, "right"), QUIET)
    drawn: list[Row] = [(head, (pad("up to", mark, "right"), QUIET))]
    at = next((n for n, row in enumerate(rows) if row.tone is Tone.READY), len(rows) - 1)
    room = height - 1
    first = first_in_sight(len(rows), at, room, room - 2)
    for row in rows[first : first + room]:
        style = "" if row.tone is Tone.PLAIN else toned(row.tone)
        text = pad(row.name, name_width) + pad(row.amount, pour, "right")
        shown = f"{row.tone.shape} {text}{pad(row.mark, mark, 'right')}"
        drawn.append(((" " * left, ""), (shown, style)))
    return drawn


class PourTable(Drawn):
    """Draws the pours."""

    DEFAULT_CSS = "PourTable { height: auto; }"

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: Pours, width: int) -> int:
        return min(len(shown.rows), MOST_ROWS) + 1
