"""A system of three invented products, and jobs with it."""

from __future__ import annotations

from msgspec.structs import replace

from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Film, Hazard, Mix, MixPart, NextProduct, Profile, Range, Waits
from tests.job.make import START, at, mild, one_time, profile

HOUR_S = 3600.0
ONE_COAT = Film(coats=Range(1, 1))
#: May be coated within 6 h or after 72 h; abraded after a week.
PRIMER = profile(
    key="trial-primer",
    name="Trial primer",
    hazards=(Hazard.FLAMMABLE,),
    cautions=("Dust of it harms.",),
    film=ONE_COAT,
    waits=Waits(sand=one_time(4 * HOUR_S)),
    next_products=(
        NextProduct(name="something else", opens=one_time(60)),
        NextProduct(
            name="Trial base",
            opens=one_time(HOUR_S),
            closes=one_time(6 * HOUR_S),
            or_after=one_time(72 * HOUR_S),
            abrade_after=one_time(168 * HOUR_S),
        ),
    ),
)
#: Any product may follow from half an hour on; more than a day later over an abraded film only.
BASE = profile(
    key="trial-base",
    name="Trial base",
    hazards=(Hazard.FLAMMABLE,),
    mix=None,
    film=ONE_COAT,
    waits=Waits(),
    next_products=(NextProduct(opens=one_time(1800), closes=one_time(24 * HOUR_S)),),
)
CLEAR = profile(
    mix=Mix(parts=(MixPart("clear", 2), MixPart("hardener", 1)), pot_life=one_time(4 * HOUR_S))
)
LATER = (BASE, CLEAR)
OPENED = ev.JobOpened(
    n=1,
    at=START,
    job="trial",
    profile=PRIMER,
    later=LATER,
    parts=("door", "hood"),
    coating="Trial system",
    coating_key="trial-system",
    version=2,
)


def begun(product: int, seconds: float = 0.0) -> ev.ProductBegun:
    return ev.ProductBegun(n=0, at=at(seconds), product=product)


def coat(part: str, seconds: float, lasts_s: float = 60.0) -> tuple[ev.Event, ev.Event]:
    """A coat that ended at so many seconds after the start."""
    return (
        ev.CoatBegun(n=0, at=at(seconds - lasts_s), part=part, coat=1),
        ev.CoatEnded(n=0, at=at(seconds), part=part, coat=1),
    )


def job_of(*kept: ev.Event, opened: ev.JobOpened = OPENED) -> Job:
    """The job with these entries, numbered as they come."""
    return fold([opened, *(replace(event, n=n) for n, event in enumerate(kept, 2))])


def mild_at(seconds: float = 0.0) -> ev.WeatherRead:
    return mild(0, seconds)


def products(*given: Profile) -> ev.JobOpened:
    """The opening of a job with these products."""
    return replace(OPENED, profile=given[0], later=given[1:])
