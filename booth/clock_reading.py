"""The machine's three clocks read together, and what two readings tell. Pure: asks no clock.

``wall`` may step; ``continuous`` counts sleep and never steps; ``monotonic`` does neither, so that
what lies between them tells whether the machine slept or its clock was set.
"""

from __future__ import annotations

import msgspec

#: Clocks are read one after the other, and a wall clock is slewed a little all the time.
TOLERANCE_S = 0.5
#: A timer may fire a trifle early; so near to a whole second the next one is meant.
EARLY_FRACTION = 0.05


class Reading(msgspec.Struct, frozen=True):
    """The three clocks, read together [s]."""

    wall: float
    continuous: float
    monotonic: float


class ClockChange(msgspec.Struct, frozen=True):
    """What was done to the clocks between two readings [s]; a step back is negative."""

    slept_s: float
    stepped_s: float


def notice(before: Reading, now: Reading, tolerance_s: float = TOLERANCE_S) -> ClockChange | None:
    """Give what the machine did between two readings: slept, or had its wall clock moved.

    Slept is the advance of the continuous clock less that of the monotonic one; stepped is the
    advance of the wall clock less that of the continuous one. Both below the tolerance: None.
    Where the monotonic clock counts sleep too, sleep cannot be told and is never claimed.
    """
    continuous_s = now.continuous - before.continuous
    slept_s = continuous_s - (now.monotonic - before.monotonic)
    stepped_s = (now.wall - before.wall) - continuous_s
    slept_s = slept_s if slept_s > tolerance_s else 0.0
    stepped_s = stepped_s if abs(stepped_s) > tolerance_s else 0.0
    return ClockChange(slept_s, stepped_s) if slept_s or stepped_s else None


def to_next(wall: float, step_s: float = 1.0, rate: float = 1.0) -> float:
    """Give the real seconds until the wall clock, running at `rate`, reaches a whole `step_s`."""
    left = step_s - wall % step_s
    if left < step_s * EARLY_FRACTION:
        left += step_s
    return left / rate
