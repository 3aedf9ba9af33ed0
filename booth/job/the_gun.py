"""The gun in the hand: as the shop file knows it, with the tip and the cup that are on it now. Pure."""

from __future__ import annotations

import msgspec

from booth.log.fold import Job
from booth.shop.model import Gun, Shop


def gun_of(job: Job, shop: Shop) -> Gun | None:
    """The gun of the job now; None where the shop file does not know it."""
    gun, fitted = shop.gun(job.fitted.gun), job.fitted
    if gun is None:
        return None
    tip_mm = gun.tip_mm if fitted.tip is None else fitted.tip.value
    return msgspec.structs.replace(gun, tip_mm=tip_mm, cup_ml=_cup_ml(job, gun))


def tip_mm_of(job: Job, gun: Gun | None) -> float | None:
    """The tip that is on it [mm], whether or not the shop file knows the gun; None: not known."""
    if job.fitted.tip is not None:
        return job.fitted.tip.value
    return gun.tip_mm if gun is not None else None


def cup_held_ml(job: Job, gun: Gun | None, usual_ml: float) -> float:
    """What the gun's cup holds [ml]; the usual one where nobody said."""
    return _cup_ml(job, gun) or usual_ml


def _cup_ml(job: Job, gun: Gun | None) -> float | None:
    if job.fitted.cup is not None:
        return job.fitted.cup.value
    return gun.cup_ml if gun is not None else None
