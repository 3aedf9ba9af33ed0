"""The speed of the painter's own hand, as passes were timed, rehearsed ones too. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from booth.learnt.observation import Observation, of_one_job
from booth.log.events import PassTimed
from booth.log.fold import Job
from booth.units import Kind

TAGS = (b'"pass timed"',)


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give how fast the gun went in the passes of one job [m/s], by gun and product: another film asks
    for another speed."""
    return of_one_job(
        [
            _of(job, each)
            for job in products
            for each in job.passes
            if each.seconds > 0 and each.length.value > 0
        ]
    )


def _of(job: Job, each: PassTimed) -> Observation:
    speed = each.length.value / each.seconds
    length = (each.length.value, Kind.PART_LENGTH)
    about = (job.fitted.gun, job.profile.name)
    return Observation(group_of(job), about, speed, speed, each.at, told=(length,))


def group_of(job: Job) -> tuple[str, ...]:
    """What is learnt together with this job's passes."""
    return job.fitted.gun, job.profile.key
