"""What a day asks for before it begins: hardener and thinner by the air, every wait of a product. Pure."""

from __future__ import annotations

import msgspec

from booth.job import lasting
from booth.job.coat_plan import coats_of
from booth.job.lasting import Lasting
from booth.job.measured import known
from booth.job.mix_choice import choice_for_today, hardeners, options_of, todays
from booth.job.openings import window_opens
from booth.job.together import after_coat, closes_first, every_mix, opens_last
from booth.log.events import WeatherRead
from booth.profile.model import NextProduct, Profile, Range
from booth.profile.next_product import next_window, not_by_name
from booth.trade.result import Said

KINDS = ("hardener", "thinner")


class DayWait(msgspec.Struct, frozen=True):
    """One wait of a product. coat: after which one, 0 for the mix; opens, closes: None where the
    profile does not say."""

    product: str
    coat: int
    what: str
    opens: Lasting | None
    closes: Lasting | None = None


class DayChoice(msgspec.Struct, frozen=True):
    """Which hardener or thinner (`what`) of a product to take in this air, and the air it is for.

    suits: False where it is only the nearest, None where that is not known: without a reading, or
    where the sheet names no air; several: there are others to choose from.
    """

    product: str
    what: str
    name: str
    for_c: Range | None
    suits: bool | None
    several: bool


def choices_of(profile: Profile, weather: WeatherRead | None) -> tuple[DayChoice, ...]:
    """What to take of each that the profile names for an air, or names several of."""
    air_c, found = weather.air.value if weather is not None else None, []
    for what, options in zip(KINDS, options_of(profile), strict=True):
        choice, several = choice_for_today(options, air_c), len(options) > 1
        if choice is not None and (several or choice.option.for_c is not None):
            option = choice.option
            told = DayChoice(profile.name, what, option.name, option.for_c, choice.suits, several)
            found.append(told)
    return tuple(found)


def mixes_of_day(profile: Profile, weather: WeatherRead | None) -> tuple[Profile, ...]:
    """The profile with hardener and thinner for this air; with each of its hardeners where it is not
    known which one that is."""
    of_air = todays(profile, weather)
    for each in choices_of(profile, weather):
        if each.what == "hardener" and each.suits is None and len(hardeners(profile)) > 1:
            return (of_air, *every_mix(profile))
    return (of_air,)


def waits_of(
    mixes: tuple[Profile, ...], coming: Profile | None, weather: WeatherRead | None
) -> list[DayWait]:
    """Every wait of a product; mixes: it as each hardener has it that may be in it."""
    profile = mixes[0]

    def wait(what: str, coat: int, opens: Lasting | None, closes: Lasting | None = None) -> None:
        if opens is not None or closes is not None:
            found.append(DayWait(profile.name, coat, what, opens, closes))

    found: list[DayWait] = []
    wait("induction", 0, lasting.induction(profile, weather))
    wait("pot life", 0, None, closes_first(mixes, lambda mix: lasting.pot_life(mix, weather)))
    *before, last = coats_of(profile)
    closes = recoat_closes(mixes, weather)
    for coat in before:
        wait(f"coat {coat.number + 1}", coat.number, after_coat(mixes, coat.plan, weather), closes)
    found.append(window_of(mixes, coming, weather))
    if found[-1].opens is None and found[-1].closes is None:
        found.pop()
    for what, name in (
        *(("dust-free", "dust_free"), ("tape", "tape"), ("handle", "handle")),
        *(("before heat", "before_bake"), ("sand", "sand"), ("polish", "polish")),
        ("cure", "cure"),
    ):
        wait(what, last.number, _opens(mixes, name, weather))
    return found


def recoat_closes(mixes: tuple[Profile, ...], weather: WeatherRead | None) -> Lasting | None:
    return closes_first(mixes, lambda mix: lasting.recoat_closes(mix, weather))


def _opens(mixes: tuple[Profile, ...], name: str, weather: WeatherRead | None) -> Lasting | None:
    return opens_last(mixes, lambda mix: lasting.opens(getattr(mix.waits, name), mix, weather))


def window_of(
    mixes: tuple[Profile, ...], coming: Profile | None, weather: WeatherRead | None
) -> DayWait:
    """When the next product may go on; not known where one is to come and the profile does not say."""

    def window(mix: Profile) -> NextProduct:
        return next_window(mix, coming) or NextProduct()

    opens = opens_last(mixes, lambda mix: lasting.opens(window(mix).opens, mix, weather))
    if coming is not None:
        opens = window_opens(opens, window(mixes[0]).opens, not_by_name(mixes[0], coming))
    closes = closes_first(mixes, lambda mix: lasting.closes(window(mix).closes, mix, weather))
    what = f"next product: {coming.name}" if coming else "next product"
    return DayWait(mixes[0].name, coats_of(mixes[0])[-1].number, what, opens, closes)


def weather_why(profile: Profile, weather: WeatherRead | None) -> list[str]:
    """What of this weather speaks against the product."""
    if weather is None:
        return []
    found = [f"{profile.name}: {each}." for each in lasting.limits_missed(profile, weather)]
    judged = known(lasting.verdict, profile, weather)
    if profile.limits.dew_margin_c is None and judged is not None and judged.margin_c > 0:
        found += [
            f"The part is {Said(float(f'{each.measured:.2g}'), 'K')} over the dew point, less than "
            f"{Said(each.low or 0.0, 'K')}."
            for each in judged.failed
            if each.name == "dew margin"
        ]
    found += [
        f"{profile.name}: no {each.what} of the sheet is for this air, {each.name} is nearest: ask "
        "the data sheet."
        for each in choices_of(profile, weather)
        if each.suits is False
    ]
    return found
