"""The ten figures, all of the same width, so that a countdown stands still."""

from __future__ import annotations

from collections.abc import Callable

from booth.widgets.lettering.frame import Frame
from booth.widgets.lettering.shapes import (
    STEP,
    Shape,
    box,
    cut,
    polygon,
    slant,
    snap,
    turned,
    union,
)


def _one(f: Frame) -> Shape:
    stem = snap((f.w - f.sx) / 2 + f.w * 0.08)
    flag = snap(f.w * 0.3)
    if not f.slanted:
        return union(f.upright(stem), box(stem - STEP * 2, 0, stem, f.sy))
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
        upper, lower = f.bowls()
        return union(
            cut(upper, box(0, f.sy, f.sx, f.waist)),
            cut(lower, box(f.w - f.sx, f.waist + f.sy, f.w, f.h - f.sy)),
            f.foot(),
        )
    turn = f.radius + f.h * 0.06
    foot = f.h - f.sy
    weight = f.lean(f.w - f.sx, foot - turn)
    arc = cut(f.ring(), box(0, f.h * 0.29, f.w - f.sx, f.h), box(0, turn, f.w, f.h))
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
    reach = f.w * 0.42 if f.slanted else f.sx
    return cut(union(*f.bowls()), box(0, f.hook, reach, f.h - f.hook))


def _four(f: Frame) -> Shape:
    if not f.slanted:
        return union(f.upright(0, 0, f.waist + f.sy), f.upright(f.w - f.sx), f.level(f.waist))
    bar = round(f.h * 0.64)
    stem = snap(f.w * 0.94 - f.sx)
    # A shade lighter than its fellows, or the counter closes.
    weight = f.lean(stem, bar) * 0.88
    top = stem + f.sx - weight
    return union(f.upright(stem), slant((top, 0), (0, bar), weight), f.level(bar))


def _five(f: Frame) -> Shape:
    shoulder = f.waist if not f.slanted else round(f.h * 0.38)
    neck = shoulder + f.sy
    bowl = union(f.ring(shoulder), box(0, shoulder, f.w / 2, neck))
    body = cut(bowl, box(0, neck, f.w * 0.42, f.h - f.hook))
    return union(body, f.level(0, 0, f.w - STEP * f.slanted), f.upright(0, 0, neck))


def _six(f: Frame) -> Shape:
    shoulder = f.waist if not f.slanted else round(f.h * 0.4)
    return union(f.ring(shoulder), cut(f.ring(), box(f.w / 2, f.hook, f.w, f.h)))


def _seven(f: Frame) -> Shape:
    if not f.slanted:
        return union(f.level(0), f.upright(f.w - f.sx))
    foot = snap(f.w * 0.2)
    weight = f.lean(f.w - f.sx - foot, f.h - f.sy)
    return union(f.level(0), slant((f.w - weight, f.sy), (foot, f.h), weight))


def _eight(f: Frame) -> Shape:
    inset = STEP if f.h >= 20 else 0
    return union(f.ring(0, f.waist + f.sy, inset), f.ring(f.waist))


NUMERALS: dict[str, tuple[Callable[[Frame], Shape], float]] = {
    "0": (lambda f: f.ring(), 1.0),
    "1": (_one, 1.0),
    "2": (_two, 1.0),
    "3": (_three, 1.0),
    "4": (_four, 1.0),
    "5": (_five, 1.0),
    "6": (_six, 1.0),
    "7": (_seven, 1.0),
    "8": (_eight, 1.0),
    "9": (lambda f: turned(_six(f), f.w, f.h), 1.0),
}
