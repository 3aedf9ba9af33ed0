"""Catches of past jobs: what the needle delivers by its turns, with gun, tip and the cup of the day. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from statistics import median
from typing import Any

import msgspec

from booth.job.mixture import stages
from booth.job.needle_advice import CatchPair
from booth.learnt.observation import Observation, Told, of_one_job
from booth.log.fold import Job
from booth.moment import Moment
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind

TAGS = (b'"catch made"',)
#: A hand does not set the needle finer than that [turns] (common practice, no source).
SETTING_TURNS = 0.125
#: Seconds of one cup that differ by less are one viscosity: the runs of one painter differ by twice
#: 3.7 % (ASTM D4212 13.1.1, within one laboratory).
SAME_CUP_SHARE = 2 * 0.037


class Caught(msgspec.Struct, frozen=True):
    """One catch at a known setting of the needle, with what it was made with. cup, cup_s: the efflux
    time of the mix when it was caught [s], None where it was not timed."""

    pair: CatchPair
    gun: str
    tip_mm: float | None
    product: str
    name: str
    at: Moment
    job: str = ""
    file: str = ""
    cup: str = ""
    cup_s: float | None = None
    rehearsal: bool = False
    left_out: str | None = None


def catches_of(products: Sequence[Job]) -> tuple[Caught, ...]:
    """Give the catches of one job that say how far the needle was open, of every product."""
    found = []
    for job in products:
        for each in job.catches:
            if each.turns is None:
                continue
            cup, cup_s = _cup_at(job, each.n) if each.liquid == "paint" else ("", None)
            caught = Caught(
                pair=CatchPair(each.turns.value, each.delivery_ml_min, each.liquid),
                gun=job.fitted.gun,
                tip_mm=each.tip.value if each.tip is not None else None,
                product=job.profile.key,
                name=job.profile.name,
                at=each.at,
                cup=cup,
                cup_s=cup_s,
            )
            found.append(caught)
    return tuple(found)


def _cup_at(job: Job, n: int) -> tuple[str, float | None]:
    """The cup and the seconds of the mix as it was at entry `n`."""
    stage = stages(job, until=n)[-1]
    return (stage.runs[-1].cup, stage.mean_s) if stage.runs else ("", None)


def setting_of(turns: float) -> float:
    """The setting of the needle that these turns are [turns]."""
    return round(turns / SETTING_TURNS) * SETTING_TURNS


def gun_told(caught: Caught) -> tuple[Told, ...]:
    """Gun and tip, in words."""
    tip = () if caught.tip_mm is None else ((caught.tip_mm, Kind.TIP),)
    return (caught.gun or "no gun named", *tip)


def gun_key(caught: Caught) -> tuple[str, ...]:
    return caught.gun, "" if caught.tip_mm is None else f"{caught.tip_mm:.1f}"


def deliveries(caught: Iterable[Caught]) -> tuple[Observation, ...]:
    """Give what each job delivered of the coating, by gun, tip, product and setting of the needle."""
    found: dict[str, list[Observation]] = {}
    for each in caught:
        if each.pair.liquid != "paint" or each.pair.delivery_ml_min <= 0:
            continue
        setting, delivery = setting_of(each.pair.turns), each.pair.delivery_ml_min
        own = found.setdefault(each.file or each.job, [])
        own.append(
            Observation(
                group=(*gun_key(each), each.product, f"{setting:g}"),
                # The turns tell its rows apart: they stand before a name that may be shortened.
                about=(*gun_told(each), (setting, Kind.TURNS), each.name),
                low=delivery,
                high=delivery,
                told=_cup_told(each),
                cup=each.cup,
                cup_s=each.cup_s,
                **whose(each),
            )
        )
    return tuple(one for own in found.values() for one in of_one_job(own))


def whose(caught: Caught) -> dict[str, Any]:
    """Which job a catch is of, for an observation."""
    names = ("at", "job", "file", "rehearsal", "left_out")
    return {name: getattr(caught, name) for name in names}


def _cup_told(caught: Caught) -> tuple[Told, ...]:
    if caught.cup_s is None:
        return ("cup not timed",)
    cup = CUPS.get(caught.cup)
    return (caught.cup_s, Kind.TIME), cup.name if cup is not None else caught.cup


def of_one_viscosity(
    found: Sequence[Observation], cup: str = "", cup_s: float | None = None
) -> tuple[list[Observation], list[tuple[Observation, str]]]:
    """Part observations into those of one viscosity and those of another, with why.

    cup, cup_s: what the mix runs out in today [s]; where not given, the middle of the cup used most.
    What was not timed, or in another cup, is taken to be alike.
    """
    timed = [each for each in found if each.cup_s is not None]
    if cup_s is None and timed:
        cups = [each.cup for each in timed]
        cup = max(cups, key=cups.count)
        cup_s = median(each.cup_s or 0.0 for each in timed if each.cup == cup)
    alike: list[Observation] = []
    other: list[tuple[Observation, str]] = []
    for each in found:
        is_other = (
            cup_s is not None
            and each.cup_s is not None
            and each.cup == cup
            and abs(each.cup_s - cup_s) > SAME_CUP_SHARE * cup_s
        )
        if is_other:
            other.append((each, "another viscosity"))
        else:
            alike.append(each)
    return alike, other
