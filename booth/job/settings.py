"""The settings that worked in a job, as a new coating profile: a changed copy, the old one untouched.

What was measured takes the place of what the profile asked for, with the spread within which a shop
repeats a setting. Everything else (hazards, mix, waits, limits, steps) stays as it was.
"""

from __future__ import annotations

import msgspec
from msgspec.structs import replace

from booth.files.slug import slug
from booth.job import measured
from booth.job.mix_choice import in_use
from booth.job.mixture import mean
from booth.job.past_settings import SETTINGS, GoodSettings, Setting, settings_of
from booth.job.recipe import thinner_of
from booth.log.fold import Job
from booth.moment import utc_text
from booth.profile.keys import BOUNDS
from booth.profile.model import Efflux, Profile, Range
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, System, read, show

#: Within what share of itself a shop repeats a setting (common practice, no source): two careful
#: catches, and two runs of one cup by one hand, agree about that well.
REPEATS_WITHIN = 0.05


class NotAProfile(ValueError):
    """There is nothing to make a profile of; the message is a sentence for the painter."""


class _Used(msgspec.Struct, frozen=True):
    """A setting that was measured and that a profile can hold; asked: what this one asked for."""

    setting: Setting
    measured: float
    asked: Range | None

    @property
    def is_outside(self) -> bool:
        return measured.compare(self.measured, self.asked) in ("below", "above")

    def words(self, system: System) -> str:
        return f"{self.setting.name} {self.setting.figure(self.measured, system)}"

    def about(self, system: System) -> Range:
        """It with the spread it repeats within, inside of what was asked for where it lay there.

        The ends are numbers that can be read off the shop's own gauges.
        """
        kind = self.setting.kind
        if kind is Kind.TIP:
            return Range(self.measured, self.measured)
        asked = self.asked if self.asked is not None and not self.is_outside else Range(0.0, None)
        low, high = BOUNDS[self.setting.key]
        least = max(self.measured * (1 - REPEATS_WITHIN), asked.low or low, low)
        most = min(self.measured * (1 + REPEATS_WITHIN), asked.high or high, high)
        shown = (self.setting.figure(end, system) for end in (least, most))
        return Range(*(read(end, kind, system).value for end in shown))

    def outside(self, system: System) -> str:
        """That it lies outside of what was asked for."""
        asked, kind = self.asked or Range(), self.setting.kind
        low = "" if asked.low is None else f"at least {show(asked.low, kind, system)}"
        high = "" if asked.high is None else f"at most {show(asked.high, kind, system)}"
        limits = " and ".join(filter(None, (low, high)))
        return (
            f"Outside of what the profile asked for ({limits}): {self.words(system)}. Check the data "
            "sheet."
        )


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
    lines = settings_lines(job, system)
    if not lines:
        raise NotAProfile(
            "Nothing was measured in this job that a profile keeps: time the cup, catch the "
            "coating, read the air or the fan first."
        )
    good = settings_of(job)
    used = _used(job, good)
    thinner = good.figures.get("thinner")
    notes = [f"Settings from job {job.opened.job or 'job'}: {', '.join(lines)}."]
    notes += [each.outside(system) for each in used.values() if each.is_outside]
    asked, mix = thinner_of(in_use(job)), old.mix
    limit = asked.limit_percent if asked is not None else None
    if thinner is not None and limit is not None and thinner > limit:
        notes.append(
            f"The job used {thinner:.0f} % thinner, beyond the limit of {limit:g} %: not taken over."
        )
    elif thinner is not None and asked is not None and mix is not None:
        percent = round(thinner, 1)
        # Of several thinners the one that was used.
        taken = {asked: replace(asked, usual_percent=Range(percent, percent))}
        others = tuple(taken.get(each, each) for each in mix.thinners)
        mix = replace(
            mix, thinner=mix.thinner and taken.get(mix.thinner, mix.thinner), thinners=others
        )
    if good.next_time:
        notes.append(f"Next time: {good.next_time}")
    gun: dict[str, object] = {
        each.setting.field: each.about(system) for each in used.values() if each.setting.field
    }
    if "overlap" in used:
        percent = round(used["overlap"].measured, 1)
        gun["overlap_percent"] = Range(percent, percent)
    day = utc_text(job.opened.at, "%Y-%m-%d", "an unknown day")
    return replace(
        old,
        key=slug(name),
        name=name,
        source=f"{old.source}; settings from job {job.opened.job or 'job'} of {day}",
        notes=(*old.notes, *notes),
        efflux=_efflux(job, used["efflux"], system) if "efflux" in used else old.efflux,
        gun=replace(old.gun, **gun),
        mix=mix,
    )


def settings_lines(job: Job, system: System) -> tuple[str, ...]:
    """Give what would be taken over, each in a few words."""
    good = settings_of(job)
    lines = [
        each.words(system) + (f" in a {CUPS[good.cup].name}" if name == "efflux" else "")
        for name, each in _used(job, good).items()
    ]
    if "thinner" in good.figures:
        lines.append(f"thinner {good.figures['thinner']:.0f} %")
    return tuple(lines)


def _used(job: Job, good: GoodSettings) -> dict[str, _Used]:
    found: dict[str, float | None] = dict(good.figures)
    found |= {
        # With the trigger pulled, or nothing: a catch is often made with the air shut.
        "inlet": measured.inlet_kpa(job),
        # Of the coating itself: a delivery of water is no target for paint.
        "delivery": measured.mean_delivery_ml_min(job, "paint"),
        "efflux": found.get("efflux") if good.cup in CUPS else None,
    }
    used, efflux = {}, job.profile.efflux
    for each in SETTINGS:
        figure = found.get(each.name)
        low, high = BOUNDS[each.key] if each.key else (0.0, 0.0)
        if not each.key or figure is None or not low <= figure <= high:
            continue
        asked = getattr(job.profile.gun, each.field, None)
        if each.name == "efflux" and efflux and slug(efflux.cup) == slug(CUPS[good.cup].name):
            asked = efflux.target_s  # for the cup that was used
        used[each.name] = _Used(each, figure, asked if isinstance(asked, Range) else None)
    return used


def _efflux(job: Job, timed: _Used, system: System) -> Efflux:
    # The temperature is that of the liquid that was timed: the old one may not hold for it.
    runs = measured.efflux_runs(job)
    read_at = [run.liquid_temperature.value for run in runs if run.liquid_temperature]
    at_c = mean(read_at)
    low, high = BOUNDS["efflux.at"]
    kept_c = at_c if at_c is not None and low <= at_c <= high else None
    return Efflux(CUPS[runs[-1].cup].name, timed.about(system), kept_c)
