"""What a coat takes of its time at the trigger, in words. Pure."""

from __future__ import annotations

from booth.files.faults import counted
from booth.job.coat_times import LEAST_COATS, Learnt
from booth.words.wait_words import rough


def span_words(life: str, span: tuple[float, float] | None, covered: bool) -> str:
    """Pot life, told as `life`, against the time from mixing to the last coat [s]."""
    if span is None:
        return f"{life}; how long the job takes is not known yet"
    ends = " to ".join(dict.fromkeys(rough(each) for each in span))
    more = "" if covered else ": mix a batch for each coat."
    return f"{life}; mixing to last coat about {ends}{more}"


def times_words(times: Learnt) -> str:
    """The band, and what it rests on; that it is the usual double where the coats are too few."""
    rests = f"{counted(times.coats, 'coat')} of {counted(times.jobs, 'job')}"
    if times.is_learnt:
        return f"a coat takes {times.low:.1f} to {times.high:.1f} times its trigger time: {rests}"
    so_far = f", {rests} so far" if times.coats else ""
    return (
        f"a coat takes at least twice its trigger time: {LEAST_COATS} coats are needed to learn "
        f"it{so_far}"
    )
