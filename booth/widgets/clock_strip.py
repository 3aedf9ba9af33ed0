"""All running clocks in one strip, most urgent first; one widget, so a second costs one repaint."""

from __future__ import annotations

from typing import ClassVar

from rich.cells import cell_len
from textual.geometry import Size
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, across, exactly, exactly_rows, merge, spread
from booth.widgets.text import plain
from booth.words.readout import ClockFace
from booth.words.tone import TONE_CLASSES, tone_css

TITLE, WHAT, TRACK = "clock-strip--title", "clock-strip--what", "clock-strip--track"
GAP = 2
# The narrowest column in which a part's name, a wait and a time can be read.
TALL_COLUMN, FLAT_COLUMN = 24, 38
MOST_COLUMNS = 6
LEAST_BAR = 5


def in_order(faces: tuple[ClockFace, ...]) -> list[ClockFace]:
    """Give the clocks by urgency; among equals the order they came in."""
    return sorted(faces, key=lambda face: face.tone.urgency)


def columns_for(width: int, count: int, least: int) -> int:
    """Give how many columns to use: as many as fit, no more than there are clocks."""
    fit_in = (width + GAP) // (least + GAP)
    return max(1, min(fit_in, count, MOST_COLUMNS))


def _time(face: ClockFace) -> str:
    return ("~" if face.estimate and face.remaining else "") + plain(face.remaining)


def _tall(face: ClockFace, width: int) -> list[Row]:
    """Two rows: whose clock and the time; then what, the state and how far it has come."""
    tone = face.tone.css
    name: Row = ((face.tone.shape, tone), (" ", ""), (plain(face.title), TITLE))
    upper = spread(name, ((" ", ""), (_time(face), tone)), width)
    what, word = plain(face.what), plain(face.shown_word)
    # The word of the state is never the one to give way.
    tail: list[tuple[str, str]] = [(" ", ""), (word, tone)] if word else []
    note = ""
    if face.estimate:
        used = 2 + cell_len(what) + sum(cell_len(text) for text, _ in tail)
        note = " estimate" if used + 9 <= width else " est."
    room = width - 2 - cell_len(what) - cell_len(note) - sum(cell_len(t) for t, _ in tail) - 1
    bar: list[tuple[str, str]] = []
    if face.fraction is not None and room >= LEAST_BAR:
        filled, rest = across(face.fraction, min(room, max(LEAST_BAR, width // 3)))
        bar = [(" ", ""), (filled, tone), (rest, TRACK)]
    lower = spread((("  ", ""), (what + note, WHAT)), (*tail, *bar), width)
    return [upper, lower]


def _flat(face: ClockFace, width: int) -> list[Row]:
    """One row: shape, whose, what; state and time at the right."""
    tone, word = face.tone.css, plain(face.shown_word)
    what = plain(face.what) + (" est." if face.estimate else "")
    left: Row = (
        (face.tone.shape, tone),
        (" ", ""),
        (plain(face.title), TITLE),
        (" ", ""),
        (what, WHAT),
    )
    right = " ".join(part for part in (word, _time(face)) if part)
    return [spread(left, ((" ", ""), (right, tone)), width)]


def _more(count: int, width: int, rows: int) -> list[Row]:
    return [exactly(((f"+{count} more", WHAT),), width)] + [exactly((), width)] * (rows - 1)


def _widths(width: int, columns: int) -> list[int]:
    each, spare = divmod(width - GAP * (columns - 1), columns)
    return [each + (column < spare) for column in range(columns)]


def lay_out(faces: tuple[ClockFace, ...], width: int, height: int) -> list[Row]:
    """Give the strip for a size: exactly `height` rows of exactly `width` cells.

    Two rows a clock while all of them fit, in columns as wide as the height allows; else one row a
    clock; what still does not fit is counted.
    """
    if width <= 0 or height <= 0:
        return []
    if not faces:
        return exactly_rows([(("no clock running", WHAT),)], width, height)
    ordered = in_order(faces)
    tall = columns_for(width, len(ordered), TALL_COLUMN)
    flat = columns_for(width, len(ordered), FLAT_COLUMN)
    two_rows = height >= 2 and (
        len(ordered) <= tall * (height // 2) or tall * (height // 2) > flat * height
    )
    if two_rows:
        # No more columns than needed: a wide one has room for the bar.
        tall = min(tall, -(-len(ordered) // (height // 2)))
    columns, each, one = (tall, 2, _tall) if two_rows else (flat, 1, _flat)
    places = columns * (height // each)
    if places == 1 < len(ordered):
        # Room for one clock only: it shares its row with the count of the others.
        count = f"  +{len(ordered) - 1} more"
        rows = _flat(ordered[0], max(0, width - len(count)))
        return exactly_rows([merge((*rows[0], (count, WHAT)))], width, height)
    shown = ordered if len(ordered) <= places else ordered[: places - 1]
    widths = _widths(width, columns)
    cells = [one(f, widths[i % columns]) for i, f in enumerate(shown)]
    if len(shown) < len(ordered):
        left_over = len(ordered) - len(shown)
        cells.append(_more(left_over, widths[len(shown) % columns], each))
    rows = []
    for start in range(0, len(cells), columns):
        band = cells[start : start + columns]
        for line in range(each):
            pieces: list[tuple[str, str]] = []
            for position, cell in enumerate(band):
                pieces += ([(" " * GAP, "")] if position else []) + list(cell[line])
            rows.append(merge(pieces))
    return exactly_rows(rows, width, height)


class ClockStrip(Drawn):
    """Draws every running clock."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {TITLE, WHAT, TRACK, *TONE_CLASSES}
    DEFAULT_CSS = """
ClockStrip { height: auto; max-height: 4; width: 1fr; background: $panel; color: $foreground; }
ClockStrip > .clock-strip--title { color: $foreground; text-style: bold; }
ClockStrip > .clock-strip--what { color: $quiet; }
ClockStrip > .clock-strip--track { color: $quiet; }
""" + tone_css("ClockStrip")

    faces: reactive[tuple[ClockFace, ...]] = reactive((), repaint=False)

    def __init__(
        self,
        faces: tuple[ClockFace, ...] = (),
        *,
        name: str | None = None,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(name=name, id=id, classes=classes)
        self.faces = faces

    def watch_faces(self, before: tuple[ClockFace, ...], now: tuple[ClockFace, ...]) -> None:
        # Only another number of clocks changes the height; a second must not cost a layout.
        if len(before) != len(now) and self.is_attached:
            self.refresh(layout=True)
        self.redraw()

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Two rows for each band of clocks, one row when there is none."""
        count = len(self.faces)
        if not count:
            return 1
        return 2 * -(-count // columns_for(width, count, TALL_COLUMN))

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.faces, width, height)
