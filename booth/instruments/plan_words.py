"""What the plan says of the last coat, and of the products to come. Pure."""

from __future__ import annotations

from booth.bench.act import Context
from booth.clock import local_day_hhmm, local_hhmm
from booth.files.faults import counted
from booth.files.safe_text import visible
from booth.job.day_plan import DayBlock
from booth.job.job_schedule import Planned
from booth.job.products_to_come import products_to_come
from booth.moment import later
from booth.units.sentences import in_units
from booth.words.wait_words import rough


def last_words(context: Context, plan: Planned) -> str:
    """What the figure is: when the last coat of the last product is on, and how many are to go."""
    if not plan.coats_left:
        return "the last coat was on"
    coats, several = counted(plan.coats_left, "coat"), bool(products_to_come(context.job))
    of = "last of all products" if several else "last coat"
    if plan.last_s is None:
        return f"{of} on  ({coats} to go)"
    at = later(context.now, plan.last_s)
    day = local_day_hhmm(at, context.now).removesuffix(local_hhmm(at)).strip()
    # A narrow window has no room for more.
    left = f"({coats} to go{'' if several else f', {rough(plan.last_s)}'})"
    return f"{of} on {day or 'at about'}  {left}"


def onward_words(context: Context, plan: Planned) -> list[str]:
    """What speaks against the products to come, then when each of them is sprayed."""
    if plan.onward is None:
        return []
    coats: dict[str, list[DayBlock]] = {}
    for each in plan.onward.coats:
        coats.setdefault(each.product, []).append(each)
    told = [f"{visible(name)} {_from_to(context, own)}" for name, own in coats.items()]
    against = (visible(in_units(each, context.system)) for each in plan.onward.why)
    return [*against, f"then {', '.join(told)}"]


def _from_to(context: Context, coats: list[DayBlock]) -> str:
    """From when to when these coats are sprayed."""
    begins = [each.begins_s for each in coats if each.begins_s is not None]
    ends = [each.ends_s for each in coats if each.ends_s is not None]
    if not begins:
        return "not known when"
    first, last = later(context.now, min(begins)), later(context.now, max(ends))
    begin, till = (local_day_hhmm(at, context.now) for at in (first, last))
    same_day = begin.removesuffix(local_hhmm(first)) == till.removesuffix(local_hhmm(last))
    till = local_hhmm(last) if same_day else till
    return f"{begin} to {till if len(ends) == len(coats) else 'not known when'}"
