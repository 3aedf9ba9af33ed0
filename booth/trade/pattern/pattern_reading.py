"""What a test pattern on paper suggests turning, in which order; and how to set a gun at first."""

from __future__ import annotations

import enum
import re
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.pattern.fan_profile import NAMES, profile_from_zones
from booth.trade.result import BadInput, require
from booth.trade.text_table import rows


class Seen(enum.StrEnum):
    """What the paper, or the gun, shows."""

    EVEN = "even"
    HEAVY_MIDDLE = "heavy middle"
    HEAVY_BOTH_ENDS = "heavy both ends"
    HEAVY_ONE_END = "heavy one end"
    CRESCENT = "crescent"
    SPITTING = "spitting"
    FLOOD_ONE_END = "flood heavy one end"


@dataclass(frozen=True, slots=True)
class Reading:
    """What a pattern says.

    seen; means: what it points to; turns: what to do, in order, with a new paper after each step;
    profile_name: the model profile nearest to it, or None; caution; source.
    """

    seen: Seen
    means: str
    turns: tuple[str, ...]
    profile_name: str | None
    caution: str
    source: str


#: TM 43-0139 is a maintenance manual that describes defective spray patterns, read for this.
_WORDS = {
    "TM": "US Army TM 43-0139, Painting Instructions for Army Materiel, pages 5-9 and 5-11",
    "LORE": "the order of the steps is common practice, no source",
    "FLOOD": "the flood test of the air cap is common practice, no source",
    "OPEN": (
        "Shut off the air and let the pressure out before you take hold of cap, tip or needle; "
        "never put a finger over the tip or the air cap. Solvent for cleaning burns and gets "
        "through skin: gloves, glasses, air movement, no ignition source."
    ),
    "SPRAY": (
        "Every test pattern is spraying: mask, eyes and air movement as for the job; the data "
        "sheet has the limits."
    ),
}


def _reading(shape: str, caution: str, source: str, means: str, *turns: str) -> Reading:
    told = re.sub(r"[A-Z]+", lambda found: _WORDS[found[0]], source)
    known = shape if shape in NAMES else None
    return Reading(Seen(shape), means, turns, known, _WORDS[caution], told)


#: What is seen, its caution and source; what it means; what to turn, in order.
_READINGS = {
    row[0]: _reading(*row)
    for row in rows("""
even | SPRAY | TM
    | Fluid and air are in balance. Most fans still taper towards their edges: enter the zones to
      see what the overlap makes of them.
    | Leave fluid, air and fan as they are, and write them down.
    | Look at the droplets: coarse ones want a little more air or a thinner mix, dry dust-like edges
      a little less air.
heavy middle | SPRAY | TM; LORE
    | Too little atomising air for the fluid, a fan closed too far, or too much or too thick a
      fluid.
    | Open the fan a little.
    | More air at the inlet, in small steps, within the gun's and the product's limits.
    | Close the needle a little, and catch again: less fluid.
    | Time the flow cup: if the mix is thicker than its target, thin it.
    | If it stays, the tip is too large for this material.
heavy both ends | SPRAY | TM (which names an imbalance of air and fluid alone); LORE
    | A split pattern: too much fan air for the fluid, a mix that is too thin, or too much fluid for
      the air cap.
    | Pull the fan in a little.
    | Less air at the inlet, in small steps.
    | Time the flow cup: a mix too thin for its target gets unthinned coating.
    | More fluid: open the needle a little, and catch again.
    | If that made the ends heavier still, it was too much fluid: close the needle again.
    | If it stays, look for dirt in the tip or in the middle hole of the air cap.
heavy one end | OPEN | TM
    | A hole of one horn is blocked in part, or the tip is dirty or bent on one side.
    | Turn the air cap half a turn and shoot another pattern.
    | If the heavy end turned with the cap, it is the cap: soak it, clean it with a soft pick or
      brush, never with wire.
    | If the heavy end stayed, it is the tip: clean it and its seat; a bent or worn tip is replaced,
      with its needle.
crescent | OPEN | TM (heavy to one side); LORE
    | One horn blows harder than the other: a horn hole is blocked, or the tip is dirty on one side.
    | Turn the air cap half a turn and shoot another pattern.
    | If the bow turned with the cap, it is the cap: soak it, clean the horn holes with a soft pick
      or brush, never with wire.
    | If the bow stayed, it is the tip: clean it and its seat.
spitting | OPEN | TM; LORE
    | Air gets into the fluid path.
    | Look into the cup: fill it if it is low, and hold the gun less steeply.
    | Clear the vent of the cup.
    | Tighten the tip, and the connection of the cup.
    | Tighten the needle seal (packing) a little; a dry one wants a drop of oil that is free of
      silicone.
    | If it stays, clean the fluid passage, and look for a cracked tip or a damaged seat.
flood heavy one end | OPEN | FLOOD
    | The drips of the flood test are longer on one side: more fluid goes there, or less air.
    | Turn the air cap half a turn and flood a clean paper.
    | If the long drips moved with the cap, it is the cap: soak it, clean its holes with a soft pick
      or brush, never with wire.
    | If they stayed, it is the tip: clean it and its seat; a bent or worn tip is replaced, with its
      needle.
    | Long at both ends: pull the fan in, or more fluid. Long in the middle: open the fan, or less
      fluid.
""")
}


def reading(seen: Seen | str) -> Reading:
    """Say what a pattern points to and what to turn, in which order.

    Args:
        seen: one of Seen: even, heavy middle, heavy both ends, heavy one end, crescent, spitting, flood
            heavy one end.

    Returns: Reading; its turns are tried in order, one at a time, with a new paper after each.
    Range: air-atomising guns with a fan. It gives likely causes, not a finding.
    Source: US Army TM 43-0139, Painting Instructions for Army Materiel, pages 5-9 and 5-11; the
        order of the steps is common practice, no source.

    >>> reading("heavy both ends").turns[0]
    'Pull the fan in a little.'
    >>> reading("heavy one end").turns[0]
    'Turn the air cap half a turn and shoot another pattern.'
    """
    if seen not in tuple(Seen):
        raise BadInput(f"No pattern is called {seen!r}; there are {', '.join(Seen)}.")
    return _READINGS[seen]


#: Centre of weight, in half fan widths, from which a pattern counts as heavy at one end.
ONE_END_FROM = 0.15
#: A middle below this share of the lesser of both ends' heaviest zones counts as split.
SPLIT_BELOW = 0.7
#: Second moment, in half fan widths squared, below which a pattern counts as heavy in the middle.
#: An even fan has 1/3, a parabola 1/5, cosine squared 0.131, a bell 0.108.
HEAVY_MIDDLE_BELOW = 0.09


def seen_in_zones(zones: Sequence[float]) -> Seen:
    """Say which shape a pattern entered in zones comes nearest to.

    Heavy at one end when its centre of weight is well off the middle; split when the middle is
    clearly below both ends; heavy in the middle when its weight is close to the middle; else even.

    Args:
        zones: how heavy each zone looks, from one edge to the other [1], 0 to 9 each.

    Returns: one of Seen, never crescent, spitting or flood, which zones cannot show.
    Range: the limits between the shapes are this project's: common practice gives none.
    Source: centre and second moment of a distribution; where one shape begins is common practice,
        no source.

    >>> seen_in_zones([9, 4, 2, 4, 9]).value, seen_in_zones([3, 5, 6, 5, 3]).value
    ('heavy both ends', 'even')
    """
    profile_from_zones(zones)  # refuses what is no pattern
    count = len(zones)
    heavy = [require("A zone of the pattern", zone) for zone in zones]
    total = sum(heavy)
    places = [(2 * index + 1) / count - 1.0 for index in range(count)]
    centre = sum(z * u for z, u in zip(heavy, places, strict=True)) / total
    if abs(centre) > ONE_END_FROM:
        return Seen.HEAVY_ONE_END
    third = max(1, count // 3)
    middle = heavy[third : count - third]
    if min(middle) < SPLIT_BELOW * min(max(heavy[:third]), max(heavy[-third:])):
        return Seen.HEAVY_BOTH_ENDS
    # The width of a zone adds its own second moment, (2 / count)^2 / 12.
    second = sum(z * u * u for z, u in zip(heavy, places, strict=True)) / total
    if second + 1.0 / (3.0 * count**2) < HEAVY_MIDDLE_BELOW:
        return Seen.HEAVY_MIDDLE
    return Seen.EVEN
