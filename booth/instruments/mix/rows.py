"""The rows of the mix: what is asked for, when, and how the batch is meant by them. Pure."""

from __future__ import annotations

from msgspec.structs import replace

from booth.bench.context import Context
from booth.bench.instrument import number, quantity, word
from booth.files.safe_text import visible
from booth.forms.field import Field
from booth.forms.form import Values
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

#: The row in which the reading is typed, by what is poured.
READING = {Measure.VOLUME: "cup", Measure.WEIGHT: "scale"}
FRESH = "fresh"
_WAYS = {Measure.VOLUME: "volume, marks on the cup", Measure.WEIGHT: "weight, on the scale"}


def fields(context: Context) -> tuple[Field, ...]:
    """Every row there may be; which of them are asked for, `wanted_rows` says.

    How it is poured stands right before the reading: digits typed there are the reading.
    """
    job, profile = context.job, context.profile
    names = [each.name for each in components(profile)]
    of = (
        ("", "of the mix, ready to spray"),
        *((name, f"all that is left of {visible(name)}") for name in names),
    )
    onto = (
        (FRESH, "a fresh cup"),
        *((str(each.batch), f"the rest of batch {each.batch}") for each in open_batches(job)[::-1]),
    )
    by = tuple((way.value, _WAYS[way]) for way in measures(profile))
    at_zero = "empty: the scale is at zero with the rest on it"
    return (
        Field("amount", "Amount", amount=True, default=_planned(job)),
        Field("of", "That is", choices=of, assumed=True),
        _thinner(context),
        Field("onto", "Into", choices=onto),
        Field("rest", "Left in it", amount=True, optional=True, hint=at_zero),
        Field("by", "Pour by", choices=by, assumed=True),
        Field("cup", "Cup shows", Kind.VOLUME, optional=True, hint="if not the mark"),
        Field("scale", "Scale shows", Kind.MASS, optional=True, hint="if not the mark"),
    )


def _thinner(context: Context) -> Field:
    thinner, pours = thinner_of(context.profile), open_pours(context.job)
    usual = thinner.usual_percent if thinner is not None else None
    limit = thinner.limit_percent if thinner is not None else None
    percent = pours[-1].thinner if pours else Quantity(usual or 0.0, "%", "")
    hint = "" if limit is None else f"at most {limit:g} %"
    return Field(
        "thinner", "Thinner", Kind.PERCENT, optional=True, default=percent, hint=hint, assumed=True
    )


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
        return plan if percent is None else replace(plan, thinner_percent=percent)
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
