"""How long the profile's waits last in today's weather: the trade's rules applied to a profile."""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from booth.log.events import WeatherRead
from booth.profile.model import AtTemperature, Profile, WaitRule
from booth.trade.result import BadInput, Outside
from booth.trade.waits.flash_off import flash_off_at, waterborne_flash_off_at
from booth.trade.waits.wait_by_rule import pot_life_at, recoat_closes_at, recoat_opens_at
from booth.trade.waits.wait_by_table import wait_from_table
from booth.trade.waits.wait_time import WaitTime

NOT_READ = "as the profile gives it: the weather was not read"


class Lasting(msgspec.Struct, frozen=True):
    """A wait as it is today [s]; estimate: it rests on a rule of thumb; rule: which."""

    seconds: float
    estimate: bool
    rule: str


def flash_off(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """Flash-off on the part today; by the drying power of the air where the product is waterborne."""
    rule = profile.waits.flash_off
    if rule is None or not profile.waterborne or rule.is_table:
        return _by(rule, weather, flash_off_at)
    row = rule.rows[0]
    return _today(
        row,
        weather,
        lambda read: waterborne_flash_off_at(
            row.time_s, read.air.value, read.humidity.value, row.at_c
        ),
    )


def recoat_opens(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    return _by(profile.waits.recoat_opens, weather, recoat_opens_at)


def recoat_closes(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    return _by(profile.waits.recoat_closes, weather, recoat_closes_at, closes=True)


def between_coats(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """From the end of a coat to the next: flash-off and the opening of the window have to be over."""
    both = flash_off(profile, weather), recoat_opens(profile, weather)
    return max((each for each in both if each), key=lambda each: each.seconds, default=None)


def dries(rule: WaitRule | None, weather: WeatherRead | None) -> Lasting | None:
    """Dust-free or fit to handle today: it goes as the opening of a recoat window does."""
    return _by(rule, weather, recoat_opens_at)


def pot_life(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """Pot life today, by the air that the mix stands in."""
    row = profile.mix.pot_life if profile.mix is not None else None
    if row is None:
        return None
    return _today(row, weather, lambda read: pot_life_at(row.time_s, row.at_c, read.air.value))


def _by(
    rule: WaitRule | None,
    weather: WeatherRead | None,
    scaled: Callable[[float, float, float], WaitTime | Outside],
    *,
    closes: bool = False,
) -> Lasting | None:
    if rule is None:
        return None
    # What to fall back on: the most careful row of a table, since nothing better is known.
    row = (min if closes else max)(rule.rows, key=lambda row: row.time_s)
    if not rule.is_table:
        return _today(row, weather, lambda read: scaled(row.time_s, row.at_c, read.part.value))
    rows = [(each.at_c, each.time_s) for each in rule.rows]
    return _today(row, weather, lambda read: wait_from_table(rows, read.part.value, closes=closes))


def _today(
    row: AtTemperature,
    weather: WeatherRead | None,
    carried_over: Callable[[WeatherRead], WaitTime | Outside],
) -> Lasting:
    """The wait in this weather; as the profile gives it where that cannot be told, and why."""
    if weather is None:
        return Lasting(row.time_s, False, NOT_READ)
    try:
        found = carried_over(weather)
    except BadInput as fault:
        why = str(fault)
    else:
        if isinstance(found, WaitTime):
            return Lasting(found.seconds, found.estimate, found.rule)
        why = f"{found.reason} {found.advice}"
    return Lasting(row.time_s, True, f"not carried over to today: {why}")
