"""What was seen in one job, and what many of them come to: a band of the middle, never a point. Pure."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from statistics import median

import msgspec

from booth.moment import Moment
from booth.trade.observations.median_band import (
    LEAST_OBSERVATIONS,
    MOST_OBSERVATIONS,
    MedianBand,
    median_band,
)
from booth.units import Kind

#: Stands for 'nobody knows how much more' among figures that are put in order.
NO_END = 1e15
#: A word, or a figure, or one end and the other of a span, with its kind: to be told in the painter's
#: units.
Told = str | tuple[float, Kind] | tuple[float, float, Kind]

LEFT_OUT = "left out by the painter"
CANNOT_BE = "a figure that cannot be one"


class Observation(msgspec.Struct, frozen=True):
    """One job's figure of one thing.

    group: what it is learnt for, as product and gun, told by `about`; low, high: between which the
    figure lies, equal where it was measured itself, NO_END where nothing bounds it from above; count:
    of how many readings of that job it is the middle; job, file: the job's name and its log's; told:
    what has to be known with it; rehearsal: it is from one; left_out: why the painter left the job
    out, None where it counts; air_c, humidity_percent: it was made in; cup, cup_s: the seconds of the
    mix it was made with.
    """

    group: tuple[str, ...]
    about: tuple[Told, ...]
    low: float
    high: float
    at: Moment
    job: str = ""
    file: str = ""
    count: int = 1
    told: tuple[Told, ...] = ()
    rehearsal: bool = False
    left_out: str | None = None
    air_c: float | None = None
    humidity_percent: float | None = None
    cup: str = ""
    cup_s: float | None = None

    @property
    def is_exact(self) -> bool:
        return self.low == self.high

    @property
    def can_be(self) -> bool:
        """Whether it is a figure at all: a slip of the keys in a log may have made it none."""
        return 0.0 <= self.low <= self.high <= NO_END and self.low < NO_END and self.high > 0.0


class Learnt(msgspec.Struct, frozen=True):
    """What observations come to.

    subject: which of the subjects; unit: the kind of figure, None for a multiple; middle: their
    median, None where they only bound it; low, high: between which the true middle lies, None where
    nothing bounds it there; covers_fraction: how often such a band holds it; observations: those that
    count, the latest first; without: those that do not, each with why.
    """

    subject: str
    group: tuple[str, ...]
    about: tuple[Told, ...]
    unit: Kind | None
    middle: float | None = None
    low: float | None = None
    high: float | None = None
    covers_fraction: float = 0.0
    observations: tuple[Observation, ...] = ()
    without: tuple[tuple[Observation, str], ...] = ()

    @property
    def has_band(self) -> bool:
        return self.low is not None or self.high is not None

    @property
    def is_enough(self) -> bool:
        """Whether there are so many that anything is said of them."""
        return len(self.observations) >= LEAST_OBSERVATIONS

    @property
    def readings(self) -> int:
        """How many readings are in the observations."""
        return sum(each.count for each in self.observations)


def of_one_job(found: Sequence[Observation]) -> tuple[Observation, ...]:
    """Give one observation a group: readings of one job hang together, so their middle is what it says.

    Whatever the readings really were, their middle lies between the middles of their ends.
    """
    groups: dict[tuple[str, ...], list[Observation]] = {}
    for each in found:
        groups.setdefault(each.group, []).append(each)
    return tuple(_middle_of(own) for own in groups.values())


def _middle_of(own: list[Observation]) -> Observation:
    if len(own) == 1:
        return own[0]
    low, high = median(each.low for each in own), median(each.high for each in own)
    high = NO_END if high >= NO_END / 2 else high
    told = own[-1].told if all(each.told == own[-1].told for each in own) else ()
    count = sum(each.count for each in own)
    return msgspec.structs.replace(own[-1], low=low, high=high, count=count, told=told)


def learnt_of(
    subject: str,
    unit: Kind | None,
    found: Iterable[Observation],
    without: Iterable[tuple[Observation, str]] = (),
) -> Learnt | None:
    """Give what observations of one group come to; None where there are none at all.

    A band of the lower ends and one of the upper ends hold between them what the figures themselves
    would have given: each figure lies between its ends, so does the r-th smallest of them.
    """
    every, aside = tuple(found), list(without)
    counts = [each for each in every if each.left_out is None and each.can_be][:MOST_OBSERVATIONS]
    aside += [(each, CANNOT_BE) for each in every if each.left_out is None and not each.can_be]
    aside += [(each, each.left_out or LEFT_OUT) for each in every if each.left_out is not None]
    one = next(iter((*every, *(each for each, _ in aside))), None)
    if one is None:
        return None
    bare = Learnt(
        subject, one.group, one.about, unit, observations=tuple(counts), without=tuple(aside)
    )
    lows, highs = (
        median_band([end(each) for each in counts])
        for end in (lambda each: each.low, lambda each: each.high)
    )
    if not isinstance(lows, MedianBand) or not isinstance(highs, MedianBand):
        return bare
    is_known = math.isclose(lows.median, highs.median)
    return msgspec.structs.replace(
        bare,
        middle=lows.median if is_known else None,
        low=lows.middle_low if lows.middle_low > 0 else None,
        high=highs.middle_high if highs.middle_high < NO_END else None,
        covers_fraction=lows.covers_fraction,
    )
