"""A list to pick from with the arrows or a click; the picked line stays in sight."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from rich.cells import cell_len
from textual import events
from textual.message import Message
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, blank, exactly, exactly_rows
from booth.widgets.text import fit, pad, plain
from booth.words.lines import PickLine

#: From this room on what stands behind a name can be read.
LEAST_BEHIND = 34
#: A name keeps so many cells, whatever must be seen behind it.
LEAST_NAME = 12
PICKED, QUIET, HEAD = "pick-list--picked", "pick-list--quiet", "pick-list--head"


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


def first_in_sight(count: int, picked: int, height: int) -> int:
    """Give the first line to draw so that the picked one stands in the middle where it can."""
    return min(max(0, picked - height // 2), max(0, count - height))


def lay_out(lines: tuple[PickLine, ...], picked: int, width: int, height: int) -> list[Row]:
    """Give the list for a size; what stands behind the names gives way where there is little room.

    An arrow at the edge says that the list goes on there.
    """
    if width <= 0 or height <= 0:
        return []
    each = rows_each(lines, height)
    first = first_in_sight(len(lines), picked, height)
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
        row = _row(line, number == picked, column, roomy, width - 2)
        drawn.append((*row, (f" {more}", QUIET)))
        drawn += blank(width, each - 1)
    return exactly_rows(drawn, width, height)


def _row(line: PickLine, picked: bool, column: int, roomy: bool, width: int) -> Row:
    if line.head:
        return exactly(((line.name, HEAD),), width)
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
    """Draws the lines; a click picks one, a second click on it takes it."""

    class Picked(Message):
        """A line was clicked; again: it was the picked one already."""

        def __init__(self, index: int, again: bool) -> None:
            super().__init__()
            self.index = index
            self.again = again

    COMPONENT_CLASSES: ClassVar[set[str]] = {PICKED, QUIET, HEAD}
    DEFAULT_CSS = """
PickList { height: 1fr; width: 1fr; background: $background; color: $foreground; }
PickList > .pick-list--picked { text-style: bold reverse; }
PickList > .pick-list--quiet { color: $quiet; }
PickList > .pick-list--head { color: $quiet; text-style: bold; }
"""

    lines: reactive[tuple[PickLine, ...]] = reactive((), repaint=False)
    picked: reactive[int] = reactive(0, repaint=False)

    def watch_lines(self) -> None:
        self.redraw()

    def watch_picked(self) -> None:
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.lines, self.picked, width, height)

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        if offset is None:
            return
        height = self.size.height
        first = first_in_sight(len(self.lines), self.picked, height)
        at = first + offset.y // rows_each(self.lines, height)
        if 0 <= at < len(self.lines) and not self.lines[at].head:
            event.stop()
            self.post_message(self.Picked(at, at == self.picked))
