"""Subjects that join several functions of the trade, or ask in another way than one of them does.

Each is a function as the trade's are: its subject follows from its signature in the same way.
"""

from __future__ import annotations

import functools
import inspect
from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields
from typing import Any, TypeVar

from booth.figure import docs
from booth.figure.docs import Function
from booth.figure.joined_results import (
    Batch,
    BlendRules,
    Coverage,
    DryingPower,
    FittedStep,
    Gauged,
    MixShare,
    PotLife,
    RankedFault,
    SectionPoint,
)
from booth.figure.readers import Amount
from booth.figure.subject import Subject
from booth.trade.cups.viscosity_by_temperature import ViscosityPoint, viscosity_at_temperature
from booth.trade.delivery.catches import delivery_from_volume, delivery_from_weight
from booth.trade.faults.evidence import Evidence
from booth.trade.faults.fault_table import Fault
from booth.trade.faults.ranked_causes import fault_named, next_question, rank_causes
from booth.trade.film import wet_gauge
from booth.trade.film.coverage import practical_coverage_m2_l, theoretical_coverage_m2_l
from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.mixing import pours
from booth.trade.mixing.components import Component, Measure, pour_shares, with_thinner
from booth.trade.mixing.mixed_batch import BatchAge, mixed_volume_ml, pot_life_left_s
from booth.trade.mixing.overpour import Correction, after_pouring, amounts_from_marks
from booth.trade.mixing.pours import PourTable, pour_table
from booth.trade.pattern.fan_profile import FanProfile
from booth.trade.pattern.overlap import film_section
from booth.trade.pattern.pattern_reading import Reading, reading, seen_in_zones
from booth.trade.result import BadInput, Figure, Outside, Value
from booth.trade.thinning.blending_rule import blend_index_mm2_s, blend_logarithmic_mm2_s
from booth.trade.thinning.thin_to_viscosity import thinner_from_fit
from booth.trade.thinning.thinning_fit import ThinningPoint, fit_thinning
from booth.trade.weather.humid_air import drying_power_pa, relative_drying_power

#: Walther's line goes through two.
MOST_POINTS = 2
#: More passes or points than this are a slip of the finger.
MOST = 1000


JOINED: list[Subject] = []
F = TypeVar("F", bound=Callable[..., Any])


def joins(
    *functions: Function, examples: Sequence[str] = (), all_told: bool = False
) -> Callable[[F], F]:
    """Keep a function as the subject of those that it joins."""

    def keep(function: F) -> F:
        JOINED.append(Subject(function, functions, all_told, tuple(examples)))
        return function

    return keep


def side_by_side(result: type, *functions: Function) -> None:
    """Keep several functions as one subject that takes what the last of them takes.

    result: its fields are what they give, in their order.
    """
    *_, last = functions

    @functools.wraps(last)
    def asked(**given: Any) -> Any:
        found = []
        for function in functions:
            known = inspect.signature(function).parameters
            found.append(function(**{name: given[name] for name in known if name in given}))
        return result(*found)

    assert len(fields(result)) == len(functions)
    asked.__annotations__ = {**last.__annotations__, "return": result}
    JOINED.append(Subject(asked, functions, all_told=True))


side_by_side(BlendRules, blend_logarithmic_mm2_s, blend_index_mm2_s)
side_by_side(Coverage, theoretical_coverage_m2_l, practical_coverage_m2_l)
side_by_side(DryingPower, drying_power_pa, relative_drying_power)


@joins(viscosity_at_temperature, examples=["22.5C 15C:201.888cSt 30C:59.507cSt", "25C 15C:200cSt"])
def viscosity_at(at_c: float, points: Sequence[ViscosityPoint]) -> Figure:
    if len(points) > MOST_POINTS:
        raise BadInput(f"points: one or two measurements; {len(points)} were given.")
    return viscosity_at_temperature(at_c, *points)


@joins(
    thinner_from_fit,
    fit_thinning,
    examples=["500ml 11.1111111% 55cSt 0%:200cSt 25%:50cSt", "500ml 10% 55cSt 0%:200cSt"],
    all_told=True,
)
def thinner_fit(
    remaining_ml: float,
    thinner_fraction: float,
    target_mm2_s: float,
    points: Sequence[ThinningPoint],
    limit_fraction: float | None = None,
) -> FittedStep | Outside:
    fit = fit_thinning(points)
    if isinstance(fit, Outside):
        return fit
    step = thinner_from_fit(fit, remaining_ml, thinner_fraction, target_mm2_s, limit_fraction)
    if isinstance(step, Outside):
        return step
    residual = "two measurements always lie on a line: no residual"
    if fit.residual_fraction is not None:
        residual = f"residual {100 * fit.residual_fraction:.1f} % of the viscosity"
    return FittedStep(step, fit.residual_fraction, residual)


@joins(
    delivery_from_volume, delivery_from_weight, examples=["'6 oz' 60s", "120g 30s density=1.2g/ml"]
)
def delivery(amount: Amount, duration_s: float, density_g_ml: float | None = None) -> Value:
    """Give the delivery from a timed catch, by volume or by weight."""
    if amount.measure is Measure.VOLUME:
        if density_g_ml is not None:
            raise BadInput("A density is only needed where the catch was weighed, as in 120g.")
        found = delivery_from_volume(amount.number, duration_s)
        return Value(found, "ml/min", docs.formula(delivery_from_volume))
    if density_g_ml is None:
        raise BadInput("A catch that was weighed needs the density of the mix: density=1.2g/ml.")
    found = delivery_from_weight(amount.number, density_g_ml, duration_s)
    return Value(found, "ml/min", docs.formula(delivery_from_weight))


@joins(
    wet_gauge.film_between_teeth,
    wet_gauge.film_statistics,
    wet_gauge.judge_film,
    examples=["75um:100um 100um:125um low=80um high=130um", "-:25um", "3mil:-"],
)
def gauge(
    readings: Sequence[FilmInterval], low_um: float | None = None, high_um: float | None = None
) -> Gauged:
    """Give what readings of a notch gauge say of a wet film."""
    sums = wet_gauge.film_statistics(readings)
    judged = None
    if low_um is not None or high_um is not None:
        judged = wet_gauge.judge_film(sums.mean, low_um, high_um)
    return Gauged(sums, judged, "the film lies between the last wetted and the first dry tooth")


@joins(film_section, examples=["even 50% passes=2 points=3"])
def section(
    profile: FanProfile,
    overlap_fraction: float,
    passes: int = 5,
    points: int = 15,
    alternating: bool = False,
) -> tuple[SectionPoint, ...]:
    for name, count in (("passes", passes), ("points", points)):
        if count > MOST:
            raise BadInput(f"{name}: {MOST} are enough for one line; {count} were asked for.")
    found = film_section(profile, overlap_fraction, passes, points, alternating)
    return tuple(SectionPoint(place, film) for place, film in found)


@joins(seen_in_zones, examples=["9,4,2,4,9"])
def zones(zones: Sequence[float]) -> Reading:
    """Give the shape a pattern entered in zones comes nearest to, and what to turn."""
    return reading(seen_in_zones(zones))


@joins(
    rank_causes,
    fault_named,
    next_question,
    examples=["runs wet=90um wet-high=60um efflux=20s efflux-low=18s"],
)
def fault(fault: Fault, evidence: Evidence) -> RankedFault:
    ranked = rank_causes(fault.key, evidence)
    question = next_question(ranked)
    rule = "how usual a cause is, times what was measured of it"
    return RankedFault(
        tuple(ranked), question.words if question is not None else None, fault.film, rule
    )


@joins(pot_life_left_s, examples=["3h:4h 0h:4h", "5h:4h"])
def pot_life_left(batches: Sequence[BatchAge]) -> PotLife:
    left = pot_life_left_s(batches)
    return PotLife(None, -left, "spray no more of it") if left < 0 else PotLife(left, None, "")


def _poured(mix: Sequence[Component], table: PourTable, parts_by: Measure) -> Batch:
    """Give what a table of pours gives, and the volume it makes where that can be told."""
    volume = None
    if table.measure is Measure.WEIGHT and all(each.density_g_ml for each in mix):
        volume = mixed_volume_ml(mix, table)
    return Batch(
        table.measure, table.pours, volume, f"parts by {parts_by}, poured one on the other"
    )


def _with_volume(pour: Function) -> Function:
    @functools.wraps(pour)
    def asked(components: Sequence[Component], **given: Any) -> Batch:
        return _poured(components, pour(components, **given), given["parts_by"])

    asked.__annotations__ = {**pour.__annotations__, "return": Batch}
    return asked


joins(
    pour_table,
    mixed_volume_ml,
    examples=[
        "600ml base:4 hardener:1",
        "600ml 4:1",
        "600g base:4:1.25g/ml hardener:1:1g/ml pour=weight",
    ],
)(_with_volume(pour_table))
for _pours in (pours.pour_table_from_component, pours.pour_table_on_top):
    joins(_pours)(_with_volume(_pours))


@dataclass(frozen=True, slots=True)
class Held:
    """A component, and an amount of it: what is left, or the mark it was poured to."""

    name: str
    parts: float
    amount: Amount | None = None
    density_g_ml: float | None = None


def _mix(held: Sequence[Held]) -> list[Component]:
    return [Component(each.name, each.parts, each.density_g_ml) for each in held]


@joins(pours.pour_table_from_stock, examples=["base:4:500ml hardener:1:100ml"])
def mix_stock(components: Sequence[Held], parts_by: Measure, measure: Measure) -> Batch:
    stock = {
        each.name: each.amount.in_measure(measure, each.name)
        for each in components
        if each.amount is not None
    }
    mix = _mix(components)
    table = pours.pour_table_from_stock(mix, stock, parts_by=parts_by, measure=measure)
    return _poured(mix, table, parts_by)


@joins(after_pouring, amounts_from_marks, examples=["500ml base:4:400ml hardener:1:512ml"])
def mix_correct(
    wanted: Amount, components: Sequence[Held], parts_by: Measure, measure: Measure
) -> Correction:
    number = wanted.in_measure(measure, "What is wanted")
    plan = pour_table(_mix(components), number, parts_by=parts_by, measure=measure)
    marks = [each.amount for each in components]
    while marks and marks[-1] is None:
        marks.pop()
    read = [mark.in_measure(measure, "A mark") for mark in marks if mark is not None]
    if len(read) < len(marks):
        raise BadInput("Give the mark of every component up to the last one poured.")
    return after_pouring(plan, amounts_from_marks(read))


@joins(pour_shares, examples=["base:4:1.2g/ml hardener:1:0.9g/ml"])
def mix_shares(components: Sequence[Component], parts_by: Measure) -> tuple[MixShare, ...]:
    """Give the share of each component, by volume and by weight."""
    dense = all(each.density_g_ml for each in components)
    found: dict[Measure, Sequence[float]] = {
        by: pour_shares(components, parts_by, by) for by in Measure if dense or by is parts_by
    }
    unknown = [None] * len(components)
    columns = (found.get(Measure.VOLUME, unknown), found.get(Measure.WEIGHT, unknown))
    return tuple(
        MixShare(each.name, by_volume, by_weight)
        for each, by_volume, by_weight in zip(components, *columns, strict=True)
    )


@joins(with_thinner, examples=["25% base:4"])
def mix_thinner(thinner_percent: float, components: Sequence[Component]) -> tuple[Component, ...]:
    return tuple(with_thinner(components, "thinner", thinner_percent))
