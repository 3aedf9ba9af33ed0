"""What this shop has learnt, a quiet line at the step where it helps: beside the sheet's figure, never in
its place. Pure."""

from __future__ import annotations

from booth.bench.act import Context
from booth.files.faults import counted
from booth.job.measured import mean_efflux_s
from booth.job.mixture import now as mix_now
from booth.job.wait import Standing, State, What
from booth.learnt import delivery, pace, recovery, thinning, transfer, waits
from booth.learnt.delivery import Caught
from booth.trade.observations.median_band import LEAST_OBSERVATIONS
from booth.units import Kind
from booth.words.learnt_words import between, here_line, wait_line, water_line


def of_wait(context: Context, each: Standing) -> tuple[str, ...]:
    """What touch tests of past coats say of the wait between two coats: in air like today's, where there
    are enough of those. It is only told; a wait that is not known has nothing to be told of."""
    wait, job = each.wait, context.job
    is_told = each.state in (State.WAIT, State.READY) and not wait.touched_dry
    if wait.what is not What.NEXT_COAT or not wait.opens_s or not is_told:
        return ()
    found = context.past.learnt("waits", (job.profile.key,), job.opened.job)
    if found is None:
        return ()
    alike = waits.like(found.observations, job.weather)
    if LEAST_OBSERVATIONS <= len(alike) < len(found.observations):
        near = context.past.learnt(
            "waits", (job.profile.key,), job.opened.job, fits=lambda one: one in alike
        )
        return wait_line(near, context.system, alike=True)
    return wait_line(found, context.system)


def of_catch(context: Context) -> tuple[str, ...]:
    """What the needle delivered at this setting, or what of a delivery of water the coating has."""
    job = context.job
    last = job.catches[-1] if job.catches else None
    if last is None or last.turns is None:
        return ()
    tip_mm = last.tip.value if last.tip is not None else None
    gun = job.fitted.gun, "" if tip_mm is None else f"{tip_mm:.1f}"
    if last.liquid == "water":
        found = context.past.learnt("water", (*gun, job.profile.key), job.opened.job)
        return water_line(found, context.system)
    setting = delivery.setting_of(last.turns.value)
    group = (*gun, job.profile.key, f"{setting:g}")
    stage, cup_s = mix_now(job), mean_efflux_s(job)
    cup = stage.runs[-1].cup if stage.runs else ""
    found = context.past.learnt("delivery", group, job.opened.job, cup=cup, cup_s=cup_s)
    other = 0 if found is None else sum(each.left_out is None for each, _ in found.without)
    lines = here_line(found, "here {} at this setting", context.system)
    if lines and other:
        return (f"{lines[0]}; {counted(other, 'job')} of another viscosity left out",)
    if other:
        return (f"none here at this setting and viscosity; {counted(other, 'job')} at another",)
    return lines


def of_turns(context: Context, caught: tuple[Caught, ...]) -> str:
    """On how many catches of the coating the turns to try rest, and how many of another viscosity."""
    own = [each for each in caught if each.pair.liquid == "paint"]
    cup_s, stage = mean_efflux_s(context.job), mix_now(context.job)
    other = [
        each
        for each in own
        if cup_s is not None and each.cup_s is not None and each.cup == stage.runs[-1].cup
        if abs(each.cup_s - cup_s) > delivery.SAME_CUP_SHARE * cup_s
    ]
    jobs = len({each.file or each.job for each in own})
    if not own:
        return ""
    count = f"{len(own)} {'catch' if len(own) == 1 else 'catches'}"
    rests = count if jobs == len(own) else f"{count} of {counted(jobs, 'past job')}"
    return f"{rests}{f', {len(other)} of another viscosity' if other else ''}"


def of_thinner(context: Context) -> tuple[str, ...]:
    """What to begin with: the thinner that it took to the target in past jobs."""
    group = thinning.group_of(context.job)
    found = context.past.learnt("thinner", group, context.job.opened.job) if group else None
    return here_line(found, "to begin with: {} thinner reached the target here", context.system)


def of_pace(context: Context) -> tuple[str, ...]:
    """How fast the painter's own passes were with this gun, in past jobs and rehearsals."""
    found = context.past.learnt("pace", pace.group_of(context.job), context.job.opened.job)
    return here_line(found, "your own pace so far: {}", context.system)


def of_air(context: Context) -> tuple[str, ...]:
    """How long the receiver really took to fill, against what its rating comes to."""
    compressor = context.shop.compressor
    if compressor is None:
        return ()
    group = recovery.group_of(compressor)
    found = context.past.learnt("recovery", group, context.job.opened.job)
    rated = recovery.rated_s(compressor)
    by = ""
    if rated is not None:
        by = f"; by its rating {between(rated.low, rated.high, Kind.TIME, context.system)} (estimate)"
    return tuple(
        f"{line}{by}" for line in here_line(found, "timed here: fills in {}", context.system)
    )


def of_amount(context: Context, large: bool) -> tuple[str, ...]:
    """What landed on large flat parts with this gun, by the gauge; of others it does not know what
    flies past their edges."""
    if not large:
        return ()
    group = context.job.fitted.gun, transfer.KINDS[large]
    found = context.past.learnt("lands", group, context.job.opened.job)
    return here_line(found, "by the gauge {} landed here", context.system)
