"""Results that are told in words of their own, and not field by field."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item
from booth.figure.results import joined, shape_for, told
from booth.figure.shapes import UNITS, Shape
from booth.trade.cups.cup_choice import CupFit
from booth.trade.delivery.needle import NeedlePoint
from booth.trade.faults.evidence import Reading
from booth.trade.faults.ranked_causes import RankedCause, Standing
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.mixing.components import Component
from booth.trade.mixing.overpour import Correction
from booth.trade.mixing.pours import PourTable
from booth.trade.thinning.thin_to_viscosity import ThinnerStep
from booth.trade.waits.wait_time import WaitTime
from booth.trade.weather.weather_limits import LimitCheck, WeatherVerdict
from booth.units import System


@told.register
def _wait(found: WaitTime, shape: Shape | None, label: str) -> Answer:
    """What a clock should count, and the band about it."""
    items = [Item(label, found.seconds, shapes.TIME, estimate=found.estimate)]
    if found.estimate or found.low_s != found.high_s:
        band = (found.low_s, found.high_s)
        items.append(Item("likely", found.likely_s, shapes.TIME, *band, found.estimate))
    return Answer(tuple(items), found.rule)


@told.register
def _band(found: EfficiencyBand, shape: Shape | None, label: str) -> Answer:
    item = Item(label, found.likely, shapes.SHARE, found.low, found.high, estimate=True)
    return Answer((item,), found.source)


@told.register
def _interval(found: FilmInterval, shape: Shape | None, label: str) -> Answer:
    ends = (
        Item(f"{label} from", found.low_um, shapes.FILM),
        Item("to", found.high_um, shapes.FILM, tight=True),
    )
    return Answer(ends)


@told.register
def _cup(found: CupFit, shape: Shape | None, label: str) -> Answer:
    return Answer((Item(found.cup.name, found.efflux_s, shapes.SECONDS),))


@told.register
def _point(found: NeedlePoint, shape: Shape | None, label: str) -> Answer:
    turns = shapes.TURNS.show(found.turns, System.US)
    return Answer((Item(f"at {turns}", found.delivery_ml_min, shapes.DELIVERY),))


@told.register
def _component(found: Component, shape: Shape | None, label: str) -> Answer:
    return Answer((Item(found.name, found.parts, shapes.NUMBER),))


@told.register
def _pours(found: PourTable | Correction, shape: Shape | None, label: str) -> Answer:
    items, unit = [], UNITS[found.measure.unit]
    for pour in found.pours:
        items.append(Item(pour.name, pour.amount, unit))
        items.append(Item("up to", pour.mark, unit, tight=True))
    if isinstance(found, PourTable):
        return Answer(tuple(items))
    items = items or [Item("add", "nothing")]
    items += [Item("in all", found.total, unit), Item("over the plan", found.grew, unit)]
    return Answer(tuple(items), notes=(f"too much {found.by}",) if found.by else ())


@told.register
def _step(found: ThinnerStep, shape: Shape | None, label: str) -> Answer:
    add = found.add
    items = (
        Item("add now", found.step_ml, shapes.VOLUME, estimate=True),
        Item("in all it may take", add.likely, shapes.VOLUME, add.low, add.high, estimate=True),
        Item("then thinned by", found.fraction_after, shapes.SHARE),
        Item("cut at the limit", found.at_limit),
    )
    return Answer(items, add.rule, (found.note,))


@told.register
def _verdict(found: WeatherVerdict, shape: Shape | None, label: str) -> Answer:
    dew = Answer((Item("dew point", found.dew_point_c, shapes.TEMPERATURE),))
    return joined([dew, *(told(check, None, "") for check in found.checks)])


@told.register
def _check(found: LimitCheck, shape: Shape | None, label: str) -> Answer:
    unit = shapes.DIFFERENCE if "margin" in found.name else UNITS[found.unit]
    ends = (("against at least", found.low), ("against at most", found.high))
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
def _cause(found: RankedCause, shape: Shape | None, label: str) -> Answer:
    said = [Answer((Item(label, f"{found.cause.words} ({found.standing})"),))]
    said += [told(each, None, "for it:") for each in found.figures_for]
    said += [told(each, None, "against it:") for each in found.figures_against]
    if found.standing is Standing.SHOWN:
        said.append(Answer((Item("do now:", found.cause.now),)))
    return joined(said)
