"""What a fault and its causes are, and what to do about each sign; the faults are elsewhere."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from booth.trade.faults.evidence import Sign

__all__ = ["Cause", "Fault"]

FAA = "FAA-H-8083-31 ch. 8, common paint troubles"
TM = "TM 43-0139 p. 5-12"
CORROSION = "Corrosion Engineering: Principles and Practice, table 14.1"
TO = "TO 1-1-8 table 4-1"
PRACTICE = "common practice, no source"

#: What to change before the next coat, and what to do next time.
REMEDIES: Mapping[Sign, tuple[str, str]] = MappingProxyType(
    {
        Sign.EFFLUX_HIGH: (
            "Thin in small steps and time the cup again, never past the data sheet's limit.",
            "Time the cup before filling, at the data sheet's temperature.",
        ),
        Sign.EFFLUX_LOW: (
            "Add mixed, unthinned coating and time the cup again; until then lay lighter coats.",
            "Add thinner in smaller steps and time the cup after each.",
        ),
        Sign.INLET_HIGH: (
            "Lower the inlet pressure with the trigger pulled and shoot a test pattern.",
            "Set the air with the trigger pulled, within the data sheet's range.",
        ),
        Sign.INLET_LOW: (
            "Raise the inlet pressure with the trigger pulled and shoot a test pattern.",
            "Set the air with the trigger pulled; see whether the compressor keeps up.",
        ),
        Sign.DELIVERY_HIGH: (
            "Close the needle a quarter turn and catch again.",
            "Catch the fluid before the first coat.",
        ),
        Sign.DELIVERY_LOW: (
            "Open the needle a quarter turn and catch again; look for a clogged strainer or vent.",
            "Catch the fluid before the first coat.",
        ),
        Sign.WET_HIGH: (
            "Move faster, or close the needle a little; read the gauge on the first pass.",
            "Read the wet film at the start of every coat.",
        ),
        Sign.WET_LOW: (
            "Move slower, or open the needle a little; read the gauge on the first pass.",
            "Read the wet film at the start of every coat.",
        ),
        Sign.TOO_EARLY: (
            "Lay no further coat until the flash-off is over and a touch test agrees.",
            "Wait out every flash-off, longer in the cold and over heavy coats.",
        ),
        Sign.TOO_LATE: (
            "Lay nothing on it as it is: let it harden and abrade it as the data sheet says.",
            "Plan the coats so that the window is still open, or abrade before the next.",
        ),
        Sign.DEW_NEAR: (
            "Stop. Warm the part or dry the air, without a flame or a glowing heater, and wait.",
            "Take air, humidity and the part's own temperature before mixing.",
        ),
        Sign.AIR_HOT: (
            "Wait for a cooler hour, or use the slower thinner that the data sheet names.",
            "Choose the thinner by the day's temperature, from the data sheet.",
        ),
        Sign.AIR_COLD: (
            "Wait, or warm the room without a flame or a glowing heater; lay lighter coats.",
            "Bring room, coating and part to temperature the day before.",
        ),
        Sign.HUMID: (
            "Wait for drier air; the data sheet may name a slower thinner or a retarder.",
            "Spray at a drier hour, or dry the air first.",
        ),
        Sign.DRY_AIR: (
            "Lay wetter coats; use the slower thinner that the data sheet names.",
            "Choose the thinner by the day's air, from the data sheet.",
        ),
        Sign.PART_HOT: (
            "Let the part cool in the shade.",
            "Measure the part itself, not the air alone.",
        ),
        Sign.PART_COLD: (
            "Let the part come to the temperature of the room.",
            "Bring the part in the day before, and measure the part itself.",
        ),
        Sign.SPEED_SLOW: (
            "Move faster: follow the pace for the wanted wet film.",
            "Time a pass before the first coat.",
        ),
        Sign.SPEED_FAST: (
            "Move slower: follow the pace for the wanted wet film.",
            "Time a pass before the first coat.",
        ),
        Sign.GUN_NEAR: (
            "Hold the gun further off, square to the surface all along the pass.",
            "Measure the distance once with the hand or a stick before the first pass.",
        ),
        Sign.GUN_FAR: (
            "Hold the gun nearer, square to the surface all along the pass.",
            "Measure the distance once with the hand or a stick before the first pass.",
        ),
        Sign.OVERLAP_LOW: (
            "Aim closer to the edge of the pass before: more overlap.",
            "Shoot a test pattern and find the overlap that is even for it.",
        ),
        Sign.OVERLAP_HIGH: (
            "Aim further from the pass before: less overlap.",
            "Shoot a test pattern and find the overlap that is even for it.",
        ),
        Sign.UNEVEN: (
            "Shoot a test pattern, put the pattern right, and take the most even overlap.",
            "Read the pattern on paper before the first coat.",
        ),
        Sign.THINNER_OVER: (
            "Add no more thinner; add mixed, unthinned coating if the pot life allows.",
            "Stop at the data sheet's limit; warm the coating to its temperature instead.",
        ),
        Sign.THINNER_UNMEASURED: (
            "Time the cup now, and take the mix for thinned too far until it says otherwise.",
            "Measure every addition of thinner.",
        ),
        Sign.POT_LIFE_OVER: (
            "Spray no more of this batch; clean the gun at once.",
            "Mix smaller batches.",
        ),
    }
)


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause of a fault.

    words: a sentence; weight: 3 usual, 2 common, 1 now and then; signs: figures that may speak for
    it, none where nothing measured can; now, next_time: what to do; fallback: a published limit for
    a sign whose limit the profile does not name.
    """

    words: str
    weight: int
    signs: tuple[Sign, ...]
    now: str
    next_time: str
    source: str
    fallback: Mapping[Sign, tuple[float, str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault of a sprayed film: its key, its name, how it looks, what to do with the film."""

    key: str
    name: str
    looks: str
    film: str
    causes: tuple[Cause, ...]


def measured(
    words: str,
    weight: int,
    *signs: Sign,
    source: str = PRACTICE,
    now: str = "",
    next_time: str = "",
    fallback: Mapping[Sign, tuple[float, str]] | None = None,
) -> Cause:
    """A cause that figures can speak for; what to do is its first sign's remedy unless given."""
    usual_now, usual_next = REMEDIES[signs[0]]
    return Cause(
        words, weight, signs, now or usual_now, next_time or usual_next, source, fallback or {}
    )


def unmeasured(words: str, weight: int, now: str, next_time: str, source: str = PRACTICE) -> Cause:
    """A cause that no figure of a job can speak for: it is listed, never claimed."""
    return Cause(words, weight, (), now, next_time, source)
