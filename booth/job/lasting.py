"""How long the profile's waits last in this weather: known, estimated, bounded, or not known. Pure.

What opens has no figure without weather, outside the product's limits or outside the rule: then a
touch test may decide. What closes always has one, which is never longer than the data sheet's.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from booth.log.events import WeatherRead
from booth.profile.model import AtTemperature, CoatPlan, Hazard, Profile, WaitRule
from booth.trade.result import BadInput, Outside
from booth.trade.waits.flash_off import (
    flash_off_at,
    waterborne_closes_at,
    waterborne_flash_off_at,
)
from booth.trade.waits.wait_by_rule import pot_life_at, recoat_closes_at, recoat_opens_at
from booth.trade.waits.wait_by_table import HumidRow, wait_from_humid_table, wait_from_table
from booth.trade.waits.wait_time import Certainty, WaitTime
from booth.trade.weather.humid_air import REFERENCE_HUMIDITY_PERCENT, dew_margin_c
from booth.trade.weather.weather_limits import Bounds, WeatherVerdict, weather_verdict

NOT_READ = "the weather was not read: read air, humidity and the part"
#: Above this air a polyurethane's pot life is shorter, by how much no source says.
DAMP_PERCENT = 50.0

Scaled = Callable[[float, float, float], WaitTime | Outside]


class Lasting(msgspec.Struct, frozen=True):
    """A wait as it is today [s], None where that is not known; rule: which; why: what makes it unsure;
    by_touch: a touch that is dry may open it."""

    seconds: float | None
    certainty: Certainty
    rule: str
    why: str = ""
    by_touch: bool = False

    @property
    def estimate(self) -> bool:
        """Whether there is a figure, and it is not the data sheet's own for today."""
        return self.certainty not in (Certainty.KNOWN, Certainty.NOT_KNOWN)


def not_known(why: str, rule: str = "the profile") -> Lasting:
    return Lasting(None, Certainty.NOT_KNOWN, rule, why)


NOT_GIVEN = not_known("the profile gives no wait: a touch test decides")


def longer(one: Lasting, other: Lasting) -> Lasting:
    """The one that opens later; what is not known opens last of all."""
    if one.seconds is None or other.seconds is None:
        return one if one.seconds is None else other
    return other if other.seconds > one.seconds else one


def shorter(one: Lasting, other: Lasting) -> Lasting:
    """The one that closes sooner; a closing is never unknown."""
    return other if (other.seconds or 0.0) < (one.seconds or 0.0) else one


def opens(
    rule: WaitRule | None,
    profile: Profile,
    weather: WeatherRead | None,
    scaled: Scaled = recoat_opens_at,
) -> Lasting | None:
    """When what the rule says is over; None where the profile does not say."""
    if rule is None:
        return None
    if not rule.rows:
        return not_known(f"until {rule.until}")
    if weather is None:
        return not_known(NOT_READ)
    missed = limits_missed(profile, weather)
    if missed:
        return not_known(f"{missed[0]}: no wait is known there")
    return _told(lambda: _opening(rule, profile, weather, scaled), rule)


def after_coat(profile: Profile, coat: CoatPlan, weather: WeatherRead | None) -> Lasting:
    """From the end of a coat to the next: its own wait, flash-off, or when the window opens."""
    rule, scaled = between_coats(profile, coat)
    return touchable(opens(rule, profile, weather, scaled), rule, scaled)


def between_coats(profile: Profile, coat: CoatPlan) -> tuple[WaitRule | None, Scaled]:
    """The rule for the wait from this coat to the next, and how it is carried over to today."""
    flash = coat.wait or profile.waits.flash_off
    return (flash, flash_off_at) if flash else (profile.waits.recoat_opens, recoat_opens_at)


def touchable(opens: Lasting | None, rule: WaitRule | None, scaled: Scaled) -> Lasting:
    """The wait between coats, with whether a dry touch may open it: flash-off and what only a sign
    ends, but not before a time that the data sheet itself gives for today, and no other window: how
    far a film has reacted, or let its solvent go, cannot be felt."""
    opens = opens or NOT_GIVEN
    can = rule is None or scaled is flash_off_at or not rule.rows
    return msgspec.structs.replace(opens, by_touch=can and opens.certainty is not Certainty.KNOWN)


def recoat_closes(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    return closes(profile.waits.recoat_closes, profile, weather)


def closes(rule: WaitRule | None, profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """When the window that the rule gives is over; None where the profile gives no time."""
    if rule is None or not rule.rows:
        return None
    return _closes(rule, weather, lambda read: _closing(rule, profile, read))


def pot_life(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """Pot life today, by the air that the mix stands in; never longer than the data sheet's."""
    rule = profile.mix.pot_life if profile.mix is not None else None
    if rule is None or not rule.rows:
        return None

    def by(read: WeatherRead) -> list[WaitTime | Outside]:
        if rule.is_table:
            rows = _rows(rule, closes=True)
            return [wait_from_table(rows, read.air.value, closes=True)]
        (row,) = rule.rows
        return [] if row.at_c is None else [pot_life_at(row.time_s, row.at_c, read.air.value)]

    found = _closes(rule, weather, by)
    damp = weather is not None and weather.humidity.value > DAMP_PERCENT
    if damp and Hazard.ISOCYANATE in profile.hazards:
        why = "damp air shortens the pot life of a polyurethane"
        return Lasting(found.seconds, Certainty.AT_MOST, found.rule, why)
    return found


def induction(profile: Profile, weather: WeatherRead | None) -> Lasting | None:
    """How long the mix stands before use, by the air that it stands in; never shorter than the sheet's."""
    rule = profile.mix.induction if profile.mix is not None else None
    if rule is None or not rule.rows:
        return None
    row = rule.rows[0]
    if row.at_c is None:
        return Lasting(row.most_s, Certainty.AT_LEAST, "the profile, for no temperature of its own")
    if weather is None:
        return not_known(NOT_READ)
    if rule.is_table:
        return _told(lambda: [wait_from_table(_rows(rule), weather.air.value)], rule)
    return _told(lambda: [recoat_opens_at(row.most_s, row.at_c or 0.0, weather.air.value)], rule)


def verdict(profile: Profile, weather: WeatherRead) -> WeatherVerdict:
    """This weather against the product's limits; its dew margin, else the usual one. Raises BadInput."""
    limits = profile.limits
    air, humidity, part = (
        Bounds(span.low, span.high) if span is not None else None
        for span in (limits.air_c, limits.humidity_percent, limits.part_c)
    )
    return weather_verdict(
        weather.air.value,
        weather.humidity.value,
        weather.part.value,
        air=air,
        humidity=humidity,
        part=part,
        least_margin_c=limits.dew_margin_c,
    )


def limits_missed(profile: Profile, weather: WeatherRead) -> tuple[str, ...]:
    """Which of the product's own limits this weather misses, and whether water condenses on the part."""
    try:
        judged = verdict(profile, weather)
    except BadInput as fault:
        return (fault.sentence.rstrip("."),)
    way = {True: "below", False: "above"}
    found = [
        f"{each.name} {way[each.low is not None and each.measured < each.low]} the product's limit"
        for each in judged.failed
        if each.name != "dew margin" or profile.limits.dew_margin_c is not None
    ]
    if judged.margin_c <= 0:
        found.insert(0, "water condenses on the part")
    return tuple(found)


def dew_margin(weather: WeatherRead) -> float | None:
    """How far the part lies over the dew point [K]; None where the reading has none."""
    try:
        return dew_margin_c(weather.air.value, weather.humidity.value, weather.part.value)
    except BadInput:
        return None


def _rows(rule: WaitRule, *, closes: bool = False) -> list[tuple[float, float]]:
    return [(row.at_c or 0.0, row.time_s if closes else row.most_s) for row in rule.rows]


def _humid_rows(rule: WaitRule, *, closes: bool = False) -> list[HumidRow]:
    """Rows by temperature and humidity; none where the table knows no humidity."""
    if not rule.is_table or any(row.at_percent is None for row in rule.rows):
        return []
    pairs = zip(rule.rows, _rows(rule, closes=closes), strict=True)
    return [HumidRow(at_c, row.at_percent or 0.0, time_s) for row, (at_c, time_s) in pairs]


def _opening(
    rule: WaitRule, profile: Profile, read: WeatherRead, scaled: Scaled
) -> list[WaitTime | Outside]:
    """Every reason to wait: by the part's temperature and, for a waterborne film, by the air."""
    part_c, air_c, percent = read.part.value, read.air.value, read.humidity.value
    humid = _humid_rows(rule)
    if humid:
        return [wait_from_humid_table(humid, part_c, percent)]
    row = rule.rows[0]
    if rule.is_table:
        by_part = wait_from_table(_rows(rule), part_c)
    elif row.at_c is None:
        return [_UNSAID]
    else:
        by_part = scaled(row.most_s, row.at_c, part_c)
    if not profile.waterborne or isinstance(by_part, Outside):
        return [by_part]
    # A table knows the temperature: only the damp is left to count.
    time_s, at_c = (by_part.seconds, air_c) if rule.is_table else (row.most_s, row.at_c or 0.0)
    at_percent = row.at_percent if row.at_percent is not None else REFERENCE_HUMIDITY_PERCENT
    speed = read.air_speed.value if read.air_speed is not None else None
    return [by_part, waterborne_flash_off_at(time_s, air_c, percent, at_c, at_percent, speed)]


_UNSAID = Outside(
    "The profile names no temperature for this wait.", "Ask its maker for which.", "the profile"
)


def _closing(rule: WaitRule, profile: Profile, read: WeatherRead) -> list[WaitTime | Outside]:
    part_c, air_c, percent = read.part.value, read.air.value, read.humidity.value
    humid = _humid_rows(rule, closes=True)
    if humid:
        return [wait_from_humid_table(humid, part_c, percent, closes=True)]
    row = rule.rows[0]
    if rule.is_table:
        by_part = wait_from_table(_rows(rule, closes=True), part_c, closes=True)
    elif row.at_c is None:
        return []
    else:
        by_part = recoat_closes_at(row.time_s, row.at_c, part_c)
    if not profile.waterborne or isinstance(by_part, Outside):
        return [by_part]
    time_s, at_c = (by_part.seconds, air_c) if rule.is_table else (row.time_s, row.at_c or 0.0)
    at_percent = row.at_percent if row.at_percent is not None else REFERENCE_HUMIDITY_PERCENT
    return [by_part, waterborne_closes_at(time_s, air_c, percent, at_c, at_percent)]


def _told(compute: Callable[[], list[WaitTime | Outside]], rule: WaitRule) -> Lasting:
    """The longest of what counts; not known where any of it is not."""
    try:
        found = compute()
    except BadInput as fault:
        return not_known(fault.sentence)
    for each in found:
        if isinstance(each, Outside):
            return not_known(f"{each.reason} {each.advice}", each.rule)
    longest = max((each for each in found if isinstance(each, WaitTime)), key=_seconds)
    until = f"and until {rule.until}" if rule.until else ""
    return Lasting(longest.seconds, longest.certainty, longest.rule, until)


def _closes(
    rule: WaitRule,
    weather: WeatherRead | None,
    compute: Callable[[WeatherRead], list[WaitTime | Outside]],
) -> Lasting:
    """The shortest of what counts; at most the data sheet's shortest where today cannot be told."""
    least: AtTemperature = min(rule.rows, key=lambda row: row.time_s)
    bound = Lasting(least.time_s, Certainty.AT_MOST, "the profile's shortest", NOT_READ)
    if weather is None:
        return bound
    try:
        found = [each for each in compute(weather) if isinstance(each, WaitTime)]
    except BadInput as fault:
        return msgspec.structs.replace(bound, why=fault.sentence)
    if not found:
        return msgspec.structs.replace(bound, why="the profile names no temperature for it")
    shortest = min(found, key=_seconds)
    return Lasting(shortest.seconds, shortest.certainty, shortest.rule)


def _seconds(found: WaitTime) -> float:
    return found.seconds
