"""Where the job stands among its steps. Any order, any number of times."""

from __future__ import annotations

import enum

from booth.job.readings import is_stale
from booth.log.fold import Job, kept_by
from booth.moment import Moment
from booth.profile.cautions import (
    Caution,
    cautions_for,
    cautions_with_water,
    is_of_one_product,
)
from booth.profile.model import Profile, Step
from booth.profile.rehearsed import steps_with_water
from booth.profile.steps import between_products, steps_for

#: The kind of the step from one product to the next; no profile lists it.
NEXT_PRODUCT = "next-product"


class Mark(enum.StrEnum):
    """What has become of a step."""

    OPEN = "open"
    DONE = "done"
    SKIPPED = "skipped"
    AGAIN = "take again"


def steps_of(job: Job) -> tuple[Step, ...]:
    """The steps of the present product. Before the last one the next product comes before the result,
    and after care is left to the last.

    Its cautions are left out where all of them were read for an earlier product of this job. A
    rehearsal has those that make sense with water.
    """
    found: tuple[Step, ...] = kept_by(job, "steps", None, lambda: _steps_of(job))
    return found


def _steps_of(job: Job) -> tuple[Step, ...]:
    steps = (steps_with_water if job.opened.rehearsal else steps_for)(job.profile)
    if job.begun is not None and not cautions_of(job):
        steps = tuple(step for step in steps if step.kind != "cautions")
    following = coming(job)
    if following is None:
        return steps
    steps = tuple(between_products(step, job.profile) for step in steps)
    onward = Step(key=NEXT_PRODUCT, kind=NEXT_PRODUCT, name=f"Next: {following.name}")
    ends = (at for at, step in enumerate(steps) if step.kind == "result")
    at = next(ends, len(steps))
    return (*steps[:at], onward, *steps[at:])


def coming(job: Job) -> Profile | None:
    """The product after the present one, if there is one."""
    return next(iter(job.opened.products[job.product :]), None)


def cautions_of(job: Job) -> tuple[Caution, ...]:
    """The cautions of the present product that were not read for an earlier one of this job."""
    read = {key for each in job.before for key in each.cautions}
    every = (cautions_with_water if job.opened.rehearsal else cautions_for)(job.profile)
    return tuple(each for each in every if is_of_one_product(each) or each.key not in read)


def key_of(job: Job, kind: str) -> str:
    """The key of the first step of this kind; "" where the job has none."""
    return next((step.key for step in steps_of(job) if step.kind == kind), "")


def mark(job: Job, step: Step, now: Moment | None = None) -> Mark:
    """What has become of a step; at `now` one whose reading has grown old since is to be taken again."""
    if step.key in job.skipped:
        return Mark.SKIPPED
    if step.key not in job.done:
        return Mark.OPEN
    grows_old = step.kind == "weather" and job.closed is None
    return Mark.AGAIN if grows_old and now is not None and is_stale(job, now) else Mark.DONE


def next_open(job: Job, after: Step | None = None) -> Step:
    """Give the first open step behind `after`, else the first open one, else the last of all."""
    steps = steps_of(job)
    keys = [step.key for step in steps]
    at = keys.index(after.key) + 1 if after is not None and after.key in keys else 0
    for step in (*steps[at:], *steps[:at]):
        if mark(job, step) is Mark.OPEN and (after is None or step.key != after.key):
            return step
    return steps[min(at, len(steps) - 1)]
