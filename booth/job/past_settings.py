"""What was set in a job, as past jobs are remembered by it: settings, lesson. Pure."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec

from booth.job import measured
from booth.job.today import Around, around
from booth.job.verdicts import next_time
from booth.log.fold import Job
from booth.moment import Moment
from booth.units import Kind, System, show


class Setting(msgspec.Struct, frozen=True):
    """What a job sets or measures.

    name: in a list of settings, label: in a report; step: the kind of step it belongs to, said: how
    that tells it; key: of a profile that keeps it, field: of its gun.
    """

    name: str
    label: str
    step: str
    said: str
    kind: Kind
    key: str = ""
    field: str = ""
    places: int | None = None

    def figure(self, value: float, system: System) -> str:
        """It as it is shown: '28 psi'."""
        return show(value, self.kind, system, places=self.places)


class GoodSettings(msgspec.Struct, frozen=True):
    """What was set and measured last in a job. figures: by the name of the setting, see SETTINGS;
    cup, liquid: what the efflux time and the delivery were measured with; then: what it was sprayed
    in and with, to be held against today."""

    opened: Moment
    gun: str = ""
    figures: Mapping[str, float] = {}
    cup: str = ""
    liquid: str = ""
    next_time: str = ""
    then: Around = Around()


class Lesson(msgspec.Struct, frozen=True):
    """What a job taught, however it came out: what to change, its verdict, gun and faults."""

    opened: Moment
    next_time: str
    verdict: str = ""
    gun: str = ""
    faults: tuple[str, ...] = ()


_KPA, _FLOW, _MM, _SHARE = Kind.PRESSURE, Kind.DELIVERY, Kind.LENGTH, Kind.PERCENT
#: All of them, in the order in which they are told.
SETTINGS = (
    Setting("efflux", "efflux time", "efflux", "{}", Kind.TIME, "efflux.target", places=1),
    Setting("inlet", "inlet pressure", "air", "inlet {}", _KPA, "gun.inlet_pressure", "inlet_kpa"),
    Setting("cap", "cap pressure", "air", "cap {}", _KPA),
    Setting("delivery", "delivery", "catch", "{}", _FLOW, "gun.delivery", "delivery_ml_min"),
    Setting("needle", "needle", "catch", "needle {}", Kind.TURNS),
    Setting("tip", "tip", "catch", "tip {}", Kind.TIP, "gun.tip", "tip_mm"),
    Setting("fan", "fan width", "fan", "fan {}", _MM, "gun.fan", "fan_mm"),
    Setting("distance", "distance", "fan", "at {}", _MM, "gun.distance", "distance_mm"),
    Setting("fan open", "fan open", "fan", "{} open", Kind.TURNS),
    Setting(
        "overlap", "overlap", "pattern", "{} overlap", _SHARE, "gun.overlap", "overlap_percent"
    ),
    Setting("thinner", "thinner", "thin", "{} thinner", Kind.PERCENT),
    Setting("pace", "pass speed", "pace", "pace {}", Kind.SPEED),
)
#: A measured length is kept in either of these [m].
M = {"mm": 0.001, "m": 1.0}


def settings_of(job: Job) -> GoodSettings:
    """Give what was set and measured last in `job`."""
    told = measured.last_told
    liquid = "paint" if measured.catches(job, "paint") else "water"
    caught, air = measured.catches(job, liquid)[-1:], job.airs[-1:]
    fan, thinner = measured.fan_mm(job), measured.thinner_fraction(job)
    turns = [(each.n, each.turns) for each in job.fans] + [(e.n, e.fan_turns) for e in job.airs]
    open_turns = [each.value for _, each in sorted(turns, key=lambda each: each[0]) if each]
    timed = [each for each in job.passes if each.seconds > 0 and each.length.unit in M]
    paces = [each.length.value * M[each.length.unit] / each.seconds for each in timed]
    found = {
        "efflux": measured.mean_efflux_s(job),
        "inlet": told(air or caught, "inlet"),
        "cap": told(air, "cap"),
        "delivery": measured.mean_delivery_ml_min(job, liquid),
        "needle": told(caught, "turns"),
        "tip": told(caught, "tip"),
        "fan": fan[0] if fan is not None and fan[1] == "measured" else None,
        "distance": told(job.fans, "distance"),
        "fan open": open_turns[-1] if open_turns else None,
        "overlap": told(job.patterns, "overlap"),
        "thinner": None if thinner is None else thinner * 100,
        "pace": paces[-1] if paces else None,
    }
    return GoodSettings(
        job.opened.at,
        job.fitted.gun,
        {name: figure for name, figure in found.items() if figure is not None},
        cup=job.runs[-1].cup if found["efflux"] is not None else "",
        liquid=liquid,
        next_time=next_time(job),
        then=around(job),
    )
