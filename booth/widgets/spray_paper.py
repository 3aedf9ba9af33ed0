"""A test pattern as paper would show it: a long spot in four shades, drawn from the film across it."""

from __future__ import annotations

import math
from itertools import pairwise

from textual.geometry import Offset, Size

from booth.widgets.film_plot import film_at
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import HEAD, Row, blank, centred, merge, sized
from booth.widgets.text import pad
from booth.words.shown import Gallery, Paper

SHADES = " ░▒▓█"
#: A heavy pattern is not only darker, it is also a little taller on the paper.
LEAST_TALL = 0.6
#: How blunt the two ends are: the outline is 1 - |u| to this power.
BLUNT = 6
#: Widest spot for its height, in cells: beyond it the paper is left bare at both sides.
LONGEST = 16
WORDS_FROM_HEIGHT = 5
#: A gallery's picture is at least so wide, with a gap beside it.
LEAST_PAPER = 4
LEAST_WIDE, GAP = 15, 2


def _chance(x: int, y: int) -> float:
    """A number from 0 to 1 that is always the same for a place and looks like none in particular."""
    return math.modf(math.sin(x * 127.1 + y * 311.7 + 74.7) * 43758.5453)[0] % 1.0


def _shade(paper: Paper, u: float, column: int, row: int, height: int) -> str:
    """What the paper shows at u, -1 to 1, along the spot."""
    along = (u + 1) / 2 * len(paper.films) - 0.5
    film = film_at(tuple(enumerate(paper.films)), along) / (max(paper.films) or 1.0)
    gap = paper.broken and _chance(column // 2, 1) < 0.38
    tall = LEAST_TALL + (1 - LEAST_TALL) * math.sqrt(film)
    straight = 1 - 0.6 * abs(paper.bend)
    half = tall * straight * height / 2 * math.sqrt(max(0.0, 1 - abs(u) ** BLUNT))
    middle = height / 2 + paper.bend * (u * u - 0.5) * height * 0.6
    away = abs(row + 0.5 - middle) / half if half > 0 else math.inf
    dark = film * max(0.0, 1 - away * away) ** 0.35 if away < 1 else 0.0
    if paper.broken:
        if gap:
            dark *= 0.25
        elif dark == 0.0 and _chance(column, row) < 0.12:
            dark = 0.3  # a drop that flew wide
    return SHADES[min(len(SHADES) - 1, int(dark * 4.4 + 0.35))]


@sized
def draw_paper(paper: Paper, width: int, height: int) -> list[Row]:
    """Give the pattern for a size."""
    words = bool(paper.words) and height >= WORDS_FROM_HEIGHT
    rows = height - int(words)
    long = min(width, LONGEST * rows)
    drawn: list[Row] = []
    for row in range(rows):
        places = ((column, (column + 0.5) / long * 2 - 1) for column in range(long))
        line = "".join(_shade(paper, u, column, row, rows) for column, u in places)
        drawn.append(centred(line, "", width))
    if words:
        edges = [round(long * n / len(paper.words)) for n in range(len(paper.words) + 1)]
        zones = zip(paper.words, pairwise(edges), strict=True)
        line = "".join(pad(word, end - start, "centre") for word, (start, end) in zones)
        drawn.append(centred(line, HEAD, width))
    return drawn


def _grid(count: int, width: int, height: int) -> tuple[int, int, int]:
    """How many stand side by side, and how wide and how high each may be."""
    across = max(1, min(count, (width + GAP) // (LEAST_WIDE + GAP), 4))
    wide = (width + GAP) // across - GAP
    return across, wide, height // -(-count // across)


@sized
def draw_gallery(gallery: Gallery, width: int, height: int) -> list[Row]:
    """Give several patterns side by side, each with its name beneath it."""
    across, wide, high = _grid(len(gallery.papers), width, height)
    if high < 2:
        return []
    drawn: list[Row] = []
    for first in range(0, len(gallery.papers), across):
        line = gallery.papers[first : first + across]
        # A blank row beneath the names, where there is one to spare.
        tall = high - 1 - int(high >= 4)
        pictures = [draw_paper(paper, wide, tall) for paper, _ in line]
        for row in range(tall):
            pieces = [piece for each in pictures for piece in (*each[row], (" " * GAP, ""))]
            drawn.append(merge(pieces[:-1]))
        names = (" " * GAP).join(pad(name, wide, "centre") for _, name in line)
        drawn.append(((names, HEAD),))
        drawn += blank(width, high - 1 - tall)
    return drawn


def lay_out(shown: Paper | Gallery, width: int, height: int) -> list[Row]:
    """Give what is shown for a size."""
    if isinstance(shown, Paper):
        return draw_paper(shown, width, height)
    return draw_gallery(shown, width, height)


class SprayPaper(Drawn):
    """Draws a Paper, or a Gallery of which a click picks one."""

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: Paper | Gallery, width: int) -> int:
        """A paper as high as it can be read; of a gallery all of them, with their names."""
        high = max(LEAST_PAPER, self.app.size.height // 6)
        if isinstance(shown, Paper):
            return high + bool(shown.words)
        across, *_ = _grid(len(shown.papers), width, 1)
        return -(-len(shown.papers) // across) * (high + 1)

    def index_at(self, shown: Paper | Gallery, offset: Offset, size: Size) -> int | None:
        if isinstance(shown, Paper):
            return None
        across, wide, high = _grid(len(shown.papers), *size)
        column = offset.x // (wide + GAP)
        index = offset.y // max(high, 1) * across + column
        return index if column < across and index < len(shown.papers) else None
