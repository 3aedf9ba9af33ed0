"""Coats that are laid until they hide: after each of them it is asked whether the part is hidden. Pure."""

from __future__ import annotations

from functools import partial

from booth.bench.act import Act, Choice, Context, Keep, Say
from booth.job.coat_plan import hides_yet, planned
from booth.log.events import CoatsChanged
from booth.log.fold import Job


def asked_of(job: Job) -> tuple[str, ...]:
    """The parts of which it is to be asked now."""
    return tuple(part for part in job.parts if hides_yet(job, part))


def question(job: Job) -> tuple[str, ...]:
    """The question as a line beneath the figure; nothing where none is to be asked."""
    parts = asked_of(job)
    return (f"{', '.join(parts)}: hidden? → yes, or one more.",) if parts else ()


def answers(context: Context) -> tuple[Choice, ...]:
    """Its answers as lines of a menu."""
    return tuple(
        Choice(f"{part}: {words}", partial(_answer, part=part, more=more))
        for part in asked_of(context.job)
        for words, more in (("hidden", 0), ("not hidden yet, one more coat", 1))
    )


def _answer(context: Context, part: str, more: int) -> Act:
    job = context.job
    coats = max(len(planned(job, part)), len(job.coats_on(part))) + more
    said = Say(f"{part}: one more coat, {coats} in all." if more else f"{part}: hidden.")
    changed = CoatsChanged(n=0, at=context.now, coats=coats, part=part)
    return Act("one more coat" if more else "hidden", (Keep(changed), said))
