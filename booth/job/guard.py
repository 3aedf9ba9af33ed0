"""What is amiss before a coat begins: all that the job knows, looked at once, the worst first. Pure.

It says and never forbids.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from booth.job import lasting, mixture
from booth.job.amiss import Amiss, Cause, Grave, worst_first
from booth.job.coat_plan import most_coats
from booth.job.guard_gun import is_outside, of_compressor, of_cup, of_gun
from booth.job.measured import known
from booth.job.pouring import open_batches
from booth.job.products import last_coat
from booth.job.racks import other_sides
from booth.job.readings import LATELY_S, is_stale, weather_age_s
from booth.job.recipe import thinner_of
from booth.job.wait import Standing, State, Wait, What, standing
from booth.job.waits import between_coats, next_products, standings
from booth.log.fold import Job, kept_by
from booth.moment import Moment
from booth.profile.model import Range


def amiss(job: Job, part: str, now: Moment) -> tuple[Amiss, ...]:
    """Give what is amiss with the next coat on `part`, were it begun at `now`, the worst first."""
    number = len(job.coats_on(part)) + 1

    def found() -> tuple[Amiss, ...]:
        of_the_coating = (*of_weather(job, now), *_of_mix(job, now), *of_cup(job))
        every = (
            *(() if job.opened.rehearsal else of_the_coating),
            *of_gun(job, number, part),
            *of_compressor(job, number, part),
            *_of_coat(job, part, number, now),
        )
        return worst_first(every)

    kept: tuple[Amiss, ...] = kept_by(job, f"amiss {part}", now, found)
    return kept


_LIMITS = {"air": Cause.AIR, "humidity": Cause.HUMIDITY, "part": Cause.PART}


def of_weather(job: Job, now: Moment) -> Iterator[Amiss]:
    """The weather: never read, read long ago, outside a limit, too near the dew point."""
    read = job.weather
    verdict = known(lasting.verdict, job.profile, read) if read is not None else None
    if read is None or verdict is None:
        yield Amiss(Cause.NOT_READ, Grave.MAY_SPOIL)
        return
    if verdict.margin_c <= 0:
        yield Amiss(Cause.CONDENSATION, Grave.SPOILS, -verdict.margin_c)
    for each in verdict.failed:
        cause, asked = _LIMITS.get(each.name, Cause.DEW_MARGIN), Range(each.low, each.high)
        if cause is not Cause.DEW_MARGIN or verdict.margin_c > 0:
            yield Amiss(cause, Grave.SPOILS, each.measured, asked)
    age_s = weather_age_s(job, now) or 0.0
    if is_stale(job, now):
        yield Amiss(Cause.OLD, Grave.MAY_SPOIL if age_s > LATELY_S else Grave.LOOK, age_s)


def of_induction(job: Job, now: Moment) -> Iterator[Amiss]:
    """Induction of the batches in use, or of the one to come: not over, or not known."""
    found = [each for each in standings(job, now) if each.wait.what is What.INDUCTION]
    # The gun may hold the batch that has stood: then another one is only to be looked at.
    one_stood = any(each.state is State.READY and not each.doubtful for each in found)
    for each in found:
        title = each.wait.title
        if each.doubtful:
            yield Amiss(Cause.CLOCK, Grave.MAY_SPOIL)
        elif each.state is State.WAIT:
            grave = Grave.LOOK if one_stood else Grave.SPOILS
            yield Amiss(Cause.INDUCTION, grave, each.remaining_s or 0.0, name=title)
        elif each.state is State.UNKNOWN:
            grave = Grave.LOOK if one_stood else Grave.MAY_SPOIL
            yield Amiss(Cause.INDUCTION_UNKNOWN, grave, each.elapsed_s, name=title)
    if not found and not job.batches:
        stands = lasting.induction(job.profile, job.weather)
        if stands is not None and stands.seconds is None:
            yield Amiss(Cause.INDUCTION_UNKNOWN, Grave.MAY_SPOIL, name="the mix")


def _of_mix(job: Job, now: Moment) -> Iterator[Amiss]:
    mix, batches = job.profile.mix, open_batches(job)
    if batches:
        yield from of_induction(job, now)
    elif mix is not None and (mix.pot_life or mix.induction):
        yield Amiss(Cause.NO_BATCH, Grave.LOOK)
    pots = [each for each in standings(job, now) if each.wait.what is What.POT_LIFE]
    fresh = any(each.state is not State.LATE for each in pots)
    for each in pots:
        if each.state is State.LATE:
            grave = Grave.MAY_SPOIL if fresh else Grave.SPOILS
            yield Amiss(Cause.POT_LIFE, grave, each.past_s, name=each.wait.title)
        elif each.doubtful:
            yield Amiss(Cause.CLOCK, Grave.MAY_SPOIL)
        elif each.state is State.CLOSING:
            left_s = each.remaining_s or 0.0
            yield Amiss(Cause.POT_LIFE_ENDS, Grave.MAY_SPOIL, left_s, name=each.wait.title)
    thinner = thinner_of(job.profile)
    # Counted from an unknown start there is at least so much in it.
    percent = mixture.now(job).fraction * 100
    if thinner is not None and thinner.limit_percent is not None:
        asked = Range(None, thinner.limit_percent)
        if is_outside(percent, asked):
            yield Amiss(Cause.THINNER, Grave.MAY_SPOIL, percent, asked)


def _of_coat(job: Job, part: str, number: int, now: Moment) -> Iterator[Amiss]:
    """What the part itself and the other parts say."""
    for other in job.parts:
        running = job.running_coat(other) if other != part else None
        if running is not None:
            yield Amiss(Cause.OTHER_COAT, Grave.MAY_SPOIL, running.number, name=other)
    for side in other_sides(job, part):
        turned = standing_before(job, side, now)
        if turned is not None and turned.state in (State.WAIT, State.UNKNOWN):
            yield Amiss(Cause.TURN, Grave.LOOK, turned.elapsed_s, name=side)
    most = most_coats(job, part)
    if most is not None and number > most:
        yield Amiss(Cause.UNPLANNED, Grave.LOOK, number, Range(None, most))
    each = standing_before(job, part, now)
    if each is None:
        return
    name, by_touch = f"coat {number}", each.wait.by_touch
    if each.doubtful:
        # As when a wait is not known: nobody can say how much of it is over.
        yield Amiss(Cause.CLOCK, Grave.SPOILS)
    elif each.state is State.WAIT:
        left_s = each.remaining_s or 0.0
        yield Amiss(Cause.EARLY, Grave.SPOILS, left_s, name=name, by_touch=by_touch)
    elif each.state is State.UNKNOWN:
        # Graver than too early: nobody can say by how much.
        since_s = each.elapsed_s
        yield Amiss(Cause.WAIT_UNKNOWN, Grave.SPOILS, since_s, name=name, by_touch=by_touch)
    elif each.state is State.LATE and each.wait.again_s is not None:
        yield Amiss(Cause.LIFTS, Grave.SPOILS, each.wait.again_s - each.elapsed_s, name=name)
    elif each.state is State.LATE:
        yield Amiss(Cause.LATE, Grave.SPOILS, each.past_s, name=name)
    elif each.abrade:
        yield Amiss(Cause.ABRADE, Grave.MAY_SPOIL, name=name)


def standing_before(job: Job, part: str, now: Moment) -> Standing | None:
    """Where the wait before the next coat on `part` stands; None before the first."""
    wait: Wait | None = kept_by(job, f"wait before {part}", None, lambda: wait_before(job, part))
    return None if wait is None else standing(wait, now, job.boots)


def wait_before(job: Job, part: str, touched: bool = True) -> Wait | None:
    """The wait that the next coat on `part` is held against: planned or not, of this product or of the
    one before it; None where none is on. touched: False for the wait as it is without touch tests."""
    owner, coat = last_coat(job, part) or (job, None)
    ended = coat.ended if coat is not None else None
    if coat is None or ended is None or job.opened.rehearsal:
        return None
    coat = coat if touched else replace(coat, touches=())
    if owner is job:
        return between_coats(job, coat, ended)
    return next(next_products(owner, coat, ended))
