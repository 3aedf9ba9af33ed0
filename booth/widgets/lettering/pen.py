"""The pen of a size, and the pixels that its strokes turn on. Knows no characters.

A unit is the width of a terminal cell, which is half its height, so units are square on the glass.
Measures are put on the grid of quarter cells before anything is drawn on them: strokes stay even.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise, product
from typing import NamedTuple

Point = tuple[float, float]
Bitmap = tuple[tuple[bool, ...], ...]
#: A box of pixels to turn on, from the upper left to the lower right, of them those that are inside.
Patch = tuple[float, float, float, float, Callable[[float, float], bool] | None]
#: The width of a pixel; it is one unit high.
STEP = 0.5
#: The nine points of a pixel that are asked, and how many of them are most.
POINTS = tuple(product((1 / 6, 1 / 2, 5 / 6), repeat=2))
MOST = 5
#: The last place of the grid; the middle one lies on the waist.
LAST, WAIST = 8, 4
#: Below this height [units] there is no room for slanted strokes: figures are built square.
SLANTED_FROM = 13
WEIGHT_UPRIGHT, WEIGHT_LEVEL = 0.18, 0.155
#: A slanted stroke is at most so much wider than an upright.
MOST_LEAN = 1.6


def snap(value: float) -> float:
    """Give the nearest whole number of pixels."""
    return round(value / STEP) * STEP


class Pen(NamedTuple):
    """One glyph's box, `w` x `h` units; sx: the weight of an upright, sy: of a level stroke."""

    w: float
    h: int
    sx: float
    sy: int

    @classmethod
    def of_figure(cls, width: float, height: int) -> Pen:
        """The pen of a figure, and so the measures of a size."""
        upright = max(1.0, snap(min(height * WEIGHT_UPRIGHT, width * 0.33)))
        return cls(width, height, upright, _level_weight(height))

    @property
    def gap(self) -> float:
        return max(1.0, snap(self.sx * 0.75))

    @property
    def slanted(self) -> bool:
        return self.h >= SLANTED_FROM

    def wide(self, width: float) -> Pen:
        """The same pen for another width, on the grid, never narrower than itself."""
        return self._replace(w=max(snap(width), self.sx))

    def high(self, height: int) -> Pen:
        """The same pen for another height."""
        return self._replace(h=height, sy=_level_weight(height))

    def draw(self, strokes: str) -> Bitmap:
        """The pixels of some strokes: on where most of one is in."""
        rows = [[False] * round(self.w / STEP) for _ in range(self.h)]
        for x0, y0, x1, y1, inside in (p for s in strokes.split(",") for p in self._patches(s)):
            for y in range(math.floor(y0), math.ceil(y1)):
                for x in range(math.floor(x0 / STEP), math.ceil(x1 / STEP)):
                    rows[y][x] = rows[y][x] or inside is None or _mostly(inside, x, y)
        return tuple(map(tuple, rows))

    def _patches(self, stroke: str) -> Iterator[Patch]:
        words = stroke.split()
        places = [(int(word[-2]), int(word[-1])) for word in words]
        if len(places) == 1:  # a point, as high as it is wide
            tall = max(self.sy, round(self.sx))
            top = round(places[0][1] / LAST * (self.h - tall))
            yield 0, top, self.sx, top + tall, None
        elif stroke.strip().startswith("#"):
            corners = [(x / LAST * self.w, y / LAST * self.h) for x, y in places]
            yield 0, 0, self.w, self.h, _within(corners)
        else:
            yield from self._line(places, [word.startswith("~") for word in words])

    def _line(self, places: Sequence[tuple[int, int]], turns: Sequence[bool]) -> Iterator[Patch]:
        points = [self._at(*place) for place in places]
        radii = [self._radius(points, turns, n) if turn else 0.0 for n, turn in enumerate(turns)]
        for n, ((ax, ay), (bx, by)) in enumerate(pairwise(points)):
            if ax != bx and ay != by:
                yield self._slant(places[n], places[n + 1])
                continue
            (x0, y0, first), (x1, y1, last) = sorted([(ax, ay, radii[n]), (bx, by, radii[n + 1])])
            x1, y1 = x1 + self.sx, y1 + self.sy
            if ay == by:
                yield x0 + first, y0, x1 - last, y1, None
            else:
                yield x0, y0 + first, x1, y1 - last, None
        for n, radius in enumerate(radii):
            if radius:
                yield self._corner(points[max(n - 1, 0) : n + 2], points[n], radius)

    def _at(self, column: int, row: int) -> Point:
        """Where the pen stands at a place: its upper left corner."""
        room = self.h - self.sy
        level = room // 2 if row == WAIST else round(row / LAST * room)
        return snap(column / LAST * (self.w - self.sx)), level

    def _radius(self, points: Sequence[Point], turns: Sequence[bool], n: int) -> float:
        """How round a corner is: two corners of one leg share its room."""
        radius = min(self.w / 2, self.h * 0.32)
        for (x, y), turn in zip(
            points[max(n - 1, 0) : n + 2], turns[max(n - 1, 0) :], strict=False
        ):
            across, down = abs(x - points[n][0]), abs(y - points[n][1])
            if turn and across + down:
                radius = min(radius, (across + self.sx if across else down + self.sy) / 2)
        return radius

    def _corner(self, points: Sequence[Point], at: Point, radius: float) -> Patch:
        """A quarter of a bowl, about the outer corner of the legs from `at` to its neighbours."""
        xs, ys = zip(*points, strict=True)
        left, top, end, foot = min(xs), min(ys), max(xs) + self.sx, max(ys) + self.sy
        right = at[0] == left
        down = at[1] == top if max(ys) > top else top < self.h / 2
        x0, y0 = left if right else end, top if down else foot
        # The hollow keeps a little of a corner even where the weight takes the whole radius.
        rx, ry = max(radius - self.sx, STEP), max(radius - self.sy, 0.5)
        if not self.slanted:
            rx = ry = 0
        across, tall = max(radius, self.sx + rx), max(radius, self.sy + ry)

        def inside(x: float, y: float) -> bool:
            u, v = x - x0 if right else x0 - x, y - y0 if down else y0 - y
            if math.hypot(max(radius - u, 0), max(radius - v, 0)) > radius:
                return False
            u, v = self.sx + rx - u, self.sy + ry - v
            return u > rx or v > ry or (u > 0 and v > 0 and math.hypot(u / rx, v / ry) > 1)

        # Where a leg is shorter than the quarter, that ends with it.
        left, end = (left, min(end, x0 + across)) if right else (max(left, x0 - across), end)
        top, foot = (top, min(foot, y0 + tall)) if down else (max(top, y0 - tall), foot)
        return left, top, end, foot, inside

    def _slant(self, one: tuple[int, int], other: tuple[int, int]) -> Patch:
        """A slanted stroke between two level edges, as heavy as an upright looks."""
        (ax, top), (bx, bottom) = sorted([one, other], key=lambda place: place[1])
        y0, y1 = self._at(ax, top)[1], self._at(bx, bottom)[1] + self.sy
        run = (self.w - self.sx) * abs(ax - bx) / LAST
        weight = min(self.sx * min(math.hypot(1, run / (y1 - y0)), MOST_LEAN), self.w)
        x0, x1 = (place / LAST * (self.w - weight) for place in (ax, bx))
        corners = [(x0, y0), (x0 + weight, y0), (x1 + weight, y1), (x1, y1)]
        return min(x0, x1), y0, max(x0, x1) + weight, y1, _within(corners)


def _mostly(inside: Callable[[float, float], bool], x: int, y: int) -> bool:
    """Whether most of the points of a pixel are inside; no more of them are asked than needed."""
    found = 0
    for asked, (a, b) in enumerate(POINTS, 1):
        found += inside((x + a) * STEP, y + b)
        if found >= MOST or asked - found >= MOST:
            break
    return found >= MOST


def _within(corners: Sequence[Point]) -> Callable[[float, float], bool]:
    """Whether a point is inside a polygon, by the even-odd rule."""
    edges = list(zip(corners, [*corners[1:], corners[0]], strict=True))

    def inside(x: float, y: float) -> bool:
        odd = False
        for (ax, ay), (bx, by) in edges:
            if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
                odd = not odd
        return odd

    return inside


def _level_weight(height: int) -> int:
    """The weight of level strokes: near its share of the height, the counters open and even."""

    def cost(weight: int) -> float:
        # An odd remainder makes the two counters uneven: worth half a pixel of weight.
        return abs(weight - height * WEIGHT_LEVEL) + 0.3 * ((height - 3 * weight) % 2)

    return min(range(1, max(height // 5, 1) + 1), key=cost)
