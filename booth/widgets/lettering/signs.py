"""Points, signs and the shapes of the states, drawn to the height of the figures."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame
from booth.widgets.lettering.shapes import (
    STEP,
    Shape,
    box,
    cut,
    polygon,
    rounded,
    slant,
    snap,
    union,
)

#: As wide as it is high.
SQUARE = -1.0


def _size(f: Frame) -> int:
    """The height of a point."""
    return max(f.sy, round(f.w))


def _dot(f: Frame, y: float) -> Shape:
    """A point as wide as its frame, its top at y."""
    round_off = f.w / 2 if f.h >= 24 else 0
    return rounded(0, y, f.w, y + _size(f), round_off, round_off)


def _colon(f: Frame) -> Shape:
    upper = round((f.h - 2 * _size(f)) * 0.3)
    return union(_dot(f, upper), _dot(f, f.h - upper - _size(f)))


def _comma(f: Frame) -> Shape:
    # In print the tail goes below the line; there is no room below, so the comma is raised.
    tail = max(1, _size(f) // 2)
    top, end = f.h - _size(f) - tail, f.h - tail
    hook = polygon((f.w / 2, end), (f.w, end), (f.w * 0.6, f.h), (0, f.h))
    return union(_dot(f, top), hook)


def _plus(f: Frame) -> Shape:
    reach = max(f.w / 2, 1.0)
    middle = f.waist + f.sy / 2
    stem = snap((f.w - f.sx) / 2)
    return union(f.level(f.waist), f.upright(stem, round(middle - reach), round(middle + reach)))


def _solidus(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h)
    return slant((f.w - weight, 0), (0, f.h), weight)


def _percent(f: Frame) -> Shape:
    eye = max(2.0, snap(f.w * 0.42))
    tall = max(2, round(f.h * 0.4))
    thin = max(STEP, snap(f.sx * 0.75))
    level = max(0.5, f.sy * 0.75)
    if eye - 2 * thin < 1 or tall - 2 * level < 1:
        thin, level = STEP, 1

    def ring(x: float, y: float) -> Shape:
        outer = rounded(x, y, x + eye, y + tall, eye / 2, eye / 2)
        if eye - 2 * thin < STEP or tall - 2 * level < 1:
            return outer
        hole = rounded(
            x + thin, y + level, x + eye - thin, y + tall - level, eye / 2 - thin, eye / 2 - thin
        )
        return cut(outer, hole)

    weight = max(STEP, f.sx * 0.85)
    stroke = slant((f.w - weight - f.w * 0.14, 0), (f.w * 0.14, f.h), weight)
    return union(ring(0, 0), stroke, ring(f.w - eye, f.h - tall))


def _degree(f: Frame) -> Shape:
    tall = max(2, round(f.h * 0.34))
    thin = max(STEP, snap(f.sx * 0.6))
    level = max(1, round(f.sy * 0.6))
    outer = rounded(0, 0, f.w, tall, f.w / 2, tall / 2)
    hole = rounded(thin, level, f.w - thin, tall - level, f.w / 2 - thin, tall / 2 - level)
    return outer if f.w - 2 * thin < STEP or tall - 2 * level < 1 else cut(outer, hole)


def _tilde(f: Frame) -> Shape:
    """Two level strokes and the slope between them: 'about'."""
    third = f.w / 3
    up, down = f.waist - f.sy / 2, f.waist + f.sy / 2
    return union(
        box(0, up, third + f.sx / 2, up + f.sy),
        polygon((third, up), (third + f.sx, up), (2 * third, down + f.sy), (third, up + f.sy)),
        box(2 * third - f.sx / 2, down, f.w, down + f.sy),
        box(0, up + f.sy / 2, f.sx * 0.8, down + f.sy),
        box(f.w - f.sx * 0.8, up, f.w, down + f.sy / 2),
    )


def _question(f: Frame) -> Shape:
    size = max(f.sy, round(f.sx))
    stem = snap((f.w - f.sx) / 2)
    bend = f.waist + f.sy
    bowl = cut(f.ring(0, bend), box(0, f.h * 0.27, f.w / 2, bend))
    return union(
        bowl,
        box(stem, f.waist, stem + f.sx, f.h - size - max(1, f.h // 10)),
        box(stem, f.h - size, stem + f.sx, f.h),
    )


def _bars(f: Frame) -> Shape:
    wide = snap(f.w * 0.34)
    return union(box(0, 0, wide, f.h), box(f.w - wide, 0, f.w, f.h))


def _chevrons(f: Frame) -> Shape:
    half = f.w * 0.55

    def chevron(x: float) -> Shape:
        weight = half * 0.6
        tip = x + half - weight
        return union(slant((x, 0), (tip, f.h / 2), weight), slant((tip, f.h / 2), (x, f.h), weight))

    return union(chevron(0), chevron(f.w - half))


#: Shape, and width as a share of a figure's, never less than an upright's.
SIGNS: dict[str, tuple[Callable[[Frame], Shape], float]] = {
    " ": (lambda f: box(0, 0, 0, 0), 0.45),
    ":": (_colon, 0.0),
    ".": (lambda f: _dot(f, f.h - _size(f)), 0.0),
    ",": (_comma, 0.0),
    "'": (lambda f: box(0, 0, f.w, f.h * 0.3), 0.0),
    "-": (lambda f: f.level(f.waist), 0.7),
    "+": (_plus, 0.9),
    "/": (_solidus, 0.8),
    "%": (_percent, 1.35),
    "°": (_degree, 0.6),
    "~": (_tilde, 1.0),
    "?": (_question, 0.95),
    "║": (_bars, 0.9),
    "►": (lambda f: polygon((0, 0), (f.w, f.h / 2), (0, f.h)), SQUARE),
    "▼": (lambda f: polygon((0, 0), (f.w, 0), (f.w / 2, f.h)), SQUARE),
    "▲": (lambda f: polygon((0, f.h), (f.w, f.h), (f.w / 2, 0)), SQUARE),
    "■": (lambda f: box(0, 0, f.w, f.h), SQUARE),
    "●": (lambda f: rounded(0, 0, f.w, f.h, f.w / 2, f.h / 2), SQUARE),
    "»": (_chevrons, SQUARE),
    "·": (lambda f: f.level(f.waist), 0.0),
}
