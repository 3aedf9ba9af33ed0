"""The waits of a job, their state at a given now, and what should ring. Pure: now is handed in.

A wait is not a counter: it is the difference between a logged moment and now. Where the profile gives
one time at one temperature, the wait is an estimate for today's temperature and says so.
"""

from __future__ import annotations

import enum
from collections.abc import Iterator, Sequence
from typing import Any

import msgspec

from booth.job import scaled_waits
from booth.job.pouring import open_batches
from booth.job.scaled_waits import Lasting
from booth.log.events import BatchMixed, CoatEnded
from booth.log.fold import Coat, Job
from booth.moment import Basis, Boot, Moment, elapsed, later

#: The last fifth of a window is its closing, but no more than half an hour of it.
CLOSING_FRACTION = 0.2
CLOSING_MOST_S = 30 * 60.0
#: After a touch that came away wet: a quarter of the wait again before the next try.
TOUCH_AGAIN_FRACTION = 0.25


class State(enum.StrEnum):
    """Where a wait stands, the most urgent first."""

    LATE = "late"
    CLOSING = "closing"
    READY = "ready"
    WAIT = "wait"


class What(enum.StrEnum):
    """What is waited for."""

    NEXT_COAT = "next coat"
    DUST_FREE = "dust-free"
    HANDLE = "can be handled"
    INDUCTION = "induction"
    POT_LIFE = "pot life"


class Wait(msgspec.Struct, frozen=True):
    """One wait: what for, since when, when it opens and when it closes [s after start].

    opens_s is 0 where nothing is waited for first; closes_s is None where nothing closes.
    estimate: opens or closes rests on a rule of thumb; rule: which rule, or the profile.
    """

    key: str
    what: What
    title: str
    start: Moment
    opens_s: float
    closes_s: float | None
    estimate: bool
    rule: str
    part: str = ""
    coat: int = 0
    flash_off_s: float | None = None
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


class Standing(msgspec.Struct, frozen=True):
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


#: What rings, in words.
RINGING = {
    (What.NEXT_COAT, State.READY): "ready for coat {next}",
    (What.NEXT_COAT, State.CLOSING): "recoat window is closing",
    (What.NEXT_COAT, State.LATE): "recoat window has closed",
    (What.DUST_FREE, State.READY): "dust-free",
    (What.HANDLE, State.READY): "can be handled",
    (What.INDUCTION, State.READY): "induction time is over",
    (What.POT_LIFE, State.CLOSING): "pot life is nearly over",
    (What.POT_LIFE, State.LATE): "pot life is over: do not spray it",
}


class Alarm(msgspec.Struct, frozen=True):
    """Something to be heard until it is acknowledged. since: when it became so."""

    key: str
    standing: Standing
    since: Moment

    @property
    def words(self) -> str:
        """What, for which part."""
        wait, state = self.standing.wait, self.standing.state
        return RINGING.get((wait.what, state), f"{wait.what}: {state}").format(next=wait.coat + 1)


def waits(job: Job) -> tuple[Wait, ...]:
    """Give every wait that runs in this job, in the order of the log."""
    # They change with an entry, not with a second: each Job keeps its own.
    known: dict[str, Any] = vars(job)
    if "waits" not in known:
        running = () if job.closed is not None else (*_pot_waits(job), *_part_waits(job))
        known["waits"] = running
    return known["waits"]


def standing(wait: Wait, now: Moment, boots: Sequence[Boot] = ()) -> Standing:
    """Give where `wait` stands at `now`; boots: of the job, which may prove the clock wrong."""
    passed = elapsed(wait.start, now, boots)
    seconds, opens_s, closes_s = passed.seconds, wait.opens_s, wait.closes_s
    if closes_s is not None and seconds >= closes_s:
        return Standing(wait, State.LATE, seconds, None, seconds - closes_s, passed.basis)
    state, ends_s = State.READY, closes_s
    if seconds < opens_s:
        state, ends_s = State.WAIT, opens_s
    elif wait.closing_from_s is not None and seconds >= wait.closing_from_s:
        state = State.CLOSING
    left_s = None if ends_s is None else ends_s - seconds
    return Standing(wait, state, seconds, left_s, 0.0, passed.basis)


def standings(job: Job, now: Moment) -> tuple[Standing, ...]:
    """Give every running wait at `now`, the most urgent first."""
    found = [standing(wait, now, job.boots) for wait in waits(job)]
    return tuple(sorted(found, key=_urgency))


def _urgency(each: Standing) -> tuple[int, float]:
    left_s = each.remaining_s if each.remaining_s is not None else 1e12
    return list(State).index(each.state), -each.past_s if each.state is State.LATE else left_s


def alarms(job: Job, now: Moment) -> tuple[Alarm, ...]:
    """Give what should ring at `now`: every change reached and not yet acknowledged."""
    found = []
    for each in standings(job, now):
        wait, key = each.wait, f"{each.wait.key}:{each.state}"
        if key in job.acknowledged or not _rings(each):
            continue
        since_s = {State.READY: wait.opens_s, State.CLOSING: wait.closing_from_s}.get(
            each.state, wait.closes_s
        )
        found.append(Alarm(key, each, later(wait.start, since_s or 0.0)))
    return tuple(found)


def _rings(each: Standing) -> bool:
    if each.state is State.READY:
        # Whoever has just touched it dry stands before it and needs no calling.
        # And while the clock is in doubt it may have closed again: what is ready is not known.
        return each.wait.opens_s > 0 and not each.wait.touched_dry and not each.doubtful
    return each.state is not State.WAIT


def _wait(
    what: What,
    n: int,
    start: Moment,
    title: str,
    opens: Lasting | None,
    closes: Lasting | None = None,
    **more: Any,
) -> Wait:
    """The wait that entry `n` starts."""
    given = [each for each in (opens, closes) if each is not None]
    return Wait(
        key=f"{'coat' if what is What.NEXT_COAT else what.name.lower()}:{n}",
        what=what,
        title=title,
        start=start,
        opens_s=opens.seconds if opens else 0.0,
        closes_s=closes.seconds if closes else None,
        estimate=any(each.estimate for each in given),
        rule="; ".join(dict.fromkeys(each.rule for each in given)) or "the profile gives no wait",
        **more,
    )


def _part_waits(job: Job) -> Iterator[Wait]:
    for part in job.parts:
        coats = job.coats_on(part)
        if coats and coats[-1].ended is not None:
            yield from _after_coat(job, coats[-1], coats[-1].ended)


def _after_coat(job: Job, coat: Coat, ended: CoatEnded) -> Iterator[Wait]:
    def wait(what: What, opens: Lasting | None, closes: Lasting | None = None, **more: Any) -> Wait:
        more |= {"part": coat.part, "coat": coat.number}
        return _wait(what, ended.n, ended.at, coat.part, opens, closes, **more)

    profile, weather = job.profile, coat.weather or job.weather
    if coat.number < profile.film.coats:
        flash = scaled_waits.flash_off(profile, weather)
        yield wait(
            What.NEXT_COAT,
            _touched(coat, ended, scaled_waits.between_coats(profile, weather)),
            scaled_waits.recoat_closes(profile, weather),
            flash_off_s=flash.seconds if flash else None,
            touched_dry=bool(coat.touches) and coat.touches[-1].result == "dry",
        )
        return
    for what, rule in (
        (What.DUST_FREE, profile.waits.dust_free),
        (What.HANDLE, profile.waits.handle),
    ):
        lasting = scaled_waits.dries(rule, weather)
        if lasting is not None:
            yield wait(what, lasting)


def _touched(coat: Coat, ended: CoatEnded, opens: Lasting | None) -> Lasting | None:
    """A touch test always decides: dry opens the wait at once, wet or tacky puts it off."""
    if not coat.touches:
        return opens
    touch = coat.touches[-1]
    when_s = elapsed(ended.at, touch.at).seconds
    opens_s = opens.seconds if opens else 0.0
    if touch.result == "dry":
        seconds, rule = min(opens_s, when_s), "touched dry"
    else:
        again_s = when_s + max(opens_s * TOUCH_AGAIN_FRACTION, 60.0)
        seconds, rule = max(opens_s, again_s), f"touched {touch.result}: try again"
    if opens is None:
        return Lasting(seconds, False, rule)
    return Lasting(seconds, opens.estimate, f"{opens.rule}; {rule}")


def _pot_waits(job: Job) -> Iterator[Wait]:
    mix = job.profile.mix
    if mix is None:
        return
    lasts = scaled_waits.pot_life(job.profile, job.weather)
    for batch in open_batches(job):
        title = f"batch {batch.batch}"
        if mix.induction_s:
            induction = Lasting(mix.induction_s, False, "profile")
            yield _wait(What.INDUCTION, batch.n, batch.at, title, induction)
        if lasts is not None:
            start = oldest_of(job, batch).at
            yield _wait(What.POT_LIFE, batch.n, start, title, None, lasts)


def oldest_of(job: Job, batch: BatchMixed) -> BatchMixed:
    """Where a batch was poured onto the rest of an older one, the oldest rules the pot life."""
    by_number = {each.batch: each for each in job.batches}
    seen: set[int] = set()
    while batch.onto is not None and batch.onto in by_number and batch.onto not in seen:
        seen.add(batch.batch)
        batch = by_number[batch.onto]
    return batch
