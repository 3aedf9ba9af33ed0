"""Plane shapes as yes-or-no functions, and how one is laid on a grid of pixels. No letters here.

A unit is the width of a terminal cell, which is half its height, so units are square on the glass.
"""

from __future__ import annotations

from collections.abc import Callable

Shape = Callable[[float, float], bool]
Point = tuple[float, float]
Bitmap = tuple[tuple[bool, ...], ...]
#: The width of a pixel; it is one unit high.
STEP = 0.5


def snap(value: float) -> float:
    """Give the nearest whole number of pixels."""
    return round(value / STEP) * STEP


def box(x0: float, y0: float, x1: float, y1: float) -> Shape:
    return lambda x, y: x0 <= x < x1 and y0 <= y < y1


def rounded(x0: float, y0: float, x1: float, y1: float, rx: float, ry: float) -> Shape:
    """A rectangle whose corners are quarter ellipses, as large as there is room for."""
    rx, ry = min(rx, (x1 - x0) / 2), min(ry, (y1 - y0) / 2)
    if rx <= 0 or ry <= 0:
        return box(x0, y0, x1, y1)

    def inside(x: float, y: float) -> bool:
        if not (x0 <= x < x1 and y0 <= y < y1):
            return False
        dx = max(x0 + rx - x, x - (x1 - rx), 0) / rx
        dy = max(y0 + ry - y, y - (y1 - ry), 0) / ry
        return dx * dx + dy * dy <= 1

    return inside


def polygon(*points: Point) -> Shape:
    """A polygon, by the even-odd rule."""
    edges = list(zip(points, points[1:] + points[:1], strict=True))

    def inside(x: float, y: float) -> bool:
        odd = False
        for (ax, ay), (bx, by) in edges:
            if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
                odd = not odd
        return odd

    return inside


def slant(top: Point, bottom: Point, weight: float) -> Shape:
    """A slanted stroke between two level edges as long as `weight`; each point is the left end of one."""
    (ax, ay), (bx, by) = top, bottom
    return polygon((ax, ay), (ax + weight, ay), (bx + weight, by), (bx, by))


def union(*shapes: Shape) -> Shape:
    return lambda x, y: any(shape(x, y) for shape in shapes)


def cut(shape: Shape, *holes: Shape) -> Shape:
    return lambda x, y: shape(x, y) and not any(hole(x, y) for hole in holes)


def turned(shape: Shape, width: float, height: float) -> Shape:
    # The hair's breadth keeps the open edges of boxes on the same side after turning.
    return lambda x, y: shape(width - x - 1e-9, height - y - 1e-9)


def raster(shape: Shape, width: float, height: int) -> Bitmap:
    """Lay the shape on pixels: on where most of it is in."""
    columns = round(width / STEP)
    thirds = (1 / 6, 1 / 2, 5 / 6)
    # The corners are shared between pixels; where they and the middle agree, so does the rest.
    corners = [[shape(c * STEP, r) for c in range(columns + 1)] for r in range(height + 1)]

    def on(column: int, row: int) -> bool:
        middle = shape((column + 0.5) * STEP, row + 0.5)
        upper, lower = corners[row], corners[row + 1]
        if upper[column] == upper[column + 1] == lower[column] == lower[column + 1] == middle:
            return middle
        hits = sum(
            shape((column + across) * STEP, row + down) for across in thirds for down in thirds
        )
        return hits >= 5

    return tuple(tuple(on(c, r) for c in range(columns)) for r in range(height))
