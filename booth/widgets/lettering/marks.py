"""The marks over and under letters, in pixels: a letter keeps its mark, or it would be another word. Pure.

A mark is as wide as its letter at most and a quarter of it high. In the smallest letters it is one
pixel high: what tells an acute from a grave there is the side on which it stands.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable
from functools import lru_cache

#: So much of a letter's height goes to a mark and the gap beside it; never less than two pixels.
SHARE = 0.25
#: The places of a mark's ink on one of its rows, as shares of the width, from how far down that row
#: is (0 the top, 1 the foot); the ink is as wide as an upright there, or as wide as is said.
Ink = Callable[[float], tuple[tuple[float, float], ...]]


def _dots(*places: float) -> Ink:
    return lambda down: tuple((place, 0.0) for place in places)


def _bar(wide: float) -> Ink:
    return lambda down: ((0.5, wide),)


def _lean(*places: tuple[float, float]) -> Ink:
    """Strokes from a place at the top to one at the foot."""
    return lambda down: tuple((top + (foot - top) * down, 0.0) for top, foot in places)


ABOVE: dict[str, Ink] = {
    "\u0300": _lean((0.25, 0.5)),  # grave
    "\u0301": _lean((0.75, 0.5)),  # acute
    "\u0302": _lean((0.5, 0.2), (0.5, 0.8)),  # circumflex
    "\u0303": lambda down: ((0.35, 0.3),) if down < 0.5 else ((0.65, 0.3),),  # tilde
    "\u0304": _bar(0.7),  # macron
    "\u0306": _lean((0.2, 0.4), (0.8, 0.6)),  # breve
    "\u0307": _dots(0.5),  # dot
    "\u0308": _dots(0.18, 0.82),  # diaeresis
    "\u030a": lambda down: ((0.3, 0.0), (0.7, 0.0)) if 0.3 < down < 0.7 else ((0.5, 0.2),),  # ring
    "\u030b": _lean((0.45, 0.25), (0.9, 0.7)),  # double acute
    "\u030c": _lean((0.2, 0.5), (0.8, 0.5)),  # caron
}
BELOW: dict[str, Ink] = {
    "\u0326": _lean((0.6, 0.4)),  # comma
    "\u0327": _lean((0.5, 0.4)),  # cedilla
    "\u0328": _lean((0.75, 0.9)),  # ogonek
}
#: The narrowest letter that has room for a mark, in uprights.
LEAST_WIDE = 3


@lru_cache(maxsize=512)
def parts_of(char: str) -> tuple[str, str]:
    """A letter without its marks, and the marks."""
    apart = unicodedata.normalize("NFD", char)
    return apart[:1], apart[1:]


def has_marks_drawn(marks: str) -> bool:
    """Whether all of them can be drawn: one over the letter, one under it."""
    above, below = [m for m in marks if m in ABOVE], [m for m in marks if m in BELOW]
    return len(above) + len(below) == len(marks) and len(above) <= 1 and len(below) <= 1


def room_of(tall: int) -> int:
    """How many pixels of a letter so high a mark takes, its gap included."""
    return max(2, round(tall * SHARE))


def with_marks(
    body: tuple[tuple[bool, ...], ...], marks: str, room: int, upright: int
) -> tuple[tuple[bool, ...], ...]:
    """A letter with its marks: `room` rows more for each. upright: the width of a stroke [pixels]."""
    width = max(len(body[0]), LEAST_WIDE * upright)
    left = (width - len(body[0])) // 2
    right = width - len(body[0]) - left
    rows = [(False,) * left + row + (False,) * right for row in body]
    gap = [(False,) * width] * max(1, room // 4)
    for mark in marks:
        ink = ABOVE.get(mark) or BELOW[mark]
        drawn = [_row(ink, width, upright, y, room - len(gap)) for y in range(room - len(gap))]
        rows = [*drawn, *gap, *rows] if mark in ABOVE else [*rows, *gap, *drawn]
    return tuple(rows)


def _row(ink: Ink, width: int, upright: int, y: int, tall: int) -> tuple[bool, ...]:
    down = y / (tall - 1) if tall > 1 else 0.0
    row = [False] * width
    for place, share in ink(down):
        wide = max(round(share * width), upright)
        first = min(max(round(place * width - wide / 2), 0), width - wide)
        row[first : first + wide] = [True] * wide
    return tuple(row)
