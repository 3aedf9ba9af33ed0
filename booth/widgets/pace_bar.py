"""A bar that sweeps the window at the pace of the gun, there and back, with a tick at each end."""

from __future__ import annotations

from typing import ClassVar

import msgspec
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import ACROSS, Piece, Row, exactly_rows, merge, spread

BAR, BAR_EDGE = "pace-bar--bar", "pace-bar--bar-edge"
TRACK, TICK, HIT, WORDS = "pace-bar--track", "pace-bar--tick", "pace-bar--hit", "pace-bar--words"
# How long the tick at an end stays lit after the bar has turned there, as a share of a pass.
LIT = 0.12


class Sweep(msgspec.Struct, frozen=True):
    """Where the gun should be: place from 0 (left) to 1 (right), going right or left, in which pass
    (from 1), and how much of the pass is left in seconds."""

    place: float
    rightward: bool
    number: int
    left_s: float
    turned: bool


def sweep(elapsed_s: float, pass_s: float) -> Sweep:
    """Give where the bar is after `elapsed_s` when a pass takes `pass_s`; odd passes go right."""
    if not pass_s > 0:
        return Sweep(0.0, True, 1, 0.0, False)
    elapsed_s = max(0.0, elapsed_s)
    done, part = divmod(elapsed_s, pass_s)
    share = part / pass_s
    rightward = int(done) % 2 == 0
    place = share if rightward else 1 - share
    return Sweep(place, rightward, int(done) + 1, pass_s - part, done >= 1 and share < LIT)


def _track(position: Sweep, width: int) -> list[Piece]:
    """The cells between the ticks. A cell that the bar leaves from the left is drawn in reverse."""
    length = min(width, max(2, width // 12))
    start = round(position.place * (width - length) * 8)
    end = start + length * 8
    cells: list[Piece] = []
    for column in range(width):
        first, last = start - column * 8, end - column * 8
        if first >= 8 or last <= 0:
            cells.append(("·" if column % 4 == 3 else " ", TRACK))
        elif first > 0:
            cells.append((ACROSS[first], BAR_EDGE))
        elif last < 8:
            cells.append((ACROSS[last], BAR))
        else:
            cells.append((ACROSS[8], BAR))
    return cells


def draw_sweep(elapsed_s: float, pass_s: float, width: int, height: int) -> list[Row]:
    """Give the bar for a size: exactly `height` rows of exactly `width` cells.

    The bar is as high as the space, less a row of words where there are three rows or more.
    """
    if width < 5 or height <= 0:
        return exactly_rows([], max(width, 0), max(height, 0))
    now = sweep(elapsed_s, pass_s)
    left_hit, right_hit = now.turned and now.rightward, now.turned and not now.rightward
    left: Piece = ("█", HIT) if left_hit else ("┃", TICK)
    right: Piece = ("█", HIT) if right_hit else ("┃", TICK)
    row = merge([left, *_track(now, width - 2), right])
    rows: list[Row] = []
    if height >= 3:
        arrow = "→" if now.rightward else "←"
        count: Row = ((f"{arrow} pass {now.number}", WORDS),)
        rows.append(spread(count, ((f"{pass_s:.1f} s a pass", WORDS),), width))
    return exactly_rows(rows + [row] * (height - len(rows)), width, height)


class PaceBar(Drawn):
    """Draws the sweep for the elapsed time it is handed; it has no clock of its own."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {BAR, BAR_EDGE, TRACK, TICK, HIT, WORDS}
    DEFAULT_CSS = """
PaceBar { height: 5; width: 1fr; background: $background; color: $foreground; }
PaceBar > .pace-bar--bar { color: $tone-running; }
PaceBar > .pace-bar--bar-edge { color: $background; background: $tone-running; }
PaceBar > .pace-bar--track { color: $quiet; }
PaceBar > .pace-bar--tick { color: $foreground; text-style: bold; }
PaceBar > .pace-bar--hit { color: $tone-ready; text-style: bold; }
PaceBar > .pace-bar--words { color: $foreground; text-style: bold; }
"""

    elapsed_s: reactive[float] = reactive(0.0, repaint=False)
    pass_s: reactive[float] = reactive(2.0, repaint=False)

    def watch_elapsed_s(self) -> None:
        self.redraw()

    def watch_pass_s(self) -> None:
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return draw_sweep(self.elapsed_s, self.pass_s, width, height)
