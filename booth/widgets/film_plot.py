"""A section through the film, filled, in eighths of a row, with the band it should lie in."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import ClassVar

from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Piece, Row, exactly, exactly_rows, merge, upward
from booth.widgets.text import pad, plain
from booth.words.pictures import Section

THIN, EVEN, HEAVY = "film-plot--thin", "film-plot--even", "film-plot--heavy"
EDGE, AXIS = "film-plot--edge", "film-plot--axis"
THIN_EDGE, EVEN_EDGE, HEAVY_EDGE = (f"{style}-edge" for style in (THIN, EVEN, HEAVY))
# Below these there is no room for the words beside and beneath the section.
WORDS_FROM_WIDTH, WORDS_FROM_HEIGHT = 30, 5
WORDS_WIDTH = 10


def _film_at(samples: Sequence[tuple[float, float]], x: float) -> float:
    """The film at x, on straight lines between the samples."""
    if x <= samples[0][0]:
        return samples[0][1]
    for (ax, ay), (bx, by) in pairwise(samples):
        if x <= bx:
            return by if bx == ax else ay + (by - ay) * (x - ax) / (bx - ax)
    return samples[-1][1]


def _columns(samples: Sequence[tuple[float, float]], width: int) -> list[float]:
    start, end = samples[0][0], samples[-1][0]
    return [
        _film_at(samples, start + (end - start) * (column + 0.5) / width) for column in range(width)
    ]


def _top(films: Sequence[float], high: float) -> float:
    """The top of the scale: room for the band and the highest film, in steps of a quarter."""
    highest = max([high * 1.1, *films])
    return -(-highest // 0.25) * 0.25


def _style(film: float, low: float, high: float) -> tuple[str, str]:
    if film < low:
        return THIN, THIN_EDGE
    return (HEAVY, HEAVY_EDGE) if film > high else (EVEN, EVEN_EDGE)


def _cells(film: float, section: Section, top: float, rows: int, edges: set[int]) -> list[Piece]:
    """One column from the top down; the edges of the band run through it, filled or not."""
    fill, over_fill = _style(film, section.low, section.high)
    cells: list[Piece] = []
    for row, block in enumerate(upward(film / top * rows, rows)):
        if row not in edges or block not in " █":
            cells.append((block, fill))
        elif block == "█":
            cells.append(("━", over_fill))
        else:
            cells.append(("┄", EDGE))
    return cells


def _mark(film: float, section: Section) -> Piece:
    """Thin and heavy said without colour, beneath each column."""
    style, _ = _style(film, section.low, section.high)
    return {THIN: "-", EVEN: " ", HEAVY: "+"}[style], style


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


def _place(value: float, unit: str) -> str:
    return f"{value:g} {plain(unit)}".strip()


def draw_film(section: Section, width: int, height: int) -> list[Row]:
    """Give the section for a size: exactly `height` rows of exactly `width` cells."""
    if width <= 0 or height <= 0:
        return []
    if not section.samples:
        return exactly_rows([(("no film to show yet", AXIS),)], width, height)
    words = width >= WORDS_FROM_WIDTH and height >= WORDS_FROM_HEIGHT
    left = WORDS_WIDTH + 2 if words else 0
    rows = height - 2 if words else height
    films = _columns(section.samples, width - left)
    top = _top(films, section.high)
    edges = {_row_of(section.low, top, rows), _row_of(section.high, top, rows)}
    columns = [_cells(film, section, top, rows, edges) for film in films]
    scale = _scale_words(section, top, rows) if words else [""] * rows
    drawn: list[Row] = []
    for row in range(rows):
        side: list[Piece] = [(pad(scale[row], WORDS_WIDTH, "right") + " │", AXIS)] if words else []
        drawn.append(merge([*side, *(column[row] for column in columns)]))
    if words:
        marks = [_mark(film, section) for film in films]
        drawn.append(merge([(" " * WORDS_WIDTH + " └", AXIS), *marks]))
        start, end = (_place(section.samples[i][0], section.unit) for i in (0, -1))
        middle = pad(section.across, max(0, width - left - len(start) - len(end)), "centre")
        drawn.append(exactly(((" " * left + start + middle + end, AXIS),), width))
    return exactly_rows(drawn, width, height)


class FilmPlot(Drawn):
    """Draws a Section."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {
        THIN, EVEN, HEAVY, EDGE, AXIS, THIN_EDGE, EVEN_EDGE, HEAVY_EDGE
    }  # fmt: skip
    DEFAULT_CSS = """
FilmPlot { height: 1fr; width: 1fr; background: $background; color: $foreground; }
FilmPlot > .film-plot--axis { color: $quiet; }
FilmPlot > .film-plot--edge { color: $quiet; }
FilmPlot > .film-plot--thin { color: $tone-caution; }
FilmPlot > .film-plot--even { color: $tone-good; }
FilmPlot > .film-plot--heavy { color: $tone-late; }
FilmPlot > .film-plot--thin-edge { color: $background; background: $tone-caution; }
FilmPlot > .film-plot--even-edge { color: $background; background: $tone-good; }
FilmPlot > .film-plot--heavy-edge { color: $background; background: $tone-late; }
"""

    section: reactive[Section] = reactive(Section(), repaint=False)

    def watch_section(self) -> None:
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return draw_film(self.section, width, height)
