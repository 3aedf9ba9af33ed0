"""A list to pick from with the arrows or a click; the picked line stays in sight."""

from __future__ import annotations

from typing import ClassVar

from rich.cells import cell_len
from textual import events
from textual.message import Message
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, blank, exactly, exactly_rows
from booth.widgets.text import pad, plain
from booth.words.pictures import PickLine

__all__ = ["PickList", "first_in_sight", "lay_out"]

#: From this room on what stands behind a name can be read.
LEAST_BEHIND = 34
PICKED, QUIET = "pick-list--picked", "pick-list--quiet"


def rows_each(count: int, height: int) -> int:
    """Give how many rows a line takes: two where there is room, to be read from further off."""
    return 2 if height >= 2 * count else 1


def first_in_sight(count: int, picked: int, height: int) -> int:
    """Give the first line to draw so that the picked one stands in the middle where it can."""
    return min(max(0, picked - height // 2), max(0, count - height))


def lay_out(lines: tuple[PickLine, ...], picked: int, width: int, height: int) -> list[Row]:
    """Give the list for a size; what stands behind the names gives way where there is little room.

    An arrow at the edge says that the list goes on there.
    """
    if width <= 0 or height <= 0:
        return []
    each = rows_each(len(lines), height)
    first = first_in_sight(len(lines), picked, height)
    last = first + height
    drawn: list[Row] = []
    column = min(max((cell_len(plain(line.name)) for line in lines), default=0), width - 6)
    roomy = width - column >= LEAST_BEHIND
    for number, line in enumerate(lines[first:last], first):
        style = PICKED if number == picked else ""
        more = " "
        if number == first and first > 0:
            more = "↑"
        elif number == last - 1 and last < len(lines):
            more = "↓"
        row: Row = (
            ("→ " if number == picked else "  ", style),
            (pad(line.name, column), style),
            ("  ", style),
            (plain(line.behind) if line.must or roomy else "", style or QUIET),
        )
        drawn.append((*exactly(row, width - 2, style), (f" {more}", QUIET)))
        drawn += blank(width, each - 1)
    return exactly_rows(drawn, width, height)


class PickList(Drawn):
    """Draws the lines; a click picks one, a second click on it takes it."""

    class Picked(Message):
        """A line was clicked; again: it was the picked one already."""

        def __init__(self, index: int, again: bool) -> None:
            super().__init__()
            self.index = index
            self.again = again

    COMPONENT_CLASSES: ClassVar[set[str]] = {PICKED, QUIET}
    DEFAULT_CSS = """
PickList { height: 1fr; width: 1fr; background: $background; color: $foreground; }
PickList > .pick-list--picked { text-style: bold reverse; }
PickList > .pick-list--quiet { color: $quiet; }
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
        count, height = len(self.lines), self.size.height
        at = first_in_sight(count, self.picked, height) + offset.y // rows_each(count, height)
        if 0 <= at < len(self.lines):
            event.stop()
            self.post_message(self.Picked(at, at == self.picked))
