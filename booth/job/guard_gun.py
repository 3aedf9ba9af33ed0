"""What is amiss at the gun before a coat: cup, inlet, delivery, tip, fan, distance, compressor. Pure.

Each is held against the coat's own figures first, then the product's.
"""

from __future__ import annotations

from collections.abc import Iterator

import msgspec

from booth.job import measured
from booth.job.air_supply import air_supply
from booth.job.amiss import Amiss, Cause, Grave
from booth.job.coat_plan import coat_named
from booth.job.the_gun import gun_of, tip_mm_of
from booth.log.events import AirRead, CatchMade
from booth.log.fold import Job
from booth.profile.model import Range
from booth.shop.model import Shop
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS
from booth.trade.cups.efflux_time import equivalent_efflux
from booth.trade.result import Value

#: A compressor that holds the trigger for less falls behind on any part: own choice, no source.
HOLD_S = 20.0
#: Beyond a limit by less than this share is at it: figures were carried from one unit to another.
AT_LIMIT = 1e-6


def of_cup(job: Job) -> Iterator[Amiss]:
    efflux, mean_s = job.profile.efflux, measured.mean_efflux_s(job)
    if efflux is None:
        return
    cup = CUPS.get(measured.efflux_runs(job)[-1].cup) if mean_s is not None else None
    if mean_s is not None and cup is not None and cup.key != cup_named(efflux.cup).key:
        same = equivalent_efflux(mean_s, cup, cup_named(efflux.cup))
        mean_s = same.value if isinstance(same, Value) else None
    if mean_s is None or cup is None:
        yield Amiss(Cause.NOT_TIMED, Grave.LOOK, name=efflux.cup)
    elif is_outside(mean_s, efflux.target_s):
        yield Amiss(Cause.CUP, Grave.MAY_SPOIL, mean_s, efflux.target_s, efflux.cup)


def of_gun(job: Job, number: int, part: str = "") -> Iterator[Amiss]:
    """What was measured at the gun, against this coat's own figures first, then the product's."""
    gun, coat = job.profile.gun, coat_named(job, number, part)
    plan, fan = coat.plan, measured.fan_mm(job)
    fan_mm = fan[0] if fan is not None and fan[1] == "measured" else None
    delivery = measured.mean_delivery_ml_min(job, "paint")
    for cause, grave, value, own, usual in (
        (Cause.INLET, Grave.MAY_SPOIL, inlet_kpa(job), plan.inlet_kpa, gun.inlet_kpa),
        (Cause.DELIVERY, Grave.MAY_SPOIL, delivery, None, gun.delivery_ml_min),
        (Cause.TIP, Grave.LOOK, _tip_mm(job), None, gun.tip_mm),
        (Cause.FAN, Grave.LOOK, fan_mm, plan.fan_mm, gun.fan_mm),
        (Cause.DISTANCE, Grave.LOOK, _distance_mm(job), plan.distance_mm, gun.distance_mm),
    ):
        asked = own or usual
        if value is not None and asked is not None and is_outside(value, asked):
            yield Amiss(cause, grave, value, asked, coat.name if own else "the product")


def is_outside(value: float, asked: Range) -> bool:
    """Whether a figure lies outside of what is asked for, by more than carrying units over makes."""
    low = asked.low is not None and value < asked.low * (1 - AT_LIMIT)
    return low or (asked.high is not None and value > asked.high * (1 + AT_LIMIT))


def inlet_kpa(job: Job) -> float | None:
    """The inlet as it was read last [kPa], at the step Air or with a catch."""
    read: list[AirRead | CatchMade] = [*job.airs, *job.catches]
    told = [each for each in read if each.inlet is not None and each.inlet.value > 0]
    told.sort(key=lambda each: each.n)
    return measured.last_told(told, "inlet")


def _distance_mm(job: Job) -> float | None:
    return measured.last_told(job.fans, "distance")


def _tip_mm(job: Job) -> float | None:
    gun = gun_of(job, shop_of(job))
    return measured.last_told(job.catches, "tip") or tip_mm_of(job, gun)


def shop_of(job: Job) -> Shop:
    """The painter's equipment as it was when the job was opened."""
    try:
        return msgspec.convert(job.opened.shop, Shop)
    except msgspec.ValidationError:  # of another version of this program
        return Shop()


def of_compressor(job: Job, number: int = 1, part: str = "") -> Iterator[Amiss]:
    """Whether the compressor falls behind where its switch stands at the worst."""
    shop = shop_of(job)
    gun, compressor = gun_of(job, shop), shop.compressor
    asked = coat_named(job, number, part).plan.inlet_kpa or job.profile.gun.inlet_kpa
    supply = air_supply(compressor, gun, asked, inlet_kpa(job))
    if gun is None or isinstance(supply, str) or supply.spray_s is None:
        return
    if supply.spray_s < HOLD_S:
        yield Amiss(Cause.COMPRESSOR, Grave.LOOK, supply.spray_s, name=gun.name)
