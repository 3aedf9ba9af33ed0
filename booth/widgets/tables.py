"""The parts of a job and the pours of a batch, one row each, the one that matters in sight."""

from __future__ import annotations

from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import QUIET, STRONG, Row, exactly, first_in_sight, sized, toned
from booth.widgets.text import pad, plain
from booth.words.shown import Parts, Pours, Tone

MOST_PARTS = 8
LEAST_PART = 4
#: What stands beside the name but the word of the state, the time and its gap: mark, coats, shape.
BESIDE_NAME = 3 + 4 + 2
#: The usual words of a state; a longer one, 'NOT KNOWN', widens its column.
USUAL_WORD = 8
#: Minutes need five cells, '59:59'; hours and days nine. Two widths, so that nothing wanders.
MINUTES, HOURS, GAP = 5, 9, 2
#: What is waited for is cut before the name is: two doors have to be told apart, and the strip
#: says it too.
ROOM_FOR_WHAT, LEAST_WHAT, TELLING_NAME = 18, 8, 16


def _first(parts: Parts, height: int) -> int:
    return first_in_sight(len(parts.rows), parts.chosen, height, height - 1)


@sized
def lay_out_parts(parts: Parts, width: int, height: int) -> list[Row]:
    """Give the table for a size, the chosen row kept in sight."""
    rows, first = parts.rows, _first(parts, height)
    drawn: list[Row] = []
    longest = max((cell_len(plain(row.name)) for row in rows), default=LEAST_PART)
    longest_time = max((cell_len(row.time) + row.estimate for row in rows), default=0)
    time_width = MINUTES if longest_time <= MINUTES else HOURS
    word_width = max(USUAL_WORD, *(cell_len(plain(row.word)) for row in rows), 0) + 1
    room = width - BESIDE_NAME - word_width - time_width - GAP
    telling = min(TELLING_NAME, room - LEAST_WHAT)
    name_width = max(LEAST_PART, min(longest, max(room - ROOM_FOR_WHAT, telling)))
    for number, row in enumerate(rows[first : first + height], first):
        mark, style = ("→ ", STRONG) if number == parts.chosen else ("  ", "")
        tone = toned(row.tone)
        time = f"{'~' if row.estimate else ''}{row.time}"
        cells: Row = (
            (mark + pad(row.name, name_width) + " ", style),
            (pad(row.coats, 4), style),
            (f"{row.tone.shape} {pad(row.word, word_width)}", tone),
            (pad(time, time_width, "right") + " " * GAP, tone),
            (row.what, style),
        )
        drawn.append(exactly(cells, width, style))
    return drawn


class PartTable(Drawn):
    """Draws the parts; a click chooses one."""

    DEFAULT_CSS = "PartTable { height: auto; }"

    draw = staticmethod(lay_out_parts)

    def rows_wanted(self, shown: Parts, width: int) -> int:
        return min(max(len(shown.rows), 1), MOST_PARTS)

    def index_at(self, shown: Parts, offset: Offset, size: Size) -> int | None:
        at = _first(shown, size.height) + offset.y
        return at if at < len(shown.rows) else None


MOST_POURS = 6
LEAST_NAME, MOST_NAME = 8, 28
LEAST_FIGURE = 9


@sized
def lay_out_pours(pours: Pours, width: int, height: int) -> list[Row]:
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

    draw = staticmethod(lay_out_pours)

    def rows_wanted(self, shown: Pours, width: int) -> int:
        return min(len(shown.rows), MOST_POURS) + 1
