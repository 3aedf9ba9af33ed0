"""What every wait of the trade is made of: its result, how sure it is, its refusal, its careful end."""

from __future__ import annotations

import enum
from dataclasses import dataclass

from booth.trade.result import Outside, Said, require

__all__ = ["Certainty", "WaitTime"]

#: Outside these no rule of thumb is used: common practice, no source. Most data sheets stop here.
SCALING_RANGE_C = (5.0, 40.0)
#: No shop is colder or hotter, and no oven: beyond, a number was mistyped.
THERMOMETER_C = (-100.0, 200.0)
#: Closer than this the temperatures are the same: a shop thermometer does not tell them apart.
SAME_C = 0.5

_SHEET = "Ask the product's data sheet or its supplier for this temperature."


class Certainty(enum.StrEnum):
    """How sure a time is: of the data sheet, by a rule of thumb, no more than a bound, or unknown.

    A WaitTime is never 'not known': a function that cannot say gives Outside.
    """

    KNOWN = "known"
    ESTIMATED = "estimated"
    AT_LEAST = "at least"
    AT_MOST = "at most"
    NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class WaitTime:
    """How long to wait today.

    seconds: what a clock should count [s], the careful end: a wait that opens is never shorter than
        the data sheet's, a window that closes and a pot life never longer;
    certainty: how sure it is; never show it without that word, but for 'known';
    likely_s, low_s, high_s: the likely time and its band [s];
    rule: which rule, or the data sheet.
    """

    seconds: float
    certainty: Certainty
    likely_s: float
    low_s: float
    high_s: float
    rule: str

    @property
    def estimate(self) -> bool:
        """Whether it is anything but the data sheet's own time for today."""
        return self.certainty is not Certainty.KNOWN


def as_given(time_s: float, rule: str, certainty: Certainty = Certainty.KNOWN) -> WaitTime:
    return WaitTime(time_s, certainty, time_s, time_s, time_s, rule)


def opening(time_s: float, likely_s: float, others_s: tuple[float, ...], rule: str) -> WaitTime:
    low, high = min(likely_s, *others_s), max(likely_s, *others_s, time_s)
    return WaitTime(high, Certainty.ESTIMATED, likely_s, low, high, rule)


def closing(time_s: float, likely_s: float, rule: str, *, bound: bool) -> WaitTime:
    """A time that may only be shorter than `time_s`; bound: nothing better than 'at most' is known."""
    ends = (float(time_s), likely_s)
    certainty = Certainty.AT_MOST if bound or likely_s >= time_s else Certainty.ESTIMATED
    return WaitTime(min(ends), certainty, likely_s, min(ends), max(ends), rule)


def checked(time_s: float, at_c: float, today_c: float) -> None:
    require("The time", time_s, 0.0, unit="s")
    require("The temperature of the data sheet", at_c, *THERMOMETER_C, unit="C")
    require("The temperature today", today_c, *THERMOMETER_C, unit="C")


def refused(name: str, time_s: float, at_c: float, today_c: float, rule: str) -> Outside | None:
    checked(time_s, at_c, today_c)
    low, high = SCALING_RANGE_C
    for whose, temperature in (("data sheet's", at_c), ("today's", today_c)):
        if not low <= temperature <= high:
            return Outside(
                f"{name} cannot be carried over: {whose} temperature, {Said(temperature, 'C')}, lies "
                f"outside {Said(low, 'C')} to {Said(high, 'C')}.",
                _SHEET,
                rule,
            )
    return None
