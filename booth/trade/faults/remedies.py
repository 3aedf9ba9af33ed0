"""What to do about each sign that a figure can give."""

from __future__ import annotations

from booth.trade.faults.evidence import Sign
from booth.trade.text_table import rows

#: What to change before the next coat, and what to do next time.
REMEDIES = {
    Sign[sign]: remedies
    for sign, *remedies in rows("""
EFFLUX_HIGH | Thin in small steps and time the cup again, never past the data sheet's limit.
    | Time the cup before filling, at the data sheet's temperature.
EFFLUX_LOW | Add mixed, unthinned coating and time the cup again; until then lay lighter coats.
    | Add thinner in smaller steps and time the cup after each.
INLET_HIGH | Lower the inlet pressure with the trigger pulled and shoot a test pattern.
    | Set the air with the trigger pulled, within the data sheet's range.
INLET_LOW | Raise the inlet pressure with the trigger pulled and shoot a test pattern.
    | Set the air with the trigger pulled; see whether the compressor keeps up.
DELIVERY_HIGH | Close the needle a quarter turn and catch again.
    | Catch the fluid before the first coat.
DELIVERY_LOW | Open the needle a quarter turn and catch again; look for a clogged strainer or vent.
    | Catch the fluid before the first coat.
WET_HIGH | Move faster, or close the needle a little; read the gauge on the first pass.
    | Read the wet film at the start of every coat.
WET_LOW | Move slower, or open the needle a little; read the gauge on the first pass.
    | Read the wet film at the start of every coat.
TOO_EARLY | Lay no further coat until the flash-off is over and a touch test agrees.
    | Wait out every flash-off, longer in the cold and over heavy coats.
TOO_LATE | Lay nothing on it as it is: let it harden and abrade it as the data sheet says.
    | Plan the coats so that the window is still open, or abrade before the next.
DEW_NEAR | Stop. Warm the part or dry the air, without a flame or a glowing heater, and wait.
    | Take air, humidity and the part's own temperature before mixing.
AIR_HOT | Wait for a cooler hour, or use the slower thinner that the data sheet names.
    | Choose the thinner by the day's temperature, from the data sheet.
AIR_COLD | Wait, or warm the room without a flame or a glowing heater; lay lighter coats.
    | Bring room, coating and part to temperature the day before.
HUMID | Wait for drier air; the data sheet may name a slower thinner or a retarder.
    | Spray at a drier hour, or dry the air first.
DRY_AIR | Lay wetter coats; use the slower thinner that the data sheet names.
    | Choose the thinner by the day's air, from the data sheet.
PART_HOT | Let the part cool in the shade. | Measure the part itself, not the air alone.
PART_COLD | Let the part come to the temperature of the room.
    | Bring the part in the day before, and measure the part itself.
SPEED_SLOW | Move faster: follow the pace for the wanted wet film.
    | Time a pass before the first coat.
SPEED_FAST | Move slower: follow the pace for the wanted wet film.
    | Time a pass before the first coat.
GUN_NEAR | Hold the gun further off, square to the surface all along the pass.
    | Measure the distance once with the hand or a stick before the first pass.
GUN_FAR | Hold the gun nearer, square to the surface all along the pass.
    | Measure the distance once with the hand or a stick before the first pass.
OVERLAP_LOW | Aim closer to the edge of the pass before: more overlap.
    | Shoot a test pattern and find the overlap that is even for it.
OVERLAP_HIGH | Aim further from the pass before: less overlap.
    | Shoot a test pattern and find the overlap that is even for it.
UNEVEN | Shoot a test pattern, put the pattern right, and take the most even overlap.
    | Read the pattern on paper before the first coat.
THINNER_OVER | Add no more thinner; add mixed, unthinned coating if the pot life allows.
    | Stop at the data sheet's limit; warm the coating to its temperature instead.
THINNER_UNMEASURED | Time the cup now, and take the mix for thinned too far until it says otherwise.
    | Measure every addition of thinner.
POT_LIFE_OVER | Spray no more of this batch; clean the gun at once. | Mix smaller batches.
""")
}
