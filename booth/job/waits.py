"""The waits of a job, their state at a given now, and what should ring. Pure: now is handed in.

A wait is not a counter: it is the difference between a logged moment and now. Where the profile gives
one time at one temperature, the wait is an estimate for today's temperature and says so.
"""

from __future__ import annotations

import enum
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from booth.job import scaled_waits
from booth.job.scaled_waits import Lasting
from booth.log.events import BatchMixed
from booth.log.fold import Coat, Job
from booth.moment import Basis, Boot, Moment, elapsed, later

#: The last fifth of a window is its closing, but no more than half an hour of it.
CLOSING_FRACTION = 0.2
CLOSING_MOST_S = 30 * 60.0
#: After a touch that came away wet: a quarter of the wait again before the next try.
TOUCH_AGAIN_FRACTION = 0.25


class State(enum.StrEnum):
    """Where a wait stands."""

    WAIT = "wait"
    READY = "ready"
    CLOSING = "closing"
    LATE = "late"


class What(enum.StrEnum):
    """What is waited for."""

    NEXT_COAT = "next coat"
    DUST_FREE = "dust-free"
    HANDLE = "can be handled"
    INDUCTION = "induction"
    POT_LIFE = "pot life"


@dataclass(frozen=True, slots=True)
class Wait:
    """One wait: what for, since when, when it opens and when it closes [s after start].

    opens_s is 0 where nothing is waited for first; closes_s is None where nothing closes.
    estimate: opens or closes rests on a rule of thumb; rule: which rule, or the profile.
    """

    key: str
    what: What
    title: str
    part: str
    coat: int
    start: Moment
    opens_s: float
    closes_s: float | None
    estimate: bool
    rule: str
    flash_off_s: float | None = None
    by_touch: bool = False
    touched_dry: bool = False

    @property
    def opens_at(self) -> Moment:
        return later(self.start, self.opens_s)

    @property
    def closes_at(self) -> Moment | None:
        return None if self.closes_s is None else later(self.start, self.closes_s)

    @property
    def closing_from_s(self) -> float | None:
        """When its closing begins [s after start]."""
        if self.closes_s is None:
            return None
        window = max(self.closes_s - self.opens_s, 0.0)
        return self.closes_s - min(window * CLOSING_FRACTION, CLOSING_MOST_S)


@dataclass(frozen=True, slots=True)
class Standing:
    """A wait at a given now. remaining_s: to the next change that matters; past_s: since it was late.

    Where the clock is in doubt, elapsed_s is what has passed at least.
    """

    wait: Wait
    state: State
    elapsed_s: float
    remaining_s: float | None
    past_s: float
    basis: Basis

    @property
    def doubtful(self) -> bool:
        """Whether the clock leaves it in doubt; that it is late can be proven all the same."""
        return self.basis is Basis.DOUBTFUL and self.state is not State.LATE

    @property
    def fraction(self) -> float:
        """How much of the present stretch is over, 0..1."""
        wait = self.wait
        if self.state is State.WAIT:
            return self.elapsed_s / wait.opens_s if wait.opens_s else 1.0
        if wait.closes_s is None or self.state is State.LATE:
            return 1.0
        return (self.elapsed_s - wait.opens_s) / max(wait.closes_s - wait.opens_s, 1e-9)


@dataclass(frozen=True, slots=True)
class Alarm:
    """Something to be heard until it is acknowledged. since: when it became so."""

    key: str
    standing: Standing
    since: Moment

    @property
    def words(self) -> str:
        """What, for which part."""
        wait = self.standing.wait
        told = {
            (What.NEXT_COAT, State.READY): f"ready for coat {wait.coat + 1}",
            (What.NEXT_COAT, State.CLOSING): "recoat window is closing",
            (What.NEXT_COAT, State.LATE): "recoat window has closed",
            (What.DUST_FREE, State.READY): "dust-free",
            (What.HANDLE, State.READY): "can be handled",
            (What.INDUCTION, State.READY): "induction time is over",
            (What.POT_LIFE, State.CLOSING): "pot life is nearly over",
            (What.POT_LIFE, State.LATE): "pot life is over: do not spray it",
        }
        return told.get((wait.what, self.standing.state), f"{wait.what}: {self.standing.state}")


#: The waits of the jobs that were asked for last: they change with an entry, not with a second.
_known: dict[int, tuple[Job, tuple[Wait, ...]]] = {}
MOST_KNOWN = 64


def waits(job: Job) -> tuple[Wait, ...]:
    """Give every wait that runs in this job, in the order of the log."""
    found = _known.get(id(job))
    if found is None or found[0] is not job:
        if len(_known) >= MOST_KNOWN:
            _known.clear()
        running = () if job.closed is not None else (*_pot_waits(job), *_part_waits(job))
        found = _known[id(job)] = job, running
    return found[1]


def standing(wait: Wait, now: Moment, boots: Sequence[Boot] = ()) -> Standing:
    """Give where `wait` stands at `now`; boots: of the job, which may prove the clock wrong."""
    passed = elapsed(wait.start, now, boots)
    seconds = passed.seconds
    closing_from = wait.closing_from_s
    if wait.closes_s is not None and seconds >= wait.closes_s:
        return Standing(wait, State.LATE, seconds, None, seconds - wait.closes_s, passed.basis)
    if seconds < wait.opens_s:
        return Standing(wait, State.WAIT, seconds, wait.opens_s - seconds, 0.0, passed.basis)
    if wait.closes_s is None or closing_from is None:
        return Standing(wait, State.READY, seconds, None, 0.0, passed.basis)
    state = State.CLOSING if seconds >= closing_from else State.READY
    return Standing(wait, state, seconds, wait.closes_s - seconds, 0.0, passed.basis)


def standings(job: Job, now: Moment) -> tuple[Standing, ...]:
    """Give every running wait at `now`, the most urgent first."""
    found = [standing(wait, now, job.boots) for wait in waits(job)]
    return tuple(sorted(found, key=_urgency))


def alarms(job: Job, now: Moment) -> tuple[Alarm, ...]:
    """Give what should ring at `now`: every change reached and not yet acknowledged."""
    found = []
    for each in standings(job, now):
        if not _rings(each):
            continue
        key = f"{each.wait.key}:{each.state}"
        if key in job.acknowledged:
            continue
        found.append(Alarm(key, each, _since(each)))
    return tuple(found)


def _rings(each: Standing) -> bool:
    if each.state is State.WAIT:
        return False
    if each.state is State.READY:
        # Whoever has just touched it dry stands before it and needs no calling.
        # And while the clock is in doubt it may have closed again: what is ready is not known.
        return each.wait.opens_s > 0 and not each.wait.touched_dry and not each.doubtful
    return True


def _since(each: Standing) -> Moment:
    wait = each.wait
    seconds = {
        State.READY: wait.opens_s,
        State.CLOSING: wait.closing_from_s or 0.0,
        State.LATE: wait.closes_s or 0.0,
    }[each.state]
    return later(wait.start, seconds)


def _urgency(each: Standing) -> tuple[int, float]:
    rank = {State.LATE: 0, State.CLOSING: 1, State.READY: 2, State.WAIT: 3}[each.state]
    if each.state is State.LATE:
        return rank, -each.past_s
    return rank, each.remaining_s if each.remaining_s is not None else 1e12


def _part_waits(job: Job) -> Iterator[Wait]:
    for part in job.parts:
        coats = job.coats_on(part)
        if not coats or coats[-1].ended is None:
            continue
        coat = coats[-1]
        if coat.number < job.profile.film.coats:
            yield _next_coat(job, coat)
        else:
            yield from _after_last(job, coat)


def _next_coat(job: Job, coat: Coat) -> Wait:
    assert coat.ended is not None
    profile, weather = job.profile, coat.weather or job.weather
    flash = scaled_waits.flash_off(profile, weather)
    opens = scaled_waits.longer_of(flash, scaled_waits.recoat_opens(profile, weather))
    closes = scaled_waits.recoat_closes(profile, weather)
    opens_s, by_touch, touch_rule = _touched(coat, opens.seconds if opens else 0.0)
    parts = [each for each in (opens, closes) if each is not None]
    said = list(dict.fromkeys(each.rule for each in parts))
    return Wait(
        key=f"coat:{coat.ended.n}",
        what=What.NEXT_COAT,
        title=coat.part,
        part=coat.part,
        coat=coat.number,
        start=coat.ended.at,
        opens_s=opens_s,
        closes_s=closes.seconds if closes else None,
        estimate=any(each.estimate for each in parts),
        rule="; ".join(said + ([touch_rule] if touch_rule else [])) or "the profile gives no wait",
        flash_off_s=flash.seconds if flash else None,
        by_touch=by_touch,
        touched_dry=by_touch and coat.touches[-1].result == "dry",
    )


def _touched(coat: Coat, opens_s: float) -> tuple[float, bool, str]:
    """A touch test always decides: dry opens the wait at once, wet or tacky puts it off."""
    if not coat.touches or coat.ended is None:
        return opens_s, False, ""
    touch = coat.touches[-1]
    when = elapsed(coat.ended.at, touch.at).seconds
    if touch.result == "dry":
        return min(opens_s, when), True, "touched dry"
    again = when + max(opens_s * TOUCH_AGAIN_FRACTION, 60.0)
    return max(opens_s, again), True, f"touched {touch.result}: try again"


def _after_last(job: Job, coat: Coat) -> Iterator[Wait]:
    assert coat.ended is not None
    rules, weather = job.profile.waits, coat.weather or job.weather
    for what, rule in ((What.DUST_FREE, rules.dust_free), (What.HANDLE, rules.handle)):
        lasting = scaled_waits.dries(rule, weather)
        if lasting is None:
            continue
        yield Wait(
            key=f"{what.name.lower()}:{coat.ended.n}",
            what=what,
            title=coat.part,
            part=coat.part,
            coat=coat.number,
            start=coat.ended.at,
            opens_s=lasting.seconds,
            closes_s=None,
            estimate=lasting.estimate,
            rule=lasting.rule,
        )


def _pot_waits(job: Job) -> Iterator[Wait]:
    mix = job.profile.mix
    if mix is None:
        return
    absorbed = {batch.onto for batch in job.batches}
    for batch in job.batches:
        if batch.batch in absorbed or batch.batch in job.finished_batches:
            continue
        if mix.induction_s:
            yield _pot(batch, batch.at, What.INDUCTION, Lasting(mix.induction_s, False, "profile"))
        if mix.pot_life is not None:
            oldest = oldest_of(job, batch)
            lasts = scaled_waits.pot_life(job.profile, job.weather)
            yield _pot(batch, oldest.at, What.POT_LIFE, None, lasts)


def oldest_of(job: Job, batch: BatchMixed) -> BatchMixed:
    """Where a batch was poured onto the rest of an older one, the oldest rules the pot life."""
    by_number = {each.batch: each for each in job.batches}
    seen: set[int] = set()
    while batch.onto is not None and batch.onto in by_number and batch.onto not in seen:
        seen.add(batch.batch)
        batch = by_number[batch.onto]
    return batch


def _pot(
    batch: BatchMixed,
    start: Moment,
    what: What,
    opens: Lasting | None,
    closes: Lasting | None = None,
) -> Wait:
    lasting = opens or closes
    assert lasting is not None
    return Wait(
        key=f"{what.name.lower()}:{batch.n}",
        what=what,
        title=f"batch {batch.batch}",
        part="",
        coat=0,
        start=start,
        opens_s=opens.seconds if opens else 0.0,
        closes_s=closes.seconds if closes else None,
        estimate=lasting.estimate,
        rule=lasting.rule,
    )
