"""How long a coat takes against the time at the trigger, learnt from the coats of this shop. Pure.

Turns, walking round and refills come on top of the trigger. What they come to is a habit of the shop,
its parts and its guns: the median of its own coats and, for the band, the middle half of them, so
that a coat nobody ended in time moves neither far (median and interquartile range: NIST/SEMATECH
e-Handbook of Statistical Methods 1.3.5.1 and 1.3.5.6, sections from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from statistics import median, quantiles

import msgspec

from booth.job.coat_plan import wet_wanted
from booth.job.measured import amount_efficiency, delivery_ml_min, known, parts_are_large
from booth.job.products import products_of
from booth.log.fold import Job, kept_by
from booth.moment import elapsed
from booth.trade.delivery.catches import time_to_empty_s
from booth.trade.film.coverage import material_for_area_ml
from booth.trade.result import Value

#: Until coats were learnt from: turns, walking round, refills. At least double: common practice, no
#: source.
AT_LEAST_TIMES = 2.0
#: So many coats are learnt from, and no fewer: two have no middle half (common practice, no source).
LEAST_COATS = 3


class JobTimes(msgspec.Struct, frozen=True):
    """The coats of one job: each as a multiple of its time at the trigger [1]."""

    job: str
    times: tuple[float, ...]


class Learnt(msgspec.Struct, frozen=True):
    """times: what a coat takes, in times the trigger [1], from `low` to `high` for the middle half of
    `coats` coats of `jobs` jobs; at least twice, where they are too few."""

    times: float = AT_LEAST_TIMES
    low: float = AT_LEAST_TIMES
    high: float = AT_LEAST_TIMES
    coats: int = 0
    jobs: int = 0

    @property
    def is_learnt(self) -> bool:
        return self.coats >= LEAST_COATS


def learnt(job: Job, past: Iterable[JobTimes] = ()) -> Learnt:
    """Give what the coats of this job and of past ones come to."""
    own: tuple[float, ...] = kept_by(job, "coat times", None, lambda: times_of(job))
    every = [JobTimes(job.opened.job, own)] if own else []
    every += [each for each in past if each.times]
    found = [time for each in every for time in each.times]
    if len(found) < LEAST_COATS:
        return Learnt(coats=len(found), jobs=len(every))
    low, _, high = quantiles(found, n=4, method="inclusive")
    return Learnt(median(found), low, high, len(found), len(every))


def times_of(job: Job) -> tuple[float, ...]:
    """Every coat of a job, of every product, that has ended and whose time at the trigger is known."""
    found = []
    for own in products_of(job):
        areas = areas_of(own)
        for part in own.parts:
            for coat in own.coats_on(part):
                at_trigger_s = trigger_s(own, areas.get(part, 0.0), coat.number)
                if coat.ended is None or not at_trigger_s:
                    continue
                # No coat is laid in less than its time at the trigger: area or delivery was another.
                time = elapsed(coat.begun.at, coat.ended.at).seconds / at_trigger_s
                if time >= 1.0:
                    found.append(time)
    return tuple(found)


def areas_of(job: Job) -> dict[str, float]:
    """The area of each part [m2]; what names no part is shared out evenly."""
    named: dict[str, float] = {}
    unnamed = 0.0
    for each in job.areas:
        if each.part in job.parts:
            named[each.part] = named.get(each.part, 0.0) + each.area.value
        else:
            unnamed += each.area.value
    if not job.areas and job.amounts:
        unnamed = job.amounts[-1].area.value
    open_parts = [part for part in job.parts if part not in named]
    if unnamed > 0 and open_parts:
        named |= {part: unnamed / len(open_parts) for part in open_parts}
    return named


def trigger_s(job: Job, area_m2: float, coat: int | None) -> float | None:
    """The time at the trigger for that coat on so much area [s]; None where a figure is missing."""
    wet, delivery = wet_wanted(job, coat), delivery_ml_min(job)
    if wet is None or delivery is None or delivery[0] <= 0 or area_m2 <= 0:
        return None
    # The gauge's share is worked out anew from the whole log: once a job will do.
    lands = kept_by(job, "lands", None, lambda: amount_efficiency(job, parts_are_large(job)))
    amount = known(material_for_area_ml, area_m2, wet.middle, 1, lands)
    if amount is None:
        return None
    likely = amount.value if isinstance(amount, Value) else amount.likely
    return known(time_to_empty_s, likely, delivery[0])
