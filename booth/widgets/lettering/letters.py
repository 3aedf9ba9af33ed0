"""The capital letters, from the bowls and uprights of the figures, each with its own width."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame
from booth.widgets.lettering.shapes import STEP, Shape, box, cut, slant, snap, turned, union


def _a(f: Frame) -> Shape:
    if not f.slanted:
        return union(cut(f.ring(0, f.h + f.sy), box(0, f.h, f.w, f.h + f.sy)), f.level(f.waist))
    flat = f.sx
    left = (f.w - flat) / 2
    weight = f.lean(left, f.h)
    bar = round(f.h * 0.64)
    inset = left * (f.h - bar) / f.h
    return union(
        slant((left, 0), (0, f.h), weight),
        slant((f.w - left - weight, 0), (f.w - weight, f.h), weight),
        f.level(bar, inset, f.w - inset),
    )


def _b(f: Frame) -> Shape:
    return union(f.squared(0, f.waist + f.sy), f.squared(f.waist, f.h))


def _c(f: Frame) -> Shape:
    if not f.slanted:
        return cut(f.ring(), box(f.w - f.sx, f.sy, f.w, f.h - f.sy))
    return cut(f.ring(), box(f.w / 2, f.h * 0.3, f.w, f.h * 0.7))


def _f(f: Frame) -> Shape:
    return union(f.upright(0), f.level(0), f.level(f.waist, 0, f.w - f.sx / 2))


def _g(f: Frame) -> Shape:
    return union(
        _c(f), f.upright(f.w - f.sx, f.waist, f.h - f.radius / 2), f.level(f.waist, f.w / 2)
    )


def _j(f: Frame) -> Shape:
    bend = f.h - 2 * f.radius
    hook = cut(f.ring(bend, f.h), box(0, 0, f.w, f.h * 0.73))
    return union(hook, f.upright(f.w - f.sx, 0, f.h - f.radius))


def _k(f: Frame) -> Shape:
    middle = f.waist + f.sy / 2
    weight = f.lean(f.w - f.sx, f.h / 2)
    return union(
        f.upright(0),
        slant((f.w - weight, 0), (f.sx * 0.6, middle), weight),
        slant((f.sx * 0.6, middle), (f.w - weight, f.h), weight),
        box(f.sx, f.waist, f.sx + STEP, f.waist + f.sy),
    )


def _m(f: Frame) -> Shape:
    dip = f.h * 0.62 if f.slanted else f.h * 0.5
    half = (f.w - f.sx) / 2
    return union(
        f.uprights(),
        slant((0, 0), (half, dip), f.sx),
        slant((f.w - f.sx, 0), (half, dip), f.sx),
    )


def _p(f: Frame) -> Shape:
    low = f.waist + f.sy
    return union(f.upright(0), f.squared(0, low))


def _q(f: Frame) -> Shape:
    tail = slant((f.w * 0.5, f.h * 0.66), (f.w - f.sx * 0.9, f.h), f.sx)
    return union(f.ring(), tail)


def _r(f: Frame) -> Shape:
    low = f.waist + f.sy
    return union(_p(f), slant((f.w * 0.4, low - 0.5), (f.w - f.sx, f.h), f.sx))


def _s(f: Frame) -> Shape:
    upper, lower = f.bowls()
    depth = f.w / 2 if f.slanted else f.sx
    return union(
        cut(upper, box(f.w - depth, f.hook, f.w, f.waist)),
        cut(lower, box(0, f.waist + f.sy, depth, f.h - f.hook)),
    )


def _u(f: Frame) -> Shape:
    return union(
        cut(f.ring(), box(0, 0, f.w, f.h - f.radius)),
        f.upright(0, 0, f.h - f.radius),
        f.upright(f.w - f.sx, 0, f.h - f.radius),
    )


def _v(f: Frame) -> Shape:
    weight = f.lean(f.w / 2 - f.sx / 2, f.h)
    foot = (f.w - weight) / 2
    return union(slant((0, 0), (foot, f.h), weight), slant((f.w - weight, 0), (foot, f.h), weight))


def _x(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h) if f.slanted else f.sx
    return union(
        slant((0, 0), (f.w - weight, f.h), weight), slant((f.w - weight, 0), (0, f.h), weight)
    )


def _y(f: Frame) -> Shape:
    stem = snap((f.w - f.sx) / 2)
    fork = f.waist + f.sy
    weight = f.lean(stem, fork)
    return union(
        slant((0, 0), (stem, fork), weight),
        slant((f.w - weight, 0), (stem + f.sx - weight, fork), weight),
        f.upright(stem, f.waist),
    )


def _z(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h - 2 * f.sy)
    stroke = slant((f.w - weight, f.sy), (0, f.h - f.sy), weight)
    return union(f.level(0), f.foot(), stroke)


#: Shape, and width as a share of a figure's, never less than an upright's.
LETTERS: dict[str, tuple[Callable[[Frame], Shape], float]] = {
    "A": (_a, 1.1),
    "B": (_b, 1.0),
    "C": (_c, 0.95),
    "D": (lambda f: f.squared(0, f.h), 1.0),
    "E": (lambda f: union(_f(f), f.foot()), 0.85),
    "F": (_f, 0.82),
    "G": (_g, 1.0),
    "H": (lambda f: union(f.uprights(), f.level(f.waist)), 1.0),
    "I": (lambda f: f.upright(0), 0.0),
    "J": (_j, 0.8),
    "K": (_k, 1.0),
    "L": (lambda f: union(f.upright(0), f.foot()), 0.8),
    "M": (_m, 1.35),
    "N": (lambda f: union(f.uprights(), slant((0, 0), (f.w - f.sx, f.h), f.sx)), 1.1),
    "O": (lambda f: f.ring(), 1.0),
    "P": (_p, 0.95),
    "Q": (_q, 1.0),
    "R": (_r, 1.0),
    "S": (_s, 0.95),
    "T": (lambda f: union(f.level(0), f.upright(snap((f.w - f.sx) / 2))), 0.95),
    "U": (_u, 1.0),
    "V": (_v, 1.1),
    "W": (lambda f: turned(_m(f), f.w, f.h), 1.35),
    "X": (_x, 1.05),
    "Y": (_y, 1.05),
    "Z": (_z, 0.9),
}
