"""What can be amiss before a coat begins, and how grave it is: the words of the guard as plain data.

What is amiss with a job says ``guard``; how it is told, and what to do, ``words.guard_words``.
"""

from __future__ import annotations

import enum
from collections.abc import Iterable

import msgspec

from booth.profile.model import Range


class Grave(enum.IntEnum):
    """How grave it is."""

    LOOK = 1
    MAY_SPOIL = 2
    SPOILS = 3


class Cause(enum.StrEnum):
    """What can be amiss, as the log keeps it; of two equally grave the first comes first."""

    CONDENSATION = "water condenses on the part"
    DEW_MARGIN = "dew margin too small"
    PART = "part outside its limits"
    AIR = "air outside its limits"
    HUMIDITY = "humidity outside its limits"
    POT_LIFE = "pot life over"
    INDUCTION = "induction not over"
    WAIT_UNKNOWN = "wait not known"
    EARLY = "before its wait was over"
    LATE = "after its window closed"
    LIFTS = "in the time in which it may lift"
    UNPLANNED = "more coats than planned"
    OTHER_COAT = "another coat still running"
    NOT_READ = "weather not read"
    CLOCK = "clock in doubt"
    ABRADE = "to be abraded first"
    INDUCTION_UNKNOWN = "induction not known"
    THINNER = "thinner over its limit"
    CUP = "cup seconds outside the target"
    INLET = "inlet outside its range"
    DELIVERY = "delivery outside its range"
    POT_LIFE_ENDS = "pot life nearly over"
    OLD = "weather read long ago"
    COMPRESSOR = "compressor falls behind"
    TIP = "tip outside its range"
    FAN = "fan outside its range"
    DISTANCE = "distance outside its range"
    TURN = "other side not dry yet"
    NO_BATCH = "no batch noted"
    NOT_TIMED = "cup not timed"


class Amiss(msgspec.Struct, frozen=True):
    """One thing amiss.

    value: what was measured, or a time [s], in the base unit of its kind; asked: what is asked for;
    name: whose it is, or who asks; by_touch: a touch test may settle it.
    """

    cause: Cause
    grave: Grave
    value: float = 0.0
    asked: Range | None = None
    name: str = ""
    by_touch: bool = False

    @property
    def asks(self) -> bool:
        """Whether a coat begins only with one more press."""
        return self.grave is Grave.SPOILS or self.cause is Cause.UNPLANNED

    @property
    def is_grave(self) -> bool:
        """Whether nothing may look like approval."""
        return self.grave > Grave.LOOK


def worst_first(found: Iterable[Amiss]) -> tuple[Amiss, ...]:
    return tuple(sorted(found, key=lambda each: (-each.grave, list(Cause).index(each.cause))))
