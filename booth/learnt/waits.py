"""This shop's waits, from touch tests: how long a coat really took against the wait that was counted. Pure.

A touch that came away wet or tacky says only that it took longer, one that was dry only that it was
over by then. So each coat gives an interval, open at one end where only one was tried.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import msgspec

from booth.job.coat_plan import coats_wanted
from booth.job.waits import between_coats
from booth.learnt.observation import NO_END, Observation, Told, of_one_job
from booth.log.coats import Coat
from booth.log.events import AgeTold, WeatherRead
from booth.log.fold import Job
from booth.moment import Basis, elapsed
from booth.units import Kind

TAGS = (b'"touch tried"',)
#: Air, and its damp, that differ by less are like today's (this program's own choice: a wait that
#: halves for each 10 to 12 K changes by a third in 5 K).
LIKE_K, LIKE_PERCENT = 5.0, 15.0


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give what one job shows of the wait between two coats, by product."""
    return of_one_job([each for job in products for each in _of_product(job)])


def _of_product(job: Job) -> Iterator[Observation]:
    told_ages = {each.target for each in job.of(AgeTold)}
    for part in job.parts:
        laid = job.coats_on(part)
        for coat in laid:
            follows = coat.number < max(coats_wanted(job, part), len(laid))
            if follows and coat.ended is not None and coat.ended.n not in told_ages:
                yield from _of_coat(job, coat)


def _of_coat(job: Job, coat: Coat) -> Iterator[Observation]:
    ended = coat.ended
    assert ended is not None
    ends = touched_between(job, coat)
    if ends is None:
        return
    wait = between_coats(job, msgspec.structs.replace(coat, touches=()), ended)
    if wait.opens_s is None or wait.opens_s <= 0:
        return
    low_s, high_s = ends
    weather = coat.weather
    high = NO_END if high_s is None else high_s / wait.opens_s
    yield Observation(
        group=(job.profile.key,),
        about=(job.profile.name,),
        low=low_s / wait.opens_s,
        high=high,
        at=ended.at,
        told=_weather_told(weather),
        air_c=None if weather is None else weather.air.value,
        humidity_percent=None if weather is None else weather.humidity.value,
    )


def _weather_told(weather: WeatherRead | None) -> tuple[Told, ...]:
    if weather is None:
        return ()
    return (weather.air.value, Kind.TEMPERATURE), (weather.humidity.value, Kind.PERCENT)


def touched_between(job: Job, coat: Coat) -> tuple[float, float | None] | None:
    """Give between when and when a coat opened [s after its end]: after the last touch that was wet or
    tacky, not after the first dry one behind that; None where nothing is known."""
    if coat.ended is None:
        return None
    low_s, high_s = 0.0, None
    for touch in coat.touches:
        passed = elapsed(coat.ended.at, touch.at, job.boots)
        if passed.basis is Basis.DOUBTFUL or passed.seconds < 0:
            return None
        if touch.result != "dry":
            # It felt dry before: that touch was wrong.
            low_s, high_s = passed.seconds, None
        elif high_s is None:
            high_s = passed.seconds
    return None if high_s is None and not low_s else (low_s, high_s)


def like(found: Sequence[Observation], weather: WeatherRead | None) -> tuple[Observation, ...]:
    """Give those made in air like this."""
    if weather is None:
        return ()
    air_c, damp = weather.air.value, weather.humidity.value
    return tuple(
        each
        for each in found
        if each.air_c is not None
        and each.humidity_percent is not None
        and abs(each.air_c - air_c) <= LIKE_K
        and abs(each.humidity_percent - damp) <= LIKE_PERCENT
    )
