"""The ten figures, all of the same width, so that a countdown stands still."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame, snap
from booth.widgets.lettering.shapes import Shape, box, cut, polygon, slant, turned, union


def _zero(f: Frame) -> Shape:
    return f.ring(0, f.h)


def _one(f: Frame) -> Shape:
    stem = snap((f.w - f.sx) / 2 + f.w * 0.08, f.step)
    flag = snap(f.w * 0.3, f.step)
    if not f.slanted:
        return union(f.upright(stem), box(stem - f.step * 2, 0, stem, f.sy))
    drop = f.h * 0.2
    beak = polygon(
        (stem + f.sx * 0.5, 0),
        (stem + f.sx, 0),
        (stem + f.sx, f.sy * 1.5),
        (stem, drop * 0.6 + f.sy * 0.9),
        (stem - flag, drop + f.sy),
        (stem - flag, drop),
    )
    return union(f.upright(stem), beak)


def _two(f: Frame) -> Shape:
    if not f.slanted:
        return union(
            cut(f.ring(0, f.waist + f.sy), box(0, f.sy, f.sx, f.waist)),
            cut(f.ring(f.waist, f.h), box(f.w - f.sx, f.waist + f.sy, f.w, f.h - f.sy)),
            box(0, f.h - f.sy, f.w, f.h),
        )
    turn = f.radius + f.h * 0.06
    foot = f.h - f.sy
    weight = f.lean(f.w - f.sx, foot - turn)
    arc = cut(f.ring(0, f.h), box(0, f.h * 0.29, f.w - f.sx, f.h), box(0, turn, f.w, f.h))
    leg = polygon(
        (f.w - f.sx, turn),
        (f.w, turn),
        (f.w - f.sx * 0.15, turn + f.h * 0.1),
        (weight, foot),
        (0, foot),
        (0, foot - f.h * 0.02),
    )
    return union(arc, leg, f.level(foot))


def _three(f: Frame) -> Shape:
    bowls = union(f.ring(0, f.waist + f.sy), f.ring(f.waist, f.h))
    if not f.slanted:
        return cut(bowls, box(0, f.sy, f.sx, f.h - f.sy))
    reach = f.w * 0.42
    return cut(bowls, box(0, f.h * 0.27, reach, f.h * 0.73))


def _four(f: Frame) -> Shape:
    if not f.slanted:
        return union(f.upright(0, 0, f.waist + f.sy), f.upright(f.w - f.sx), f.level(f.waist))
    bar = snap(f.h * 0.64, 1)
    stem = snap(f.w * 0.94 - f.sx, f.step)
    # A shade lighter than its fellows, or the counter closes.
    weight = f.lean(stem, bar) * 0.88
    top = stem + f.sx - weight
    return union(f.upright(stem), slant((top, 0), (0, bar), weight), f.level(bar))


def _five(f: Frame) -> Shape:
    shoulder = f.waist if not f.slanted else snap(f.h * 0.38, 1)
    bowl = f.ring(shoulder, f.h)
    neck = box(0, shoulder, f.w / 2, shoulder + f.sy)
    open_to = f.h - f.sy if not f.slanted else f.h * 0.73
    body = cut(union(bowl, neck), box(0, shoulder + f.sy, f.w * 0.42, open_to))
    return union(
        body,
        f.level(0, 0, f.w if not f.slanted else f.w - f.step),
        f.upright(0, 0, shoulder + f.sy),
    )


def _six(f: Frame) -> Shape:
    shoulder = f.waist if not f.slanted else snap(f.h * 0.4, 1)
    hook = f.sy if not f.slanted else f.h * 0.27
    back = cut(f.ring(0, f.h), box(f.w / 2, hook, f.w, f.h))
    return union(f.ring(shoulder, f.h), back)


def _seven(f: Frame) -> Shape:
    if not f.slanted:
        return union(f.level(0), f.upright(f.w - f.sx))
    foot = snap(f.w * 0.2, f.step)
    weight = f.lean(f.w - f.sx - foot, f.h - f.sy)
    return union(f.level(0), slant((f.w - weight, f.sy), (foot, f.h), weight))


def _eight(f: Frame) -> Shape:
    inset = f.step if f.h >= 20 else 0
    return union(f.ring(0, f.waist + f.sy, inset), f.ring(f.waist, f.h))


def _nine(f: Frame) -> Shape:
    return turned(_six(f), f.w, f.h)


NUMERALS: dict[str, Callable[[Frame], Shape]] = dict(
    zip(
        "0123456789",
        (_zero, _one, _two, _three, _four, _five, _six, _seven, _eight, _nine),
        strict=True,
    )
)
