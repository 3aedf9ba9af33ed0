"""A section through the film, filled, in eighths of a row, with the band it should lie in."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import QUIET, Piece, Row, filled, inked, merge, sized, upward
from booth.widgets.text import pad, plain
from booth.words.shown import Section, Tone

THIN, EVEN, HEAVY = Tone.CAUTION, Tone.GOOD, Tone.LATE
MARKS = {THIN: "-", EVEN: " ", HEAVY: "+"}
# Below these there is no room for the words beside and beneath the section.
WORDS_FROM_WIDTH, WORDS_FROM_HEIGHT = 30, 5
WORDS_WIDTH = 10


def film_at(samples: Sequence[tuple[float, float]], x: float) -> float:
    """The film at x, on straight lines between the samples, level beyond them."""
    if x <= samples[0][0]:
        return samples[0][1]
    for (ax, ay), (bx, by) in pairwise(samples):
        if x <= bx:
            return by if bx == ax else ay + (by - ay) * (x - ax) / (bx - ax)
    return samples[-1][1]


def _tone(film: float, section: Section) -> Tone:
    return THIN if film < section.low else HEAVY if film > section.high else EVEN


def _cells(film: float, section: Section, top: float, rows: int, edges: set[int]) -> list[Piece]:
    """One column from the top down; the edges of the band run through it, filled or not."""
    tone = _tone(film, section)
    cells: list[Piece] = []
    for row, block in enumerate(upward(film / top * rows, rows)):
        if row not in edges or block not in " █":
            cells.append((block, inked(tone)))
        elif block == "█":
            cells.append(("━", filled(tone)))
        else:
            cells.append(("┄", QUIET))
    return cells


def _row_of(share: float, top: float, rows: int) -> int:
    return min(rows - 1, max(0, rows - 1 - int(share / top * rows)))


def _scale_words(section: Section, top: float, rows: int) -> list[str]:
    words = [""] * rows
    for share, word in ((section.low, "low"), (section.high, "high"), (1.0, "target")):
        row = _row_of(share, top, rows)
        words[row] = words[row] or (word if word == "target" else f"{word} {share:.2f}")
    # The key to the marks stands where the film they mark is: above the band and beneath it.
    above, beneath = _row_of(section.high, top, rows) - 1, _row_of(section.low, top, rows) + 1
    for row, word in ((above, "heavy +"), (beneath, "thin -")):
        if 0 <= row < rows and not words[row]:
            words[row] = word
    return words


@sized
def draw_film(section: Section, width: int, height: int) -> list[Row]:
    """Give the section for a size."""
    if not section.samples:
        return [(("no film to show yet", QUIET),)]
    words = width >= WORDS_FROM_WIDTH and height >= WORDS_FROM_HEIGHT
    left = WORDS_WIDTH + 2 if words else 0
    rows = height - 2 if words else height
    start, end = section.samples[0][0], section.samples[-1][0]
    step = (end - start) / max(width - left, 1)
    films = [film_at(section.samples, start + step * (n + 0.5)) for n in range(width - left)]
    # Room for the band and the highest film, in steps of a quarter.
    top = -(-max([section.high * 1.1, *films]) // 0.25) * 0.25
    edges = {_row_of(section.low, top, rows), _row_of(section.high, top, rows)}
    columns = [_cells(film, section, top, rows, edges) for film in films]
    scale = _scale_words(section, top, rows) if words else [""] * rows
    drawn: list[Row] = []
    for row in range(rows):
        side: list[Piece] = [(pad(scale[row], WORDS_WIDTH, "right") + " │", QUIET)] if words else []
        drawn.append(merge([*side, *(column[row] for column in columns)]))
    if words:
        # Thin and heavy said without colour, beneath each column.
        tones = [_tone(film, section) for film in films]
        marks = [(MARKS[tone], inked(tone)) for tone in tones]
        drawn.append(merge([(" " * WORDS_WIDTH + " └", QUIET), *marks]))
        ends = [f"{place:g} {plain(section.unit)}".strip() for place in (start, end)]
        middle = pad(section.across, max(0, width - left - len("".join(ends))), "centre")
        drawn.append(((" " * left + middle.join(ends), QUIET),))
    return drawn


class FilmPlot(Drawn):
    """Draws a Section."""

    draw = staticmethod(draw_film)
