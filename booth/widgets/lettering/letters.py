"""The capital letters, from the bowls and uprights of the figures, each with its own width."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame, snap
from booth.widgets.lettering.shapes import Shape, box, cut, polygon, slant, turned, union


def _a(f: Frame) -> Shape:
    if not f.slanted:
        return union(cut(f.ring(0, f.h + f.sy), box(0, f.h, f.w, f.h + f.sy)), f.level(f.waist))
    flat = f.sx
    left = (f.w - flat) / 2
    weight = f.lean(left, f.h)
    bar = snap(f.h * 0.64, 1)
    inset = left * (f.h - bar) / f.h
    return union(
        slant((left, 0), (0, f.h), weight),
        slant((f.w - left - weight, 0), (f.w - weight, f.h), weight),
        f.level(bar, inset, f.w - inset),
    )


def _b(f: Frame) -> Shape:
    upper, lower = f.ring(0, f.waist + f.sy), f.ring(f.waist, f.h)
    return union(f.squared(upper, 0, f.waist + f.sy), f.squared(lower, f.waist, f.h))


def _c(f: Frame) -> Shape:
    if not f.slanted:
        return cut(f.ring(0, f.h), box(f.w - f.sx, f.sy, f.w, f.h - f.sy))
    return cut(f.ring(0, f.h), box(f.w / 2, f.h * 0.3, f.w, f.h * 0.7))


def _d(f: Frame) -> Shape:
    return f.squared(f.ring(0, f.h), 0, f.h)


def _e(f: Frame) -> Shape:
    return union(_f(f), f.level(f.h - f.sy))


def _f(f: Frame) -> Shape:
    return union(f.upright(0), f.level(0), f.level(f.waist, 0, f.w - f.sx / 2))


def _g(f: Frame) -> Shape:
    return union(
        _c(f), f.upright(f.w - f.sx, f.waist, f.h - f.radius / 2), f.level(f.waist, f.w / 2)
    )


def _h(f: Frame) -> Shape:
    return union(f.upright(0), f.upright(f.w - f.sx), f.level(f.waist))


def _i(f: Frame) -> Shape:
    return f.upright(0)


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
        box(f.sx, f.waist, f.sx + f.step, f.waist + f.sy),
    )


def _l(f: Frame) -> Shape:
    return union(f.upright(0), f.level(f.h - f.sy))


def _m(f: Frame) -> Shape:
    dip = f.h * 0.62 if f.slanted else f.h * 0.5
    half = (f.w - f.sx) / 2
    return union(
        f.upright(0),
        f.upright(f.w - f.sx),
        slant((0, 0), (half, dip), f.sx),
        slant((f.w - f.sx, 0), (half, dip), f.sx),
    )


def _n(f: Frame) -> Shape:
    return union(f.upright(0), f.upright(f.w - f.sx), slant((0, 0), (f.w - f.sx, f.h), f.sx))


def _o(f: Frame) -> Shape:
    return f.ring(0, f.h)


def _p(f: Frame) -> Shape:
    low = f.waist + f.sy
    return union(f.upright(0), f.squared(f.ring(0, low), 0, low))


def _q(f: Frame) -> Shape:
    tail = slant((f.w * 0.5, f.h * 0.66), (f.w - f.sx * 0.9, f.h), f.sx)
    return union(f.ring(0, f.h), tail)


def _r(f: Frame) -> Shape:
    low = f.waist + f.sy
    return union(_p(f), slant((f.w * 0.4, low - 0.5), (f.w - f.sx, f.h), f.sx))


def _s(f: Frame) -> Shape:
    upper, lower = f.ring(0, f.waist + f.sy), f.ring(f.waist, f.h)
    if not f.slanted:
        return union(
            cut(upper, box(f.w - f.sx, f.sy, f.w, f.waist)),
            cut(lower, box(0, f.waist + f.sy, f.sx, f.h - f.sy)),
        )
    return union(
        cut(upper, box(f.w / 2, f.h * 0.27, f.w, f.waist)),
        cut(lower, box(0, f.waist + f.sy, f.w / 2, f.h * 0.73)),
    )


def _t(f: Frame) -> Shape:
    return union(f.level(0), f.upright(snap((f.w - f.sx) / 2, f.step)))


def _u(f: Frame) -> Shape:
    return union(
        cut(f.ring(0, f.h), box(0, 0, f.w, f.h - f.radius)),
        f.upright(0, 0, f.h - f.radius),
        f.upright(f.w - f.sx, 0, f.h - f.radius),
    )


def _v(f: Frame) -> Shape:
    weight = f.lean(f.w / 2 - f.sx / 2, f.h)
    foot = (f.w - weight) / 2
    return union(slant((0, 0), (foot, f.h), weight), slant((f.w - weight, 0), (foot, f.h), weight))


def _w(f: Frame) -> Shape:
    return turned(_m(f), f.w, f.h)


def _x(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h) if f.slanted else f.sx
    return union(
        slant((0, 0), (f.w - weight, f.h), weight), slant((f.w - weight, 0), (0, f.h), weight)
    )


def _y(f: Frame) -> Shape:
    stem = snap((f.w - f.sx) / 2, f.step)
    fork = f.waist + f.sy
    weight = f.lean(stem, fork)
    return union(
        slant((0, 0), (stem, fork), weight),
        slant((f.w - weight, 0), (stem + f.sx - weight, fork), weight),
        f.upright(stem, f.waist),
    )


def _z(f: Frame) -> Shape:
    weight = f.lean(f.w - f.sx, f.h - 2 * f.sy)
    stroke = polygon((f.w - weight, f.sy), (f.w, f.sy), (weight, f.h - f.sy), (0, f.h - f.sy))
    return union(f.level(0), f.level(f.h - f.sy), stroke)


LETTERS: dict[str, tuple[Callable[[Frame], Shape], float]] = {
    "A": (_a, 1.1),
    "B": (_b, 1.0),
    "C": (_c, 0.95),
    "D": (_d, 1.0),
    "E": (_e, 0.85),
    "F": (_f, 0.82),
    "G": (_g, 1.0),
    "H": (_h, 1.0),
    "I": (_i, 0.0),
    "J": (_j, 0.8),
    "K": (_k, 1.0),
    "L": (_l, 0.8),
    "M": (_m, 1.35),
    "N": (_n, 1.1),
    "O": (_o, 1.0),
    "P": (_p, 0.95),
    "Q": (_q, 1.0),
    "R": (_r, 1.0),
    "S": (_s, 0.95),
    "T": (_t, 0.95),
    "U": (_u, 1.0),
    "V": (_v, 1.1),
    "W": (_w, 1.35),
    "X": (_x, 1.05),
    "Y": (_y, 1.05),
    "Z": (_z, 0.9),
}
