"""What is said of a batch poured onto the rest of another: what that holds, whose pot life rules. Pure."""

from __future__ import annotations

from booth.bench.act import Context
from booth.files.safe_text import visible
from booth.job import lasting
from booth.job.mix_choice import hardeners, mixed_with, thinners
from booth.job.pouring import BatchPlan
from booth.job.together import others_in_rest, rest_of
from booth.job.wait import What
from booth.job.waits import waits
from booth.moment import elapsed

#: No source says how two hardeners cure together; the careful end of each wait is the house's choice.
COUNTS = "the shorter pot life counts, the longer wait, the window that closes sooner"
MAY_THEY = "Ask the data sheet whether they may go together; else mix into a fresh cup"
HOW_IT_FLASHES = (
    "The data sheet may say what flash-off the two need together; a touch test decides."
)


def others_of(context: Context, plan: BatchPlan) -> tuple[str, ...]:
    """The hardeners and thinners that the rest holds besides those of this batch."""
    thinner = plan.thinner if plan.thinner_percent > 0 else ""
    return others_in_rest(context.job, plan.onto, plan.hardener, thinner)


def doubt_word(context: Context, plan: BatchPlan) -> str:
    """What speaks against it in a word, which is seen however small the window; "" where nothing does."""
    others, doubts = others_of(context, plan), doubts_of(context, plan)
    names = {each.name for each in hardeners(context.profile)}
    if not doubts:
        return ""
    if any(name in names for name in others):
        return "2 HARDENERS"
    return "2 THINNERS" if others else "HARDENER?"


def doubts_of(context: Context, plan: BatchPlan) -> list[str]:
    """What speaks against pouring this onto that rest: another hardener or thinner in it."""
    if plan.onto is None:
        return []
    others, said = others_of(context, plan), []
    names = {each.name for each in hardeners(context.profile)}
    held = [name for name in others if name in names]
    if held:
        told = " and ".join(visible(name) for name in held)
        said.append(
            f"Batch {plan.onto} holds {told}, this one {visible(plan.hardener)}: {COUNTS}. {MAY_THEY}."
        )
    elif len(names) > 1 and any(not each.hardener for each in rest_of(context.job, plan.onto)):
        said.append(
            f"Which hardener batch {plan.onto} holds is not in the log: onto another one no pot life "
            "and no wait is known. Use a fresh cup."
        )
    grades = {each.name for each in thinners(context.profile)}
    thinned = " and ".join(visible(name) for name in others if name in grades)
    if thinned:
        said.append(
            f"Batch {plan.onto} is thinned with {thinned}, this one with {visible(plan.thinner)}. "
            f"{HOW_IT_FLASHES}"
        )
    return said


def who_rules(context: Context, plan: BatchPlan) -> str:
    """Whose pot life is over first, of the rest and of what is poured onto it now; "" without a rest
    or a pot life."""
    if plan.onto is None:
        return ""
    title = f"batch {plan.onto}"
    older = (e for e in waits(context.job) if e.what is What.POT_LIFE and e.title == title)
    pot = next(older, None)
    fresh = lasting.pot_life(mixed_with(context.profile, plan.hardener), context.job.weather)
    if pot is None or pot.closes_s is None:
        return "" if fresh is None else f"No pot life of {title} is known: it may be over first."
    left_s = pot.closes_s - elapsed(pot.start, context.now, context.job.boots).seconds
    if fresh is None or fresh.seconds is None or left_s <= fresh.seconds:
        return f"The pot life of {title}, which is older, rules all of it: it ends first."
    return f"The pot life of this batch rules all of it: it ends first, before that of {title}."
