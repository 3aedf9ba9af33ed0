"""A moment in the two senses a wait needs, and what lies between two of them. No clock is asked here.

``wall`` can step (set by hand, by the network, by an empty battery); ``continuous`` counts sleep and
never steps but starts anew at each boot. Stored together with the boot they belong to, they tell how
much time really passed.
"""

from __future__ import annotations

import enum

import msgspec


class Moment(msgspec.Struct, frozen=True):
    """wall: seconds since 1970-01-01 UTC; continuous: seconds since boot, sleep counted; boot: its name."""

    wall: float
    continuous: float
    boot: str


class Basis(enum.StrEnum):
    """Which clock an elapsed time comes from, and so how far it can be trusted."""

    CONTINUOUS = "continuous"
    WALL = "wall clock, after a restart of the machine"
    DOUBTFUL = "wall clock before the start: doubtful"


class Elapsed(msgspec.Struct, frozen=True):
    """seconds: never negative; basis: the clock it comes from."""

    seconds: float
    basis: Basis


def elapsed(start: Moment, now: Moment) -> Elapsed:
    """Give the time from `start` to `now` [s], from the most trustworthy clock both share.

    Within one boot the continuous clock decides, whatever was done to the wall clock. After a
    restart only the wall clock is left; where it lies before the start, the result is 0 and doubtful.
    """
    if start.boot == now.boot and now.continuous >= start.continuous:
        return Elapsed(now.continuous - start.continuous, Basis.CONTINUOUS)
    passed = now.wall - start.wall
    if passed < 0:
        return Elapsed(0.0, Basis.DOUBTFUL)
    return Elapsed(passed, Basis.WALL)


def later(start: Moment, seconds: float) -> Moment:
    """Give the moment `seconds` after `start`, as both of its clocks would read."""
    return Moment(start.wall + seconds, start.continuous + seconds, start.boot)
