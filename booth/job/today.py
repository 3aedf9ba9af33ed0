"""What a job was sprayed in and with, and what of it is otherwise today. Pure.

Nothing is said of what was not read or not told, then or now.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import msgspec

from booth.log.events import WeatherRead
from booth.log.fold import Job

#: Air that differs by less is the same day's (this program's own choice: two thermometers of a shop
#: differ by about 1 K, its air by as much in an hour).
SAME_AIR_K = 2.0
#: Hygrometers of a shop are good to some 5 % (common practice, no source); twice that is another day.
SAME_HUMIDITY_PERCENT = 10.0
#: Half of the smallest step that tips are made in (0.1 mm).
SAME_TIP_MM = 0.05


class Around(msgspec.Struct, frozen=True):
    """What stood around a job: gun and tip, air and relative humidity; None where nobody said."""

    gun: str = ""
    tip_mm: float | None = None
    air_c: float | None = None
    humidity_percent: float | None = None


class Differs(msgspec.Struct, frozen=True):
    """What is otherwise now. gun: the one then, where another is in the hand; tip_mm: then and now;
    air_k, humidity_percent: now less then; None where it is about the same, or not known."""

    gun: str = ""
    tip_mm: tuple[float, float] | None = None
    air_k: float | None = None
    humidity_percent: float | None = None

    @property
    def is_any(self) -> bool:
        return self != Differs()


def around(job: Job) -> Around:
    """What stood around the coats of the product that a job has come to: the weather read last before
    the last of them ended, else the last there is."""
    ended = [coat for laid in job.coats.values() for coat in laid if coat.ended is not None]
    last = max(ended, key=lambda each: each.begun.n, default=None)
    read: WeatherRead | None = last.weather if last is not None else job.weather
    read = read or job.weather
    air, damp = (read.air.value, read.humidity.value) if read is not None else (None, None)
    return Around(job.fitted.gun, _tip_mm(job), air, damp)


def _tip_mm(job: Job) -> float | None:
    """The tip that was on the gun [mm]: as changed, as told with a catch, else as the shop file had it."""
    if job.fitted.tip is not None:
        return job.fitted.tip.value
    told = [each.tip.value for each in job.catches if each.tip is not None]
    if told:
        return told[-1]
    guns: Any = job.opened.shop.get("guns", ())
    own = [
        each for each in guns if isinstance(each, Mapping) and each.get("name") == job.fitted.gun
    ]
    found = own[0].get("tip_mm") if own and job.fitted.gun else None
    return float(found) if isinstance(found, int | float) and not isinstance(found, bool) else None


def differs(then: Around, now: Around) -> Differs:
    """Give what is otherwise now, as far as both are known."""
    return Differs(
        gun=then.gun if then.gun and now.gun and then.gun != now.gun else "",
        tip_mm=_pair(then.tip_mm, now.tip_mm, SAME_TIP_MM),
        air_k=_by(then.air_c, now.air_c, SAME_AIR_K),
        humidity_percent=_by(then.humidity_percent, now.humidity_percent, SAME_HUMIDITY_PERCENT),
    )


def _by(then: float | None, now: float | None, least: float) -> float | None:
    """By how much it is more now; None where it is the same within `least`."""
    if then is None or now is None or abs(now - then) < least:
        return None
    return now - then


def _pair(then: float | None, now: float | None, least: float) -> tuple[float, float] | None:
    if then is None or now is None or abs(now - then) < least:
        return None
    return then, now
