"""What share of the coating lands, by gun and kind of part, from the gauge on each coat. Pure.

The gauge tells what landed of the passes over the film it was read in. What flies past the edges of
small and open parts it does not know, so theirs is learnt apart and no amount is told by it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from booth.job.measured import implied_efficiency, parts_are_large
from booth.learnt.observation import Observation, of_one_job
from booth.log.fold import Job
from booth.trade.result import Estimate

TAGS = (b'"film read"',)
PERCENT = 100.0
KINDS = {True: "large flat parts", False: "small or open parts, edges not counted"}


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give what landed in one job by gun and kind of part [%]: as the teeth of the gauge allow."""
    return of_one_job([each for job in products for each in _of_product(job)])


def _of_product(job: Job) -> Iterator[Observation]:
    kind, gun = KINDS[parts_are_large(job)], job.fitted.gun
    for part, coat in dict.fromkeys((read.part, read.coat) for read in job.films):
        found = implied_efficiency(job, part, coat)
        if isinstance(found, Estimate) and found.low > 0:
            at = next(read.at for read in job.films if (read.part, read.coat) == (part, coat))
            yield Observation(
                group=(gun, kind),
                about=(gun or "no gun named", kind),
                low=PERCENT * found.low,
                high=PERCENT * found.high,
                at=at,
                told=(job.profile.name,),
            )
