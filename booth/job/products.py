"""The products of a job, one after the other on the same parts. Pure."""

from __future__ import annotations

from booth.log.fold import Coat, Job


def products_of(job: Job) -> tuple[Job, ...]:
    """Every product that was begun, in their order, each as a job of its own."""
    return (*job.before, job)


def product_of(job: Job, n: int) -> Job:
    """The product that was worked with when entry `n` was kept."""
    jobs = reversed(products_of(job))
    return next(each for each in jobs if each.begun is None or each.begun.n <= n)


def last_coat(job: Job, part: str) -> tuple[Job, Coat] | None:
    """The coat that is uppermost on `part`, and the product that it is of; None where none is on."""
    jobs = reversed(products_of(job))
    return next(((each, each.coats_on(part)[-1]) for each in jobs if each.coats_on(part)), None)
