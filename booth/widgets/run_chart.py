"""Figures job after job as dots, with their mean and the limits that they usually stay within."""

from __future__ import annotations

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import QUIET, STRONG, Piece, Row, merge, sized, toned
from booth.widgets.text import pad
from booth.words.shown import RunChart, Tone

UPPER, LOWER, BOTH = "▀", "▄", "█"
OUTSIDE, PICKED = Tone.LATE, "▲"
#: Lines: of the mean, of a limit.
MEAN, LIMIT = "─", "┄"
#: Cells from one job to the next at most.
MOST_STEP = 6
#: What lies beyond the outermost of figures and limits, as a share of what lies between.
MARGIN = 0.08


class _Scale:
    """Where a figure stands, in half rows from the top."""

    def __init__(self, shown: RunChart, rows: int) -> None:
        marks = [each for each in (shown.mean, shown.lower, shown.upper) if each is not None]
        least, most = min(*shown.figures, *marks), max(*shown.figures, *marks)
        margin = (most - least) * MARGIN or max(abs(most), 1.0) * MARGIN
        self._top = most + margin
        self._span = most - least + 2 * margin
        self._halves = 2 * rows

    def half(self, figure: float) -> int:
        at = int((self._top - figure) / self._span * self._halves)
        return min(max(at, 0), self._halves - 1)

    def row(self, figure: float) -> int:
        return self.half(figure) // 2


@sized
def draw_run_chart(shown: RunChart, width: int, height: int) -> list[Row]:
    """Give the chart for a size: the last jobs, as many as have room."""
    if not shown.figures:
        return []
    rows = max(height - 2, 1)
    scale = _Scale(shown, rows)
    # Where they share a row, that of the mean is seen.
    marks = (
        (shown.lower, LIMIT, shown.lower_words),
        (shown.upper, LIMIT, shown.upper_words),
        (shown.mean, MEAN, shown.mean_words),
    )
    lines = {scale.row(at): (line, words) for at, line, words in marks if at is not None}
    words = max((len(words) for _, words in lines.values()), default=0) + 1
    room = max(width - words - 2, 1)
    count = min(len(shown.figures), room)
    first = len(shown.figures) - count
    if shown.picked < first:
        first = shown.picked
    step = min(room / count, MOST_STEP)
    columns = {int((at - first + 0.5) * step): at for at in range(first, first + count)}
    drawn = [_row(shown, scale, row, lines, columns, room, words) for row in range(rows)]
    picked = next((column for column, at in columns.items() if at == shown.picked), 0)
    drawn.append(((" " * (words + 2 + picked), ""), (PICKED, STRONG)))
    drawn.append(_ends(shown.ends, words, max(columns, default=0) + 1, room))
    return drawn


def _row(
    shown: RunChart,
    scale: _Scale,
    row: int,
    lines: dict[int, tuple[str, str]],
    columns: dict[int, int],
    room: int,
    words: int,
) -> Row:
    line, said = lines.get(row, (" ", ""))
    cells: list[Piece] = [(pad(said, words, "right") + " │", QUIET)]
    for column in range(room):
        at = columns.get(column)
        half = scale.half(shown.figures[at]) if at is not None else -1
        if at is None or half // 2 != row:
            cells.append((line, QUIET))
        elif at in shown.outside:
            cells.append((OUTSIDE.shape, toned(OUTSIDE)))
        else:
            cells.append((UPPER if half % 2 == 0 else LOWER, STRONG))
    return merge(cells)


def _ends(ends: tuple[str, str], words: int, long: int, room: int) -> Row:
    """The first and the last day under the first and the last job."""
    first, last = ends
    if first == last:
        return ((" " * (words + 2) + first, QUIET),)
    between = max(min(long, room) - len(first) - len(last), 1)
    return ((f"{' ' * (words + 2)}{first}{' ' * between}{last}", QUIET),)


class RunChartView(Drawn):
    """Draws a RunChart."""

    draw = staticmethod(draw_run_chart)
