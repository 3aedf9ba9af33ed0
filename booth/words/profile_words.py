"""A coating profile in plain lines, in the units shown now."""

from __future__ import annotations

from booth.profile.model import Profile, Range, WaitRule
from booth.units import Kind, System, show
from booth.words.wait_words import duration


def range_words(span: Range | None, kind: Kind, system: System) -> str:
    """A range as '8.0 to 10.0 fl oz/min', 'at least …' or 'up to …'; empty where there is none."""
    if span is None:
        return ""
    if span.low is None:
        return f"up to {show(span.high or 0.0, kind, system)}"
    low = show(span.low, kind, system)
    if span.high is None:
        return f"at least {low}"
    if span.low == span.high:
        return low
    if kind is not Kind.TIME:
        low = show(span.low, kind, system, unit=False)
    return f"{low} to {show(span.high, kind, system)}"


def profile_lines(profile: Profile, system: System) -> tuple[str, ...]:
    """Give what the profile says that matters before a job."""
    gun, film, waits, limits = profile.gun, profile.film, profile.waits, profile.limits
    lines = [profile.product or profile.name]
    lines.append(f"Demo: {profile.source}" if profile.demo else f"From: {profile.source}")
    if profile.hazards:
        lines.append(f"Hazards: {', '.join(profile.hazards)}")
    lines += ["", *_mix_lines(profile, system)]
    if profile.efflux is not None:
        target = range_words(profile.efflux.target_s, Kind.TIME, system)
        lines.append(f"Efflux: {target} in {profile.efflux.cup}")
    settings = [
        ("tip", range_words(gun.tip_mm, Kind.LENGTH, System.METRIC)),
        ("inlet", range_words(gun.inlet_kpa, Kind.PRESSURE, system)),
        ("delivery", range_words(gun.delivery_ml_min, Kind.DELIVERY, system)),
        ("fan", range_words(gun.fan_mm, Kind.LENGTH, system)),
        ("distance", range_words(gun.distance_mm, Kind.LENGTH, system)),
        ("overlap", f"{gun.overlap_percent:.0f} %" if gun.overlap_percent is not None else ""),
    ]
    lines += _together("Gun", settings)
    coats = f"{film.coats} coat{'s' if film.coats != 1 else ''}"
    wet = range_words(film.wet_um, Kind.THICKNESS, system)
    lines.append(f"Film: {coats}{', ' + wet + ' wet each' if wet else ''}")
    rules = [
        ("flash-off", waits.flash_off),
        ("recoat opens", waits.recoat_opens),
        ("recoat closes", waits.recoat_closes),
        ("handle", waits.handle),
    ]
    lines += _waits(rules, system)
    margin = limits.dew_margin_c
    over = "" if margin is None else show(margin, Kind.TEMPERATURE_DIFFERENCE, system)
    weather = [
        ("air", range_words(limits.air_c, Kind.TEMPERATURE, system)),
        ("humidity", range_words(limits.humidity_percent, Kind.PERCENT, system)),
        ("part", range_words(limits.part_c, Kind.TEMPERATURE, system)),
        ("part over dew point by", over),
    ]
    lines += _together("Weather", weather)
    lines += ["", *profile.notes] if profile.notes else []
    return tuple(lines)


def _together(what: str, said: list[tuple[str, str]]) -> list[str]:
    """What belongs together, in one line: a window of 24 rows shows all of a profile."""
    words = [f"{name} {value}" for name, value in said if value]
    return [f"{what}: {', '.join(words)}"] if words else []


def _waits(rules: list[tuple[str, WaitRule | None]], system: System) -> list[str]:
    """All waits in one line; the temperature once where it is the same for all."""
    given = [(name, rule.rows) for name, rule in rules if rule is not None]
    rows = [row for _, table in given for row in table]
    at = {row.at_c: f" at {show(row.at_c, Kind.TEMPERATURE, system)}" for row in rows}
    what = "Waits"
    if len(at) == 1:
        ((same, words),) = at.items()
        what, at = f"Waits{words}", {same: ""}
    times = [
        (name, ", ".join(duration(row.time_s) + at[row.at_c] for row in table))
        for name, table in given
    ]
    return _together(what, times)


def _mix_lines(profile: Profile, system: System) -> list[str]:
    mix = profile.mix
    if mix is None:
        return ["Mix: none, stir"]
    parts = " : ".join(f"{part.parts:g} {part.name}" for part in mix.parts)
    lines = [f"Mix by {mix.by}: {parts}" if len(mix.parts) > 1 else "Mix: one can, stir"]
    if mix.thinner is not None:
        limits = ("{:g} %", mix.thinner.usual_percent), ("up to {:g} %", mix.thinner.limit_percent)
        said = ", ".join(form.format(each) for form, each in limits if each is not None)
        lines.append(f"Thinner: {mix.thinner.name} {said}")
    if mix.pot_life is not None:
        at = show(mix.pot_life.at_c, Kind.TEMPERATURE, system)
        lines.append(f"Pot life: {duration(mix.pot_life.time_s)} at {at}")
    if mix.induction_s:
        lines.append(f"Induction: {duration(mix.induction_s)}")
    return lines
