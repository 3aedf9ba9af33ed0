"""How often the air of a room changes, and how long it takes to clear after spraying."""

from __future__ import annotations

import math

from booth.trade.result import BadInput, Outside, require

__all__ = ["MIXING", "air_changes_per_h", "time_to_clear_s"]

SECONDS_PER_HOUR = 3600.0
#: 1 is perfect mixing; a room with dead corners takes up to ten times as long (CDC 2005, Table B.1,
#: note: rarely the case in practice).
MIXING = (1.0, 10.0)


def air_changes_per_h(exhaust_m3_h: float, room_m3: float) -> float:
    """Give how often an exhaust moves the volume of a room in an hour.

    Args:
        exhaust_m3_h: what leaves the room [m3/h], 0 or more.
        room_m3: the volume of the room [m3], above 0.

    Returns: air changes per hour [1]: ``flow / volume``.
    Range: no limit of its own; air that comes in beside the exhaust clears nothing.
    Source: definition; as in CDC, Guidelines for Preventing the Transmission of Mycobacterium
        tuberculosis, MMWR 54 RR-17 (2005), appendix B.

    >>> air_changes_per_h(600.0, 60.0)
    10.0
    """
    require("The exhaust", exhaust_m3_h, 0.0, unit="m3/h")
    require("The volume of the room", room_m3, above=0.0, unit="m3")
    changes = exhaust_m3_h / room_m3
    if not math.isfinite(changes):
        raise BadInput("The room is too small for that exhaust: check the units.")
    return changes


def time_to_clear_s(
    exhaust_m3_h: float, room_m3: float, left_fraction: float = 0.01, mixing: float = 1.0
) -> float | Outside:
    """Give how long an exhaust takes to clear a room to a share of what hung in it.

    Args:
        exhaust_m3_h: what leaves the room [m3/h], 0 or more.
        room_m3: the volume of the room [m3], above 0.
        left_fraction: the share that is left at the end [1], above 0, below 1.
        mixing: how badly the air mixes [1]: 1 perfectly, up to 10 with dead corners.

    Returns: time [s]: ``K V / Q ln(1 / share)``; Outside without an exhaust.
    Range: from when the last drop has left the gun and evaporation has ended, which a wet film has
        not: it goes on giving off solvent. It says nothing of what may be breathed.
    Source: dilution of a well-mixed room; CDC MMWR 54 RR-17 (2005), Table B.1.

    >>> round(time_to_clear_s(600.0, 60.0) / 60)  # 10 changes an hour, 99 % gone
    28
    """
    require("The share that is left", left_fraction, above=0.0, below=1.0)
    require("The mixing factor", mixing, *MIXING)
    changes = air_changes_per_h(exhaust_m3_h, room_m3)
    if changes == 0:
        return Outside(
            "Nothing leaves the room: it does not clear.",
            "Open it and move the air out; keep out of it without the protection that the data "
            "sheet names.",
            "dilution of a well-mixed room",
        )
    seconds = mixing * SECONDS_PER_HOUR / changes * -math.log(left_fraction)
    if not math.isfinite(seconds):
        raise BadInput("The exhaust is too small for that room: check the units.")
    return seconds
