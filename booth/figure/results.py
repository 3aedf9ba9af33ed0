"""What a result of the trade is told as: field by field, or in words of its own for some types."""

from __future__ import annotations

import dataclasses
import functools
import math
from collections.abc import Callable, Sequence
from typing import Any

import msgspec

from booth.figure import docs, shapes
from booth.figure.answer import Answer, Item
from booth.figure.docs import Function
from booth.figure.exceptions import FIGURES, LACKING
from booth.figure.joined_results import Batch, MixShare, PotLife, RankedFault, SectionPoint
from booth.figure.shape import Shape, telling_apart
from booth.figure.shapes import (
    COUNT,
    DELIVERY,
    NUMBER,
    UNITS,
    shape_of,
    words_of,
)
from booth.trade.cups.cup_choice import CupFit
from booth.trade.delivery.needle import NeedlePoint
from booth.trade.faults.evidence import Reading
from booth.trade.faults.ranked_causes import RankedCause, Standing
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.mixing.components import Component, Measure
from booth.trade.mixing.overpour import Correction
from booth.trade.mixing.pours import Pour
from booth.trade.pattern.pattern_reading import Reading as PatternReading
from booth.trade.result import Estimate, Outside, Value
from booth.trade.thinning.thin_to_viscosity import ThinnerStep
from booth.trade.waits.wait_time import WaitTime
from booth.trade.weather.weather_limits import LimitCheck, WeatherVerdict
from booth.units import System

#: Fields that are sentences beside the figures, those that warn, and fields that are the rule.
NOTES = ("criterion", "note", "sentence", "words")
CAUTIONS = ("caution",)
#: Air and vapour against fire: a minimum is not rounded down.
LEAST_AIR = (shapes.EXHAUST, shapes.PER_LIQUID)
RULES = ("rule", "source")


def shape_for(shape: Shape | None, unit: str = "") -> Shape:
    """Give the shape that a name says, unless the figure itself says another unit."""
    if shape is not None and unit in ("", shape.unit):
        return shape
    return UNITS.get(unit) or (Shape(unit) if unit else NUMBER)


def tell(function: Function, found: Any, label: str) -> Answer:
    """Give the answer for what a function gave, in its unit and with its formula."""
    shape = shape_of(function.__name__) or shape_for(None, docs.unit(function))
    if shape is NUMBER and isinstance(found, float) and not function.__doc__:
        lost = "Python was told to drop the docstrings, and with them the unit of this figure."
        return Answer(outside=Outside(lost, "Start Python without -OO.", docs.STRIPPED))
    return told(found, shape, label)


def joined(answers: Sequence[Answer]) -> Answer:
    """Give several answers as one: all figures and notes, each rule once."""
    rules = dict.fromkeys(each.rule for each in answers if each.rule)
    return Answer(
        tuple(item for each in answers for item in each.items),
        "; ".join(rules),
        tuple(dict.fromkeys(note for each in answers for note in each.notes)),
        tuple(dict.fromkeys(caution for each in answers for caution in each.cautions)),
        next((each.outside for each in answers if each.outside is not None), None),
    )


@functools.singledispatch
def told(found: Any, shape: Shape | None, label: str) -> Answer:
    """Give the answer for a result. shape: of a plain number; label: what it is called."""
    if not dataclasses.is_dataclass(found):
        raise TypeError(f"nothing here tells {found!r}")
    parts: list[Answer] = []
    for field in sorted(dataclasses.fields(found), key=lambda field: field.name == "count"):
        value = getattr(found, field.name)
        key = f"{type(found).__name__}.{field.name}"
        called = FIGURES.get(key) or words_of(field.name)
        if field.name in RULES:
            parts.insert(0, Answer(rule=value))
        elif field.name in CAUTIONS:
            parts.append(Answer(cautions=(value,)))
        elif field.name in NOTES:
            parts.append(Answer(notes=(value,)))
        elif key in LACKING and lacks(value):
            parts.append(Answer((Item(called, LACKING[key]),)))
        elif value is not None:
            parts.append(told(value, shape_of(field.name), called))
    whole = joined(parts)
    return msgspec.structs.replace(whole, rule=next((each.rule for each in parts if each.rule), ""))


def lacks(value: Any) -> bool:
    """Say whether there is no figure: none at all, or one without end."""
    return value is None or (isinstance(value, float) and not math.isfinite(value))


told.register(Outside, lambda found, shape, label: Answer(rule=found.rule, outside=found))


@told.register(tuple | list)
def _several(found: Sequence[Any], shape: Shape | None, label: str) -> Answer:
    if all(isinstance(each, str) for each in found):
        if not found:
            return Answer((Item(label, "none"),))
        if any(each.endswith(".") for each in found):
            return Answer(tuple(Item(f"{place}.", each) for place, each in enumerate(found, 1)))
        return Answer((Item(label, ", ".join(found)),))
    first, *others = label.split("|")
    labels = [first, *(others or [label] * len(found))]
    return joined([told(each, shape, called) for each, called in zip(found, labels, strict=False)])


def _band(found: Any, shape: Shape, label: str) -> Item:
    return Item(label, found.likely, shape, found.low, found.high, estimate=True)


def _item(label: str, number: float, shape: Shape) -> Item:
    way = 1 if shape in LEAST_AIR else 0
    return Item(label, number, shape, way=way, tight=label == "to")


def pours_of(pours: Sequence[Pour], measure: Measure) -> list[Item]:
    items, unit = [], UNITS[measure.unit]
    for pour in pours:
        items.append(Item(pour.name, pour.amount, unit))
        items.append(Item("up to", pour.mark, unit, tight=True))
    return items


def _wait(found: WaitTime, shape: Shape | None, label: str) -> list[Item]:
    """What a clock should count, and the band about it."""
    way = (found.seconds >= found.high_s) - (found.seconds <= found.low_s)
    items = [Item(label, found.seconds, shapes.TIME, estimate=found.estimate, way=way)]
    if found.low_s != found.high_s:
        band = (found.low_s, found.high_s)
        items.append(Item("likely", found.likely_s, shapes.TIME, *band, found.estimate))
    return items


#: The figures of a result whose fields do not tell it well, by its type; rule and notes are fields.
ITEMS: dict[type, Callable[[Any, Shape | None, str], list[Item]]] = {
    bool: lambda found, shape, label: [Item(label, found)],
    str: lambda found, shape, label: [Item(label, getattr(found, "value", found))],
    int: lambda found, shape, label: [Item(label, found, COUNT)],
    float: lambda found, shape, label: [_item(label, found, shape_for(shape))],
    Value: lambda found, shape, label: [_item(label, found.value, shape_for(shape, found.unit))],
    Estimate: lambda found, shape, label: [_band(found, shape_for(shape, found.unit), label)],
    EfficiencyBand: lambda found, shape, label: [_band(found, shapes.SHARE, label)],
    FilmInterval: lambda found, shape, label: [
        Item(f"{label} from", found.low_um, shapes.FILM),
        Item("up:", LACKING["FilmInterval.high_um"], tight=True)
        if lacks(found.high_um)
        else Item("to", found.high_um, shapes.FILM, tight=True),
    ],
    WaitTime: _wait,
    CupFit: lambda found, *_: [Item(found.cup.name, found.efflux_s, shapes.SECONDS)],
    NeedlePoint: lambda found, *_: [
        Item(f"at {shapes.TURNS.show(found.turns, System.US)}", found.delivery_ml_min, DELIVERY)
    ],
    Component: lambda found, *_: [Item(found.name, found.parts, NUMBER)],
    ThinnerStep: lambda found, *_: [
        Item("add now", found.step_ml, shapes.VOLUME, estimate=True),
        _band(found.add, shapes.VOLUME, "in all it may take"),
        Item("then thinned by", found.fraction_after, shapes.SHARE),
        Item("cut at the limit", found.at_limit),
    ],
}


def _by_items(found: Any, shape: Shape | None, label: str) -> Answer:
    tell = next(ITEMS[kind] for kind in type(found).__mro__ if kind in ITEMS)
    rules = (
        getattr(part, name, "") for part in (found, getattr(found, "add", 0)) for name in RULES
    )
    notes = tuple(getattr(found, name) for name in NOTES if hasattr(found, name))
    return Answer(tuple(tell(found, shape, label)), next(filter(None, rules), ""), notes)


for _kind in ITEMS:
    told.register(_kind, _by_items)


@told.register
def _corrected(found: Correction, shape: Shape | None, label: str) -> Answer:
    unit = UNITS[found.measure.unit]
    items = pours_of(found.pours, found.measure) or [Item("add", "nothing")]
    items += [Item("in all", found.total, unit), Item("over the plan", found.grew, unit)]
    return Answer(tuple(items), notes=(f"too much {found.by}",) if found.by else ())


@told.register
def _batch(found: Batch, shape: Shape | None, label: str) -> Answer:
    items = pours_of(found.pours, found.measure)
    if found.makes_ml is not None:
        items.append(Item("which makes", found.makes_ml, shapes.VOLUME))
    return Answer(tuple(items), found.rule)


@told.register
def _share(found: MixShare, shape: Shape | None, label: str) -> Answer:
    shares = {"volume": found.by_volume_fraction, "weight": found.by_weight_fraction}
    return Answer(
        tuple(
            Item(f"{found.name} by {by}", share, shapes.SHARE)
            for by, share in shares.items()
            if share is not None
        ),
        "parts over all parts",
    )


@told.register
def _point(found: SectionPoint, shape: Shape | None, label: str) -> Answer:
    item = Item(f"at {100 * found.place_fraction:.1f} %", found.film, NUMBER)
    return Answer((item,), notes=("place in % of the painted width, film over the mean film",))


@told.register
def _left(found: PotLife, shape: Shape | None, label: str) -> Answer:
    if found.over_since_s is not None:
        return Answer((Item("over since", found.over_since_s, shapes.TIME),), notes=(found.note,))
    return Answer((Item("pot life left", found.pot_life_left_s, shapes.TIME),))


@told.register
def _fault(found: RankedFault, shape: Shape | None, label: str) -> Answer:
    causes = [told(each, None, f"{place}.") for place, each in enumerate(found.causes, 1)]
    if found.question:
        causes.append(Answer((Item("what parts the first ones:", found.question, begins=True),)))
    film = Answer((Item("the film:", found.film, begins=True),), found.rule)
    return joined([*causes, film])


@told.register
def _verdict(found: WeatherVerdict, shape: Shape | None, label: str) -> Answer:
    dew = Answer((Item("dew point", found.dew_point_c, shapes.TEMPERATURE),))
    return joined([dew, *(told(check, None, "") for check in found.checks)])


@told.register
def _check(found: LimitCheck, shape: Shape | None, label: str) -> Answer:
    unit = shapes.DIFFERENCE if "margin" in found.name else UNITS[found.unit]
    ends = (("against at least", found.low), ("against at most", found.high))
    if not found.ok:  # shown to as many places as it takes to see why
        unit = telling_apart(unit, found.measured, found.low, found.high)
    limits = [Item(words, end, unit, tight=True) for words, end in ends if end is not None]
    verdict = Item("is", "within" if found.ok else "NOT within", tight=True)
    return Answer((Item(found.name, found.measured, unit), *limits, verdict), found.rule)


@told.register
def _reading(found: Reading, shape: Shape | None, label: str) -> Answer:
    called = f"{label} {found.name}".strip()
    if found.measured is None or found.limit is None:
        return Answer((Item(label, f"{found.name} ({found.side})"),))
    unit = shape_for(None, found.unit)
    limit = Item(f"{found.side} its limit", found.limit, unit, tight=True)
    return Answer((Item(called, found.measured, unit), limit))


@told.register
def _pattern(found: PatternReading, shape: Shape | None, label: str) -> Answer:
    turns = (Item(f"{n}.", turn, begins=True) for n, turn in enumerate(found.turns, 1))
    means = Item("means:", found.means, begins=True)
    items = (Item("seen", found.seen.value), means, *turns)
    return Answer(items, found.source, cautions=(found.caution,) if found.caution else ())


@told.register
def _cause(found: RankedCause, shape: Shape | None, label: str) -> Answer:
    said = [
        Answer((Item(label, f"{found.cause.words.rstrip('.')} ({found.standing})", begins=True),))
    ]
    said += [told(each, None, "for it:") for each in found.figures_for]
    said += [told(each, None, "against it:") for each in found.figures_against]
    if found.standing is Standing.SHOWN:
        said.append(Answer((Item("do now:", found.cause.now),)))
    return joined(said)
