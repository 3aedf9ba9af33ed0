"""The coats of a job, one by one: what each is called, what it asks for, how many there are to be. Pure.

Nothing else reads how many coats a profile wants.
"""

from __future__ import annotations

from functools import lru_cache

import msgspec

from booth.log.fold import Job
from booth.profile.model import CoatPlan, Profile, Range

#: Where the profile gives neither a count nor a list.
ONE = Range(1, 1)


class PlannedCoat(msgspec.Struct, frozen=True):
    """One coat. number: 1, 2, …; plan: what is special about it; hidden: laid until it hides; may: it
    may be left out (beyond the least, or hidden already)."""

    number: int
    plan: CoatPlan = CoatPlan()
    may: bool = False

    @property
    def name(self) -> str:
        """As 'tack coat', or 'coat 2'."""
        return self.plan.name or f"coat {self.number}"


@lru_cache(maxsize=64)
def coats_of(profile: Profile) -> tuple[PlannedCoat, ...]:
    """Every coat that a profile wants, the usual number where it gives a range."""
    listed = profile.coats or (CoatPlan(times=profile.film.coats or ONE),)
    found: list[PlannedCoat] = []
    for plan in listed:
        times = plan.times or ONE
        least = round(times.low or times.high or 1)
        for place in range(max(least, 1)):
            may = plan.until_hidden and place > 0
            found.append(PlannedCoat(len(found) + 1, plan, may))
    return tuple(found)


def planned(job: Job) -> tuple[PlannedCoat, ...]:
    """The coats of this job, as its profile wants them."""
    return coats_of(job.profile)


def coats_wanted(job: Job) -> int:
    """How many coats a part is to get."""
    return len(planned(job))


def most_coats(job: Job) -> int | None:
    """How many coats a part may get at most; None where it is laid until it hides, without a number."""
    film = job.profile.film
    listed = [(plan.times, plan.until_hidden) for plan in job.profile.coats] or [
        (film.coats, False)
    ]
    if any(hidden and (times is None or times.high is None) for times, hidden in listed):
        return None
    most = sum(round((times or ONE).high or (times or ONE).low or 1) for times, _ in listed)
    return max(most, coats_wanted(job))


def coat_named(job: Job, number: int) -> PlannedCoat:
    """The coat of that number; beyond the planned ones, a further one like the last."""
    coats = planned(job)
    if number <= len(coats):
        return coats[number - 1]
    return PlannedCoat(number, msgspec.structs.replace(coats[-1].plan, name=""), may=True)
