"""Where the job stands among its steps. Any order, any number of times."""

from __future__ import annotations

import enum

from booth.log.fold import Job
from booth.profile.model import Step
from booth.profile.steps import steps_for


class Mark(enum.StrEnum):
    """What has become of a step."""

    OPEN = "open"
    DONE = "done"
    SKIPPED = "skipped"


def steps_of(job: Job) -> tuple[Step, ...]:
    return steps_for(job.profile)


def key_of(job: Job, kind: str) -> str:
    """The key of the first step of this kind; "" where the job has none."""
    return next((step.key for step in steps_of(job) if step.kind == kind), "")


def mark(job: Job, step: Step) -> Mark:
    if step.key in job.done:
        return Mark.DONE
    return Mark.SKIPPED if step.key in job.skipped else Mark.OPEN


def next_open(job: Job, after: Step | None = None) -> Step:
    """Give the first open step behind `after`, else the first open one, else the last of all."""
    steps = steps_of(job)
    keys = [step.key for step in steps]
    at = keys.index(after.key) + 1 if after is not None and after.key in keys else 0
    for step in (*steps[at:], *steps[:at]):
        if mark(job, step) is Mark.OPEN and (after is None or step.key != after.key):
            return step
    return steps[min(at, len(steps) - 1)]
