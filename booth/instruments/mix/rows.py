"""The rows of the mix: what is asked for, when, and how the batch is meant by them. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.bench.instrument import Values, number, quantity, word
from booth.job.pouring import (
    BatchPlan,
    components,
    measures,
    open_batches,
    open_pours,
    plan_of,
    thinner_of,
)
from booth.log.fold import Job
from booth.trade.mixing.components import Measure
from booth.units import Kind, Quantity
from booth.widgets.entry import Field

__all__ = ["FRESH", "READING", "fields", "plan_by_rows", "wanted_rows"]

#: The row in which the reading is typed, by what is poured.
READING = {Measure.VOLUME: "cup", Measure.WEIGHT: "scale"}
FRESH = "fresh"
_WAYS = {Measure.VOLUME: "volume, marks on the cup", Measure.WEIGHT: "weight, on the scale"}


def fields(context: Context) -> tuple[Field, ...]:
    """Every row there may be; which of them are asked for, `wanted_rows` says."""
    job, profile = context.job, context.profile
    thinner = thinner_of(profile)
    usual = thinner.usual_percent if thinner is not None else None
    last = open_pours(job)
    percent = last[-1].thinner if last else Quantity(usual or 0.0, "%", "")
    names = [each.name for each in components(profile)]
    limit = thinner.limit_percent if thinner is not None else None
    return (
        Field("amount", "Amount", amount=True, default=_planned(job)),
        Field(
            "of", "That is",
            choices=(("", "of the mix, ready to spray"),
                     *((name, f"all that is left of {name}") for name in names)),
        ),
        Field(
            "by", "Pour by",
            choices=tuple((way.value, _WAYS[way]) for way in measures(profile)),
        ),
        Field("thinner", "Thinner", Kind.PERCENT, optional=True, default=percent,
              hint="" if limit is None else f"at most {limit:g} %"),
        Field(
            "onto", "Into",
            choices=((FRESH, "a fresh cup"),
                     *((str(each.batch), f"the rest of batch {each.batch}")
                       for each in reversed(open_batches(job)))),
        ),
        Field("rest", "Rest in it", amount=True, optional=True,
              hint="empty: the scale is at zero with the rest on it"),
        Field("cup", "Cup shows", Kind.VOLUME, optional=True, hint="if not the mark"),
        Field("scale", "Scale shows", Kind.MASS, optional=True, hint="if not the mark"),
    )  # fmt: skip


def wanted_rows(context: Context, values: Values) -> set[str]:
    """Which rows make sense now."""
    profile, pours = context.profile, open_pours(context.job)
    found: set[str] = set()
    if not pours:
        found.add("amount")
        if len(components(profile)) > 1:
            found.add("of")
        if len(measures(profile)) > 1:
            found.add("by")
        if open_batches(context.job):
            found.add("onto")
            if word(values, "onto") not in ("", FRESH):
                found.add("rest")
    thinner = thinner_of(profile)
    if thinner is not None and not any(pour.name == thinner.name for pour in pours):
        found.add("thinner")
    plan = plan_by_rows(context, values)
    if plan is not None:
        found.add(READING[plan.by])
    return found


def plan_by_rows(context: Context, values: Values) -> BatchPlan | None:
    """How the batch is meant: as it was at the last pour, else by the rows; None without."""
    pours = open_pours(context.job)
    percent = number(values, "thinner")
    if pours:
        plan = plan_of(pours)
        if percent is None or percent == plan.thinner_percent:
            return plan
        return BatchPlan(plan.wanted, plan.of, plan.by, percent, plan.onto, plan.rest)
    wanted = quantity(values, "amount")
    if wanted is None:
        return None
    own = measures(context.profile)
    by = word(values, "by")
    if percent is None and thinner_of(context.profile) is not None:
        return None  # a row that cannot be understood is no plan
    onto = word(values, "onto")
    onto_batch = int(onto) if onto not in ("", FRESH) else None
    return BatchPlan(
        wanted=wanted,
        of=word(values, "of"),
        by=Measure(by) if by else own[0],
        thinner_percent=percent or 0.0,
        onto=onto_batch,
        rest=quantity(values, "rest") if onto_batch is not None else None,
    )


def _planned(job: Job) -> Quantity | None:
    """The amount that was worked out for the parts, for the first batch."""
    if job.batches or job.pours or not job.amounts:
        return None
    return job.amounts[-1].amount
