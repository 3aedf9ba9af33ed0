"""All running clocks in one strip, most urgent first; one widget, so a second costs one repaint."""

from __future__ import annotations

from msgspec.structs import replace
from rich.cells import cell_len

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import (
    QUIET,
    STRONG,
    Piece,
    Row,
    exactly,
    merge,
    sized,
    spread,
    toned,
    width_of,
)
from booth.widgets.text import fit, plain
from booth.widgets.wet_edge import behind_words
from booth.words.shown import ClockFace

GAP = 1
# The narrowest column in which a part's name, a wait, its state and a time can be read.
COLUMN = 39
MOST_COLUMNS = 6
#: A name keeps so many cells.
LEAST_TITLE = 10
#: The strip takes so much of the window's height at most.
MOST_SHARE = 1 / 6


def _words(face: ClockFace, what: str) -> tuple[Row, Row]:
    """Whose and what; state and time."""
    word = plain(face.shown_word)
    time = f"{'~' if face.estimate and face.remaining else ''}{plain(face.remaining)}"
    right = "  ".join(each for each in (f"{face.tone.shape} {word}" if word else "", time) if each)
    left: Row = ((f" {plain(face.title)}", STRONG), (f"  {plain(what)}", ""))
    return left, ((" " * GAP, ""), (f"{right} ", toned(face.tone)))


def _wide(face: ClockFace, what: str) -> int:
    return sum(map(width_of, _words(face, what)))


def _clock(face: ClockFace, width: int) -> Row:
    """At the right state and time, which are never cut; its edge behind all of it.

    Where it does not fit, what the clock is about is said in short, then the name gives way.
    """
    what = face.what if _wide(face, face.what) <= width or not face.short else face.short
    over = _wide(face, what) - width
    if over > 0:
        room = max(cell_len(plain(face.title)) - over, LEAST_TITLE)
        face = replace(face, title=fit(face.title, room))
    return behind_words(spread(*_words(face, what), width), face.edge, width, face.tone)


def _columns(faces: tuple[ClockFace, ...], width: int, height: int) -> int:
    """As many as show every clock whole, else in short; where those do not fit the height, as many as
    there can be."""
    whole = max((_wide(face, face.what) for face in faces), default=COLUMN)
    short = max((_wide(face, face.short or face.what) for face in faces), default=COLUMN)
    for least in (whole, max(short, COLUMN), COLUMN):
        columns = max(1, min((width + GAP) // (least + GAP), len(faces), MOST_COLUMNS))
        if columns * height >= len(faces):
            break
    return columns


@sized
def lay_out(faces: tuple[ClockFace, ...], width: int, height: int) -> list[Row]:
    """Give the strip for a size, a row each, the most urgent first; among equals the order they came
    in. What does not fit is counted.
    """
    ordered = sorted(faces, key=lambda face: face.tone.urgency)
    columns = _columns(faces, width, height)
    places = columns * height
    shown = ordered if len(ordered) <= places else ordered[: places - 1]
    wide, spare = divmod(width - GAP * (columns - 1), columns)
    widths = [wide + (column < spare) for column in range(columns)]
    cells = [_clock(face, widths[i % columns]) for i, face in enumerate(shown)]
    if len(shown) < len(ordered):
        more: Row = ((f" +{len(ordered) - len(shown)} more", QUIET),)
        cells.append(exactly(more, widths[len(shown) % columns]))
    rows = []
    for start in range(0, len(cells), columns):
        pieces: list[Piece] = []
        for position, cell in enumerate(cells[start : start + columns]):
            pieces += ([(" " * GAP, "")] if position else []) + list(cell)
        rows.append(merge(pieces))
    return rows


class ClockStrip(Drawn):
    """Draws every running clock."""

    DEFAULT_CSS = "ClockStrip { height: auto; max-height: 8; background: $panel; }"

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: tuple[ClockFace, ...], width: int) -> int:
        """One for each band of clocks, and no more than a sixth of the window."""
        window = self.app.size
        most = max(1, int(window.height * MOST_SHARE))
        return min(-(-len(shown) // _columns(shown, window.width, most)), most)
