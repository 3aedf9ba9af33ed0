"""The coats of a job, one by one: what each is called, what it asks for, how many there are to be. Pure.

Nothing else reads how many coats a profile wants. What the profile wants is the usual number; the
painter may change it while the job runs, on one part or on all.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import msgspec

from booth.log.events import CoatsChanged
from booth.log.fold import Job, kept_by
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


def planned(job: Job, part: str = "") -> tuple[PlannedCoat, ...]:
    """The coats of this job on a part, as profile and painter want them; on the part that gets most
    of them where none is named."""
    usual = coats_of(job.profile)
    if not job.of(CoatsChanged):
        return usual
    wanted = [_wanted(job, each, len(usual)) for each in ((part,) if part else job.parts)]
    return _changed(usual, max(wanted))


def coats_wanted(job: Job, part: str = "") -> int:
    """How many coats a part is to get; the most that any is to get where none is named."""
    return len(planned(job, part))


def _wanted(job: Job, part: str, usual: int) -> int:
    told = [each.coats for each in job.of(CoatsChanged) if each.part in ("", part)]
    return max(told[-1], 1) if told else usual


def _changed(usual: Sequence[PlannedCoat], wanted: int) -> tuple[PlannedCoat, ...]:
    """So many of them: what comes or goes are those laid until it hides, else the last ones."""
    hiding = [each.number for each in usual if each.plan.until_hidden]
    last, more = hiding[-1] if hiding else len(usual), wanted - len(usual)
    found = [(each.plan, each.may) for each in usual]
    if more > 0:
        found[last:last] = [(_again(usual[last - 1].plan), True)] * more
    else:
        # The first of those that are laid until it hides stays.
        found[max(last + more, min(hiding, default=0)) : last] = []
    return tuple(PlannedCoat(n, *each) for n, each in enumerate(found[:wanted], 1))


def most_coats(job: Job, part: str = "") -> int | None:
    """How many coats a part may get at most, by profile or painter; None where that has no number."""
    most = sheet_most(job)
    return None if most is None else max(most, coats_wanted(job, part))


def sheet_most(job: Job) -> int | None:
    """The most coats the profile gives; None where it is laid until it hides, without a number."""
    film = job.profile.film
    listed = [(plan.times, plan.until_hidden) for plan in job.profile.coats] or [
        (film.coats, False)
    ]
    if any(hidden and (times is None or times.high is None) for times, hidden in listed):
        return None
    most = sum(round((times or ONE).high or (times or ONE).low or 1) for times, _ in listed)
    return max(most, len(coats_of(job.profile)))


def wet_to_come(job: Job) -> Range | None:
    """The wet film of the coat that is to come on the part with the fewest [um]; None: not given."""
    fewest = min((len(job.coats_on(part)) for part in job.parts), default=0)
    return wet_wanted(job, min(fewest + 1, coats_wanted(job)))


def wet_wanted(job: Job, number: int | None) -> Range | None:
    """The wet film of that coat [um]: its own, else the profile's; before the first that of the first."""
    return coat_named(job, number or 1).plan.wet_um or job.profile.film.wet_um


def coat_named(job: Job, number: int, part: str = "") -> PlannedCoat:
    """The coat of that number; beyond the planned ones, a further one like the last."""
    coats = planned(job, part)
    if number <= len(coats):
        return coats[number - 1]
    return PlannedCoat(number, _again(coats[-1].plan), may=True)


def _again(plan: CoatPlan) -> CoatPlan:
    """A further coat like this one; it goes by its number."""
    return msgspec.structs.replace(plan, name="")


def hides_yet(job: Job, part: str) -> bool:
    """Whether it is to be asked now if the part is hidden: the last coat of those that are laid until
    it is, is on, another may follow, and the painter has not said."""
    coats, plan = job.coats_on(part), planned(job, part)
    if job.opened.rehearsal:
        return False  # water hides nothing
    hiding = [each.number for each in plan if each.plan.until_hidden]
    if not hiding or not coats or coats[-1].ended is None:
        return False
    # Where nothing else follows, a coat that was laid beyond the plan was one more.
    beyond = hiding[-1] == len(plan) < len(coats)
    if len(coats) != hiding[-1] and not beyond:
        return False
    most = most_coats(job, part)
    said = [each.n for each in job.of(CoatsChanged) if each.part in ("", part)]
    is_said = bool(said) and said[-1] > coats[-1].ended.n
    return not is_said and (most is None or max(len(plan), len(coats)) < most)


def running_part(job: Job) -> str:
    return next((part for part in job.parts if job.running_coat(part) is not None), "")


def next_part(job: Job, among: Sequence[str] = ()) -> str:
    """The part being sprayed, else the one that wants the next coat: fewest coats, longest waiting.
    among: of which parts; of all where none is given."""
    parts = tuple(among) or job.parts
    found: str = kept_by(job, "next part", parts, lambda: _next_part(job, parts))
    return found


def _next_part(job: Job, parts: Sequence[str]) -> str:
    running = running_part(job)
    if running in parts:
        return running
    coats = {part: job.coats_on(part) for part in parts}
    waiting = [part for part in parts if len(coats[part]) < coats_wanted(job, part)]

    def turn(part: str) -> tuple[int, int]:
        return len(coats[part]), coats[part][-1].begun.n if coats[part] else 0

    return min(waiting or parts[:1], key=turn)
