"""How long what has begun lasts, over the readings of the weather since: only ever more careful. Pure."""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from booth.job.lasting import Lasting
from booth.log.events import BatchMixed, CoatEnded, WeatherRead
from booth.log.fold import Job
from booth.moment import Moment, elapsed

#: A reading of the weather older than this is to be taken again (this program's own choice).
READING_S = 3600.0
#: A reading of the weather older than this when a coat ended says nothing about its wait (this
#: program's own choice; it asks for a new one after an hour).
LATELY_S = 4 * 3600.0


def weather_age_s(job: Job, now: Moment) -> float | None:
    """How old the last reading of the weather is [s]; None where there is none."""
    return None if job.weather is None else elapsed(job.weather.at, now, job.boots).seconds


def is_stale(job: Job, now: Moment) -> bool:
    """Whether the weather was read, and so long ago that it is to be read again."""
    age_s = weather_age_s(job, now)
    return age_s is not None and age_s > READING_S


def over_time(
    job: Job,
    began: CoatEnded | BatchMixed,
    lasts: Callable[[WeatherRead | None], Lasting | None],
    careful: Callable[[Lasting, Lasting], Lasting],
    word: str,
) -> Lasting | None:
    first, *others = _readings(job, began)
    found = lasts(first)
    if found is None:
        return None
    for read in others:
        assert read is not None  # only the first may be missing
        new = lasts(read)
        over = found.seconds is not None and elapsed(began.at, read.at).seconds >= found.seconds
        if over or new is None or careful(found, new) is found:
            continue
        why = new.why or f"{word} by a later reading of the weather"
        found = msgspec.structs.replace(new, why=why)
    return found


def _readings(job: Job, began: CoatEnded | BatchMixed) -> tuple[WeatherRead | None, ...]:
    """The weather that counts for a wait: what was read lately when it began, and all since."""
    before = [each for each in job.of(WeatherRead) if each.n < began.n]
    since = tuple(each for each in job.of(WeatherRead) if each.n > began.n)
    if before and elapsed(before[-1].at, began.at, job.boots).seconds <= LATELY_S:
        return (before[-1], *since)
    return since or (None,)
