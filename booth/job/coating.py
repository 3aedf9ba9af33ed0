"""Beginning and ending a coat: which coat it is, and whether it came early or late. Pure."""

from __future__ import annotations

from booth.job.wait import State, standing
from booth.job.waits import between_coats
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
    coats = job.coats_on(part)
    if coats and coats[-1].ended is not None:
        # Planned or not: a further coat is held against the same wait.
        wait = between_coats(job, coats[-1], coats[-1].ended)
        each = standing(wait, at, job.boots)
        doubtful = each.basis is Basis.DOUBTFUL
        if each.state is State.WAIT and not doubtful:
            early = each.remaining_s or 0.0
        elif each.state is State.LATE:
            late = each.past_s
    number = len(coats) + 1
    return CoatBegun(
        n=0, at=at, part=part, coat=number, early_s=early, late_s=late, doubtful=doubtful
    )


def end_coat(job: Job, part: str, at: Moment) -> CoatEnded:
    """Give the event of the running coat on `part` ending. Raises NotPossible where none runs."""
    running = job.running_coat(part)
    if running is None:
        raise NotPossible(f"No coat on '{part}' is being sprayed.")
    return CoatEnded(n=0, at=at, part=part, coat=running.number)
