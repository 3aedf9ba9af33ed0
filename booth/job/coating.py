"""Beginning and ending a coat: which coat it is, whether it came early or late, what was amiss. Pure."""

from __future__ import annotations

from booth.job.amiss import Cause
from booth.job.guard import amiss, standing_before
from booth.job.wait import State
from booth.log.events import CoatBegun, CoatEnded
from booth.log.fold import Job
from booth.moment import Basis, Moment


class NotPossible(ValueError):
    """The request makes no sense in this state; the message is a sentence."""


def begin_coat(job: Job, part: str, at: Moment) -> CoatBegun:
    """Give the event of a coat beginning on `part` at `at`, with what it came before or after [s].

    Where the clock is in doubt nothing is called early, and the event says so.

    Raises NotPossible where a coat on the part is being sprayed or the job has no such part.
    """
    if part not in job.parts:
        raise NotPossible(f"This job has no part called '{part}'.")
    if job.running_coat(part) is not None:
        raise NotPossible(f"A coat on '{part}' is being sprayed already.")
    early = late = 0.0
    doubtful = False
    before = standing_before(job, part, at)
    if before is not None:
        doubtful = before.basis is Basis.DOUBTFUL
        if before.state is State.WAIT and not doubtful:
            early = before.remaining_s or 0.0
        elif before.state is State.LATE:
            late = before.past_s
    # What the event says in fields of its own.
    told = {Cause.EARLY, Cause.LATE} | ({Cause.CLOCK} if doubtful else set())
    return CoatBegun(
        n=0,
        at=at,
        part=part,
        coat=len(job.coats_on(part)) + 1,
        early_s=early,
        late_s=late,
        doubtful=doubtful,
        amiss=tuple(str(each.cause) for each in amiss(job, part, at) if each.cause not in told),
    )


def end_coat(job: Job, part: str, at: Moment) -> CoatEnded:
    """Give the event of the running coat on `part` ending. Raises NotPossible where none runs."""
    running = job.running_coat(part)
    if running is None:
        raise NotPossible(f"No coat on '{part}' is being sprayed.")
    return CoatEnded(n=0, at=at, part=part, coat=running.number)
