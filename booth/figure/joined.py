"""Subjects that join several functions of the trade, or ask in another way than one of them does.

Each is a function as the trade's are: its subject follows from its signature in the same way.
"""

from __future__ import annotations

import functools
import inspect
from collections.abc import Callable, Sequence
from typing import Any, TypeVar

from booth.figure.answer import Answer, Item
from booth.figure.docs import Function
from booth.figure.readers import Amount
from booth.figure.results import joined, tell, told
from booth.figure.shapes import NUMBER
from booth.figure.subject import Subject
from booth.trade.cups.viscosity_by_temperature import ViscosityPoint, viscosity_at_temperature
from booth.trade.delivery.catches import delivery_from_volume, delivery_from_weight
from booth.trade.faults.evidence import Evidence
from booth.trade.faults.fault_table import Fault
from booth.trade.faults.ranked_causes import fault_named, rank_causes
from booth.trade.film import wet_gauge
from booth.trade.film.coverage import practical_coverage_m2_l, theoretical_coverage_m2_l
from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.mixing.components import Measure
from booth.trade.pattern.fan_profile import FanProfile
from booth.trade.pattern.overlap import film_section
from booth.trade.pattern.pattern_reading import Reading, reading, seen_in_zones
from booth.trade.result import BadInput, Outside
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


def side_by_side(labels: dict[Function, str]) -> None:
    """Keep several functions as one subject that takes what the last of them takes."""
    *_, last = labels

    @functools.wraps(last)
    def asked(**given: Any) -> Answer:
        parts = []
        for function, label in labels.items():
            known = inspect.signature(function).parameters
            found = function(**{name: given[name] for name in known if name in given})
            parts.append(tell(function, found, label))
        return joined(parts)

    JOINED.append(Subject(asked, tuple(labels), all_told=True))


side_by_side(
    {blend_logarithmic_mm2_s: "logarithmic rule", blend_index_mm2_s: "blending index"},
)
side_by_side(
    {theoretical_coverage_m2_l: "nothing lost", practical_coverage_m2_l: "with losses"},
)
side_by_side(
    {drying_power_pa: "drying power", relative_drying_power: "of the reference air's"},
)


@joins(viscosity_at_temperature, examples=["22.5C 15C:201.888cSt 30C:59.507cSt", "25C 15C:200cSt"])
def viscosity_at(at_c: float, points: Sequence[ViscosityPoint]) -> Any:
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
) -> Any:
    fit = fit_thinning(points)
    if isinstance(fit, Outside):
        return fit
    step = thinner_from_fit(fit, remaining_ml, thinner_fraction, target_mm2_s, limit_fraction)
    residual = "two measurements always lie on a line: no residual"
    if fit.residual_fraction is not None:
        residual = f"residual {100 * fit.residual_fraction:.1f} % of the viscosity"
    return step, Answer(notes=(residual,))


@joins(
    delivery_from_volume, delivery_from_weight, examples=["'6 oz' 60s", "120g 30s density=1.2g/ml"]
)
def delivery(amount: Amount, duration_s: float, density_g_ml: float | None = None) -> Answer:
    """Give the delivery from a timed catch, by volume or by weight."""
    if amount.measure is Measure.VOLUME:
        if density_g_ml is not None:
            raise BadInput("A density is only needed where the catch was weighed, as in 120g.")
        found = delivery_from_volume(amount.number, duration_s)
        return tell(delivery_from_volume, found, "delivery")
    if density_g_ml is None:
        raise BadInput("A catch that was weighed needs the density of the mix: density=1.2g/ml.")
    found = delivery_from_weight(amount.number, density_g_ml, duration_s)
    return tell(delivery_from_weight, found, "delivery")


@joins(
    wet_gauge.film_between_teeth,
    wet_gauge.film_statistics,
    wet_gauge.judge_film,
    examples=["75um:100um 100um:125um low=80um high=130um", "-:25um", "3mil:-"],
)
def gauge(
    readings: Sequence[FilmInterval], low_um: float | None = None, high_um: float | None = None
) -> Any:
    """Give what readings of a notch gauge say of a wet film."""
    sums = wet_gauge.film_statistics(readings)
    rule = Answer(rule="the film lies between the last wetted and the first dry tooth")
    if low_um is None and high_um is None:
        return sums, rule
    return sums, wet_gauge.judge_film(sums.mean, low_um, high_um), rule


@joins(film_section, examples=["even 50% passes=2 points=3"])
def section(
    profile: FanProfile,
    overlap_fraction: float,
    passes: int = 5,
    points: int = 15,
    alternating: bool = False,
) -> Answer:
    for name, count in (("passes", passes), ("points", points)):
        if count > MOST:
            raise BadInput(f"{name}: {MOST} are enough for one line; {count} were asked for.")
    found = film_section(profile, overlap_fraction, passes, points, alternating)
    items = tuple(Item(f"at {100 * place:.1f} %", film, NUMBER) for place, film in found)
    return Answer(items, notes=("place in % of the painted width, film over the mean film",))


@joins(seen_in_zones, examples=["9,4,2,4,9"])
def zones(zones: Sequence[float]) -> Reading:
    """Give the shape a pattern entered in zones comes nearest to, and what to turn."""
    return reading(seen_in_zones(zones))


@joins(rank_causes, fault_named, examples=["runs wet=90um wet-high=60um efflux=20s efflux-low=18s"])
def fault(fault: Fault, evidence: Evidence) -> Any:
    ranked = rank_causes(fault.key, evidence)
    rule = "a cause is claimed only where a figure speaks for it"
    causes = [told(each, None, f"{place}.") for place, each in enumerate(ranked, 1)]
    return *causes, Answer(rule=rule, notes=(f"the film: {fault.film}",))
