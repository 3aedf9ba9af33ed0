"""The parts of a job and the pours of a batch, one row each, the one that matters in sight."""

from __future__ import annotations

from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import QUIET, STRONG, Row, first_in_sight, sized, spread, toned
from booth.widgets.text import pad, plain
from booth.widgets.wet_edge import behind_words
from booth.words.shown import PartRow, Parts, Pours, Tone

#: The list takes so much of the window at most; what matters least is counted then.
MOST_SHARE = 0.4
LEAST_PART = 4
#: Minutes need five cells, '59:59'; hours and days nine. Two widths, so that nothing wanders.
MINUTES, HOURS, GAP = 5, 9, 2


def _in_sight(parts: Parts, height: int) -> list[int]:
    """Which rows are drawn, in their order: where not all fit, the chosen one and the most urgent."""
    rows = parts.rows
    if len(rows) <= height:
        return list(range(len(rows)))

    def first(number: int) -> tuple[bool, int]:
        return number != parts.chosen, rows[number].tone.urgency

    return sorted(sorted(range(len(rows)), key=first)[: max(height - 1, 1)])


@sized
def lay_out_parts(parts: Parts, width: int, height: int) -> list[Row]:
    """Give the list for a size: a row each, with its own small edge behind it."""
    rows, seen = parts.rows, _in_sight(parts, height)
    longest = max((cell_len(plain(row.name)) for row in rows), default=LEAST_PART)
    coats = max((cell_len(row.coats) for row in rows), default=0)
    ends = {number: _end(rows[number]) for number in seen}
    end = max((cell_len(each) for each in ends.values()), default=0)
    room = width - 2 - coats - 2 * GAP - end - GAP
    # What it is about is said in short before a name is cut.
    least = max((cell_len(plain(row.short or row.what)) for row in rows), default=0)
    name_width = max(LEAST_PART, min(longest, max(room - least, room // 2)))
    drawn: list[Row] = []
    for number in seen:
        row = rows[number]
        mark, style = ("→ ", STRONG) if number == parts.chosen else ("  ", "")
        what = plain(row.what)
        if row.short and cell_len(what) > room - name_width:
            what = plain(row.short)
        left: Row = (
            (mark + pad(row.name, name_width) + " " * GAP, STRONG),
            (pad(row.coats, coats) + " " * GAP, style),
            (what, style),
        )
        right: Row = ((" " * GAP, ""), (ends[number] + " ", toned(row.tone)))
        drawn.append(behind_words(spread(left, right, width), row.edge, width, row.tone))
    if len(seen) < len(rows):
        drawn.append(((f"  +{len(rows) - len(seen)} more", QUIET),))
    return drawn


def _end(row: PartRow) -> str:
    """The state and the time: they are never cut."""
    time = f"{'~' if row.estimate and row.time else ''}{row.time}"
    said = f"{row.tone.shape} {plain(row.word)}" if row.word else ""
    width = 1 + (MINUTES if cell_len(time) <= MINUTES + 1 else HOURS)
    return f"{said}  {pad(time, width, 'right')}" if time else said


class PartTable(Drawn):
    """Draws the parts; a click chooses one."""

    DEFAULT_CSS = "PartTable { height: auto; }"

    draw = staticmethod(lay_out_parts)

    def rows_wanted(self, shown: Parts, width: int) -> int:
        most = max(LEAST_PART, int(self.app.size.height * MOST_SHARE))
        return min(max(len(shown.rows), 1), most)

    def index_at(self, shown: Parts, offset: Offset, size: Size) -> int | None:
        seen = _in_sight(shown, size.height)
        return seen[offset.y] if offset.y < len(seen) else None


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
