"""The measures that all figures of one size share: weights, waist and bowls."""

from __future__ import annotations

import math

import msgspec

from booth.widgets.lettering.shapes import STEP, Shape, box, cut, rounded, snap, union

# Below this height [units] there is no room for slanted strokes: figures are built square.
SLANTED_FROM = 13
WEIGHT_UPRIGHT, WEIGHT_LEVEL = 0.18, 0.155


class Frame(msgspec.Struct, frozen=True):
    """One glyph's box, `w` x `h` units; sx: the weight of an upright, sy: of a level stroke."""

    w: float
    h: int
    sx: float
    sy: int

    @classmethod
    def of_figure(cls, width: float, height: int) -> Frame:
        """The frame of a figure, and so the measures of a size."""
        upright = max(1.0, snap(min(height * WEIGHT_UPRIGHT, width * 0.33)))
        return cls(width, height, upright, _level_weight(height))

    @property
    def gap(self) -> float:
        return max(1.0, snap(self.sx * 0.75))

    @property
    def waist(self) -> int:
        """Top of the level stroke in the middle; the lower half gets the odd pixel."""
        return (self.h - self.sy) // 2

    @property
    def slanted(self) -> bool:
        return self.h >= SLANTED_FROM

    @property
    def hook(self) -> float:
        """How far the end of an open bowl comes down."""
        return self.h * 0.27 if self.slanted else self.sy

    @property
    def radius(self) -> float:
        return min(self.w / 2, self.h * 0.32)

    def wide(self, width: float) -> Frame:
        """The same frame with another width, on the grid, never narrower than its uprights need."""
        return Frame(max(snap(width), self.sx), self.h, self.sx, self.sy)

    def ring(self, y0: float = 0, y1: float | None = None, inset: float = 0) -> Shape:
        """A closed bowl from y0 to y1, from top to bottom where they are not given."""
        y1 = self.h if y1 is None else y1
        radius = min(self.radius, (y1 - y0) / 2)
        x0, x1 = inset, self.w - inset
        # The hollow keeps a little of a corner even where the weight takes the whole radius.
        rx, ry = max(radius - self.sx, STEP), max(radius - self.sy, 0.5)
        if not self.slanted:
            rx = ry = 0
        outer = rounded(x0, y0, x1, y1, radius, radius)
        hollow = rounded(x0 + self.sx, y0 + self.sy, x1 - self.sx, y1 - self.sy, rx, ry)
        return cut(outer, hollow)

    def bowls(self) -> tuple[Shape, Shape]:
        """The upper and the lower one, which share the level stroke of the waist."""
        return self.ring(0, self.waist + self.sy), self.ring(self.waist)

    def level(self, y: float, x0: float = 0, x1: float | None = None) -> Shape:
        return box(x0, y, self.w if x1 is None else x1, y + self.sy)

    def foot(self) -> Shape:
        return self.level(self.h - self.sy)

    def upright(self, x: float, y0: float = 0, y1: float | None = None) -> Shape:
        return box(x, y0, x + self.sx, self.h if y1 is None else y1)

    def uprights(self) -> Shape:
        """One at each side."""
        return union(self.upright(0), self.upright(self.w - self.sx))

    def lean(self, run: float, rise: float) -> float:
        """The level weight of a slanted stroke that makes it look as heavy as an upright."""
        if rise <= 0:
            return self.sx
        return self.sx * min(math.hypot(1.0, run / rise), 1.6)

    def squared(self, y0: float, y1: float) -> Shape:
        """A bowl with square corners on the left: the right half of B, D, P and R."""
        half = self.w / 2
        return union(
            self.ring(y0, y1),
            self.upright(0, y0, y1),
            box(0, y0, half, y0 + self.sy),
            box(0, y1 - self.sy, half, y1),
        )


def _level_weight(height: int) -> int:
    """The weight of level strokes: near its share of the height, the counters open and even."""

    def cost(weight: int) -> float:
        # An odd remainder makes the two counters uneven: worth half a pixel of weight.
        return abs(weight - height * WEIGHT_LEVEL) + 0.3 * ((height - 3 * weight) % 2)

    return min(range(1, max(height // 5, 1) + 1), key=cost)
