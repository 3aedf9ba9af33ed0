"""How long the trigger can be held, with a compressor that stands still until its pressure switch cuts in.

The receiver has to hold more than the gun's inlet: regulator, filter and hose take their share. Flows
are of free air (see ``receiver``).
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.air.receiver import ATMOSPHERE_KPA, longest_trigger_s, recovery_s
from booth.trade.result import BadInput, Estimate, Said, require

__all__ = ["HoldTime", "receiver_needed_kpa", "trigger_hold"]

#: What regulator, filter and hose take with the trigger pulled [kPa]: common practice, no source.
LOSSES_KPA = (100.0, 150.0)
#: No gun is fed more [kPa].
MOST_INLET_KPA = 1400.0


@dataclass(frozen=True, slots=True)
class HoldTime:
    """How long the trigger can be held, and the rest after it.

    worst_s: from the cut-in pressure, where the switch may stand when the trigger is pulled;
    best_s: from a full receiver; both None where the compressor keeps up; rest_s: until it is full
    again, trigger released, None where it keeps up or the switch never cuts in; duty: share of the
    time in which the compressor runs while the trigger is held [1].
    """

    worst_s: Estimate | None
    best_s: Estimate | None
    rest_s: Estimate | None
    duty: float

    @property
    def keeps_up(self) -> bool:
        """Whether the pressure holds within the compressor's rated duty."""
        return self.worst_s is None


def receiver_needed_kpa(inlet_kpa: float) -> Estimate:
    """Give the pressure that the receiver has to hold for a pressure at the gun's inlet.

    Args:
        inlet_kpa: gauge pressure at the inlet, trigger pulled [kPa], 0 to 1400.

    Returns: Estimate [kPa]: ``inlet + 100 to 150 kPa`` for regulator, filter and hose.
    Range: a usual garage line; a long thin hose, small fittings or a wet filter take more. A gauge at
        the receiver, read with the trigger pulled, comes before this.
    Source: common practice, no source.

    >>> needed = receiver_needed_kpa(200.0)
    >>> needed.low, needed.high
    (300.0, 350.0)
    """
    require("The pressure at the inlet", inlet_kpa, 0.0, MOST_INLET_KPA, unit="kPa")
    low, high = (inlet_kpa + loss for loss in LOSSES_KPA)
    least, most = (Said(loss, "kPa") for loss in LOSSES_KPA)
    rule = f"inlet + {least} to {most} for regulator, filter and hose: common practice"
    return Estimate((low + high) / 2, low, high, "kPa", rule)


def trigger_hold(
    receiver_l: float,
    cut_out_kpa: float,
    cut_in_kpa: float,
    least_kpa: float,
    demand_l_min: float,
    supply_l_min: float,
    rated_duty: float = 1.0,
    *,
    air_kpa: float = ATMOSPHERE_KPA,
) -> HoldTime:
    """Give how long the trigger can be held, and how long the receiver then takes to fill.

    Args:
        receiver_l: volume of the receiver [l], above 0.
        cut_out_kpa, cut_in_kpa: gauge pressures at which the compressor stops and starts [kPa],
            cut-out above cut-in.
        least_kpa: least pressure in the receiver that still holds the inlet [kPa], 0 or more.
        demand_l_min: free air the gun uses, trigger pulled [l/min], above 0.
        supply_l_min: free air the compressor delivers while it runs [l/min], above 0.
        rated_duty: share of the time that it may run [1], above 0 to 1.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110.

    Returns: HoldTime: down to the cut-in on the receiver alone, then on ``demand - supply x duty``.
        Where the least pressure lies above the cut-in the compressor does not help, and from the
        cut-in there is no time at all.
    Range: as for longest_trigger_s; a rated duty is taken as an average.
    Source: Boyle's law and conservation of mass (US DOE / ORNL tools for industrial compressed air).

    >>> hold = trigger_hold(50.0, 800.0, 600.0, 325.0, 350.0, 130.0)
    >>> round(hold.worst_s.likely), round(hold.best_s.likely)
    (37, 54)
    >>> trigger_hold(50.0, 800.0, 400.0, 500.0, 100.0, 130.0).worst_s.likely  # it stands still
    0.0
    """
    require("The cut-in pressure", cut_in_kpa, 0.0, unit="kPa")
    require("The rated duty", rated_duty, above=0.0, high=1.0)
    require("The compressor's delivery", supply_l_min, above=0.0, unit="l/min")
    require("The gun's air demand", demand_l_min, above=0.0, unit="l/min")
    require("The least pressure", least_kpa, 0.0, unit="kPa")
    if cut_out_kpa <= cut_in_kpa:
        raise BadInput(
            f"The cut-out pressure, {Said(cut_out_kpa, 'kPa')}, has to be above the cut-in "
            f"pressure, {Said(cut_in_kpa, 'kPa')}."
        )

    def held(full_kpa: float, low_kpa: float, supply: float) -> Estimate | None:
        low = min(low_kpa, full_kpa)
        return longest_trigger_s(receiver_l, full_kpa, low, demand_l_min, supply, air_kpa=air_kpa)

    on_store = held(cut_out_kpa, max(cut_in_kpa, least_kpa), 0.0)
    assert on_store is not None  # a receiver alone always runs down
    worst = held(cut_in_kpa, least_kpa, supply_l_min * rated_duty)
    stands_still = least_kpa >= cut_in_kpa
    if worst is None and not stands_still:
        return HoldTime(None, None, None, demand_l_min / supply_l_min)
    duty = 0.0 if stands_still else min(demand_l_min / supply_l_min, rated_duty)
    if worst is None or stands_still:
        nothing = Estimate(0.0, 0.0, 0.0, "s", on_store.rule)
        return HoldTime(nothing, on_store, None, duty)
    best = Estimate(
        on_store.likely + worst.likely,
        on_store.low + worst.low,
        on_store.high + worst.high,
        "s",
        worst.rule,
    )
    rest = recovery_s(receiver_l, least_kpa, cut_out_kpa, supply_l_min, air_kpa=air_kpa)
    return HoldTime(worst, best, rest if isinstance(rest, Estimate) else None, duty)
