"""The parts, one row each: name, coats, state as shape and word, time, what is waited for."""

from __future__ import annotations

from typing import ClassVar

from rich.cells import cell_len
from textual import events
from textual.message import Message
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, exactly, exactly_rows
from booth.widgets.text import pad, plain
from booth.words.pictures import PartRow
from booth.words.tone import TONE_CLASSES, tone_css

CHOSEN = "part-table--chosen"
LEAST_NAME = 4
#: What stands beside the name but the time and its gap: mark, coats, state.
BESIDE_NAME = 3 + 4 + 11
#: Minutes need five cells, '59:59'; hours and days nine. Two widths, so that nothing wanders.
MINUTES, HOURS, GAP = 5, 9, 2
#: What is waited for is cut before the name is: two doors have to be told apart, and the strip
#: says it too.
ROOM_FOR_WHAT, LEAST_WHAT, TELLING_NAME = 18, 8, 16


def lay_out(rows: tuple[PartRow, ...], chosen: int, width: int, height: int) -> list[Row]:
    """Give the table for a size, the chosen row kept in sight."""
    if width <= 0 or height <= 0:
        return []
    first = min(max(0, chosen - height + 1), max(0, len(rows) - height))
    drawn: list[Row] = []
    longest = max((cell_len(plain(row.name)) for row in rows), default=LEAST_NAME)
    longest_time = max((cell_len(row.time) + row.estimate for row in rows), default=0)
    time_width = MINUTES if longest_time <= MINUTES else HOURS
    room = width - BESIDE_NAME - time_width - GAP
    telling = min(TELLING_NAME, room - LEAST_WHAT)
    name_width = max(LEAST_NAME, min(longest, max(room - ROOM_FOR_WHAT, telling)))
    for number, row in enumerate(rows[first : first + height], first):
        mark = "→ " if number == chosen else "  "
        style = CHOSEN if number == chosen else ""
        time = f"{'~' if row.estimate else ''}{row.time}"
        cells: Row = (
            (mark + pad(row.name, name_width) + " ", style),
            (pad(row.coats, 4), style),
            (f"{row.tone.shape} {pad(row.word, 9)}", row.tone.css),
            (pad(time, time_width, "right") + " " * GAP, row.tone.css),
            (row.what, style),
        )
        drawn.append(exactly(cells, width, style))
    return exactly_rows(drawn, width, height)


class PartTable(Drawn):
    """Draws the parts; a click chooses one."""

    class Chosen(Message):
        """A part was clicked."""

        def __init__(self, index: int) -> None:
            super().__init__()
            self.index = index

    COMPONENT_CLASSES: ClassVar[set[str]] = {CHOSEN, *TONE_CLASSES}
    DEFAULT_CSS = """
PartTable { height: auto; min-height: 1; max-height: 8; width: 1fr; background: $background; }
PartTable > .part-table--chosen { text-style: bold; color: $foreground; }
""" + tone_css("PartTable")

    rows: reactive[tuple[PartRow, ...]] = reactive((), repaint=False)
    chosen: reactive[int] = reactive(0, repaint=False)

    def watch_rows(self, before: tuple[PartRow, ...], now: tuple[PartRow, ...]) -> None:
        if len(before) != len(now):
            self.styles.height = min(max(len(now), 1), 8)
        self.redraw()

    def watch_chosen(self) -> None:
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.rows, self.chosen, width, height)

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        if offset is None:
            return
        height = self.size.height
        first = min(max(0, self.chosen - height + 1), max(0, len(self.rows) - height))
        at = first + offset.y
        if 0 <= at < len(self.rows):
            event.stop()
            self.post_message(self.Chosen(at))
