"""Points, signs and the shapes of the states, drawn to the height of the figures."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame, snap
from booth.widgets.lettering.shapes import Shape, box, cut, polygon, rounded, slant, union


def _nothing(f: Frame) -> Shape:
    return lambda x, y: False


def _dot(f: Frame, y: float) -> Shape:
    """A point as wide as its frame, its top at y."""
    size = max(f.sy, round(f.w))
    round_off = f.w / 2 if f.h >= 24 else 0
    return rounded(0, y, f.w, y + size, round_off, round_off)


def _colon(f: Frame) -> Shape:
    size = max(f.sy, round(f.w))
    upper = round((f.h - 2 * size) * 0.3)
    return union(_dot(f, upper), _dot(f, f.h - upper - size))


def _point(f: Frame) -> Shape:
    return _dot(f, f.h - max(f.sy, round(f.w)))


def _comma(f: Frame) -> Shape:
    # In print the tail goes below the line; there is no room below, so the comma is raised.
    size = max(f.sy, round(f.w))
    tail = max(1, size // 2)
    top = f.h - size - tail
    hook = polygon((f.w / 2, top + size), (f.w, top + size), (f.w * 0.6, f.h), (0, f.h))
    return union(_dot(f, top), hook)


def _apostrophe(f: Frame) -> Shape:
    return box(0, 0, f.w, f.h * 0.3)


def _exclamation(f: Frame) -> Shape:
    size = max(f.sy, round(f.w))
    return union(_dot(f, f.h - size), box(0, 0, f.w, f.h - size - max(1, f.h // 8)))


def _minus(f: Frame) -> Shape:
    return f.level(f.waist)


def _plus(f: Frame) -> Shape:
    reach = max(f.w / 2, 1.0)
    middle = f.waist + f.sy / 2
    stem = snap((f.w - f.sx) / 2, f.step)
    return union(f.level(f.waist), f.upright(stem, round(middle - reach), round(middle + reach)))


def _equals(f: Frame) -> Shape:
    apart = max(1, f.sy // 2 + 1)
    return union(f.level(f.waist - apart), f.level(f.waist + apart + (f.sy == 1)))


def _solidus(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h)
    return slant((f.w - weight, 0), (0, f.h), weight)


def _percent(f: Frame) -> Shape:
    eye = max(2.0, snap(f.w * 0.42, f.step))
    tall = max(2, round(f.h * 0.4))
    thin = max(f.step, snap(f.sx * 0.75, f.step))
    level = max(0.5, f.sy * 0.75)
    if eye - 2 * thin < 1 or tall - 2 * level < 1:
        thin, level = f.step, 1

    def ring(x: float, y: float) -> Shape:
        outer = rounded(x, y, x + eye, y + tall, eye / 2, eye / 2)
        if eye - 2 * thin < f.step or tall - 2 * level < 1:
            return outer
        hole = rounded(
            x + thin, y + level, x + eye - thin, y + tall - level, eye / 2 - thin, eye / 2 - thin
        )
        return cut(outer, hole)

    weight = max(f.step, f.sx * 0.85)
    stroke = slant((f.w - weight - f.w * 0.14, 0), (f.w * 0.14, f.h), weight)
    return union(ring(0, 0), stroke, ring(f.w - eye, f.h - tall))


def _degree(f: Frame) -> Shape:
    tall = max(2, round(f.h * 0.34))
    thin = max(f.step, snap(f.sx * 0.6, f.step))
    level = max(1, round(f.sy * 0.6))
    outer = rounded(0, 0, f.w, tall, f.w / 2, tall / 2)
    hole = rounded(thin, level, f.w - thin, tall - level, f.w / 2 - thin, tall / 2 - level)
    return outer if f.w - 2 * thin < f.step or tall - 2 * level < 1 else cut(outer, hole)


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


def _less(f: Frame) -> Shape:
    middle, reach = f.waist + f.sy / 2, min(f.w * 0.75, f.h / 2)
    weight = f.sx
    return union(
        slant((f.w - weight, middle - reach), (0, middle), weight),
        slant((0, middle), (f.w - weight, middle + reach), weight),
    )


def _greater(f: Frame) -> Shape:
    less = _less(f)
    return lambda x, y: less(f.w - x, y)


def _question(f: Frame) -> Shape:
    size = max(f.sy, round(f.sx))
    stem = snap((f.w - f.sx) / 2, f.step)
    bend = f.waist + f.sy
    bowl = cut(f.ring(0, bend), box(0, f.h * 0.27, f.w / 2, bend))
    return union(
        bowl,
        box(stem, f.waist, stem + f.sx, f.h - size - max(1, f.h // 10)),
        box(stem, f.h - size, stem + f.sx, f.h),
    )


def _bars(f: Frame) -> Shape:
    wide = snap(f.w * 0.34, f.step)
    return union(box(0, 0, wide, f.h), box(f.w - wide, 0, f.w, f.h))


def _pointer(f: Frame) -> Shape:
    return polygon((0, 0), (f.w, f.h / 2), (0, f.h))


def _down(f: Frame) -> Shape:
    return polygon((0, 0), (f.w, 0), (f.w / 2, f.h))


def _up(f: Frame) -> Shape:
    return polygon((0, f.h), (f.w, f.h), (f.w / 2, 0))


def _square(f: Frame) -> Shape:
    return box(0, 0, f.w, f.h)


def _disc(f: Frame) -> Shape:
    return rounded(0, 0, f.w, f.h, f.w / 2, f.h / 2)


def _middle_dot(f: Frame) -> Shape:
    return box(0, f.waist, f.w, f.waist + f.sy)


def _chevrons(f: Frame) -> Shape:
    half = f.w * 0.55

    def chevron(x: float) -> Shape:
        weight = half * 0.6
        tip = x + half - weight
        return union(slant((x, 0), (tip, f.h / 2), weight), slant((tip, f.h / 2), (x, f.h), weight))

    return union(chevron(0), chevron(f.w - half))


# Width: a share of a figure's width; where negative, of the weight of an upright; "h": about as
# wide as it is high on the glass.
SIGNS: dict[str, tuple[Callable[[Frame], Shape], float | str]] = {
    " ": (_nothing, 0.45),
    ":": (_colon, -1.0),
    ".": (_point, -1.0),
    ",": (_comma, -1.0),
    "'": (_apostrophe, -1.0),
    "!": (_exclamation, -1.0),
    "-": (_minus, 0.7),
    "+": (_plus, 0.9),
    "=": (_equals, 0.9),
    "/": (_solidus, 0.8),
    "%": (_percent, 1.35),
    "°": (_degree, 0.6),
    "~": (_tilde, 1.0),
    "<": (_less, 0.85),
    ">": (_greater, 0.85),
    "?": (_question, 0.95),
    "║": (_bars, 0.9),
    "►": (_pointer, "h"),
    "▼": (_down, "h"),
    "▲": (_up, "h"),
    "■": (_square, "h"),
    "●": (_disc, "h"),
    "»": (_chevrons, "h"),
    "·": (_middle_dot, -1.0),
}
