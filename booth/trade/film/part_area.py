"""Areas of parts as a painter would measure them with a tape: lengths in mm, areas in m2."""

from __future__ import annotations

import math

from booth.trade.result import BadInput, require

MM2_PER_M2 = 1e6


def _sides(sides: int) -> int:
    if sides not in (1, 2) or isinstance(sides, bool):
        raise BadInput(f"A flat part is painted on 1 or 2 sides; {sides!r} was given.")
    return sides


def rectangle_area_m2(length_mm: float, width_mm: float, sides: int = 1) -> float:
    """Give the area of a flat rectangle.

    Args:
        length_mm: length [mm], 0 or more.
        width_mm: width [mm], 0 or more.
        sides: 1 or 2 sides painted.

    Returns: area [m2]: ``length x width x sides``.
    Range: flat parts; edges are left out (see sheet_area_m2).
    Source: Euclid, Elements I (area of a rectangle).

    >>> rectangle_area_m2(2000.0, 500.0, sides=2)
    2.0
    """
    require("The length", length_mm, 0.0, unit="mm")
    require("The width", width_mm, 0.0, unit="mm")
    return length_mm * width_mm * _sides(sides) / MM2_PER_M2


def circle_area_m2(diameter_mm: float, sides: int = 1) -> float:
    """Give the area of a flat disc.

    Args:
        diameter_mm: diameter [mm], 0 or more.
        sides: 1 or 2 sides painted.

    Returns: area [m2]: ``pi d^2 / 4 x sides``.
    Range: flat discs; the edge is left out.
    Source: Archimedes, Measurement of a Circle, proposition 1.

    >>> round(circle_area_m2(1000.0), 4)
    0.7854
    """
    require("The diameter", diameter_mm, 0.0, unit="mm")
    return math.pi * diameter_mm**2 / 4.0 * _sides(sides) / MM2_PER_M2


def cylinder_area_m2(
    diameter_mm: float, length_mm: float, ends: int = 0, inside: bool = False
) -> float:
    """Give the area of a round bar, pipe, drum or can.

    Args:
        diameter_mm: outer diameter [mm], 0 or more.
        length_mm: length [mm], 0 or more.
        ends: 0 (open pipe), 1 (open can) or 2 (closed drum, bar) ends painted, each a full disc.
        inside: paint the inside as well, counted as large as the outside (thin wall).

    Returns: area [m2]: ``pi d l + ends x pi d^2 / 4``.
    Range: straight round parts. With `inside` a thick wall is counted too large.
    Source: Archimedes, On the Sphere and Cylinder I, proposition 13.

    >>> round(cylinder_area_m2(100.0, 1000.0), 4)
    0.3142
    """
    require("The diameter", diameter_mm, 0.0, unit="mm")
    require("The length", length_mm, 0.0, unit="mm")
    if ends not in (0, 1, 2) or isinstance(ends, bool):
        raise BadInput(f"A cylinder has 0, 1 or 2 ends to paint; {ends!r} was given.")
    outside = math.pi * diameter_mm * length_mm + ends * math.pi * diameter_mm**2 / 4.0
    return outside * (2.0 if inside else 1.0) / MM2_PER_M2


def sheet_area_m2(
    length_mm: float, width_mm: float, thickness_mm: float = 0.0, sides: int = 2
) -> float:
    """Give the area of a sheet or board, its four edges with it.

    Args:
        length_mm: length [mm], 0 or more.
        width_mm: width [mm], 0 or more.
        thickness_mm: thickness [mm], 0 or more; 0 leaves the edges out.
        sides: 1 or 2 faces painted.

    Returns: area [m2]: ``faces + 2 (length + width) thickness``.
    Range: flat sheets, solid edges.
    Source: Euclid, Elements I (sum of rectangles).

    >>> round(sheet_area_m2(2000.0, 800.0, 40.0), 3)  # a door, both faces and all edges
    3.424
    """
    require("The thickness", thickness_mm, 0.0, unit="mm")
    faces = rectangle_area_m2(length_mm, width_mm, sides)
    return faces + 2.0 * (length_mm + width_mm) * thickness_mm / MM2_PER_M2


def box_area_m2(length_mm: float, width_mm: float, height_mm: float, inside: bool = False) -> float:
    """Give the area of a closed box or cabinet, all six faces.

    Args:
        length_mm: length [mm], 0 or more.
        width_mm: width [mm], 0 or more.
        height_mm: height [mm], 0 or more.
        inside: paint the inside as well, counted as large as the outside (thin wall).

    Returns: area [m2]: ``2 (l w + l h + w h)``.
    Range: rectangular boxes. With `inside` a thick wall is counted too large.
    Source: Euclid, Elements XI (sum of rectangles).

    >>> box_area_m2(1000.0, 1000.0, 1000.0)
    6.0
    """
    require("The length", length_mm, 0.0, unit="mm")
    require("The width", width_mm, 0.0, unit="mm")
    require("The height", height_mm, 0.0, unit="mm")
    faces = 2.0 * (length_mm * width_mm + length_mm * height_mm + width_mm * height_mm)
    return faces * (2.0 if inside else 1.0) / MM2_PER_M2
