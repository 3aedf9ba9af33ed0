"""Areas against pint, numerical integration and solids whose area is known."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from booth.trade.film import part_area
from booth.trade.result import BadInput
from tests.reference import UNITS
from tests.trade.outside import Kind, outside

length = st.floats(1, 5000)


@outside(
    part_area.rectangle_area_m2,
    part_area.sheet_area_m2,
    kind=Kind.LIBRARY,
    source="pint: a sheet of 4 x 8 ft is 32 ft2",
)
def test_a_sheet_of_4_by_8_ft() -> None:
    one_side = (32 * UNITS.ft**2).to("m^2").magnitude
    assert part_area.rectangle_area_m2(4 * 304.8, 8 * 304.8) == pytest.approx(one_side, rel=1e-12)
    assert part_area.rectangle_area_m2(4 * 304.8, 8 * 304.8, 2) == pytest.approx(
        2 * one_side, rel=1e-12
    )
    edges = (24 * UNITS.ft * 0.75 * UNITS.inch).to("m^2").magnitude  # 3/4 in plywood, 24 ft round
    assert part_area.sheet_area_m2(4 * 304.8, 8 * 304.8, 0.75 * 25.4) == pytest.approx(
        2 * one_side + edges, rel=1e-12
    )


@outside(
    part_area.circle_area_m2, kind=Kind.LIBRARY, source="scipy.integrate.quad of the half circle"
)
@given(length)
def test_a_disc_is_the_integral_of_its_chords(diameter: float) -> None:
    r = diameter / 2
    chords, _ = integrate.quad(
        lambda angle: 2 * (r * math.cos(angle)) ** 2, -math.pi / 2, math.pi / 2
    )
    assert part_area.circle_area_m2(diameter) == pytest.approx(chords / 1e6, rel=1e-9)
    assert part_area.circle_area_m2(diameter, 2) == pytest.approx(2 * chords / 1e6, rel=1e-9)


@outside(
    part_area.cylinder_area_m2,
    kind=Kind.THEOREM,
    source="Archimedes, On the Sphere and Cylinder I: a cylinder as high as wide has 3/2 of the "
    "sphere in it",
)
@given(length)
def test_archimedes_cylinder(diameter: float) -> None:
    sphere = math.pi * diameter**2 / 1e6
    assert part_area.cylinder_area_m2(diameter, diameter, ends=2) == pytest.approx(
        1.5 * sphere, rel=1e-12
    )
    assert part_area.cylinder_area_m2(diameter, diameter) == pytest.approx(sphere, rel=1e-12)
    assert part_area.cylinder_area_m2(diameter, diameter, ends=1) == pytest.approx(1.25 * sphere)
    assert part_area.cylinder_area_m2(diameter, diameter, inside=True) == pytest.approx(2 * sphere)


@outside(
    part_area.box_area_m2,
    kind=Kind.THEOREM,
    source="Euclid: a cube has six equal squares; six sheets make a box",
)
@given(length, length, length)
def test_a_box_is_its_six_faces(a: float, b: float, c: float) -> None:
    faces = sum(part_area.rectangle_area_m2(*pair, sides=2) for pair in ((a, b), (a, c), (b, c)))
    assert part_area.box_area_m2(a, b, c) == pytest.approx(faces, rel=1e-12)
    assert part_area.box_area_m2(a, a, a) == pytest.approx(6 * a * a / 1e6, rel=1e-12)
    assert part_area.box_area_m2(a, b, c, inside=True) == pytest.approx(2 * faces, rel=1e-12)
    # A sheet with its edges is a thin box.
    assert part_area.sheet_area_m2(a, b, c) == pytest.approx(faces, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: part_area.rectangle_area_m2(-1, 2), "length must be 0 mm or more"),
        (lambda: part_area.rectangle_area_m2(1, 2, 3), "1 or 2 sides; 3 was given"),
        (lambda: part_area.circle_area_m2(math.inf), "finite"),
        (lambda: part_area.cylinder_area_m2(1, 1, 3), "0, 1 or 2 ends"),
        (lambda: part_area.sheet_area_m2(1, 1, -1), "thickness must be 0 mm or more"),
        (lambda: part_area.box_area_m2(1, 1, math.nan), "finite"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
