"""What a coat takes of its time at the trigger, job by job. Pure; `job.coat_times` plans with it."""

from __future__ import annotations

from collections.abc import Sequence
from statistics import median

from booth.job.coat_times import times_of
from booth.learnt.observation import Observation
from booth.log.fold import Job

TAGS = (b'"coat ended"',)


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give how many times its time at the trigger a coat of this job took."""
    times = times_of(products[-1]) if products else ()
    if not times:
        return ()
    middle, job = median(times), products[-1]
    return (
        Observation(
            (), (), middle, middle, job.opened.at, count=len(times), told=(job.fitted.gun,)
        ),
    )
