"""A moment in the two senses a wait needs, and what lies between two of them. No clock is asked here.

``wall`` can step (set by hand, by the network, by an empty battery); ``continuous`` counts sleep and
never steps but starts anew at each boot. Stored together with the boot they belong to, they tell how
much time really passed; what else was stored in between tells whether the wall clock can be right.
"""

from __future__ import annotations

import enum
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime
from itertools import groupby, pairwise

import msgspec

#: What a wall clock may gain or lose on the continuous one without being set: it is slewed by at
#: most 500 millionths (adjtimex(2), from memory), and the two are read one after the other.
SLEWED_FRACTION, READ_APART_S = 500e-6, 0.5


class Moment(msgspec.Struct, frozen=True):
    """wall: seconds since 1970-01-01 UTC; continuous: seconds since boot, sleep counted; boot: its name."""

    wall: float
    continuous: float
    boot: str


class Basis(enum.StrEnum):
    """Which clock an elapsed time comes from, and so how far it can be trusted."""

    CONTINUOUS = "continuous"
    WALL = "wall clock, after a restart of the machine"
    DOUBTFUL = "wall clock earlier than what was written down before: doubtful"


class Elapsed(msgspec.Struct, frozen=True):
    """seconds: never negative; basis: the clock it comes from. Doubtful: so much at least has passed."""

    seconds: float
    basis: Basis


class Boot(msgspec.Struct, frozen=True):
    """What was written down in one boot: the first moment and the last, by the continuous clock."""

    first: Moment
    last: Moment

    @property
    def span_s(self) -> float:
        """How long it ran between them, whatever was done to the wall clock."""
        return self.last.continuous - self.first.continuous


def boots_of(moments: Iterable[Moment]) -> tuple[Boot, ...]:
    """Give the boots in which these moments lie, in their order; they are in that of a log."""
    found = []
    for _, those in groupby(moments, key=lambda each: each.boot):
        # By age, since a press is dated before entries that stand above it.
        by_age = sorted(those, key=lambda each: each.continuous)
        found.append(Boot(by_age[0], by_age[-1]))
    return tuple(found)


def elapsed(start: Moment, now: Moment, boots: Sequence[Boot] = ()) -> Elapsed:
    """Give the time from `start` to `now` [s], from the most trustworthy clock both share.

    Within one boot the continuous clock decides, whatever was done to the wall clock. After a
    restart only the wall clock is left, as it read last in the boot of `start`. `boots` is what the
    log has: where one boot would have begun before another had ended, the wall clock was wrong in
    one of them, now or then. The result is doubtful, and what the continuous clocks prove.
    """
    if start.boot == now.boot and now.continuous >= start.continuous:
        return Elapsed(now.continuous - start.continuous, Basis.CONTINUOUS)
    chain = _from(start, boots)
    if chain[-1].first.boot == now.boot and chain[-1].first.continuous <= now.continuous:
        chain[-1] = Boot(chain[-1].first, now)
    else:
        chain.append(Boot(now, now))
    proven_s = sum(boot.span_s for boot in chain)
    left = chain[0].last
    passed_s = chain[0].span_s + now.wall - left.wall
    for before, after in pairwise(chain):
        # When the later one began, by the wall clock as it read last in it.
        off_s = after.last.wall - after.span_s - before.last.wall
        if off_s < -_allowed_s(after):
            return Elapsed(proven_s, Basis.DOUBTFUL)
    return Elapsed(max(passed_s, proven_s), Basis.WALL)


def _from(start: Moment, boots: Sequence[Boot]) -> list[Boot]:
    """Give what ran from `start` on: the rest of its own boot, and the boots that came after."""
    for at in range(len(boots) - 1, -1, -1):
        own = boots[at]
        if own.first.boot == start.boot and own.first.continuous <= start.continuous:
            last = start if start.continuous > own.last.continuous else own.last
            return [Boot(start, last), *boots[at + 1 :]]
    return [Boot(start, start)]


def _allowed_s(boot: Boot) -> float:
    """What slewing alone can make of the time that a boot ran [s]; nothing where it is one moment."""
    return READ_APART_S + SLEWED_FRACTION * boot.span_s if boot.span_s else 0.0


def later(start: Moment, seconds: float) -> Moment:
    """Give the moment `seconds` after `start`, as both of its clocks would read."""
    return Moment(start.wall + seconds, start.continuous + seconds, start.boot)


def utc_text(moment: Moment, form: str, unknown: str) -> str:
    """Give the moment in UTC, the same wherever it is read; `unknown` of a clock gone wild."""
    try:
        return datetime.fromtimestamp(moment.wall, UTC).strftime(form)
    except (OverflowError, OSError, ValueError):
        return unknown
