"""Subjects: catches, how long a cup lasts, water and paint, the needle."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, several
from booth.figure.readers import Amount, Group, Quantity
from booth.figure.subject import Given, Subject, may, need
from booth.trade.delivery import catches, needle, water
from booth.trade.result import BadInput

_FLOW = "volume / time"
_CATCH = Group((("turns", Quantity(shapes.TURNS)), ("delivery", Quantity(shapes.DELIVERY))), 2)
_CATCHES = need("catches", _CATCH, "your own catches at one gun, tip and product", many=True)


def _delivery(given: Given) -> Answer:
    amount, weighed = given["amount"]
    if not weighed:
        if "density" in given:
            raise BadInput("A density is only needed where the catch was weighed, as in 120g.")
        found = catches.delivery_from_volume(amount, given["time"])
        return exact("delivery", found, shapes.DELIVERY, _FLOW)
    if "density" not in given:
        raise BadInput("A catch that was weighed needs the density of the mix: density=1.2g/ml.")
    found = catches.delivery_from_weight(amount, given["density"], given["time"])
    return exact("delivery", found, shapes.DELIVERY, "weight / density / time")


def _water(given: Given) -> Answer:
    found = catches.delivery_of_water(given["weight"], given["time"], given["water"])
    note = "of water: paint runs slower (see paint-from-water)"
    return exact("delivery of water", found, shapes.DELIVERY, "weight / density / time", note)


def _catches(given: Given) -> Answer:
    found = catches.catch_statistics(given["catches"])
    items = [
        Item("mean", found.mean_ml_min, shapes.DELIVERY),
        Item("least", found.least_ml_min, shapes.DELIVERY),
        Item("most", found.most_ml_min, shapes.DELIVERY),
        Item("spread", found.spread_ml_min, shapes.DELIVERY),
        Item("catches", found.count, shapes.COUNT),
    ]
    if found.sd_ml_min is not None:
        items.append(Item("standard deviation", found.sd_ml_min, shapes.DELIVERY))
    if found.cv is not None:
        items.append(Item("the same over the mean", found.cv, shapes.SHARE))
    return several("arithmetic mean; standard deviation with n - 1", items)


def _paint(given: Given) -> Answer:
    pairs = [water.WaterPaintPair(*pair) for pair in given.get("pairs", ())]
    found = water.paint_from_water(given["water"], pairs)
    return figure("delivery of paint", found, shapes.DELIVERY)


def _tried(given: Given) -> list[needle.NeedleCatch]:
    return [needle.NeedleCatch(*catch) for catch in given["catches"]]


def _curve(given: Given) -> Answer:
    curve = needle.needle_curve(_tried(given))
    items = [
        Item(f"at {shapes.TURNS.show(point.turns, shapes.System.US)}",
             point.delivery_ml_min, shapes.DELIVERY)
        for point in curve
    ]  # fmt: skip
    return several("the closest curve that never falls, by least squares", items)


SUBJECTS = (
    Subject(
        "delivery",
        "delivery from a timed catch, by volume or by weight",
        (
            need("amount", Amount(), "what was caught, without the vessel"),
            need("time", shapes.SECONDS, "how long the trigger was held"),
            may("density", shapes.DENSITY, "of what was sprayed, where it was weighed"),
        ),
        _delivery,
        (catches.delivery_from_volume, catches.delivery_from_weight),
        ("'6 oz' 60s", "120g 30s density=1.2g/ml"),
    ),
    Subject(
        "delivery-water",
        "delivery of water from a catch that was weighed",
        (
            need("weight", shapes.MASS, "of the water caught"),
            need("time", shapes.SECONDS, "how long the trigger was held"),
            may("water", shapes.TEMPERATURE, "temperature of the water", default="20C"),
        ),
        _water,
        (catches.delivery_of_water, water.water_density_kg_m3),
        ("200g 60s",),
    ),
    Subject(
        "water-density",
        "density of clean water",
        (need("water", shapes.TEMPERATURE, "temperature of the water"),),
        lambda given: exact(
            "density of water",
            water.water_density_kg_m3(given["water"]),
            shapes.WATER_DENSITY,
            "a5 (1 - (t + a1)^2 (t + a2) / (a3 (t + a4)))",
        ),
        (water.water_density_kg_m3,),
        ("20C",),
    ),
    Subject(
        "catches",
        "mean and scatter of catches at one setting",
        (need("catches", shapes.DELIVERY, "delivery of each catch", many=True),),
        _catches,
        (catches.catch_statistics,),
        ("180ml/min 184ml/min 176ml/min", "180ml/min"),
    ),
    Subject(
        "lasts",
        "how long a cup lasts with the trigger held",
        (
            need("volume", shapes.VOLUME, "what can be sprayed"),
            need("delivery", shapes.DELIVERY, "delivery of the gun"),
        ),
        lambda given: exact(
            "lasts",
            catches.time_to_empty_s(given["volume"], given["delivery"]),
            shapes.TIME,
            "volume / delivery",
        ),
        (catches.time_to_empty_s,),
        ("'20 oz' '6 oz/min'",),
    ),
    Subject(
        "paint-from-water",
        "delivery of paint from one of water, by your own pairs",
        (
            need("water", shapes.DELIVERY, "delivery of water now"),
            need(
                "pairs",
                Group(
                    (("water", Quantity(shapes.DELIVERY)), ("paint", Quantity(shapes.DELIVERY))), 2
                ),
                "water and paint caught at one setting",
                many=True,
            ),
        ),
        _paint,
        (water.paint_from_water,),
        ("220ml/min 200ml/min:150ml/min", "900ml/min 200ml/min:150ml/min"),
    ),
    Subject(
        "needle",
        "turns of the needle to try for a wanted delivery",
        (need("delivery", shapes.DELIVERY, "wanted"), _CATCHES),
        lambda given: figure(
            "turns", needle.turns_for_delivery(given["delivery"], _tried(given)), shapes.TURNS
        ),
        (needle.turns_for_delivery,),
        ("160ml/min 1:100ml/min 2:180ml/min", "200ml/min 1:100ml/min 2:180ml/min"),
    ),
    Subject(
        "needle-delivery",
        "delivery at a setting of the needle",
        (need("turns", shapes.TURNS, "turns open"), _CATCHES),
        lambda given: figure(
            "delivery", needle.delivery_at_turns(given["turns"], _tried(given)), shapes.DELIVERY
        ),
        (needle.delivery_at_turns,),
        ("1.5 1:100ml/min 2:200ml/min", "3 1:100ml/min 2:200ml/min"),
    ),
    Subject(
        "needle-curve",
        "the rising curve through catches at several settings",
        (_CATCHES,),
        _curve,
        (needle.needle_curve,),
        ("1:90ml/min 2:170ml/min 2.5:150ml/min",),
    ),
)
