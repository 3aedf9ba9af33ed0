"""What is left in the pot: what was mixed, less what was caught and shot on paper since. Pure."""

from __future__ import annotations

from typing import NamedTuple

from booth.job.measured import delivery_ml_min
from booth.job.mixture import by_weight, now, volume_ml
from booth.job.steps import steps_of
from booth.log.events import CoatBegun
from booth.log.fold import Job
from booth.units import Kind, System, show

#: The trigger is pulled about so long for a paper [s]: common practice, no source.
PAPER_S = 2.0
MINUTE_S = 60.0
#: A catch of the coating [s], and where that takes more than a fifth of it (common practice, no source;
#: a hand late by 0.2 s at both ends errs by 1 and 3 %).
CATCH_S, MOST_CAUGHT = (30.0, 15.0), 0.2


class Pot(NamedTuple):
    """left_ml: in pot and gun together, None where it is not known how much was mixed, or a coat was
    sprayed since; caught_ml, papers_ml: what of it was caught, and shot on paper [ml]."""

    left_ml: float | None
    caught_ml: float = 0.0
    papers_ml: float = 0.0
    sprayed: bool = False


def left_in_pot(job: Job) -> Pot:
    """Give what is left of the mix in use. What was caught is taken as not poured back."""
    stage, flow = now(job), delivery_ml_min(job)
    since = max((each.n for each in (*job.batches, *job.thinner)), default=0)
    density = stage.density_g_ml or job.profile.film.density_g_ml
    caught = sum(
        volume_ml(each.amount, each.density_g_ml or density) or 0.0
        for each in job.catches
        if each.n > since and each.liquid == "paint"
    )
    shots = sum(each.n > since for each in (*job.patterns, *job.fans))
    papers = shots * PAPER_S / MINUTE_S * (flow[0] if flow is not None else 0.0)
    sprayed = any(each.n > since for each in job.of(CoatBegun))
    left = None if stage.left_ml is None or sprayed else max(stage.left_ml - caught - papers, 0.0)
    return Pot(left, caught, papers, sprayed)


def pot_words(job: Job, system: System, needed_ml: float | None = None) -> tuple[str, ...]:
    """Give what is left in words, where some was taken from it; what is short of `needed_ml` [ml]."""
    pot = left_in_pot(job)
    taken = pot.caught_ml + pot.papers_ml
    if pot.left_ml is None or not taken:
        return ()
    left, less = (amount_words(job, each, system) for each in (pot.left_ml, taken))
    said = f"left in the pot about {left}: {less} of it was caught or shot on paper"
    if needed_ml is None or pot.left_ml >= needed_ml:
        return (said,)
    short = amount_words(job, needed_ml - pot.left_ml, system)
    return (f"{said}, {short} less than the coats take at least: mix more.",)


def amount_words(job: Job, ml: float, system: System) -> str:
    """An amount of the mix: weighed once anything was weighed, where its density is known."""
    density = now(job).density_g_ml or job.profile.film.density_g_ml
    if density is None or not by_weight(job):
        return show(ml, Kind.VOLUME, system)
    return show(ml * density, Kind.MASS, system)


def gun_is_filled(job: Job) -> bool:
    """Whether the coating is in the gun: a batch is in use, strained where the job has that step."""
    strain = [step.key for step in steps_of(job) if step.kind == "strain"]
    strained = not strain or any(key in job.done for key in strain)
    return strained and any(each.batch not in job.finished_batches for each in job.batches)


def catch_s(job: Job) -> float:
    """How long to catch the coating [s]: as long as a hand times well, less where little is left."""
    pot, flow = left_in_pot(job), delivery_ml_min(job)
    if pot.left_ml is None or flow is None:
        return CATCH_S[0]
    eats = flow[0] * CATCH_S[0] / MINUTE_S
    return CATCH_S[0] if eats <= MOST_CAUGHT * pot.left_ml else CATCH_S[1]
