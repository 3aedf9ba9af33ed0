"""A list to pick from with the arrows or a click; the picked line stays in sight."""

from __future__ import annotations

from collections.abc import Sequence

from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, QUIET, Row, blank, exactly, first_in_sight, sized
from booth.widgets.text import fit, pad, plain
from booth.words.lines import PickLine
from booth.words.pictures import Lines

#: From this room on what stands behind a name can be read.
LEAST_BEHIND = 34
#: A name keeps so many cells, whatever must be seen behind it.
LEAST_NAME = 12
PICKED = "bold reverse"


def step(lines: Sequence[PickLine], picked: int, by: int) -> int:
    """The line so many further on, headings left out; the same where there is none."""
    at, left = picked, abs(by)
    while left and 0 <= at + (1 if by > 0 else -1) < len(lines):
        at += 1 if by > 0 else -1
        if not lines[at].head:
            picked, left = at, left - 1
    return picked


def rows_each(lines: Sequence[PickLine], height: int) -> int:
    """Give how many rows a line takes: two where there is room, to be read from further off."""
    return 2 if height >= 2 * len(lines) and not any(line.head for line in lines) else 1


def _first(shown: Lines, height: int) -> int:
    return first_in_sight(len(shown.lines), shown.picked, height, height // 2)


@sized
def lay_out(shown: Lines, width: int, height: int) -> list[Row]:
    """Give the list for a size; what stands behind the names gives way where there is little room.

    An arrow at the edge says that the list goes on there.
    """
    lines, first = shown.lines, _first(shown, height)
    last = first + height
    seen = lines[first:last]
    longest = max((cell_len(plain(line.name)) for line in seen if not line.head), default=0)
    column = min(longest, max(width - 6, 1))
    roomy = width - column >= LEAST_BEHIND
    drawn: list[Row] = []
    for number, line in enumerate(seen, first):
        more = " "
        if number == first and first > 0:
            more = "↑"
        elif number == last - 1 and last < len(lines):
            more = "↓"
        row = _row(line, number == shown.picked, column, roomy, width - 2)
        drawn.append((*row, (f" {more}", QUIET)))
        drawn += blank(width, rows_each(lines, height) - 1)
    return drawn


def _row(line: PickLine, picked: bool, column: int, roomy: bool, width: int) -> Row:
    if line.head:
        return exactly(((plain(line.name), HEAD),), width)
    style = PICKED if picked else ""
    mark = (f"{'→' if picked else line.mark or ' '} ", style)
    behind = plain(line.behind) if line.must or roomy else ""
    room = width - 4 - cell_len(behind)
    if behind and line.must and room < column:
        behind = fit(behind, max(width - 4 - LEAST_NAME, 0))
        column = max(width - 4 - cell_len(behind), LEAST_NAME)
    name = (pad(line.name, column), style)
    return exactly((mark, name, ("  ", style), (behind, style or QUIET)), width, style)


class PickList(Drawn):
    """Draws Lines; a click picks one, a second click on it takes it."""

    draw = staticmethod(lay_out)

    def index_at(self, shown: Lines, offset: Offset, size: Size) -> int | None:
        at = _first(shown, size.height) + offset.y // rows_each(shown.lines, size.height)
        return at if at < len(shown.lines) and not shown.lines[at].head else None
