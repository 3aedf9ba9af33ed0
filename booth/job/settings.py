"""The settings that worked in a job, as a new coating profile: a changed copy, the old one untouched.

What was measured takes the place of what the profile asked for, with the spread within which a shop
repeats a setting. Everything else (hazards, mix, waits, limits, steps) stays as it was.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import msgspec

from booth.files.slug import slug
from booth.job import measured
from booth.job.past import GoodSettings, settings_of
from booth.log.fold import Job
from booth.profile.keys import BOUNDS
from booth.profile.model import Efflux, Profile, Range
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, System, read, show

#: Within what share of itself a shop repeats a setting (common practice, no source): two careful
#: catches, and two runs of one cup by one hand, agree about that well.
REPEATS_WITHIN = 0.05


class NotAProfile(ValueError):
    """There is nothing to make a profile of; the message is a sentence for the painter."""


@dataclass(frozen=True, slots=True)
class _Setting:
    """One setting: where a profile keeps it, what was measured, what was asked for."""

    path: str
    name: str
    kind: Kind
    measured: float | None
    asked: Range | None

    @property
    def usable(self) -> bool:
        """Whether it was measured, and is something that a profile can hold."""
        low, high = BOUNDS[self.path]
        return self.measured is not None and low <= self.measured <= high

    def words(self, system: System) -> str:
        """It in words: 'inlet 28 psi'."""
        assert self.measured is not None
        places = 1 if self.kind is Kind.TIME else None
        return f"{self.name} {show(self.measured, self.kind, system, places=places)}"


def profile_from(job: Job, name: str) -> Profile:
    """Give the profile of `job` under a new name, with the settings that were measured in it.

    A setting that was not measured stays as the profile had it. One that lies outside what the
    profile asked for is taken over and told in the notes; thinner beyond the data sheet's limit is
    told and not taken over. Raises NotAProfile where nothing was measured, or for a name that does
    not tell the new profile from the old one.
    """
    name = " ".join(name.split())
    old = job.profile
    if not name:
        raise NotAProfile("The new profile needs a name.")
    if slug(name) in (slug(old.name), old.key):
        raise NotAProfile(
            f"'{name}' is what this job's profile is called: another name keeps both apart."
        )
    system = System.METRIC if job.opened.system == System.METRIC else System.US
    good = _settings_of(job)
    used = [each for each in _settings(job, good) if each.usable]
    thinner = good.thinner_percent
    if not used and thinner is None and good.overlap_percent is None:
        raise NotAProfile(
            "Nothing was measured in this job that a profile keeps: time the cup, catch the "
            "coating, read the air or the fan first."
        )
    notes = [f"Settings from job {good.job}: {', '.join(settings_lines(job, system))}."]
    notes += [_outside(each, system) for each in used if _is_outside(each)]
    limit = old.mix.thinner.limit_percent if old.mix and old.mix.thinner else None
    if thinner is not None and limit is not None and thinner > limit:
        notes.append(
            f"The job used {thinner:.0f} % thinner, beyond the limit of {limit:g} %: not taken over."
        )
        thinner = None
    if good.next_time:
        notes.append(f"Next time: {good.next_time}")
    return msgspec.structs.replace(
        old,
        key=slug(name),
        name=name,
        source=f"{old.source}; settings from job {good.job} of {_date(job)}",
        notes=(*old.notes, *notes),
        efflux=_efflux(job, good, used, system),
        gun=msgspec.structs.replace(old.gun, **_gun(used, good, system)),
        mix=_mix(old, thinner),
    )


def settings_lines(job: Job, system: System) -> tuple[str, ...]:
    """Give what would be taken over, each in a few words."""
    good = _settings_of(job)
    lines = []
    for each in _settings(job, good):
        if each.usable:
            cup = CUPS.get(good.efflux_cup or "") if each.path == "efflux.target" else None
            lines.append(each.words(system) + (f" in a {cup.name}" if cup else ""))
    if good.overlap_percent is not None:
        lines.append(f"overlap {good.overlap_percent:.0f} %")
    if good.thinner_percent is not None:
        lines.append(f"thinner {good.thinner_percent:.0f} %")
    return tuple(lines)


def _settings_of(job: Job) -> GoodSettings:
    """The settings of the job at hand: it has a name, its path does not matter here."""
    return settings_of(Path(job.opened.job or "job"), job)


def _settings(job: Job, good: GoodSettings) -> tuple[_Setting, ...]:
    gun, efflux = job.profile.gun, job.profile.efflux
    paint = measured.mean_delivery_ml_min(job, "paint")
    known_cup = (good.efflux_cup or "") in CUPS
    target = efflux.target_s if efflux is not None and _same_cup(efflux, good) else None
    return (
        _Setting(
            "efflux.target", "efflux", Kind.TIME, good.efflux_s if known_cup else None, target
        ),
        # With the trigger pulled, or nothing: a catch is often made with the air shut.
        _Setting(
            "gun.inlet_pressure", "inlet", Kind.PRESSURE, measured.inlet_kpa(job), gun.inlet_kpa
        ),
        # Of the coating itself: a delivery of water is no target for paint.
        _Setting("gun.delivery", "delivery", Kind.DELIVERY, paint, gun.delivery_ml_min),
        _Setting("gun.fan", "fan", Kind.LENGTH, good.fan_mm, gun.fan_mm),
        _Setting("gun.distance", "distance", Kind.LENGTH, good.distance_mm, gun.distance_mm),
        _Setting("gun.tip", "tip", Kind.TIP, good.tip_mm, gun.tip_mm),
    )


def _same_cup(efflux: Efflux, good: GoodSettings) -> bool:
    cup = CUPS.get(good.efflux_cup or "")
    return cup is not None and slug(efflux.cup) == slug(cup.name)


def _about(each: _Setting, system: System) -> Range:
    """The setting with the spread it repeats within, inside of what was asked for where it lay there.

    The ends are numbers that can be read off the shop's own gauges.
    """
    assert each.measured is not None
    if each.kind is Kind.TIP:
        return Range(each.measured, each.measured)
    asked = each.asked if each.asked is not None and not _is_outside(each) else Range(0.0, None)
    low, high = BOUNDS[each.path]
    least = max(each.measured * (1 - REPEATS_WITHIN), asked.low or low, low)
    most = min(each.measured * (1 + REPEATS_WITHIN), asked.high or high, high)
    places = 1 if each.kind is Kind.TIME else None
    ends = [
        read(show(end, each.kind, system, places=places), each.kind, system).value
        for end in (least, most)
    ]
    return Range(*ends)


def _is_outside(each: _Setting) -> bool:
    assert each.measured is not None
    return measured.compare(each.measured, each.asked) in ("below", "above")


def _outside(each: _Setting, system: System) -> str:
    asked = each.asked
    assert asked is not None
    low = "" if asked.low is None else f"at least {show(asked.low, each.kind, system)}"
    high = "" if asked.high is None else f"at most {show(asked.high, each.kind, system)}"
    limits = " and ".join(end for end in (low, high) if end)
    return f"Outside of what the profile asked for ({limits}): {each.words(system)}. Check the data sheet."


def _efflux(job: Job, good: GoodSettings, used: list[_Setting], system: System) -> Efflux | None:
    timed = next((each for each in used if each.path == "efflux.target"), None)
    if timed is None:
        return job.profile.efflux
    # The temperature is that of the liquid that was timed: the old one may not hold for it.
    read_at = [
        run.liquid_temperature for run in measured.efflux_runs(job) if run.liquid_temperature
    ]
    at_c = sum(each.value for each in read_at) / len(read_at) if read_at else None
    low, high = BOUNDS["efflux.at"]
    if at_c is not None and not low <= at_c <= high:
        at_c = None
    return Efflux(CUPS[good.efflux_cup or ""].name, _about(timed, system), at_c)


def _gun(used: list[_Setting], good: GoodSettings, system: System) -> dict[str, object]:
    places = {
        "gun.inlet_pressure": "inlet_kpa",
        "gun.delivery": "delivery_ml_min",
        "gun.fan": "fan_mm",
        "gun.distance": "distance_mm",
        "gun.tip": "tip_mm",
    }
    found: dict[str, object] = {
        places[each.path]: _about(each, system) for each in used if each.path in places
    }
    low, high = BOUNDS["gun.overlap"]
    if good.overlap_percent is not None and low <= good.overlap_percent <= high:
        found["overlap_percent"] = round(good.overlap_percent, 1)
    return found


def _mix(old: Profile, thinner_percent: float | None) -> object:
    if thinner_percent is None or old.mix is None or old.mix.thinner is None:
        return old.mix
    thinner = msgspec.structs.replace(old.mix.thinner, usual_percent=round(thinner_percent, 1))
    return msgspec.structs.replace(old.mix, thinner=thinner)


def _date(job: Job) -> str:
    """The day the job was opened, in UTC: the same wherever the file is read."""
    try:
        return datetime.fromtimestamp(job.opened.at.wall, UTC).strftime("%Y-%m-%d")
    except (OverflowError, OSError, ValueError):  # a clock gone wild
        return "an unknown day"
