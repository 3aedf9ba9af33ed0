"""A chart in cells: marks, curves and the wanted band, its scale upright at the left. Pure."""

from __future__ import annotations

from rich.cells import cell_len

from booth.widgets.film_plot import film_at
from booth.widgets.rows import QUIET, Piece, Row, merge, toned
from booth.widgets.text import plain
from booth.widgets.wet_edge import ink
from booth.words.shown import Tone
from booth.words.tried import Chart, Curve

#: A line in the lower, middle and upper third of a cell.
LINE = "▁─▔"
#: The scale: thin, and thick where it is wanted; what is wanted goes on across the chart.
SCALE, WANTED, ACROSS = "▕", "▐", "┄"
FOOT = 2
Grid = list[list[Piece]]


def lay_out(chart: Chart, width: int, height: int) -> list[Row]:
    """Give it for a size: `height` rows, the last two the foot with its figures."""
    left = max((cell_len(words) for _, words in chart.y_ticks), default=0)
    wide, tall = width - left - 2, height - FOOT
    if wide < 1 or tall < 1:
        return []
    grid: Grid = [[(" ", "")] * wide for _ in range(tall)]
    for share in (chart.low, chart.high):
        if share is not None and 0 <= share <= 1:
            grid[_row(share, tall)] = [(ACROSS, QUIET)] * wide
    for curve in chart.curves:
        _draw_curve(grid, curve)
    for spot in chart.spots:
        at = _column(spot.x, wide)
        grid[_row(spot.y, tall)][at] = (spot.mark, toned(spot.tone))
    for curve in chart.curves:
        if curve.name and curve.points:
            x, y = curve.points[-1]
            _say(grid, _row(y, tall), _column(x, wide) + 2, curve.name, QUIET)
    for spot in chart.spots:
        _say(grid, _row(spot.y, tall), _column(spot.x, wide) + 2, spot.said, "")
    words = _words_beside(chart, tall)
    rows: list[Row] = []
    for y, cells in enumerate(grid):
        mark, style = _scale_cell(chart, y, tall)
        said: Piece = (words.get(y, "").rjust(left) + " ", QUIET)
        rows.append(merge((said, (mark, style), *cells)))
    foot: Row = ((" " * (left + 1), ""), ("▝" + "▔" * wide, QUIET))
    return [*rows, foot, ((" " * (left + 2), ""), (_words_under(chart, wide), QUIET))]


def _row(share: float, tall: int) -> int:
    return tall - 1 - min(max(int(share * tall), 0), tall - 1)


def _column(share: float, wide: int) -> int:
    return min(max(round(share * (wide - 1)), 0), wide - 1)


def _draw_curve(grid: Grid, curve: Curve) -> None:
    tall, wide = len(grid), len(grid[0])
    if not curve.points:
        return
    for at in range(_column(curve.points[0][0], wide), _column(curve.points[-1][0], wide) + 1):
        height = film_at(curve.points, at / max(wide - 1, 1)) * tall
        if 0 <= height <= tall:
            third = min(int(height % 1 * len(LINE)), len(LINE) - 1)
            grid[_row(height / tall, tall)][at] = (LINE[third], ink(curve.tone))


def _say(grid: Grid, y: int, at: int, said: str, style: str) -> None:
    """Words right of a place, else left of it, else over or under it: where nothing but the band's
    ends stands."""
    said = plain(said)
    count, wide = cell_len(said), len(grid[y])
    for row in (y, y - 1, y + 1):
        for first in (at, at - count - 3):
            first = first if row == y else min(max(first, 0), wide - count)
            cells = range(first, first + count)
            is_in = said and 0 <= row < len(grid) and first >= 0 and cells.stop <= wide
            if is_in and _is_free(grid, row, cells):
                for place, char in zip(cells, said, strict=False):
                    grid[row][place] = (char, style)
                return


def _is_free(grid: Grid, y: int, cells: range) -> bool:
    return all(grid[y][at][0] in (" ", ACROSS) for at in cells)


def _scale_cell(chart: Chart, y: int, tall: int) -> Piece:
    if chart.low is None and chart.high is None:
        return SCALE, QUIET
    low = 0.0 if chart.low is None else chart.low
    high = 1.0 if chart.high is None else chart.high
    wanted = _row(high, tall) <= y <= _row(low, tall) and low <= 1 and high >= 0
    return (WANTED, ink(Tone.GOOD)) if wanted else (SCALE, QUIET)


def _words_beside(chart: Chart, tall: int) -> dict[int, str]:
    """The figures of the upright scale by row; the first of two that meet stays."""
    found: dict[int, str] = {}
    for share, words in chart.y_ticks:
        at = _row(share, tall)
        if 0 <= share <= 1 and not {at - 1, at, at + 1} & found.keys():
            found[at] = plain(words)
    return found


def _words_under(chart: Chart, wide: int) -> str:
    words = [" "] * wide
    name = plain(chart.x_name)
    if name:
        words[max(wide - len(name), 0) :] = list(name[:wide])
    for share, said in chart.x_ticks:
        first = _column(share, wide) - len(said) // 2
        first = min(max(first, 0), max(wide - len(said), 0))
        clear = words[max(first - 1, 0) : first + len(said) + 1]
        if 0 <= share <= 1 and all(each == " " for each in clear):
            words[first : first + len(said)] = list(said)
    return "".join(words[:wide])
