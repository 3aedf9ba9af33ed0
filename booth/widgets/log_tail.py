"""The last entries of the log, the newest at the bottom, in what room is left under the steps."""

from __future__ import annotations

import textwrap

import msgspec

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, QUIET, Row, sized
from booth.widgets.text import plain


class LogLine(msgspec.Struct, frozen=True):
    """day, time: when; words: what it says; voided: it counts no more, and its words say so."""

    day: str
    time: str
    words: str
    voided: bool = False


#: An entry is told in so many rows at most.
MOST_ROWS = 3


@sized
def lay_out(entries: tuple[LogLine, ...], width: int, height: int) -> list[Row]:
    """Give them for a size: whole entries only, under a head with their day."""
    rows: list[Row] = []
    day = ""
    for entry in reversed(entries):
        turns: list[Row] = [((day, QUIET),)] if day and day != entry.day else []
        own = [*_entry(entry, width), *turns]
        if len(rows) + len(own) > height - 1:
            break
        rows, day = [*own, *rows], entry.day
    return [*[()] * (height - 1 - len(rows)), ((f"log {day}", HEAD),), *rows] if rows else []


def _entry(entry: LogLine, width: int) -> list[Row]:
    hang = " " * (len(entry.time) + 1)
    lines = textwrap.wrap(
        plain(entry.words), max(width - len(hang), 8), max_lines=MOST_ROWS, placeholder=" …"
    )
    style = QUIET if entry.voided else ""
    return [
        ((f"{entry.time} " if not number else hang, QUIET), (line, style))
        for number, line in enumerate(lines)
    ]


class LogTail(Drawn):
    """Draws the last entries."""

    DEFAULT_CSS = "LogTail { height: 1fr; background: $surface; }"

    draw = staticmethod(lay_out)
