"""Water against the coating: what share of a delivery of water the coating has, gun by gun. Pure."""

from __future__ import annotations

from collections.abc import Iterable
from statistics import fmean

from booth.learnt.delivery import Caught, gun_key, gun_told, setting_of, whose
from booth.learnt.observation import Observation, of_one_job

Setting = tuple[tuple[str, ...], float]


def ratios(caught: Iterable[Caught]) -> tuple[Observation, ...]:
    """Give the delivery of the coating over that of water at one setting of gun, tip and needle.

    The water is that of the same job, else what other jobs and rehearsals caught at this setting.
    """
    every = [each for each in caught if each.pair.delivery_ml_min > 0]
    water: dict[Setting, dict[str, list[float]]] = {}
    coating: dict[str, dict[Setting, list[Caught]]] = {}
    rehearsed: set[str] = set()
    for each in every:
        setting, file = (gun_key(each), setting_of(each.pair.turns)), each.file or each.job
        if each.pair.liquid == "paint":
            coating.setdefault(file, {}).setdefault(setting, []).append(each)
        elif each.left_out is None:
            by_job = water.setdefault(setting, {})
            by_job.setdefault(file, []).append(each.pair.delivery_ml_min)
            rehearsed |= {file} if each.rehearsal else set()
    found: list[Observation] = []
    for file, settings in coating.items():
        own: list[Observation] = []
        for setting, catches in settings.items():
            there = water.get(setting, {})
            used = {file: there[file]} if file in there else there
            if not used:
                continue
            poured = fmean(each.pair.delivery_ml_min for each in catches)
            ratio = poured / fmean(fmean(each) for each in used.values())
            own.append(_ratio(catches[-1], ratio, _from_where(file, used, rehearsed)))
        found += of_one_job(own)
    return tuple(found)


def _ratio(catch: Caught, ratio: float, told: str) -> Observation:
    return Observation(
        group=(*gun_key(catch), catch.product),
        about=(*gun_told(catch), catch.name),
        low=ratio,
        high=ratio,
        told=(told,),
        **whose(catch),
    )


def _from_where(file: str, used: dict[str, list[float]], rehearsed: set[str]) -> str:
    if file in used:
        return "both in this job"
    return "water of a rehearsal" if used.keys() <= rehearsed else "water of other jobs"
