"""What every wait of the trade is made of: its result type, its refusal, its cautious end."""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import Outside, require

__all__ = ["WaitTime"]

#: Outside these no rule of thumb is used: common practice, no source. Most data sheets stop here.
SCALING_RANGE_C = (5.0, 40.0)
#: Closer than this the temperatures are the same: a shop thermometer does not tell them apart.
SAME_C = 0.5

_SHEET = (
    "Ask the product's data sheet or its supplier for this temperature; let a touch test decide."
)


@dataclass(frozen=True, slots=True)
class WaitTime:
    """How long to wait today.

    seconds: what a clock should count [s], the cautious end of the estimate: a wait that opens is
        never shortened, a window that closes is never lengthened (pot life follows its rule);
    estimate: whether it rests on a rule of thumb; never show it without that word;
    likely_s, low_s, high_s: the likely time and its band [s];
    rule: which rule, or the data sheet.
    """

    seconds: float
    estimate: bool
    likely_s: float
    low_s: float
    high_s: float
    rule: str


def as_given(time_s: float, rule: str) -> WaitTime:
    return WaitTime(time_s, False, time_s, time_s, time_s, rule)


def opening(time_s: float, likely_s: float, others_s: tuple[float, ...], rule: str) -> WaitTime:
    low, high = min(likely_s, *others_s), max(likely_s, *others_s, time_s)
    return WaitTime(high, True, likely_s, low, high, rule)


def refused(name: str, time_s: float, at_c: float, today_c: float, rule: str) -> Outside | None:
    require("The time", time_s, 0.0, unit="s")
    require("The temperature of the data sheet", at_c, unit="C")
    require("The temperature today", today_c, unit="C")
    low, high = SCALING_RANGE_C
    for whose, temperature in (("data sheet's", at_c), ("today's", today_c)):
        if not low <= temperature <= high:
            return Outside(
                f"{name} cannot be carried over: {whose} temperature, {temperature:g} C, lies "
                f"outside {low:g} to {high:g} C.",
                _SHEET,
                rule,
            )
    return None
