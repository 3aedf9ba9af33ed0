"""The clocks that outlive a job: what still runs after it was closed, and what of that should ring. Pure."""

from __future__ import annotations

from booth.job.wait import Alarm, Standing, State, Wait, What
from booth.job.waits import alarms, standings
from booth.log.events import FinishedLater
from booth.log.fold import Job
from booth.moment import Moment, elapsed

#: What is over is told for so long, so that whoever comes the next morning finds it (this program's
#: own choice); what is not known is told as long after the coat.
TOLD_S = 24 * 3600.0
#: A job that was closed longer ago is not looked at: no data sheet asks for a longer cure (common
#: practice, no source).
CLOSED_LATELY_S = 30 * 86400.0


#: What is no longer told once this was done to the film.
DONE_WITH: dict[str, tuple[What, ...]] = {
    "sanded": (What.DUST_FREE, What.TAPE, What.SAND),
    "polished": (What.DUST_FREE, What.TAPE, What.SAND, What.POLISH),
    "baked": (What.DUST_FREE, What.TAPE, What.BEFORE_BAKE),
    "cured": (*(What.DUST_FREE, What.TAPE, What.HANDLE), What.SAND, What.POLISH, What.CURE),
}


def done_with(job: Job, wait: Wait) -> bool:
    """Whether a wait is one that nobody has any more: it was sanded, polished, cured since."""
    since = int(wait.key.rpartition(":")[2])
    return any(
        wait.what in DONE_WITH.get(each.work, ())
        and each.part in ("", wait.part)
        and each.n > since
        for each in job.of(FinishedLater)
    )


def over_s(each: Standing) -> float | None:
    """For how long nothing of a wait has been running any more [s]; None while something does."""
    wait = each.wait
    if each.remaining_s is not None:
        return None
    if each.state is State.UNKNOWN:
        return each.elapsed_s
    if wait.again_s is not None:
        return each.elapsed_s - wait.again_s if each.elapsed_s >= wait.again_s else None
    return each.past_s if each.state is State.LATE else each.elapsed_s - (wait.opens_s or 0.0)


def running_on(job: Job, now: Moment) -> tuple[Standing, ...]:
    """Give the waits of a closed job that are to be told: what changes first, first; then what is
    over, the latest first."""
    found = [
        (over, each)
        for each in standings(job, now)
        if not done_with(job, each.wait)
        if (over := over_s(each)) is None or over <= TOLD_S
    ]
    found.sort(key=lambda pair: (pair[0] is not None, pair[0] or pair[1].remaining_s or 0.0))
    return tuple(each for _, each in found)


def alarms_after(job: Job, now: Moment) -> tuple[Alarm, ...]:
    """Give what should ring of a closed job: what came about after it was closed, for a day."""
    if job.closed is None:
        return ()
    found = []
    for alarm in alarms(job, now):
        each = alarm.standing
        came_s = alarm.since.wall - each.wait.start.wall
        closed_s = elapsed(each.wait.start, job.closed.at, job.boots).seconds
        over = done_with(job, each.wait)
        if not over and closed_s < came_s and each.elapsed_s - came_s <= TOLD_S:
            found.append(alarm)
    return tuple(found)
