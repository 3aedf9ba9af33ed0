"""The products that are to come in a job with a coating system, planned from where it stands. Pure."""

from __future__ import annotations

from collections.abc import Mapping

import msgspec

from booth.job.day_plan import DayPlan, onward
from booth.job.racks import pieces_of
from booth.job.schedule import PartState, Schedule
from booth.job.wait import Standing, What
from booth.log.fold import Job
from booth.profile.model import Profile


def products_to_come(job: Job) -> tuple[Profile, ...]:
    return job.opened.products[job.product :]


def onward_of(
    job: Job,
    schedule: Schedule,
    mixes: tuple[Profile, ...],
    spray_s: Mapping[str, float],
    running: Mapping[str, Standing],
) -> DayPlan | None:
    """What follows after `schedule`, which is of the present product; None where nothing does.

    mixes: the present product as each hardener in it has it; spray_s: what a coat on a part takes,
    of the later products too; running: the windows that run, by part.
    """
    coming = products_to_come(job)
    if not coming:
        return None
    parts = [
        PartState(part, 0, spray_s[part], is_rack=pieces_of(job, part) > 1) for part in job.parts
    ]
    ends = dict(schedule.ends)
    known = not schedule.unknown and all(part in ends for part in job.parts)
    windows = {}
    for part in parts:
        each = running.get(part.name)
        if each is not None and each.wait.what is What.NEXT_PRODUCT:
            windows[part.name] = _as_it_stands(part, each, ends.get(part.name, 0.0))
    return onward(mixes, coming, job.weather, parts, ends if known else None, windows)


def _as_it_stands(part: PartState, standing: Standing, since_s: float) -> PartState:
    """A part with the window that runs on it, with all readings since."""
    wait, passed_s = standing.wait, standing.elapsed_s
    return msgspec.structs.replace(
        part,
        since_s=since_s,
        opens_s=None if wait.opens_s is None else wait.opens_s - passed_s,
        closes_s=None if wait.closes_s is None else wait.closes_s - passed_s,
    )
