"""How much material the parts of a job need, and whether pot life covers it. Pure."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from booth.job.coat_plan import planned
from booth.job.coat_times import JobTimes, Learnt, learnt
from booth.job.lasting import Lasting, induction, pot_life
from booth.job.measured import amount_efficiency, delivery_ml_min, thinner_fraction
from booth.job.mix_choice import in_use
from booth.job.recipe import usual_percent
from booth.job.together import after_coat, closes_first, mixes_in_use
from booth.log.fold import Job
from booth.trade.delivery.catches import time_to_empty_s
from booth.trade.film.coverage import CupFills, cups_to_fill, material_for_area_ml
from booth.trade.film.film_thickness import wet_film_um
from booth.trade.film.part_area import (
    box_area_m2,
    circle_area_m2,
    cylinder_area_m2,
    rectangle_area_m2,
    sheet_area_m2,
)
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.result import BadInput, Estimate

#: The dimensions that each form needs, by name.
DIMENSIONS: dict[str, tuple[str, ...]] = {
    "rectangle": ("length", "width"),
    "sheet": ("length", "width", "thickness"),
    "circle": ("diameter",),
    "cylinder": ("diameter", "length"),
    "box": ("length", "width", "height"),
    "area": ("area",),
}
#: What goes with a form besides its sizes.
WITH_FORM = {"rectangle": "sides", "circle": "sides", "cylinder": "ends"}
_AREAS: dict[str, Callable[..., float]] = {
    "rectangle": rectangle_area_m2,
    "sheet": sheet_area_m2,
    "circle": circle_area_m2,
    "cylinder": cylinder_area_m2,
    "box": box_area_m2,
}


def area_of(shape: str, mm: dict[str, float], sides: int = 1, ends: int = 0) -> float:
    """Give the area [m2] of one part of a form from its dimensions [mm].

    sides: of a rectangle or a circle; ends: of a cylinder. Raises BadInput.
    """
    if shape not in _AREAS:
        raise BadInput(f"There is no form {shape!r} to take the area of.")
    painted = {"sides": (sides,), "ends": (ends,)}.get(WITH_FORM.get(shape, ""), ())
    return _AREAS[shape](*(mm[key] for key in DIMENSIONS[shape]), *painted)


def total_area_m2(job: Job) -> float:
    """The area of all parts taken so far [m2]."""
    return sum(each.area.value for each in job.areas)


def wet_from_dry_um(job: Job, dry_total_um: float, coats: int, ample: bool = False) -> float | None:
    """The wet film of one coat [um] for a dry film of all coats; None where solids are not given.

    Thinner as it is in the mix, else as the profile usually has it. ample: by the least solids of
    the sheet, which take the most wet film; else by their middle.
    """
    film = job.profile.film
    least = film.volume_solids_percent.low if film.volume_solids_percent is not None else None
    solids = least / 100 if ample and least else film.solids_fraction
    if not solids or coats < 1:
        return None
    thinner = thinner_fraction(job)
    if thinner is None:
        thinner = usual_percent(in_use(job)) / 100
    return wet_film_um(dry_total_um / coats, solids, thinner)


class Plan(msgspec.Struct, frozen=True):
    """What it takes.

    need: ready-to-spray material [ml]; mix_ml: what to mix of it; lands: the share that lands;
    cups: to fill; gun_s: trigger pulled [s], None without a delivery; delivery: [ml/min] and where
    from; pot: pot life today; times: what a coat takes of its time at the trigger; span: from mixing
    to the end of the last coat [s], between these.
    """

    need: Estimate
    mix_ml: float
    lands: EfficiencyBand
    cups: CupFills
    gun_s: float | None
    delivery: tuple[float, str] | None
    pot: Lasting | None
    times: Learnt
    span: tuple[float, float] | None

    @property
    def covered(self) -> bool | None:
        """Whether pot life covers it; None where one of both is not known."""
        if self.pot is None or self.pot.seconds is None or self.span is None:
            return None
        return self.pot.seconds >= self.span[1]


def plan_of(
    job: Job,
    *,
    area_m2: float,
    coats: int,
    wet_um: float,
    large: bool,
    lost: float,
    left_ml: float,
    ample: bool,
    cup_ml: float,
    past: Sequence[JobTimes] = (),
) -> Plan:
    """Give what it takes to lay so much.

    wet_um: of each coat; large: large flat parts; lost: before the gun [1]; left_ml: in cup and gun;
    ample: mix the upper end; cup_ml: what a cup holds; past: the coats of other jobs of this shop.
    Raises BadInput with a sentence.
    """
    lands = amount_efficiency(job, large)
    need = material_for_area_ml(area_m2, wet_um, coats, lands, lost, left_ml)
    assert isinstance(need, Estimate)  # what lands is a band
    mix_ml = need.high if ample else need.likely
    delivery = delivery_ml_min(job)
    if delivery is not None and delivery[0] <= 0:
        delivery = None
    gun_s = time_to_empty_s(mix_ml, delivery[0]) if delivery else None
    listed, profile, weather = planned(job), in_use(job), job.weather
    mixes = mixes_in_use(job)
    plans = [listed[min(n, len(listed)) - 1].plan for n in range(1, coats)]
    stands = induction(profile, weather)
    waits = [after_coat(mixes, plan, weather) for plan in plans]
    waits += [stands] if stands is not None else []
    known = [each.seconds for each in waits if each.seconds is not None]
    times, rest_s, span = learnt(job, past), sum(known), None
    if gun_s is not None and len(known) == len(waits):
        span = gun_s * times.low + rest_s, gun_s * times.high + rest_s
    pot = closes_first(mixes, lambda mix: pot_life(mix, weather))
    cups = cups_to_fill(mix_ml, cup_ml)
    return Plan(need, mix_ml, lands, cups, gun_s, delivery, pot, times, span)
