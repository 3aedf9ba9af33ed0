"""How a job came out: the verdict of its closing, and what was seen, said and done since. Pure."""

from __future__ import annotations

from booth.log.afterwards import later_verdicts, verdict_now
from booth.log.events import FaultSeen, FinishedLater, JobClosed, JudgedAgain
from booth.log.fold import Job


def judgements(job: Job) -> tuple[JobClosed | JudgedAgain, ...]:
    """The closing that counts and every verdict behind it; nothing of a job that is open."""
    return () if job.closed is None else (job.closed, *later_verdicts(job.live, job.closed))


def verdict(job: Job) -> str:
    """The latest verdict; empty while the job is open."""
    closed = job.closed
    return "" if closed is None else verdict_now(job.live, closed, closed.verdict)


def next_time(job: Job) -> str:
    """What to change next time, as said last: a later verdict that says nothing of it leaves it."""
    said = [each.next_time for each in judgements(job) if each.next_time.strip()]
    return said[-1] if said else ""


def seen_later(job: Job) -> tuple[FaultSeen, ...]:
    """The faults that were seen after the job was closed."""
    closed = job.closed
    return () if closed is None else tuple(each for each in job.faults if each.n > closed.n)


def finished(job: Job) -> tuple[FinishedLater, ...]:
    """What was done to the film since the last coat, or came about in it, of the whole job."""
    return job.of(FinishedLater)
