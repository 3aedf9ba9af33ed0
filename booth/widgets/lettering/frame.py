"""The measures that all figures of one size share: weights, waist and bowls."""

from __future__ import annotations

import math

import msgspec

from booth.widgets.lettering.shapes import Shape, box, cut, rounded, union

# Below this height [units] there is no room for slanted strokes: figures are built square.
SLANTED_FROM = 13


def snap(value: float, step: float) -> float:
    return round(value / step) * step


class Frame(msgspec.Struct, frozen=True):
    """One glyph's box, `w` x `h` units, and its weights.

    sx is the weight of an upright, sy of a level stroke; step is the width of a pixel.
    """

    w: float
    h: int
    sx: float
    sy: int
    step: float

    @property
    def waist(self) -> int:
        """Top of the level stroke in the middle; the lower half gets the odd pixel."""
        return (self.h - self.sy) // 2

    @property
    def slanted(self) -> bool:
        return self.h >= SLANTED_FROM

    @property
    def radius(self) -> float:
        return min(self.w / 2, self.h * 0.32)

    def wide(self, factor: float) -> Frame:
        """The same frame with another width, on the grid, never narrower than its uprights need."""
        width = max(snap(self.w * factor, self.step), self.sx)
        return Frame(width, self.h, self.sx, self.sy, self.step)

    def ring(self, y0: float, y1: float, inset: float = 0) -> Shape:
        """A closed bowl from y0 to y1."""
        radius = min(self.radius, (y1 - y0) / 2)
        x0, x1 = inset, self.w - inset
        # The hollow keeps a little of a corner even where the weight takes the whole radius.
        rx, ry = max(radius - self.sx, self.step), max(radius - self.sy, 0.5)
        if not self.slanted:
            rx = ry = 0
        outer = rounded(x0, y0, x1, y1, radius, radius)
        hollow = rounded(x0 + self.sx, y0 + self.sy, x1 - self.sx, y1 - self.sy, rx, ry)
        return cut(outer, hollow)

    def level(self, y: float, x0: float = 0, x1: float | None = None) -> Shape:
        return box(x0, y, self.w if x1 is None else x1, y + self.sy)

    def upright(self, x: float, y0: float = 0, y1: float | None = None) -> Shape:
        return box(x, y0, x + self.sx, self.h if y1 is None else y1)

    def lean(self, run: float, rise: float) -> float:
        """The level weight of a slanted stroke that makes it look as heavy as an upright."""
        if rise <= 0:
            return self.sx
        return self.sx * min(math.hypot(1.0, run / rise), 1.6)

    def squared(self, ring: Shape, y0: float, y1: float) -> Shape:
        """A bowl with square corners on the left: the right half of B, D, P and R."""
        half = self.w / 2
        return union(
            ring,
            self.upright(0, y0, y1),
            box(0, y0, half, y0 + self.sy),
            box(0, y1 - self.sy, half, y1),
        )
