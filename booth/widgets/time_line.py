"""The whole job on one line a part: what was sprayed, what is to come, now in between."""

from __future__ import annotations

from rich.cells import cell_len

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import QUIET, STRONG, Piece, Row, filled, merge, sized, toned
from booth.widgets.text import pad
from booth.words.shown import LineRow, Timeline, Tone

#: The longest that is not cut holds '24 doors, both sides'.
LEAST_NAME, MOST_NAME = 4, 20
LEAST_TRACK = 24
#: From this width on each row says in words how it ends.
NOTES_FROM = 90
HEAD_ROWS = 2
# Outlines differ, so that nothing rests on colour: solid with its number, dense, thin, heavy.
_FILL = {Tone.WAIT: "░", Tone.READY: "─", Tone.LATE: "▓", Tone.GOOD: "═", Tone.PLAIN: "·"}


def _column(second: float, line: Timeline, width: int) -> int:
    span = max(line.end_s - line.start_s, 1e-9)
    return int((second - line.start_s) / span * width)


def _head(line: Timeline, width: int) -> list[Row]:
    """The times, and the rule beneath them with now on it."""
    words = [" "] * width
    rule = ["─"] * width
    now = min(max(_column(0.0, line, width), 0), width - 1)
    for second, text in line.ticks:
        at = _column(second, line, width)
        if not 0 <= at < width:
            continue
        rule[at] = "┴"
        begin = min(max(at - len(text) // 2, 0), max(width - len(text), 0))
        span = range(begin, begin + len(text))
        clear = range(max(begin - 1, 0), min(begin + len(text) + 1, width))
        if span.stop <= width and all(words[cell] == " " for cell in clear):
            words[begin : span.stop] = list(text)
    cells: list[Piece] = [(mark, QUIET) for mark in rule]
    cells[now] = ("▼", STRONG)
    return [(("".join(words), QUIET),), merge(cells)]


def _track(row: LineRow, line: Timeline, width: int, first: bool) -> Row:
    """One row of a part; `first`: the row that carries the numbers of the coats."""
    cells: list[Piece] = [(" ", QUIET)] * width
    now = _column(0.0, line, width)
    if 0 <= now < width:
        cells[now] = ("┊", STRONG)
    for block in sorted(row.blocks, key=lambda each: each.tone is Tone.RUNNING):
        start = max(_column(block.start_s, line, width), 0)
        end = _column(block.end_s, line, width)
        if start >= width or end < 0:
            continue
        solid = block.tone is Tone.RUNNING
        end = min(max(end, start + 1) if solid else end, width)
        style = toned(block.tone)
        if solid:
            style = "bold " + filled(Tone.GOOD if block.done else Tone.RUNNING)
        text = pad(block.text, end - start, "centre") if solid and first else ""
        for place, cell in enumerate(range(start, end)):
            mark = text[place] if text else " " if solid else _FILL.get(block.tone, "·")
            cells[cell] = (mark, style)
    return merge(cells)


@sized
def lay_out(line: Timeline, width: int, height: int) -> list[Row]:
    """Give the time line for a size; rows grow where there is height, notes where there is width."""
    if not line.rows:
        return []
    longest = max(cell_len(row.name) for row in line.rows)
    name = max(LEAST_NAME, min(longest, MOST_NAME, width - LEAST_TRACK - 1))
    note = max(cell_len(row.note) for row in line.rows) if width >= NOTES_FROM else 0
    track = max(width - name - 1 - (note + 2 if note else 0), 1)
    count = len(line.rows)
    each = max(1, (height - HEAD_ROWS) // count)
    thick = max(1, min(each - 1, 3)) if each > 1 else 1
    gap = 1 if each > 1 else 0
    drawn: list[Row] = []
    if height > count:
        head = _head(line, track)
        for words in head if height >= count + HEAD_ROWS else head[1:]:
            drawn.append(((" " * (name + 1), ""), *words))
    for row in line.rows:
        middle = thick // 2
        for part in range(thick):
            left = pad(row.name, name) if part == middle else " " * name
            cells = _track(row, line, track, part == middle)
            right: Row = (("  " + row.note, ""),) if note and part == middle else ()
            drawn.append(((left + " ", ""), *cells, *right))
        drawn += [()] * gap
    return drawn


class TimelineView(Drawn):
    """Draws a Timeline."""

    DEFAULT_CSS = "TimelineView { height: auto; }"

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: Timeline, width: int) -> int:
        """A row each and the head; twice as high or more where the window gives it."""
        rows, window = len(shown.rows), self.app.size.height
        each = 1 if window < 36 else 2 if window < 46 else 3
        # The window has other things to show: never more than half of it.
        return min(rows * each + HEAD_ROWS, max(rows + 1, window // 2))
