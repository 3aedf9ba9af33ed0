"""The area that is being typed, and what is said of it. Pure."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import number, word
from booth.forms.form import Values
from booth.instruments.figures import figure
from booth.job import material
from booth.trade.result import BadInput
from booth.units import Kind, show, shown_unit
from booth.units.sentences import in_units
from booth.words.shown import Readout

MM_PER_M = 1000.0
IN_METRES = ("length", "width", "height")


def this_area(values: Values) -> float | str:
    """The area that the rows hold [m2], all alike together; or what is wrong with it, if it is."""
    shape, count = word(values, "form"), count_of(values)
    if shape == "area":
        known = number(values, "area")
        return "" if known is None else known * count
    mm = {}
    for key in material.DIMENSIONS.get(shape, ()):
        given = number(values, key)
        if given is None:
            return ""
        mm[key] = given * MM_PER_M if key in IN_METRES else given
    sides, ends = int(word(values, "sides") or 1), int(word(values, "ends") or 0)
    try:
        return material.area_of(shape, mm, sides, ends) * count
    except BadInput as fault:
        return fault.sentence


def count_of(values: Values) -> int:
    """How many are alike."""
    return max(1, round(number(values, "count") or 1))


def area_readout(context: Context, values: Values) -> Readout:
    square_m = this_area(values)
    if isinstance(square_m, str):
        unit, told = (
            shown_unit(Kind.AREA, context.system),
            (in_units(square_m, context.system),) if square_m else (),
        )
        told = told or ("Type its sizes.",)
        return Readout("", unit, "area of this part", word="SIZES?", lines=told, whose="AREA")
    many = count_of(values)
    total = show(material.total_area_m2(context.job) + square_m, Kind.AREA, context.system)
    label = "area of this part" if many == 1 else f"area of these {many}"
    lines = (f"Once it is added: in all {total}.",)
    return figure(context, square_m, Kind.AREA, label, lines=lines, whose="AREA")
