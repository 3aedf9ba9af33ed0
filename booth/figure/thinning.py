"""Subjects: how much thinner, and what it does to the mix and its film."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, item_of, refused, several
from booth.figure.readers import Group, Quantity
from booth.figure.subject import Given, Subject, may, need
from booth.trade.result import Outside
from booth.trade.thinning import blending_rule, thin_to_viscosity, thinner_share, thinning_fit

_REMAINING = need("remaining", shapes.VOLUME, "mix in the pot now")
_THINNED = "thinner in it, per volume of coating"
_LIMIT = may("limit", shapes.SHARE, "most thinner the data sheet allows, per volume of coating")


def _blend(given: Given) -> Answer:
    one = (given["viscosity"], given["thinner"], given["share"])
    items = (
        Item("logarithmic rule", blending_rule.blend_logarithmic_mm2_s(*one), shapes.VISCOSITY),
        Item("blending index", blending_rule.blend_index_mm2_s(*one), shapes.VISCOSITY),
    )
    note = "the two disagree about paint: neither is a prediction"
    return several("ln nu, and ln ln(nu + 0.8), each shared by volume", items, note)


def _step(found: thin_to_viscosity.ThinnerStep | Outside, *notes: str) -> Answer:
    if isinstance(found, Outside):
        return refused(found)
    items = (
        Item("add now", found.step_ml, shapes.VOLUME, estimate=True),
        item_of("in all it may take", found.add, shapes.VOLUME),
        Item("then thinned by", found.fraction_after, shapes.SHARE),
        Item("cut at the limit", found.at_limit),
    )
    return several(found.add.rule, items, found.note, *notes)


def _target(given: Given) -> Answer:
    return _step(
        thin_to_viscosity.thinner_for_target(
            given["remaining"],
            given["thinned"],
            given["viscosity"],
            given["target"],
            **given.some(limit_fraction="limit", thinner_mm2_s="thinner"),
        )
    )


def _fit(given: Given) -> Answer:
    fit = thinning_fit.fit_thinning(
        [thinning_fit.ThinningPoint(*point) for point in given["points"]]
    )
    if isinstance(fit, Outside):
        return refused(fit)
    residual = (
        "two measurements always lie on a line: no residual"
        if fit.residual_fraction is None
        else f"residual {100 * fit.residual_fraction:.1f} % of the viscosity"
    )
    return _step(
        thin_to_viscosity.thinner_from_fit(
            fit,
            given["remaining"],
            given["thinned"],
            given["target"],
            **given.some(limit_fraction="limit"),
        ),
        residual,
    )


_POINT = Group((("thinned", Quantity(shapes.SHARE)), ("viscosity", Quantity(shapes.VISCOSITY))), 2)

SUBJECTS = (
    Subject(
        "thinner",
        "thinner to a wanted viscosity, from one measurement: a band and a cautious step",
        (
            _REMAINING,
            need("viscosity", shapes.VISCOSITY, "measured now"),
            need("target", shapes.VISCOSITY, "wanted, at the same temperature"),
            may("thinned", shapes.SHARE, f"{_THINNED}, so far", default="0%"),
            _LIMIT,
            may("thinner", shapes.VISCOSITY, "viscosity of the thinner", default="0.8cSt"),
        ),
        _target,
        (thin_to_viscosity.thinner_for_target,),
        ("1l 200cSt 66.289cSt", "1l 60cSt 66cSt", "1l 200cSt 66cSt thinned=20% limit=25%"),
    ),
    Subject(
        "thinner-fit",
        "thinner to a wanted viscosity, from measurements of this mix",
        (
            _REMAINING,
            need("thinned", shapes.SHARE, f"{_THINNED}, so far"),
            need("target", shapes.VISCOSITY, "wanted, at the same temperature"),
            need("points", _POINT, "measurements of this mix, two or more", many=True),
            _LIMIT,
        ),
        _fit,
        (thin_to_viscosity.thinner_from_fit, thinning_fit.fit_thinning),
        ("500ml 11.1111111% 55cSt 0%:200cSt 25%:50cSt", "500ml 10% 55cSt 0%:200cSt"),
        also=(thinning_fit.fit_thinning,),
    ),
    Subject(
        "blend",
        "viscosity of a blend by two rules that disagree",
        (
            need("viscosity", shapes.VISCOSITY, "of the mix"),
            need("thinner", shapes.VISCOSITY, "of the thinner"),
            need("share", shapes.SHARE, "thinner, of the whole blend"),
        ),
        _blend,
        (blending_rule.blend_logarithmic_mm2_s, blending_rule.blend_index_mm2_s),
        ("200cSt 0.8cSt 20%",),
        also=(blending_rule.blend_index_mm2_s,),
    ),
    Subject(
        "thinned",
        "thinner per coating after an addition",
        (
            _REMAINING,
            need("thinned", shapes.SHARE, f"{_THINNED}, so far"),
            need("added", shapes.VOLUME, "thinner added"),
        ),
        lambda given: exact(
            "thinned by",
            thinner_share.thinner_fraction_after(
                given["remaining"], given["thinned"], given["added"]
            ),
            shapes.SHARE,
            "thinner over coating, by volume",
        ),
        (thinner_share.thinner_fraction_after,),
        ("550ml 10% 50ml",),
    ),
    Subject(
        "thinner-room",
        "the thinner that may still go in",
        (
            _REMAINING,
            need("thinned", shapes.SHARE, f"{_THINNED}, so far"),
            need("limit", shapes.SHARE, "most thinner allowed, per volume of coating"),
        ),
        lambda given: exact(
            "room for thinner",
            thinner_share.thinner_room_ml(given["remaining"], given["thinned"], given["limit"]),
            shapes.VOLUME,
            "(limit - thinned) x coating in the mix",
        ),
        (thinner_share.thinner_room_ml,),
        ("550ml 10% 25%",),
    ),
    Subject(
        "solids",
        "volume solids of a thinned mix",
        (
            need("solids", shapes.SHARE, "by volume, before thinning"),
            need("thinned", shapes.SHARE, _THINNED),
        ),
        lambda given: exact(
            "volume solids",
            thinner_share.solids_after_thinning(given["solids"], given["thinned"]),
            shapes.SHARE,
            "VS / (1 + s)",
        ),
        (thinner_share.solids_after_thinning,),
        ("50% 25%",),
    ),
    Subject(
        "wet-film-thinned",
        "the wet film that leaves the same dry film once more thinner is in",
        (
            need("wet", shapes.FILM, "wet film wanted before"),
            need("before", shapes.SHARE, "thinner per volume of coating it is meant for"),
            need("after", shapes.SHARE, "thinner per volume of coating now"),
        ),
        lambda given: exact(
            "wet film",
            thinner_share.wet_film_after_thinning_um(given["wet"], given["before"], given["after"]),
            shapes.FILM,
            "WFT x (1 + s after) / (1 + s before)",
        ),
        (thinner_share.wet_film_after_thinning_um,),
        ("100um 0% 25%",),
    ),
)
