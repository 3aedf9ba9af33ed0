"""The alarm that rings: the whole field of the bench filled with it, or a strip across the top.

A strip where something stands beneath that is still needed: a running clock, what is being typed,
a question, a list.
"""

from __future__ import annotations

import math

from booth.widgets.lettering.bigfigure import draw
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, exactly, sized, spread
from booth.words.shown import AlarmFace, Tone

SILENCES = "Esc/PgUp silences"
#: A letter so high, of the window's height, is 28 mm high on a 14-inch screen: 16 minutes of arc from
#: six metres, the least for reading (ISO 9241-303, from memory, not checked).
SIX_METRES_PERCENT = 16
STRIP_HEAD = 1
#: Rows of the window that the field leaves: what the screen says, and its keys.
AROUND = 2
#: Above, between and under its three words.
GAPS = range(4)


def carries(window_rows: int) -> int:
    """How many rows a letter needs in a window of so many rows, to be read from six metres."""
    return math.ceil(window_rows * SIX_METRES_PERCENT / 100)


def strip_rows(window_rows: int) -> int:
    """How high the strip is."""
    return carries(window_rows) + STRIP_HEAD


def ground(face: AlarmFace) -> str:
    """The filled field of a call. The gravest one blinks: seen from the corner of an eye."""
    colour = "$foreground" if face.tone is Tone.PLAIN else f"${face.tone.css}"
    blinks = face.beat and face.tone is Tone.LATE
    return f"bold {colour} on $background" if blinks else f"bold $background on {colour}"


def _fitting(text: str, width: int, least: int) -> str:
    """As many of the words, from the first, as can be drawn in at least so many rows."""
    words = text.split()
    for count in range(len(words), 1, -1):
        said = " ".join(words[:count]).rstrip(",;:")
        if len(draw(said, width, least)) >= least:
            return said
    return words[0] if words else ""


def _blocks(text: str, width: int, height: int, style: str) -> list[Row]:
    """Words as large as fits."""
    return [exactly(((line, style),), width, style, "centre") for line in draw(text, width, height)]


def _head(face: AlarmFace, width: int, style: str) -> Row:
    right = "   ".join(filter(None, (face.place, SILENCES)))
    return spread(((f" {face.line}", style),), ((f"   {right} ", style),), width, style)


@sized
def strip(face: AlarmFace, width: int, height: int) -> list[Row]:
    """One row of letters under the sentence: whose and what, by turns where both do not fit."""
    style, tall, inner = ground(face), height - STRIP_HEAD, width - 2
    both, called = f"{face.whose} {face.deed}", f"{face.word} {face.deed}"
    said = both if _fitting(both, inner, tall) == both else _fitting(face.whose, inner, tall)
    if said != both and not face.beat:
        said = called if _fitting(called, inner, tall) == called else face.word
    rows = [exactly(row, width, style, "centre") for row in _blocks(said, inner, tall, style)]
    return [_head(face, width, style), *rows, *_fill(face, width, tall - len(rows))]


@sized
def field(face: AlarmFace, width: int, height: int) -> list[Row]:
    """From the top: its sentence, whose, what to do, the state; each carries the shop."""
    style, room, inner = ground(face), height - 1, width - 4
    least = carries(height + AROUND)
    small = max(least, room // 4)
    large = max(room - 2 * small - len(GAPS), least)
    pieces = (
        _blocks(_fitting(face.whose, inner, least), inner, small, style),
        _blocks(face.deed, inner, large, style),
        _blocks(face.word, inner, small, style),
    )
    spare = max(room - sum(map(len, pieces)), 0)
    between = [spare // len(GAPS) + (place < spare % len(GAPS)) for place in GAPS]
    rows = [_head(face, width, style), *_fill(face, width, between[0])]
    for piece, after in zip(pieces, between[1:], strict=True):
        rows += [exactly(row, width, style, "centre") for row in piece]
        rows += _fill(face, width, after)
    return rows


def _fill(face: AlarmFace, width: int, count: int) -> list[Row]:
    return [exactly((), width, ground(face))] * max(count, 0)


def lay_out(face: AlarmFace, width: int, height: int) -> list[Row]:
    """The alarm, whole or as a strip."""
    return field(face, width, height) if face.whole else strip(face, width, height)


class AlarmField(Drawn):
    """Shows nothing while nothing rings."""

    DEFAULT_CSS = """
    AlarmField { dock: top; width: 1fr; display: none; }
    """
    draw = staticmethod(lay_out)

    def show(self, face: AlarmFace | None, rows: int) -> None:
        """Show this alarm in so many rows; None for none."""
        self.display = face is not None
        if face is not None:
            if rows != self._high:
                self._high = rows
                self.styles.height = rows
            self.shown = face

    _high = 0

    def _wanted(self, width: int) -> int:
        return 0
