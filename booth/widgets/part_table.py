"""The parts, one row each: name, coats, state as shape and word, time, what is waited for."""

from __future__ import annotations

from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, exactly, first_in_sight, sized
from booth.widgets.styles import STRONG, toned
from booth.widgets.text import pad, plain
from booth.words.pictures import Parts

MOST_ROWS = 8
LEAST_NAME = 4
#: What stands beside the name but the time and its gap: mark, coats, state.
BESIDE_NAME = 3 + 4 + 11
#: Minutes need five cells, '59:59'; hours and days nine. Two widths, so that nothing wanders.
MINUTES, HOURS, GAP = 5, 9, 2
#: What is waited for is cut before the name is: two doors have to be told apart, and the strip
#: says it too.
ROOM_FOR_WHAT, LEAST_WHAT, TELLING_NAME = 18, 8, 16


def _first(parts: Parts, height: int) -> int:
    return first_in_sight(len(parts.rows), parts.chosen, height, height - 1)


@sized
def lay_out(parts: Parts, width: int, height: int) -> list[Row]:
    """Give the table for a size, the chosen row kept in sight."""
    rows, first = parts.rows, _first(parts, height)
    drawn: list[Row] = []
    longest = max((cell_len(plain(row.name)) for row in rows), default=LEAST_NAME)
    longest_time = max((cell_len(row.time) + row.estimate for row in rows), default=0)
    time_width = MINUTES if longest_time <= MINUTES else HOURS
    room = width - BESIDE_NAME - time_width - GAP
    telling = min(TELLING_NAME, room - LEAST_WHAT)
    name_width = max(LEAST_NAME, min(longest, max(room - ROOM_FOR_WHAT, telling)))
    for number, row in enumerate(rows[first : first + height], first):
        mark, style = ("→ ", STRONG) if number == parts.chosen else ("  ", "")
        tone = toned(row.tone)
        time = f"{'~' if row.estimate else ''}{row.time}"
        cells: Row = (
            (mark + pad(row.name, name_width) + " ", style),
            (pad(row.coats, 4), style),
            (f"{row.tone.shape} {pad(row.word, 9)}", tone),
            (pad(time, time_width, "right") + " " * GAP, tone),
            (row.what, style),
        )
        drawn.append(exactly(cells, width, style))
    return drawn


class PartTable(Drawn):
    """Draws the parts; a click chooses one."""

    DEFAULT_CSS = "PartTable { height: auto; }"

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: Parts, width: int) -> int:
        return min(max(len(shown.rows), 1), MOST_ROWS)

    def index_at(self, shown: Parts, offset: Offset, size: Size) -> int | None:
        at = _first(shown, size.height) + offset.y
        return at if at < len(shown.rows) else None
