"""Compressed air: how long the receiver carries the gun, how long it recovers, what duty is left.

Flows are of free air: what the compressor takes in, at the room's pressure and temperature. What a
cubic foot or a litre of 'standard' air is depends on who says it: see ``air_base``.
"""

from __future__ import annotations

from booth.trade.result import BadInput, Estimate, Outside, Said, require

#: One atmosphere, absolute [kPa]: the pressure at which free air is counted at sea level.
ATMOSPHERE_KPA = 101.325
#: Ratio of the specific heats of air (the tests take it from CoolProp).
GAMMA_AIR = 1.4
#: Air pressure where people live, absolute [kPa]: beyond, a gauge pressure was given.
ROOM_AIR_KPA = (50.0, 110.0)

_RULE = (
    "receiver at constant temperature; a fast draw or fill changes the pressure sooner, "
    "up to about 1.4 times, the ratio of specific heats"
)


def free_air_stored_l(
    receiver_l: float, high_kpa: float, low_kpa: float, *, air_kpa: float = ATMOSPHERE_KPA
) -> float:
    """Give the free air that a receiver gives up between two pressures.

    Args:
        receiver_l: volume of the receiver [l], above 0.
        high_kpa, low_kpa: gauge pressures before and after [kPa], low 0 or more, high not below.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110; one atmosphere unless given.

    Returns: free air at the receiver's temperature [l]: ``V (P1 - P2) / Pa``.
    Range: pressures of a workshop, up to some 1500 kPa, where air is an ideal gas within 1 %; the
        receiver at one temperature.
    Source: Boyle's law; as in the US DOE / ORNL tools for industrial compressed air.

    >>> round(free_air_stored_l(100.0, 800.0, 600.0), 1)
    197.4
    """
    require("The receiver's volume", receiver_l, above=0.0, unit="l")
    require("The pressure of the room's air", air_kpa, *ROOM_AIR_KPA, unit="kPa")
    require("The lower pressure", low_kpa, 0.0, unit="kPa")
    require("The higher pressure", high_kpa, unit="kPa")
    if high_kpa < low_kpa:
        raise BadInput(
            f"The pressures are the wrong way round: {Said(high_kpa, 'kPa')} should be above "
            f"{Said(low_kpa, 'kPa')}."
        )
    return receiver_l * (high_kpa - low_kpa) / air_kpa


def _net_time(stored_l: float, net_l_min: float) -> Estimate:
    require("What demand and delivery differ by", net_l_min, above=0.0, unit="l/min")
    likely = stored_l / net_l_min * 60.0
    return Estimate(likely, likely / GAMMA_AIR, likely, "s", _RULE)


def longest_trigger_s(
    receiver_l: float,
    full_kpa: float,
    least_kpa: float,
    demand_l_min: float,
    supply_l_min: float = 0.0,
    *,
    air_kpa: float = ATMOSPHERE_KPA,
) -> Estimate | None:
    """Give how long the trigger can be held before the receiver falls to the least pressure.

    Args:
        receiver_l: volume of the receiver [l], above 0.
        full_kpa: gauge pressure in the receiver at the start [kPa].
        least_kpa: least gauge pressure in it that still feeds the gun [kPa], 0 or more.
        demand_l_min: free air the gun uses, trigger pulled [l/min], above 0.
        supply_l_min: free air the compressor delivers meanwhile [l/min], 0 or more.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110.

    Returns: Estimate [s]: ``t = V (P1 - P2) / (Pa (demand - supply))``; likely at constant
        temperature, low for a draw so fast that the air in the receiver cools; None where the
        supply meets the demand: it does not run down.
    Range: as for free_air_stored_l. Displacement on a compressor's plate is not what it delivers.
    Source: Boyle's law and conservation of mass (US DOE / ORNL tools for industrial compressed
        air); low end: energy balance of a vessel, no faster than the ratio of specific heats.

    >>> round(longest_trigger_s(90.0, 800.0, 500.0, 340.0, 200.0).likely)
    114
    >>> longest_trigger_s(90.0, 800.0, 500.0, 200.0, 200.0) is None
    True
    """
    require("The gun's air demand", demand_l_min, above=0.0, unit="l/min")
    require("The compressor's delivery", supply_l_min, 0.0, unit="l/min")
    stored = free_air_stored_l(receiver_l, full_kpa, least_kpa, air_kpa=air_kpa)
    if supply_l_min >= demand_l_min:
        return None
    return _net_time(stored, demand_l_min - supply_l_min)


def receiver_for_trigger_l(
    wanted_s: float,
    full_kpa: float,
    least_kpa: float,
    demand_l_min: float,
    supply_l_min: float = 0.0,
    *,
    air_kpa: float = ATMOSPHERE_KPA,
) -> Estimate | None:
    """Give the receiver with which the trigger can be held for a wanted time.

    Args:
        wanted_s: how long the trigger is to be held [s], above 0.
        full_kpa: gauge pressure in the receiver at the start [kPa]; at worst the cut-in.
        least_kpa: least gauge pressure in it that still feeds the gun [kPa], 0 or more, below
            full_kpa.
        demand_l_min: free air the gun uses, trigger pulled [l/min], above 0.
        supply_l_min: free air the compressor delivers meanwhile [l/min], 0 or more.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110.

    Returns: Estimate [l]: ``V = t Pa (demand - supply) / (P1 - P2)``; likely at constant
        temperature, high for a draw so fast that the air in the receiver cools; None where the
        supply meets the demand.
    Range: as for longest_trigger_s; buy the larger one.
    Source: as for longest_trigger_s, solved for the volume (US DOE / ORNL tools for industrial
        compressed air).

    >>> round(receiver_for_trigger_l(120.0, 800.0, 500.0, 340.0, 200.0).likely)
    95
    """
    require("The time wanted", wanted_s, above=0.0, unit="s")
    require("The least pressure", least_kpa, 0.0, unit="kPa")
    require("The pressure at the start", full_kpa, above=least_kpa, unit="kPa")
    of_one = longest_trigger_s(
        1.0, full_kpa, least_kpa, demand_l_min, supply_l_min, air_kpa=air_kpa
    )
    if of_one is None:
        return None
    likely, most = wanted_s / of_one.likely, wanted_s / of_one.low
    return Estimate(likely, likely, most, "l", _RULE)


def recovery_s(
    receiver_l: float,
    least_kpa: float,
    full_kpa: float,
    supply_l_min: float,
    demand_l_min: float = 0.0,
    *,
    air_kpa: float = ATMOSPHERE_KPA,
) -> Estimate | Outside:
    """Give how long the compressor needs to fill the receiver again.

    Args:
        receiver_l: volume of the receiver [l], above 0.
        least_kpa, full_kpa: gauge pressures from and to [kPa].
        supply_l_min: free air the compressor delivers [l/min], 0 or more.
        demand_l_min: free air used meanwhile [l/min], 0 or more; 0 with the trigger released.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110.

    Returns: Estimate [s]: likely at constant temperature, low for a fast fill, which heats the air;
        Outside where the demand takes all of the supply.
    Range: as for free_air_stored_l.
    Source: Boyle's law and conservation of mass; US DOE / ORNL tools for industrial compressed air.

    >>> round(recovery_s(90.0, 500.0, 800.0, 200.0).likely)
    80
    """
    require("The compressor's delivery", supply_l_min, 0.0, unit="l/min")
    require("The air demand meanwhile", demand_l_min, 0.0, unit="l/min")
    stored = free_air_stored_l(receiver_l, full_kpa, least_kpa, air_kpa=air_kpa)
    if supply_l_min <= demand_l_min:
        return Outside(
            "The receiver does not recover: all that the compressor delivers is used.",
            "Release the trigger, close leaks, or use a larger compressor.",
            _RULE,
        )
    return _net_time(stored, supply_l_min - demand_l_min)


def supply_from_recovery_l_min(
    receiver_l: float,
    least_kpa: float,
    full_kpa: float,
    fill_s: float,
    *,
    air_kpa: float = ATMOSPHERE_KPA,
) -> Estimate:
    """Give what a compressor really delivers, from how long it takes to fill its receiver.

    Args:
        receiver_l: volume of the receiver, and of what stands open to it [l], above 0.
        least_kpa: gauge pressure at which it starts [kPa], 0 or more.
        full_kpa: gauge pressure at which it stops [kPa], above the first.
        fill_s: time from one to the other, no air drawn meanwhile [s], above 0.
        air_kpa: absolute pressure of the free air [kPa], 50 to 110.

    Returns: Estimate [l/min] of free air: ``V (P2 - P1) / (Pa t)``; likely at constant temperature,
        low for a fill so fast that the air in the receiver stays hot.
    Range: as for free_air_stored_l. Water in the receiver takes its room; leaks count against it.
    Source: Boyle's law and conservation of mass (US DOE / ORNL tools for industrial compressed
        air), solved for the supply; low end: energy balance of a vessel.

    >>> round(supply_from_recovery_l_min(90.0, 500.0, 800.0, 80.0).likely)
    200
    """
    require("The time to fill it", fill_s, above=0.0, unit="s")
    require("The lower pressure", least_kpa, 0.0, unit="kPa")
    require("The higher pressure", full_kpa, above=least_kpa, unit="kPa")
    stored = free_air_stored_l(receiver_l, full_kpa, least_kpa, air_kpa=air_kpa)
    likely = stored / fill_s * 60.0
    return Estimate(likely, likely / GAMMA_AIR, likely, "l/min", _RULE)


def trigger_duty(demand_l_min: float, supply_l_min: float) -> float:
    """Give the share of the time that the trigger can be held in the long run.

    Args:
        demand_l_min: free air the gun uses, trigger pulled [l/min], above 0.
        supply_l_min: free air the compressor delivers [l/min], 0 or more.

    Returns: share [1]: ``supply / demand``, at most 1.
    Range: over many fills; the compressor itself may be rated for less than continuous running.
    Source: conservation of mass: what is used on average cannot exceed what is delivered.

    >>> trigger_duty(400.0, 100.0)
    0.25
    """
    require("The gun's air demand", demand_l_min, above=0.0, unit="l/min")
    require("The compressor's delivery", supply_l_min, 0.0, unit="l/min")
    return min(1.0, supply_l_min / demand_l_min)
