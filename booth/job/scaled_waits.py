"""How long the profile's waits last in today's weather: the trade's rules applied to a profile."""

from __future__ import annotations

from dataclasses import dataclass

from booth.log.events import WeatherRead
from booth.profile.model import AtTemperature, Profile, WaitRule
from booth.trade.result import BadInput, Outside
from booth.trade.waits.flash_off import flash_off_at, waterborne_flash_off_at
from booth.trade.waits.wait_by_rule import pot_life_at, recoat_closes_at, recoat_opens_at
from booth.trade.waits.wait_by_table import wait_from_table
from booth.trade.waits.wait_time import WaitTime

NOT_READ = "as the profile gives it: the weather was not read"


@dataclass(frozen=True, slots=True)
class Lasting:
    """A wait as it is today [s]; estimate: it rests on a rule of thumb; rule: which."""

    seconds: float
    estimate: bool
    rule: str


def flash_off(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """Flash-off on the part today; by the drying power of the air where the product is waterborne."""
    rule = profile.waits.flash_off
    if rule is None:
        return None
    if profile.waterborne and not rule.is_table and weather is not None:
        row = rule.rows[0]
        try:
            found = waterborne_flash_off_at(
                row.time_s, weather.air.value, weather.humidity.value, row.at_c
            )
        except BadInput as fault:
            return _unscaled(row, str(fault))
        return _lasting(found, row)
    return _by(rule, weather, flash_off_at)


def recoat_opens(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    return _by(profile.waits.recoat_opens, weather, recoat_opens_at)


def recoat_closes(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    return _by(profile.waits.recoat_closes, weather, recoat_closes_at, closes=True)


def dries(rule: WaitRule | None, weather: WeatherRead | None) -> Lasting | None:
    """Dust-free or fit to handle today: it goes as the opening of a recoat window does."""
    return _by(rule, weather, recoat_opens_at)


def pot_life(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """Pot life today, by the air that the mix stands in."""
    if profile.mix is None or profile.mix.pot_life is None:
        return None
    row = profile.mix.pot_life
    if weather is None:
        return Lasting(row.time_s, False, NOT_READ)
    try:
        return _lasting(pot_life_at(row.time_s, row.at_c, weather.air.value), row)
    except BadInput as fault:
        return _unscaled(row, str(fault))


def longer_of(one: Lasting | None, other: Lasting | None) -> Lasting | None:
    """The one that lasts longer: both have to be over."""
    if one is None or other is None:
        return one or other
    return one if one.seconds >= other.seconds else other


def _by(
    rule: WaitRule | None, weather: WeatherRead | None, scaled: object, *, closes: bool = False
) -> Lasting | None:
    if rule is None:
        return None
    row = _reference(rule, closes)
    if weather is None:
        return Lasting(row.time_s, False, NOT_READ)
    part_c = weather.part.value
    try:
        if rule.is_table:
            rows = [(each.at_c, each.time_s) for each in rule.rows]
            return _lasting(wait_from_table(rows, part_c, closes=closes), row)
        return _lasting(scaled(row.time_s, row.at_c, part_c), row)  # type: ignore[operator]
    except BadInput as fault:
        return _unscaled(row, str(fault))


def _reference(rule: WaitRule, closes: bool) -> AtTemperature:
    """The row to fall back on: the most careful of a table, since nothing better is known."""
    pick = min if closes else max
    return pick(rule.rows, key=lambda row: row.time_s)


def _lasting(found: WaitTime | Outside, row: AtTemperature) -> Lasting:
    if isinstance(found, Outside):
        return _unscaled(row, f"{found.reason} {found.advice}")
    return Lasting(found.seconds, found.estimate, found.rule)


def _unscaled(row: AtTemperature, why: str) -> Lasting:
    return Lasting(row.time_s, True, f"not carried over to today: {why}")
