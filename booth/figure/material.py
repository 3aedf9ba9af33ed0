"""Subjects: areas, coverage, the material a job needs."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, item_of, several
from booth.figure.film import EFFICIENCY
from booth.figure.readers import YES_NO, Whole
from booth.figure.subject import Argument, Given, Subject, may, need
from booth.trade.film import coverage, part_area

_LOSS = may("loss", shapes.SHARE, "share lost before the gun", default="0%")
_SIDES = may("sides", Whole(), "sides painted, 1 or 2", default="1")
_INSIDE = may("inside", YES_NO, "the inside as well", default="no")


def _side(name: str) -> Argument:
    return need(name, shapes.PART, f"{name} of the part")


def _area(value: float, rule: str) -> Answer:
    return exact("area", value, shapes.AREA, rule)


def _coverage(given: Given) -> Answer:
    full = coverage.theoretical_coverage_m2_l(given["dry"], given["solids"])
    real = coverage.practical_coverage_m2_l(
        given["dry"], given["solids"], given["efficiency"], given["loss"]
    )
    items = (
        Item("nothing lost", full, shapes.SPREADING),
        item_of("with losses", real, shapes.SPREADING),
    )
    return several(real.rule, items)


def _material(given: Given) -> Answer:
    found = coverage.material_for_area_ml(
        given["area"],
        given["wet"],
        given["coats"],
        given["efficiency"],
        given["loss"],
        **given.some(left_ml="left"),
    )
    return figure("ready to spray", found, shapes.VOLUME)


def _fills(given: Given) -> Answer:
    found = coverage.cups_to_fill(given["material"], given["cup"])
    items = (
        Item("fills", found.cups, shapes.COUNT),
        Item("last fill", found.last_ml, shapes.VOLUME),
    )
    return several("division with remainder", items)


SUBJECTS = (
    Subject(
        "coverage",
        "how far a coating goes",
        (
            need("dry", shapes.FILM, "dry film"),
            need("solids", shapes.SHARE, "solids by volume of what is measured out"),
            EFFICIENCY,
            _LOSS,
        ),
        _coverage,
        (coverage.theoretical_coverage_m2_l, coverage.practical_coverage_m2_l),
        ("5mil 65% efficiency=100%", "1.5mil 52% efficiency=30%", "1.5mil 52%"),
        also=(coverage.practical_coverage_m2_l,),
    ),
    Subject(
        "material",
        "the ready-to-spray material for an area",
        (
            need("area", shapes.AREA, "of all parts"),
            need("wet", shapes.FILM, "wet film of one coat"),
            need("coats", Whole(), "number of coats"),
            EFFICIENCY,
            _LOSS,
            may("left", shapes.VOLUME, "what stays in cup and gun"),
        ),
        _material,
        (coverage.material_for_area_ml,),
        ("2m2 50um 2 efficiency=50%", "32ft2 2mil 2 left=2oz"),
    ),
    Subject(
        "fills",
        "how often the cup has to be filled",
        (
            need("material", shapes.VOLUME, "to be sprayed"),
            need("cup", shapes.VOLUME, "what the cup is filled to"),
        ),
        _fills,
        (coverage.cups_to_fill,),
        ("1500ml 600ml",),
    ),
    Subject(
        "area-rectangle",
        "area of a flat rectangle",
        (_side("length"), _side("width"), _SIDES),
        lambda given: _area(
            part_area.rectangle_area_m2(given["length"], given["width"], given["sides"]),
            "length x width x sides",
        ),
        (part_area.rectangle_area_m2,),
        ("2m 0.5m sides=2",),
    ),
    Subject(
        "area-sheet",
        "area of a sheet or board, edges with it",
        (
            _side("length"),
            _side("width"),
            need("thickness", shapes.LENGTH, "of the sheet; 0 leaves the edges out"),
            may("sides", Whole(), "faces painted, 1 or 2", default="2"),
        ),
        lambda given: _area(
            part_area.sheet_area_m2(
                given["length"], given["width"], given["thickness"], given["sides"]
            ),
            "faces + 2 (length + width) thickness",
        ),
        (part_area.sheet_area_m2,),
        ("2m 0.8m 40mm",),
    ),
    Subject(
        "area-box",
        "area of a closed box",
        (_side("length"), _side("width"), _side("height"), _INSIDE),
        lambda given: _area(
            part_area.box_area_m2(
                given["length"], given["width"], given["height"], given["inside"]
            ),
            "2 (lw + lh + wh)",
        ),
        (part_area.box_area_m2,),
        ("1m 1m 1m",),
    ),
    Subject(
        "area-circle",
        "area of a flat disc",
        (_side("diameter"), _SIDES),
        lambda given: _area(
            part_area.circle_area_m2(given["diameter"], given["sides"]), "pi d^2 / 4 x sides"
        ),
        (part_area.circle_area_m2,),
        ("1m",),
    ),
    Subject(
        "area-cylinder",
        "area of a round bar, pipe, drum or can",
        (
            _side("diameter"),
            _side("length"),
            may("ends", Whole(), "ends painted, 0 to 2", default="0"),
            _INSIDE,
        ),
        lambda given: _area(
            part_area.cylinder_area_m2(
                given["diameter"], given["length"], given["ends"], given["inside"]
            ),
            "pi d l + ends x pi d^2 / 4",
        ),
        (part_area.cylinder_area_m2,),
        ("100mm 1m",),
    ),
)
