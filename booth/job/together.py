"""What was poured together: batches onto the rests of others, the hardeners and thinners in them. Pure.

Where they hold different hardeners, the careful end of each wait counts: what opens last, what closes
first. No source says how a mixture of two hardeners cures.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import reduce

from msgspec.structs import replace

from booth.job import lasting
from booth.job.lasting import NOT_GIVEN, Lasting, longer, not_known, shorter
from booth.job.mix_choice import hardeners, mixed_with, todays
from booth.log.events import BatchMixed, Poured, WeatherRead
from booth.log.fold import Job
from booth.profile.model import CoatPlan, Profile

NOT_FOR_ALL = "the profile does not say it for every hardener in the mix"
OF_SEVERAL = "the most careful of the hardeners poured together"
Lasts = Callable[[Profile], Lasting | None]


def poured_together(job: Job, batch: BatchMixed) -> tuple[BatchMixed, ...]:
    """A batch and all on whose rest it was poured, the oldest first.

    The pot life that is over first rules: the oldest one's, unless a newer one has a faster hardener.
    """
    return (*rest_of(job, batch.onto, batch), batch)


def rest_of(
    job: Job, onto: int | None, without: BatchMixed | None = None
) -> tuple[BatchMixed, ...]:
    """What the rest of the batch of that number was poured together from, the oldest first."""
    by_number = {each.batch: each for each in job.batches}
    found: list[BatchMixed] = []
    while (older := by_number.get(onto or 0)) is not None and older not in (*found, without):
        found.insert(0, older)
        onto = older.onto
    return tuple(found)


def hardener_unknown(job: Job, before: int) -> bool:
    """Whether hardeners have waits of their own, and not every batch that was in the mix when this
    event came says which it was."""
    mix, mixed = job.profile.mix, [each for each in job.batches if each.n < before]
    differs = mix is not None and any(each.waits is not None for each in mix.hardeners)
    return differs and not (mixed and all(e.hardener for e in poured_together(job, mixed[-1])))


def mixes_sprayed(job: Job, before: int) -> tuple[Profile, ...]:
    """The profile as each hardener has it that was in the batch mixed last before this event; as it
    is given where none was."""
    mixed = [each for each in job.batches if each.n < before]
    return _by_hardener(job, mixed[-1]) if mixed else (job.profile,)


def mixes_in_use(job: Job) -> tuple[Profile, ...]:
    """The profile as each hardener in the mix in use has it, else as today's air asks for."""
    made: list[BatchMixed | Poured] = [*job.batches, *job.pours]
    if not made:
        return (todays(job.profile, job.weather),)
    return _by_hardener(job, max(made, key=lambda each: each.n))


def every_mix(profile: Profile) -> tuple[Profile, ...]:
    """The profile as it is given, and as each of its hardeners has it."""
    return (profile, *(mixed_with(profile, each.name) for each in hardeners(profile)))


def _by_hardener(job: Job, last: BatchMixed | Poured) -> tuple[Profile, ...]:
    rest = rest_of(job, last.onto, last if isinstance(last, BatchMixed) else None)
    names = dict.fromkeys(each.hardener for each in (last, *rest))
    return tuple(mixed_with(job.profile, name, last.thinned_with) for name in names)


def opens_last(mixes: tuple[Profile, ...], lasts: Lasts) -> Lasting | None:
    """When it is over for every hardener in the mix; None where the profile does not say at all."""
    found = [lasts(each) for each in mixes]
    if all(each is None for each in found):
        return None
    return _of_several([each or not_known(NOT_FOR_ALL) for each in found], longer)


def after_coat(mixes: tuple[Profile, ...], plan: CoatPlan, weather: WeatherRead | None) -> Lasting:
    """From the end of a coat to the next, with every hardener in the mix."""
    return opens_last(mixes, lambda mix: lasting.after_coat(mix, plan, weather)) or NOT_GIVEN


def closes_first(mixes: tuple[Profile, ...], lasts: Lasts) -> Lasting | None:
    """When it closes with the hardener with which it closes soonest."""
    found = [each for each in map(lasts, mixes) if each is not None]
    return _of_several(found, shorter) if found else None


def _of_several(found: list[Lasting], careful: Callable[[Lasting, Lasting], Lasting]) -> Lasting:
    taken = reduce(careful, found)
    if taken.why or all(each.seconds == taken.seconds for each in found):
        return taken
    return replace(taken, why=OF_SEVERAL)


def others_in_rest(job: Job, onto: int | None, hardener: str, thinner: str) -> tuple[str, ...]:
    """The hardeners and thinners that the rest of a batch holds besides these; "" as the thinner: none
    is poured. Those of which nobody said what they are, are not among them."""
    rest = rest_of(job, onto)
    held = [each.hardener for each in rest if hardener and each.hardener not in ("", hardener)]
    for each in rest if thinner else ():
        poured = {pour.name for pour in each.pours}
        if each.thinned_with not in ("", thinner) and each.thinned_with in poured:
            held.append(each.thinned_with)
    return tuple(dict.fromkeys(held))
