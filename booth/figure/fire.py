"""Subjects: solvents, air against fire, the face of a booth. Each answer carries its caution."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, item_of, refused, several
from booth.figure.readers import WORD, Choice, Group, Named, Quantity
from booth.figure.subject import Given, Subject, may, need
from booth.trade.result import Outside
from booth.trade.ventilation import booth_face, dilution, solvents

_SOLVENT = Named(solvents.solvent, "a solvent by its name (see the subject solvents)")
_BLEND = need(
    "solvents",
    Group((("solvent", _SOLVENT), ("share", Quantity(shapes.SHARE))), 2),
    "each with its share of the solvent by volume; shares make 100 %",
    many=True,
)
_VAPOUR = need("vapour", shapes.PER_LIQUID, "vapour at 70 F from the liquid")
_LEL = need("lel", shapes.PERCENT, "lower explosive limit, % by volume of air")
_STAY = may("stay", shapes.SHARE, "share of the limit to stay at, a quarter at most", default="25%")
_DENSITY = need("density", shapes.DENSITY, "of the liquid")
_MOLAR = need("molar-mass", shapes.MOLAR_MASS, "of the liquid")
_FACE = need("face", shapes.AREA, "open area of the face")
_LEAST = may("least", shapes.AIR_SPEED, "average velocity over it, 100 ft/min if left out")


def _solvent(found: solvents.Solvent) -> Answer:
    items = (
        Item(found.name, found.vapour_l_per_l, shapes.PER_LIQUID),
        Item("lower explosive limit", found.lel_percent, shapes.PERCENT),
    )
    return several(
        f"the lowest limit of the lists: {found.source}",
        items,
        "its own safety data sheet comes before any list",
    )


def _sheet(given: Given) -> Answer:
    found = solvents.solvent_from_data_sheet(
        given["name"], given["density"], given["molar-mass"], given["lel"]
    )
    return _solvent(found)


def _names(given: Given) -> Answer:
    rule = "the solvents whose limits are carried here"
    return exact("solvents", ", ".join(solvents.solvent_names()), None, rule)


def _fresh_air(given: Given) -> Answer:
    found = dilution.minimum_air(
        given["delivery"],
        given["volatile"],
        given["solvents"],
        trigger_share=given["trigger"],
        share_of_lel=given["stay"],
    )
    items = (
        item_of("least air", found.least, shapes.EXHAUST),
        item_of("averaged over pauses", found.averaged, shapes.EXHAUST),
    )
    return several(found.least.rule, items, found.caution)


def _face(given: Given) -> Answer:
    found = booth_face.face_velocity(
        given["exhaust"], given["face"], **given.some(least_m_s="least")
    )
    items = (
        item_of("average velocity", found.average, shapes.AIR_SPEED),
        Item("held against", found.least_m_s, shapes.AIR_SPEED),
        Item("falls short", found.falls_short),
    )
    return several(found.average.rule, items, found.caution)


def _exhaust(given: Given) -> Answer:
    found = booth_face.required_exhaust(given["face"], **given.some(least_m_s="least"))
    return figure("least exhaust", found.least, shapes.EXHAUST, found.caution)


def _design(given: Given) -> Answer:
    found = booth_face.design_velocity_m_s(given["crossdraft"], large=given["booth"])
    if isinstance(found, Outside):
        return refused(found)
    return figure("design velocity", found, shapes.AIR_SPEED, booth_face.CAUTION)


SUBJECTS = (
    Subject(
        "fresh-air",
        "the least fresh air against fire while spraying",
        (
            need("delivery", shapes.DELIVERY, "thinned, as sprayed"),
            need("volatile", shapes.SHARE, "share of it that evaporates"),
            _BLEND,
            may("trigger", shapes.SHARE, "share of the time it is pulled", default="100%"),
            _STAY,
        ),
        _fresh_air,
        (dilution.minimum_air,),
        ("200ml/min 60% xylene:100%",),
    ),
    Subject(
        "volatile",
        "the share of a thinned coating that evaporates",
        (
            need("solids", shapes.SHARE, "solids by volume, before thinning"),
            need("thinned", shapes.SHARE, "thinner per volume of coating"),
        ),
        lambda given: exact(
            "evaporates",
            dilution.volatile_fraction(given["solids"], given["thinned"]),
            shapes.SHARE,
            "1 - VS / (1 + s)",
        ),
        (dilution.volatile_fraction,),
        ("50% 25%",),
    ),
    Subject(
        "dilution",
        "air to dilute a solvent's vapour far below its explosive limit",
        (_VAPOUR, _LEL, _STAY),
        lambda given: exact(
            "air per liquid",
            dilution.dilution_air_l_per_l(given["vapour"], given["lel"], given["stay"]),
            shapes.PER_LIQUID,
            "vapour (100 - f LEL) / (f LEL)",
            dilution.CAUTION,
        ),
        (dilution.dilution_air_l_per_l,),
        ("30.4ft3/gal 1.4%",),
    ),
    Subject(
        "dilution-rule",
        "air per solvent by the regulation's formula as printed",
        (_VAPOUR, _LEL),
        lambda given: exact(
            "air per liquid",
            dilution.regulation_dilution_l_per_l(given["vapour"], given["lel"]),
            shapes.PER_LIQUID,
            "4 (100 - LEL) x vapour / LEL",
            dilution.CAUTION,
        ),
        (dilution.regulation_dilution_l_per_l,),
        ("30.4ft3/gal 1.4%", "44ft3/gal 2.6%"),
    ),
    Subject(
        "dilution-blend",
        "air to dilute the vapour of a blend of solvents",
        (_BLEND, _STAY),
        lambda given: exact(
            "air per liquid",
            dilution.dilution_air_of_blend_l_per_l(given["solvents"], given["stay"]),
            shapes.PER_LIQUID,
            "the air of the components added (Le Chatelier)",
            dilution.CAUTION,
        ),
        (dilution.dilution_air_of_blend_l_per_l,),
        ("toluene:50% acetone:50%",),
    ),
    Subject(
        "solvent",
        "a solvent's vapour and the explosive limit to reckon with",
        (need("solvent", _SOLVENT, "its name"),),
        lambda given: _solvent(given["solvent"]),
        (solvents.solvent,),
        ("toluene",),
    ),
    Subject(
        "solvents",
        "the names of the solvents known",
        (),
        _names,
        (solvents.solvent_names,),
        ("",),
    ),
    Subject(
        "solvent-sheet",
        "a solvent's vapour and limit from its safety data sheet",
        (need("name", WORD, "what it is called"), _DENSITY, _MOLAR, _LEL),
        _sheet,
        (solvents.solvent_from_data_sheet,),
        ("thinner-A 0.86g/ml 98g/mol 1.1%",),
    ),
    Subject(
        "vapour",
        "the vapour that a liquid makes",
        (_DENSITY, _MOLAR),
        lambda given: exact(
            "vapour",
            solvents.vapour_l_per_l(given["density"], given["molar-mass"]),
            shapes.PER_LIQUID,
            "density / molar mass x molar volume at 70 F, 1 atm",
        ),
        (solvents.vapour_l_per_l,),
        ("0.8675g/ml 92.14g/mol",),
    ),
    Subject(
        "exhaust",
        "the exhaust that an open face of a booth takes",
        (_FACE, _LEAST),
        _exhaust,
        (booth_face.required_exhaust,),
        ("100ft2",),
    ),
    Subject(
        "face-velocity",
        "the air velocity that an exhaust makes at an open face",
        (need("exhaust", shapes.EXHAUST, "what the fan moves, filters in place"), _FACE, _LEAST),
        _face,
        (booth_face.face_velocity,),
        ("10000cfm 100ft2", "5000m3/h 4m2"),
    ),
    Subject(
        "design-velocity",
        "the face velocity to design a booth for, with a crossdraft",
        (
            need("crossdraft", shapes.AIR_SPEED, "air movement across the face"),
            need("booth", Choice({"large": True, "small": False}), "its size"),
        ),
        _design,
        (booth_face.design_velocity_m_s,),
        ("40ft/min small", "120ft/min large"),
    ),
)
