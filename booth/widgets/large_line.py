"""What is to be done now, in letters as large as fit: a sentence over several lines."""

from __future__ import annotations

import textwrap
from functools import lru_cache

from booth.widgets.lettering.bigfigure import LEAST_ROWS, side_by_side
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import STRONG, Row, exactly, sized
from booth.widgets.text import plain

SIDE = 2
#: Letters higher than this are larger than a sentence needs [rows].
MOST_ROWS = 12
MOST_LINES = 6


@lru_cache(maxsize=32)
def blocks(text: str, width: int, height: int) -> tuple[tuple[str, ...], ...]:
    """The lines of a sentence in blocks, in the largest letters in which all of it fits; none where
    not even the smallest do."""
    words = plain(text)
    for rows in range(min(MOST_ROWS, height), LEAST_ROWS - 1, -1):
        for count in range(1, min((height + 1) // (rows + 1), MOST_LINES) + 1):
            lines = _broken(words, count)
            drawn = [side_by_side((line,), width, rows, 0) for line in lines]
            if drawn and all(drawn):
                return tuple(each[0] for each in drawn)
    return ()


def _broken(words: str, count: int) -> list[str]:
    """In so many lines at most, as even as whole words let."""
    for room in range(max(len(words) // count, 1), len(words) + 1):
        lines = textwrap.wrap(words, room, break_long_words=False)
        if len(lines) <= count:
            return lines
    return [words]


@sized
def lay_out(text: str, width: int, height: int) -> list[Row]:
    """Give it for a size, in the middle of the height."""
    room = width - 2 * SIDE
    found = blocks(text, room, height)
    if not found:
        return [((" " * SIDE, ""), (plain(text), STRONG))]
    rows: list[Row] = []
    for lines in found:
        rows += [((" " * SIDE, ""), (line, STRONG)) for line in lines]
        rows.append(())
    top = max((height - len(rows) + 1) // 2, 0)
    return [*[exactly((), width)] * top, *rows[:-1]]


class LargeLine(Drawn):
    """Draws one sentence."""

    draw = staticmethod(lay_out)
