"""All running clocks in one strip, most urgent first; one widget, so a second costs one repaint."""

from __future__ import annotations

from rich.cells import cell_len

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import (
    QUIET,
    STRONG,
    Piece,
    Row,
    across,
    blank,
    exactly,
    merge,
    sized,
    spread,
    toned,
    width_of,
)
from booth.widgets.text import plain
from booth.words.shown import ClockFace

GAP = 2
# The narrowest column in which a part's name, a wait and a time can be read.
TALL_COLUMN, FLAT_COLUMN = 24, 38
MOST_COLUMNS = 6
LEAST_BAR = 5


def _time(face: ClockFace) -> str:
    return ("~" if face.estimate and face.remaining else "") + plain(face.remaining)


def _tall(face: ClockFace, width: int) -> list[Row]:
    """Two rows: whose clock and the time; then what, the state and how far it has come."""
    tone = toned(face.tone)
    name: Row = ((face.tone.shape, tone), (" ", ""), (plain(face.title), STRONG))
    upper = spread(name, ((" ", ""), (_time(face), tone)), width)
    what, word = plain(face.what), plain(face.shown_word)
    # The word of the state is never the one to give way.
    tail: Row = ((" ", ""), (word, tone)) if word else ()
    note = ""
    if face.estimate:
        note = " estimate" if 2 + cell_len(what) + width_of(tail) + 9 <= width else " est."
    room = width - 2 - cell_len(what + note) - width_of(tail) - 1
    bar: list[Piece] = []
    if face.fraction is not None and room >= LEAST_BAR:
        filled, rest = across(face.fraction, min(room, max(LEAST_BAR, width // 3)))
        bar = [(" ", ""), (filled, tone), (rest, QUIET)]
    lower = spread((("  ", ""), (what + note, QUIET)), (*tail, *bar), width)
    return [upper, lower]


def _flat(face: ClockFace, width: int) -> list[Row]:
    """One row: shape, whose, what; state and time at the right."""
    tone, word = toned(face.tone), plain(face.shown_word)
    what = plain(face.what) + (" est." if face.estimate else "")
    name = (plain(face.title), STRONG)
    left: Row = ((face.tone.shape, tone), (" ", ""), name, (" ", ""), (what, QUIET))
    right = " ".join(part for part in (word, _time(face)) if part)
    return [spread(left, ((" ", ""), (right, tone)), width)]


@sized
def lay_out(faces: tuple[ClockFace, ...], width: int, height: int) -> list[Row]:
    """Give the strip for a size, the most urgent first; among equals the order they came in.

    Two rows a clock while all of them fit, in columns as wide as the height allows; else one row a
    clock; what still does not fit is counted.
    """
    ordered = sorted(faces, key=lambda face: face.tone.urgency)
    # As many columns as fit, no more than there are clocks.
    tall, flat = (
        max(1, min((width + GAP) // (least + GAP), len(ordered), MOST_COLUMNS))
        for least in (TALL_COLUMN, FLAT_COLUMN)
    )
    columns, each, one = flat, 1, _flat
    if len(ordered) <= tall * (height // 2) or tall * (height // 2) > flat * height:
        # No more columns than needed: a wide one has room for the bar.
        columns, each, one = min(tall, -(-len(ordered) // (height // 2))), 2, _tall
    places = columns * (height // each)
    shown = ordered if len(ordered) <= places else ordered[: places - 1]
    wide, spare = divmod(width - GAP * (columns - 1), columns)
    widths = [wide + (column < spare) for column in range(columns)]
    cells = [one(f, widths[i % columns]) for i, f in enumerate(shown)]
    if len(shown) < len(ordered):
        more: Row = ((f"+{len(ordered) - len(shown)} more", QUIET),)
        last = widths[len(shown) % columns]
        cells.append([exactly(more, last), *blank(last, each - 1)])
    rows = []
    for start in range(0, len(cells), columns):
        band = cells[start : start + columns]
        for line in range(each):
            pieces: list[Piece] = []
            for position, cell in enumerate(band):
                pieces += ([(" " * GAP, "")] if position else []) + list(cell[line])
            rows.append(merge(pieces))
    return rows


class ClockStrip(Drawn):
    """Draws every running clock."""

    DEFAULT_CSS = "ClockStrip { height: auto; max-height: 4; background: $panel; }"

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: tuple[ClockFace, ...], width: int) -> int:
        """Two for each band of clocks, and no more than a quarter of the window."""
        window = self.app.size
        bands = -(-len(shown) // max(1, window.width // 40))
        return max(2, min(bands * 2, window.height // 4))
