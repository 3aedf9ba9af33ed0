"""What the plan starts from: the parts as they stand, the waits of today, what a coat takes. Pure."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
from msgspec.structs import replace

from booth.job import lasting
from booth.job.amiss import Amiss, Cause, worst_first
from booth.job.coat_plan import coats_wanted
from booth.job.coat_plan import planned as planned_coats
from booth.job.coat_times import JobTimes, areas_of, learnt, trigger_s
from booth.job.day_plan import DayPlan
from booth.job.guard import of_compressor, of_induction, of_weather
from booth.job.measured import mean
from booth.job.mix_choice import in_use
from booth.job.products_to_come import onward_of
from booth.job.racks import pieces_of
from booth.job.schedule import COAT_S, Block, PartState, Pot, Rules, Schedule, Span, schedule
from booth.job.together import after_coat, closes_first, mixes_in_use, opens_last
from booth.job.wait import Standing, What
from booth.job.waits import standings
from booth.log.fold import Job
from booth.moment import Moment, elapsed

TWICE = "twice the trigger time"


class SprayTime(msgspec.Struct, frozen=True):
    """What a coat on one part takes [s] and where that is from."""

    seconds: float
    source: str


GUESS = "a guess"


class Planned(msgspec.Struct, frozen=True):
    """schedule: from now on; past: what really happened; pots: batches in use or to be mixed;
    handle_s: when the part that is last can be handled; estimate: a wait rests on an estimate; why:
    what speaks against it besides the troubles of the schedule; starts_s: when induction is over;
    onward: the products to come, None where there are none; guessed: what a coat takes is a guess."""

    schedule: Schedule
    past: tuple[Block, ...]
    pots: tuple[Pot, ...]
    handle_s: float | None
    estimate: bool
    pot_is_planned: bool
    why: tuple[Amiss, ...] = ()
    starts_s: float = 0.0
    onward: DayPlan | None = None
    guessed: bool = False

    @property
    def fits(self) -> bool:
        """Whether every window, pot life and limit is met, and all that it rests on is known."""
        later = self.onward is None or self.onward.fits
        return later and not self.schedule.troubles and not self.why

    @property
    def coats_left(self) -> int:
        """How many coats are to be sprayed, of every product."""
        return self.schedule.remaining + (len(self.onward.coats) if self.onward else 0)

    @property
    def last_s(self) -> float | None:
        """When the last coat of all is on; None where that is not known."""
        if self.onward is not None:
            return self.onward.last_s
        return None if self.schedule.unknown else self.schedule.last_s

    @property
    def is_known(self) -> bool:
        """Whether every wait in it has a figure that rests on a reading of the weather."""
        unknown = {Cause.NOT_READ, Cause.INDUCTION_UNKNOWN, Cause.CLOCK}
        return self.last_s is not None and not unknown & {each.cause for each in self.why}


def spray_times(
    job: Job, typed_s: float | None = None, past: Sequence[JobTimes] = ()
) -> dict[str, SprayTime]:
    """What a coat on each part takes: as typed; as it took on this part so far; as area and delivery
    say, times what the coats of this shop took of that; as coats took on other parts; or the usual
    guess."""
    took: dict[str, list[float]] = {part: [] for part in job.parts}
    for coat in (coat for part in job.parts for coat in job.coats_on(part)):
        if coat.ended is not None:
            took[coat.part].append(elapsed(coat.begun.at, coat.ended.at).seconds)
    pieces = {part: pieces_of(job, part) for part in job.parts}
    usual = mean([seconds / pieces[part] for part, each in took.items() for seconds in each])
    areas, times, found = areas_of(job), learnt(job, past), {}
    by_trigger = f"{times.times:.1f} times the trigger" if times.is_learnt else TWICE
    coming = min((len(job.coats_on(part)) for part in job.parts), default=0) + 1
    for part in job.parts:
        at_trigger_s = trigger_s(job, areas.get(part, 0.0), min(coming, coats_wanted(job)))
        ways = (
            (typed_s, "as typed"),
            (mean(took[part]), "as its coats took"),
            (at_trigger_s and at_trigger_s * times.times, by_trigger),
            (usual and usual * pieces[part], "as the coats took so far"),
        )
        best = (SprayTime(seconds, source) for seconds, source in ways if seconds is not None)
        found[part] = next(best, SprayTime(COAT_S * pieces[part], GUESS))
    return found


def planned(
    job: Job, now: Moment, typed_s: float | None = None, past: Sequence[JobTimes] = ()
) -> Planned:
    """Give the whole job as it stands at `now`. past: the coats of other jobs of this shop."""
    mixes, spray, read = mixes_in_use(job), spray_times(job, typed_s, past), job.weather
    windows = (What.NEXT_COAT, What.NEXT_PRODUCT)
    running = {e.wait.part: e for e in standings(job, now) if e.wait.what in windows}
    opens = [after_coat(mixes, coat.plan, read) for coat in planned_coats(job)]
    closes = closes_first(mixes, lambda mix: lasting.recoat_closes(mix, read))
    pots, starts_s, to_be_mixed = _pots(job, now)
    rules = Rules(
        coats=coats_wanted(job),
        waits_s=tuple(each.seconds for each in opens),
        closes_s=closes.seconds if closes else None,
        starts_s=starts_s,
    )
    parts = [_part(job, part, now, spray[part].seconds, running.get(part)) for part in job.parts]
    plan = schedule(parts, rules, pots)
    handle = opens_last(mixes, lambda mix: lasting.opens(mix.waits.handle, mix, read))
    used = [each for each in (*opens[:-1], closes, handle) if each is not None]
    seconds = {part: each.seconds for part, each in spray.items()}
    later = onward_of(job, plan, mixes, seconds, running)
    if later is not None:
        used += [each.opens for each in later.waits if each.opens is not None]
        handle_s = later.handle_s
    else:
        handle_s = _handle_s(job, now, plan, handle.seconds if handle else None)
    return Planned(
        schedule=plan,
        past=_past(job, now),
        pots=pots,
        handle_s=handle_s,
        estimate=any(each.estimate for each in used),
        pot_is_planned=to_be_mixed,
        why=_why(job, now) if plan.remaining else _of_reading(job, now) if later else (),
        starts_s=starts_s,
        onward=later,
        guessed=any(each.source == GUESS for each in spray.values()),
    )


def _why(job: Job, now: Moment) -> tuple[Amiss, ...]:
    """What of the guard speaks against a whole plan: weather, induction not known, compressor."""
    standing = (each for each in of_induction(job, now) if each.cause is not Cause.INDUCTION)
    return worst_first((*of_weather(job, now), *standing, *of_compressor(job)))


def _of_reading(job: Job, now: Moment) -> tuple[Amiss, ...]:
    """Of the weather only whether it was read, and lately: its limits are those of the next product."""
    return tuple(e for e in of_weather(job, now) if e.cause in (Cause.NOT_READ, Cause.OLD))


def _part(job: Job, part: str, now: Moment, spray_s: float, standing: Standing | None) -> PartState:
    ended = [coat.ended for coat in job.coats_on(part) if coat.ended is not None]
    running = job.running_coat(part)
    wanted, is_rack = coats_wanted(job, part), pieces_of(job, part) > 1
    state = PartState(part, len(ended), spray_s, wanted=wanted, is_rack=is_rack)
    if running is not None:
        left_s = spray_s - elapsed(running.begun.at, now).seconds
        return replace(state, spraying_s=max(left_s, 0.0))
    if ended:
        state = replace(state, since_s=-elapsed(ended[-1].at, now).seconds)
    # The first coat waits for the window of the product before.
    if standing is None or standing.wait.what is not (
        What.NEXT_COAT if ended else What.NEXT_PRODUCT
    ):
        return state
    wait, passed = standing.wait, standing.elapsed_s
    closes_s = None if wait.closes_s is None else wait.closes_s - passed
    opens_s = None if wait.opens_s is None else wait.opens_s - passed
    return replace(state, opens_s=opens_s, closes_s=closes_s)


def _pots(job: Job, now: Moment) -> tuple[tuple[Pot, ...], float, bool]:
    """Batches in use, or the one to come; when induction is over [s]; whether it is to come."""
    pots, inductions = [], []
    for each in standings(job, now):
        wait = each.wait
        if wait.what is What.POT_LIFE and wait.closes_s is not None:
            pots.append(Pot(wait.title, -each.elapsed_s, wait.closes_s - each.elapsed_s))
        elif wait.what is What.INDUCTION:
            inductions.append((wait.opens_s or 0.0) - each.elapsed_s)
    if pots or job.batches:
        return tuple(pots), max(min(inductions, default=0.0), 0.0), False
    lasts = lasting.pot_life(in_use(job), job.weather)
    stands = lasting.induction(job.profile, job.weather)
    induction = (stands.seconds or 0.0) if stands is not None else 0.0
    if lasts is None or lasts.seconds is None:
        return (), induction, induction > 0
    return (Pot("the next batch", 0.0, lasts.seconds),), induction, True


def _past(job: Job, now: Moment) -> tuple[Block, ...]:
    """The coats that are on, and the time between them."""
    found = []
    for part in job.parts:
        before: float | None = None
        for coat in job.coats_on(part):
            start = -elapsed(coat.begun.at, now).seconds
            end = -elapsed(coat.ended.at, now).seconds if coat.ended is not None else 0.0
            if before is not None and start > before:
                found.append(Block(part, coat.number - 1, Span.WAIT, before, start))
            found.append(Block(part, coat.number, Span.SPRAYED, start, end))
            before = end
    return tuple(found)


def _handle_s(job: Job, now: Moment, plan: Schedule, handle_s: float | None) -> float | None:
    """When the last of the parts can be handled; from the log where all coats are on."""
    if handle_s is None or plan.unknown:
        return None
    if plan.remaining:
        return plan.last_s + handle_s
    handling = [each for each in standings(job, now) if each.wait.what is What.HANDLE]
    left = [
        each.wait.opens_s - each.elapsed_s for each in handling if each.wait.opens_s is not None
    ]
    return max(left, default=None)
