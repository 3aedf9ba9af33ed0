"""Touch tests of the coats: what a touch keeps, and what it asks first. Pure."""

from __future__ import annotations

from functools import partial

from booth.bench.act import Act, Choice, Context, Keep, Say, SetForm, refused
from booth.forms.form import Rows
from booth.instruments.trigger import answered, asking, was_asked
from booth.job.guard import standing_before, wait_before
from booth.job.products import last_coat
from booth.job.wait import State
from booth.log.events import TouchTried
from booth.log.fold import Job
from booth.moment import elapsed
from booth.words.wait_words import NO_TOUCH, NOT_OPENED, length

#: Touch tests by their letters.
TOUCHES = {"d": "dry", "k": "tacky", "w": "wet"}
#: Touched dry before this share of the wait is over, it is asked whether that was the right part.
EARLY_FRACTION = 0.5


def is_flashing(job: Job, part: str) -> bool:
    """Whether a coat on the part is done, so that it can be touched; of water none is."""
    laid = last_coat(job, part)
    return laid is not None and laid[1].ended is not None and not job.opened.rehearsal


def touch(context: Context, rows: Rows, part: str, result: str) -> Act:
    """A touch test on a part; dry long before its time is taken with one more press."""
    if not is_flashing(context.job, part):
        return refused(f"{part}: no coat is in its flash-off.")
    early = too_early(context, part) if result == "dry" else ""
    if early and not was_asked(rows.form, f"dry {part}", context):
        asked = SetForm(asking(rows.form, f"dry {part}", context))
        said = f"{part} touched dry after {early}: press again to take it."
        return Act("touched dry?", (asked, Say(said, fault=True)))
    event = TouchTried(n=0, at=context.now, part=part, result=result)
    said = f"{part}: touched {result}.{_left_alone(context, part, result)}"
    kept = (Keep(event), SetForm(answered(rows.form)), Say(said))
    return Act(f"touched {result}", kept)


def _left_alone(context: Context, part: str, result: str) -> str:
    """What a dry touch does not change, and why; "" where it opens the wait, or none is on."""
    each = standing_before(context.job, part, context.now)
    waits = each is not None and each.state in (State.WAIT, State.UNKNOWN)
    if result != "dry" or each is None or not waits or each.wait.by_touch:
        return ""
    return f" {NOT_OPENED if each.state is State.WAIT else NO_TOUCH}"


def too_early(context: Context, part: str) -> str:
    """How long after the coat, of how long, where that is less than half; else ""."""
    wait = wait_before(context.job, part, touched=False)
    if wait is None or wait.opens_s is None:
        return ""
    passed_s = elapsed(wait.start, context.now, context.job.boots).seconds
    if passed_s >= wait.opens_s * EARLY_FRACTION:
        return ""
    return f"{length(passed_s)} of {length(wait.opens_s)}"


def touches(context: Context, rows: Rows, part: str) -> tuple[Choice, ...]:
    """Touch tests as lines of a menu, for hands in gloves."""
    if not is_flashing(context.job, part):
        return ()
    return tuple(
        Choice(
            f"{part}: touched {result}", partial(touch, rows=rows, part=part, result=result), key
        )
        for key, result in TOUCHES.items()
    )
