"""Whether the compressor carries this gun, how long the trigger can be held, what to do. Pure.

Plan, coats, the guard and the step Air all ask here.
"""

from __future__ import annotations

import math

import msgspec

from booth.profile.model import Range
from booth.shop.model import Compressor, Gun
from booth.trade.air.receiver import trigger_duty
from booth.trade.air.trigger_time import HoldTime, receiver_needed_kpa, trigger_hold
from booth.trade.result import BadInput
from booth.units import Kind, System, show

#: How long is said in steps of so many seconds, the careful way round.
STEP_S = 5
MINUTE_S = 60
#: From here on a time is told in minutes [s].
IN_MINUTES_S = 90
NOT_KNOWN = "How long the air lasts: add compressor and gun to the shop file, then choose the gun here (F12)."


class AirSupply(msgspec.Struct, frozen=True):
    """A gun on a compressor. inlet_kpa: that must not be lost; least_kpa: which the receiver has to hold
    for it; trigger_share: of the time, in the long run [1]."""

    compressor: Compressor
    demand_l_min: float
    inlet_kpa: float
    least_kpa: float
    hold: HoldTime
    trigger_share: float

    @property
    def reaches(self) -> bool:
        """Whether a full receiver holds the inlet at all."""
        return self.least_kpa < self.compressor.cut_out_kpa

    @property
    def starts(self) -> bool:
        """Whether the compressor starts before the inlet is lost."""
        return self.least_kpa < self.compressor.cut_in_kpa

    @property
    def spray_s(self) -> float | None:
        """The longest that the trigger can be held wherever the switch stands [s], the careful way
        round; None where the pressure holds."""
        if self.hold.worst_s is None:
            return None
        return _down(self.hold.worst_s.low)

    @property
    def full_s(self) -> float | None:
        """The same from a full receiver."""
        return None if self.hold.best_s is None else _down(self.hold.best_s.low)

    @property
    def rest_s(self) -> float | None:
        """How long the receiver then needs [s], rounded up; None where none is needed, or none helps."""
        rest = self.hold.rest_s
        return None if rest is None else math.ceil(rest.high / STEP_S) * STEP_S


def _down(seconds: float) -> float:
    step = STEP_S if seconds >= 2 * STEP_S else 1
    return math.floor(seconds / step) * step


def air_supply(
    compressor: Compressor | None, gun: Gun | None, asked: Range | None, inlet_kpa: float | None
) -> AirSupply | str:
    """Give how compressor and gun of the shop file go together; a sentence where that is not known.

    What must not be lost is the least of the range asked for, else the inlet as read [kPa], else that
    at which the gun's demand is given.
    """
    if gun is None or not gun.air_l_min or compressor is None:
        return NOT_KNOWN
    least = asked.low if asked is not None and asked.low is not None else inlet_kpa
    least = gun.inlet_kpa if least is None else least
    if least is None:
        return "How long the air lasts: read the inlet first, trigger pulled."
    rated = 1.0 if compressor.duty_percent is None else compressor.duty_percent / 100
    try:
        needed = receiver_needed_kpa(least).high
        hold = trigger_hold(
            compressor.receiver_l,
            compressor.cut_out_kpa,
            compressor.cut_in_kpa,
            min(needed, compressor.cut_out_kpa),
            gun.air_l_min,
            compressor.flow_l_min,
            rated,
        )
        share = trigger_duty(gun.air_l_min, compressor.flow_l_min * rated)
    except BadInput as fault:
        return f"Compressor: {fault.sentence}"
    return AirSupply(compressor, gun.air_l_min, least, needed, hold, share)


def verdict(supply: AirSupply, system: System) -> tuple[str, ...]:
    """Give what it comes to in sentences, what to do first."""
    compressor, hold = supply.compressor, supply.hold
    inlet, least, cut_in, cut_out = (
        show(each, Kind.PRESSURE, system)
        for each in (
            supply.inlet_kpa,
            supply.least_kpa,
            compressor.cut_in_kpa,
            compressor.cut_out_kpa,
        )
    )
    holds = f"the receiver has to hold {least} for {inlet} at the gun (estimate)"
    if not supply.reaches:
        return (f"The compressor stops at {cut_out}, and {holds}: a lower inlet, or another gun.",)
    if hold.best_s is None or hold.worst_s is None:
        runs = f"The pressure holds: the compressor runs {hold.duty * 100:.0f} % of the time"
        if compressor.duty_percent is None:
            return (f"{runs}; look up whether it may, its rated duty is not in the shop file.",)
        return (f"{runs}; it may {compressor.duty_percent:g} %.",)
    if not supply.starts:
        return (
            f"From a full receiver spray {seconds_words(supply.full_s)} at most, then stop.",
            f"The compressor starts below {cut_in} only, and {holds}: have its switch set higher.",
        )
    rest = "" if supply.rest_s is None else f", then wait {wait_words(supply.rest_s)}"
    spray = f"Spray {seconds_words(supply.spray_s)} at most{rest} (estimate)."
    if not supply.spray_s:
        spray = f"Begin with a full receiver only{rest} (estimate)."
    full = f"From a full receiver {seconds_words(supply.full_s)}"
    return (
        spray,
        f"{full}; {holds}.",
        f"In short bursts about {math.floor(supply.trigger_share * 60)} s of each minute (estimate).",
    )


def seconds_words(seconds: float | None) -> str:
    """A time that is not to be passed: '45 s', '2 min', rounded down."""
    whole = seconds or 0.0
    if whole < IN_MINUTES_S:
        return f"{whole:.0f} s"
    return f"{math.floor(whole / MINUTE_S * 2) / 2:g} min"


def wait_words(seconds: float) -> str:
    """A wait in round words, never shorter: 'about 20 s', 'about a minute', 'about 2 min'."""
    if seconds <= MINUTE_S / 2:
        return f"about {seconds:.0f} s"
    minutes = math.ceil(seconds / MINUTE_S * 2) / 2
    return "about a minute" if minutes <= 1 else f"about {minutes:g} min"
