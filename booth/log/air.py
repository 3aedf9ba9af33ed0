"""What is kept of the air: the pressures at the gun, and how long the compressor takes to recover.

See ``events``, which has all kinds.
"""

from __future__ import annotations

from typing import ClassVar

from booth.log.opening import Event
from booth.units import Quantity


class AirRead(Event, frozen=True, tag="air read"):
    """Inlet pressure with the trigger pulled; cap: pressure at the air cap where a gauge tells."""

    inlet: Quantity
    cap: Quantity | None = None
    fan_turns: Quantity | None = None


class RecoveryTimed(Event, frozen=True, tag="recovery timed"):
    """The compressor filled its receiver, from where it starts to where it stops, no air drawn. rated:
    what the shop file said that it delivers."""

    ENDS: ClassVar[str] = "recovery"
    seconds: float
    cut_in: Quantity
    cut_out: Quantity
    receiver: Quantity
    rated: Quantity | None = None
