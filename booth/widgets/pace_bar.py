"""A bar that sweeps the window at the pace of the gun, there and back, with a tick at each end."""

from __future__ import annotations

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import (
    ACROSS,
    QUIET,
    STRONG,
    Piece,
    Row,
    filled,
    inked,
    merge,
    sized,
    spread,
    toned,
)
from booth.words.shown import Bar, Tone

BAR, BAR_EDGE = inked(Tone.RUNNING), filled(Tone.RUNNING)


def _track(place: float, width: int) -> list[Piece]:
    """The cells between the ticks. A cell that the bar leaves from the left is drawn in reverse."""
    length = min(width, max(2, width // 12))
    start = round(place * (width - length) * 8)
    end = start + length * 8
    cells: list[Piece] = []
    for column in range(width):
        first, last = start - column * 8, end - column * 8
        if first >= 8 or last <= 0:
            cells.append(("·" if column % 4 == 3 else " ", QUIET))
        elif first > 0:
            cells.append((ACROSS[first], BAR_EDGE))
        elif last < 8:
            cells.append((ACROSS[last], BAR))
        else:
            cells.append((ACROSS[8], BAR))
    return cells


@sized
def draw_sweep(bar: Bar, width: int, height: int) -> list[Row]:
    """Give the bar for a size: as high as the space, less a row of words where there are three."""
    if width < 5:
        return []
    rightward = bar.number % 2 == 1
    lit, dark = ("█", toned(Tone.READY)), ("┃", STRONG)
    left = lit if bar.turned and rightward else dark
    right = lit if bar.turned and not rightward else dark
    row = merge([left, *_track(bar.place, width - 2), right])
    if height < 3:
        return [row] * height
    count = f"{'→' if rightward else '←'} pass {bar.number}"
    words = spread(((count, STRONG),), ((f"{bar.pass_s:.1f} s a pass", STRONG),), width)
    return [words, *[row] * (height - 1)]


class PaceBar(Drawn):
    """Draws a Bar where it is; it has no clock of its own."""

    DEFAULT_CSS = "PaceBar { height: 5; }"

    draw = staticmethod(draw_sweep)
