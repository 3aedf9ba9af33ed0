"""Subjects: parts, pours, topping up, pouring too much, pot life of what is in the cup."""

from __future__ import annotations

from collections.abc import Sequence

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, several
from booth.figure.readers import WORD, Amount, Choice, Group, Quantity
from booth.figure.shapes import Shape
from booth.figure.subject import Given, Subject, may, need
from booth.trade.mixing import mix_parts, mixed_batch, overpour, pours
from booth.trade.mixing.components import Component, Measure
from booth.trade.result import BadInput

_NAME, _PARTS = ("name", WORD), ("parts", Quantity(shapes.NUMBER))
_DENSITY = ("density", Quantity(shapes.DENSITY))
_COMPONENT = Group((_NAME, _PARTS, _DENSITY), 2)
_COMPONENTS = need("components", _COMPONENT, "in the order they are poured", many=True)
_MEASURE = Choice({each.value: each for each in Measure})
_PARTS_BY = may("parts-by", _MEASURE, "how the data sheet counts its parts", default="volume")
_POUR = may("pour", _MEASURE, "whether it is poured by volume or on a scale", default="volume")
_AMOUNTS = Amount()


def _shape(measure: Measure) -> Shape:
    return shapes.VOLUME if measure is Measure.VOLUME else shapes.MASS


def _components(given: Given) -> list[Component]:
    return [Component(each[0], each[1], each[-1]) for each in given["components"]]


def _measure_of(amount: tuple[float, bool]) -> Measure:
    return Measure.WEIGHT if amount[1] else Measure.VOLUME


def _in(amount: tuple[float, bool], measure: Measure, name: str) -> float:
    if _measure_of(amount) is not measure:
        raise BadInput(f"{name} is poured by {measure}, so it should be a {measure} as well.")
    return amount[0]


def _pours(poured: Sequence[pours.Pour], measure: Measure) -> list[Item]:
    items = []
    for pour in poured:
        items.append(Item(pour.name, pour.amount, _shape(measure)))
        items.append(Item("up to", pour.mark, _shape(measure), tight=True))
    return items


def _table(given: Given, components: Sequence[Component], table: pours.PourTable) -> Answer:
    items = _pours(table.pours, table.measure)
    if table.measure is Measure.WEIGHT and all(each.density_g_ml for each in components):
        volume = mixed_batch.mixed_volume_ml(components, table)
        items.append(Item("which makes", volume, shapes.VOLUME))
    return several(f"parts by {given['parts-by']}, poured one on the other", items)


def _mix(given: Given) -> Answer:
    components = _components(given)
    amount = given["amount"]
    table = pours.pour_table(
        components,
        amount[0],
        parts_by=given["parts-by"],
        measure=given["pour"],
        wanted_by=_measure_of(amount),
    )
    return _table(given, components, table)


def _from(given: Given) -> Answer:
    components = _components(given)
    amount = given["amount"]
    table = pours.pour_table_from_component(
        components,
        given["component"],
        amount[0],
        parts_by=given["parts-by"],
        measure=given["pour"],
        amount_by=_measure_of(amount),
    )
    return _table(given, components, table)


def _stock(given: Given) -> Answer:
    components = _components(given)
    stock = {
        name: _in(left, given["pour"], name)
        for name, _, left, _ in given["components"]
        if left is not None
    }
    table = pours.pour_table_from_stock(
        components, stock, parts_by=given["parts-by"], measure=given["pour"]
    )
    return _table(given, components, table)


def _top_up(given: Given) -> Answer:
    components, measure = _components(given), given["pour"]
    table = pours.pour_table_on_top(
        components,
        _in(given["left"], measure, "What is left"),
        _in(given["wanted"], measure, "What is wanted"),
        parts_by=given["parts-by"],
        measure=measure,
    )
    return _table(given, components, table)


def _correct(given: Given) -> Answer:
    components, measure = _components(given), given["pour"]
    table = pours.pour_table(
        components,
        _in(given["wanted"], measure, "What is wanted"),
        parts_by=given["parts-by"],
        measure=measure,
    )
    marks = [each[2] for each in given["components"]]
    while marks and marks[-1] is None:
        marks.pop()
    if None in marks:
        raise BadInput("Give the mark of every component up to the last one poured.")
    poured = overpour.amounts_from_marks([_in(mark, measure, "A mark") for mark in marks])
    found = overpour.after_pouring(table, poured)
    items = [Item("add", "nothing")] if not found.pours else _pours(found.pours, measure)
    items.append(Item("in all", found.total, _shape(measure)))
    items.append(Item("over the plan", found.grew, _shape(measure)))
    note = (f"too much {found.by}",) if found.by else ()
    return several("nothing can be taken out: the greatest excess sets the batch", items, *note)


def _shares(given: Given) -> Answer:
    components, by = _components(given), given["parts-by"]
    items = [
        Item(f"{each.name} by {by}", share, shapes.SHARE)
        for each, share in zip(components, mix_parts.pour_shares(components, by, by), strict=True)
    ]
    if all(each.density_g_ml for each in components):
        other = Measure.WEIGHT if by is Measure.VOLUME else Measure.VOLUME
        shares = mix_parts.pour_shares(components, by, other)
        items += [
            Item(f"{each.name} by {other}", share, shapes.SHARE)
            for each, share in zip(components, shares, strict=True)
        ]
    return several("parts over all parts", items)


def _density(given: Given) -> Answer:
    found = mixed_batch.mixed_density_g_ml(_components(given), given["parts-by"])
    return exact("density of the mix", found, shapes.DENSITY, "weight of the parts over volume")


def _parts(components: Sequence[Component], rule: str) -> Answer:
    return several(rule, [Item(each.name, each.parts, shapes.NUMBER) for each in components])


def _thinner(given: Given) -> Answer:
    mix = mix_parts.with_thinner(_components(given), "thinner", given["thinner"])
    return _parts(mix, "parts by volume; thinner over the volume of the coating")


def _left(given: Given) -> Answer:
    batches = [mixed_batch.BatchAge(*batch) for batch in given["batches"]]
    left = mixed_batch.pot_life_left_s(batches)
    rule = "the batch with the least left rules all that was poured together"
    if left < 0:
        return exact("over since", -left, shapes.TIME, rule, "spray no more of it")
    return exact("pot life left", left, shapes.TIME, rule)


SUBJECTS = (
    Subject(
        "mix",
        "the pours for a wanted amount",
        (need("amount", _AMOUNTS, "wanted of the mix"), _COMPONENTS, _PARTS_BY, _POUR),
        _mix,
        (pours.pour_table, mixed_batch.mixed_volume_ml),
        ("600ml base:4 hardener:1 thinner:1", "600g base:4:1.25g/ml hardener:1:1g/ml pour=weight"),
    ),
    Subject(
        "mix-from",
        "the pours that use a given amount of one component",
        (
            need("component", WORD, "the one whose amount is given"),
            need("amount", _AMOUNTS, "of it"),
            _COMPONENTS,
            _PARTS_BY,
            _POUR,
        ),
        _from,
        (pours.pour_table_from_component,),
        ("hardener 30ml base:4 hardener:1",),
    ),
    Subject(
        "mix-stock",
        "the largest batch that what is left in the cans allows",
        (
            need(
                "components",
                Group((_NAME, _PARTS, ("left", _AMOUNTS), _DENSITY), 2),
                "with what is left of each; a dash is plenty",
                many=True,
            ),
            _PARTS_BY,
            _POUR,
        ),
        _stock,
        (pours.pour_table_from_stock,),
        ("base:4:500ml hardener:1:100ml",),
    ),
    Subject(
        "mix-top-up",
        "the pours that top up a rest of the same mix",
        (
            need("left", _AMOUNTS, "of the ready mix"),
            need("wanted", _AMOUNTS, "in the end"),
            _COMPONENTS,
            _PARTS_BY,
            _POUR,
        ),
        _top_up,
        (pours.pour_table_on_top,),
        ("100ml 600ml base:4 hardener:1",),
    ),
    Subject(
        "mix-correct",
        "what to add after pouring too much",
        (
            need("wanted", _AMOUNTS, "that was planned"),
            need(
                "components",
                Group((_NAME, _PARTS, ("mark", _AMOUNTS), _DENSITY), 2),
                "with the mark read after each pour",
                many=True,
            ),
            _PARTS_BY,
            _POUR,
        ),
        _correct,
        (overpour.after_pouring, overpour.amounts_from_marks),
        ("500ml base:4:400ml hardener:1:512ml",),
    ),
    Subject(
        "mix-shares",
        "the share of each component, by volume and by weight",
        (_COMPONENTS, _PARTS_BY),
        _shares,
        (mix_parts.pour_shares,),
        ("base:4:1.2g/ml hardener:1:0.9g/ml",),
    ),
    Subject(
        "mix-by-volume",
        "parts by volume from parts by weight",
        (_COMPONENTS,),
        lambda given: _parts(mix_parts.parts_by_volume(_components(given)), "weight over density"),
        (mix_parts.parts_by_volume,),
        ("resin:100:1.25g/ml hardener:40:1g/ml",),
    ),
    Subject(
        "mix-thinner",
        "the parts with thinner on top",
        (need("thinner", shapes.PERCENT, "of the volume of the coating"), _COMPONENTS),
        _thinner,
        (mix_parts.with_thinner,),
        ("25% base:4",),
    ),
    Subject(
        "mix-density",
        "density of a mix",
        (_COMPONENTS, _PARTS_BY),
        _density,
        (mixed_batch.mixed_density_g_ml,),
        ("base:4:1.25g/ml hardener:1:1g/ml",),
    ),
    Subject(
        "pot-life-left",
        "the pot life left of batches poured together",
        (
            need(
                "batches",
                Group((("age", Quantity(shapes.TIME)), ("pot life", Quantity(shapes.TIME))), 2),
                "age and pot life of each",
                many=True,
            ),
        ),
        _left,
        (mixed_batch.pot_life_left_s,),
        ("3h:4h 0h:4h", "5h:4h"),
    ),
)
