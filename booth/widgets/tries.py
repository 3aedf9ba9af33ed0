"""What was tried: a row each with its own edge on one scale, or a chart where there is room for it."""

from __future__ import annotations

import textwrap

from rich.cells import cell_len

from booth.widgets import chart, scale
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, QUIET, STRONG, Row, merge, sized, spread, toned
from booth.widgets.text import plain
from booth.widgets.wet_edge import behind_words, eighths, ink
from booth.words.shown import Readout
from booth.words.tried import Tries, Try

GAP = 2
#: What is known only to lie between two is drawn so, as between two teeth of a gauge.
BETWEEN = "░"
#: The ends of the wanted band, through the rows.
END = "┊"
#: A chart has so much at least.
CHART_FROM = 44, 9


@sized
def lay_out(tries: Tries, width: int, height: int) -> list[Row]:
    """Give them for a size: title, rows or chart, what they come to; the latest are never left out."""
    notes: list[Row] = [((plain(each), ""),) for each in tries.notes]
    room = height - 1
    if tries.chart is not None and width >= CHART_FROM[0] and room >= CHART_FROM[1]:
        notes = notes[: max(room - CHART_FROM[1], 0)]
        drawn = chart.lay_out(tries.chart, width, room - len(notes))
        return [((plain(tries.chart.title), HEAD),), *drawn, *notes]
    foot = scale.ROWS if tries.band is not None and room > scale.ROWS + 1 else 0
    notes = notes[: max(room - foot - min(len(tries.tries), 2), 0)]
    room -= foot + len(notes)
    rows: list[Row] = []
    for each in reversed(tries.tries):
        own = [_row(each, tries, width)] if each.figure or each.tone.word else _told(each, width)
        if len(own) + len(rows) > room and rows:
            break
        rows = [*own, *rows]
    rows = rows[:room]
    if foot:
        rows += scale.scale_rows(Readout("", band=tries.band), width)
    return [((plain(tries.title), HEAD),), *rows, *notes]


def _row(each: Try, tries: Tries, width: int) -> Row:
    """Its words with its edge behind them; at the right what came of it, which is never cut."""
    sign = each.tone.shape if each.tone.word else " "
    figure = plain(each.figure)
    right: Row = (
        (" " * GAP, ""),
        (f"{figure} {sign} " if figure else f"{sign} ", toned(each.tone)),
    )
    row = spread(
        ((" " + plain(each.text), STRONG if each is tries.tries[-1] else ""),), right, width
    )
    row = _between(row, each, width)
    band = tries.band
    if band is not None and each.edge is not None:
        for share in (band.low, band.high):
            if share is not None:
                row = _put(row, min(round(share * width), width - 1), END, QUIET)
    # What cannot be judged has no tone: its edge is quiet, not as bright as a word.
    return behind_words(row, each.edge, width, each.tone, "" if each.tone.word else QUIET)


def _told(each: Try, width: int) -> list[Row]:
    """One that is words and nothing else: all of them, hanging under the first."""
    text = plain(each.text)
    hang = " " * (text.find("  ") + 2) if "  " in text else ""
    return [((line, ""),) for line in textwrap.wrap(text, width, subsequent_indent=hang)]


def _between(row: Row, each: Try, width: int) -> Row:
    if each.upto is None or each.edge is None:
        return row
    first, last = -(-eighths(each.edge, width) // 8), eighths(each.upto, width) // 8
    for at in range(first, last):
        row = _put(row, at, BETWEEN, ink(each.tone) if each.tone.word else QUIET)
    return row


def _put(row: Row, at: int, char: str, style: str) -> Row:
    """The row with a character there, where nothing stands."""
    pieces: list[tuple[str, str]] = []
    left = at
    for text, own in row:
        wide = cell_len(text)
        if 0 <= left < wide and wide == len(text) and text[left] == " ":
            pieces += [(text[:left], own), (char, style), (text[left + 1 :], own)]
        else:
            pieces.append((text, own))
        left -= wide
    return merge(pieces)


class TriesView(Drawn):
    """Draws Tries."""

    draw = staticmethod(lay_out)


def rows_of(tries: Tries) -> int:
    """How many rows all of them take."""
    return 1 + len(tries.tries) + (scale.ROWS if tries.band is not None else 0) + len(tries.notes)
