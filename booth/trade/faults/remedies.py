"""What to do about each cause, and the question that settles it where no figure does."""

from __future__ import annotations

from typing import NamedTuple

from booth.trade.text_table import rows


class Remedy(NamedTuple):
    """now: before the next coat; next_time; asks: a question whose yes speaks for the cause."""

    now: str
    next_time: str
    asks: str


#: By the key of a cause: a sign in small letters (the first, where figures can speak for it), or
#: its own. Common practice, no source: what to change now | what next time | what settles it.
REMEDIES = {
    key: Remedy(*cells)
    for key, *cells in rows("""
efflux-high | Thin in small steps and time the cup again, never past the data sheet's limit.
    | Time the cup before filling, at the data sheet's temperature.
    | Does the cup, timed now, run longer than the data sheet says?
efflux-low | Add mixed, unthinned coating and time the cup again; until then lay lighter coats.
    | Add thinner in smaller steps and time the cup after each.
    | Does the cup, timed now, run out sooner than the data sheet says?
inlet-high | Lower the inlet pressure with the trigger pulled and shoot a test pattern.
    | Set the air with the trigger pulled, within the data sheet's range.
    | Does the gauge at the inlet, trigger pulled, stand above the data sheet's range?
inlet-low | Raise the inlet pressure with the trigger pulled and shoot a test pattern.
    | Set the air with the trigger pulled; see whether the compressor keeps up.
    | Does the gauge at the inlet, trigger pulled, fall below the data sheet's range?
delivery-high | Close the needle a quarter turn and catch again. | Catch the fluid before the first coat.
    | Does a catch give more than the data sheet says?
delivery-low | Open the needle a quarter turn and catch again; look for a clogged strainer or vent.
    | Catch the fluid before the first coat. | Does a catch give less than the data sheet says?
wet-high | Move faster, or close the needle a little; read the gauge on the first pass.
    | Read the wet film at the start of every coat.
    | Does the gauge, on a pass like that one, read above the data sheet's wet film?
wet-low | Move slower, or open the needle a little; read the gauge on the first pass.
    | Read the wet film at the start of every coat.
    | Does the gauge, on a pass like that one, read below the data sheet's wet film?
too-early | Lay no further coat until the flash-off is over and a touch test agrees.
    | Wait out every flash-off, longer in the cold and over heavy coats.
    | Was the coat below still wet or stringy to the touch when the next went on?
too-late | Lay nothing on it as it is: let it harden and abrade it as the data sheet says.
    | Plan the coats so that the window is still open, or abrade before the next.
    | Was the window of the coat below over when this one went on?
dew-near | Stop. Warm the part or dry the air, without a flame or a glowing heater, and wait.
    | Take air, humidity and the part's own temperature before mixing.
    | Was the part colder than the air, or did breath stay on it as mist?
air-hot | Wait for a cooler hour, or use the slower thinner that the data sheet names.
    | Choose the thinner by the day's temperature, from the data sheet.
    | Was air or part warmer than the data sheet allows?
air-cold | Wait, or warm the room without a flame or a glowing heater; lay lighter coats.
    | Bring room, coating and part to temperature the day before.
    | Was air or part colder than the data sheet allows?
humid | Wait for drier air; the data sheet may name a slower thinner or a retarder.
    | Spray at a drier hour, or dry the air first. | Was the air damper than the data sheet allows?
dry-air | Lay wetter coats; use the slower thinner that the data sheet names.
    | Choose the thinner by the day's air, from the data sheet.
    | Was the air so dry that clothes crackled?
speed-slow | Move faster: follow the pace for the wanted wet film.
    | Time a pass before the first coat. | Is a timed pass slower than the pace?
speed-fast | Move slower: follow the pace for the wanted wet film.
    | Time a pass before the first coat. | Is a timed pass faster than the pace?
gun-near | Hold the gun further off, square to the surface all along the pass.
    | Measure the distance once with the hand or a stick before the first pass.
    | Was the gun nearer than the data sheet says where it shows?
gun-far | Hold the gun nearer, square to the surface all along the pass.
    | Measure the distance once with the hand or a stick before the first pass.
    | Was the gun further off than the data sheet says where it shows?
overlap-low | Aim closer to the edge of the pass before: more overlap.
    | Shoot a test pattern and find the overlap that is even for it.
    | Do the marks lie as far apart as the passes did?
overlap-high | Aim further from the pass before: less overlap.
    | Shoot a test pattern and find the overlap that is even for it.
    | Did the passes cover more than the overlap that was wanted?
uneven | Shoot a test pattern, put the pattern right, and take the most even overlap.
    | Read the pattern on paper before the first coat.
    | Is a pattern on paper heavier in one place than in another?
thinner-over | Add no more thinner; add mixed, unthinned coating if the pot life allows.
    | Stop at the data sheet's limit; warm the coating to its temperature instead.
    | Did more thinner go in than the data sheet allows?
thinner-unmeasured
    | Time the cup now, and take the mix for thinned too far until it says otherwise.
    | Measure every addition of thinner. | Did thinner go in that nobody measured?
pot-life-over | Spray no more of this batch; clean the gun at once. | Mix smaller batches.
    | Was the batch past its pot life, or thicker than at first?

tilted | Keep the gun square; release the trigger at the end of each pass.
    | Practise the pass without paint. | Is it worse where a pass turns, or on one side of it?
slick | Abrade before the next coat, as the data sheet says.
    | Prepare the surface as the data sheet says. | Did the ground shine when it was coated?
fast-thinner | Use the slower thinner that the data sheet names for this temperature.
    | Choose the thinner by the day's temperature.
    | Was the thinner one for cooler weather, or of unknown make?
slow-thinner | Use the thinner that the data sheet names; give each coat longer.
    | Choose the thinner by the day's temperature.
    | Was the thinner one for warmer weather, or of unknown make?
wrong-thinner | Use the thinner that the data sheet names for this temperature.
    | Choose the thinner by the day's temperature.
    | Was the thinner another than the data sheet names for this temperature?
strong-thinner | Try a hidden spot; lay a barrier coat that the data sheet names.
    | Try the product on the old finish first.
    | Does a drop of the thinner soften the coat below within a minute?
unstirred | Stir to the bottom, and swirl the cup between passes. | Stir before every filling.
    | Does a stick, drawn over the bottom of the can or cup, bring up something thick?
draught | Stop the draught, not the exhaust. | Find out where the air moves before the first coat.
    | Does a strip of paper move where the film was wet?
overspray | Work so that the overspray falls on what is still to be coated.
    | Plan the order of the passes with the draught.
    | Is it rough only where the mist of later passes could fall?
heated | Leave the film alone, the exhaust on, until it has flashed off.
    | Give the time the data sheet asks for before any heat.
    | Was there heat, sun or a fan on the film before it had flashed off?
line-dirt | Drain the receiver and the water trap; blow the line on white paper and look.
    | Drain the trap before every job; service the filters.
    | Does the line, blown on white paper for a minute, leave wet or greasy spots?
open-ground | Fill and sand before the next coat. | Seal or fill an open ground first.
    | Are the holes only where the ground is filler, grain or casting?
greasy | Touch nothing with bare hands; clean with two cloths, one wet and one dry.
    | Clean before sanding and again after it.
    | Did hands, wax or silicone come near the surface after it was last cleaned?
nearby | Find it and keep it out of the room. | Keep such products out of the building.
    | Was polish, spray lubricant or hand cream used near here this week?
old-finish | Try a hidden spot with a sealer that the data sheet names.
    | Try the product on the old finish first. | Does it end where the old finish ends?
dusty | Wipe with a tack cloth; keep the dry floor from being stirred up.
    | Clean the room the day before; wear a suit that sheds no lint.
    | Are the specks lint or sanding dust, seen through a glass?
unstrained | Strain what is left through a fresh strainer. | Strain at every filling.
    | Does a fresh strainer hold back lumps or skins from this cup?
inflow | Look at the filters and at where the air comes in; do not spray without the exhaust.
    | Change the filters in time. | Are there more specks towards where the air comes in?
unclean | Clean and abrade as the data sheet says before anything else is laid.
    | Clean, abrade, clean. | Is the back of the loose coat smooth, and the coat below it glossy?
misfit | Ask the data sheets of both coats. | Keep to one system, or try it on a test panel.
    | Do the data sheets of the two coats not name each other?
bad-ratio | Go back over the pours in the log. | Pour by the table and stir to the bottom.
    | Do the pours, counted again, miss the ratio, or was the cup hardly stirred?
swing | Leave the part in one temperature until it is dry.
    | Do not open the door or move the part while it dries.
    | Was the part moved, or the door opened, while it dried?
soluble | Seal it with what the data sheet names; try a hidden spot.
    | Rub an old finish with thinner on a white cloth; if it colours, seal it.
    | Does thinner on a white cloth take colour off what lies below?
filler | Let it cure, seal it, recoat. | Measure the hardener of the filler.
    | Does it show only where there is filler?
ground-shows | Lay a ground coat of one colour, near the topcoat's, before going on.
    | Choose the colour of the ground by the topcoat's; judge hiding on a black and white card.
    | Does it show only where the colour below changes?
coats-few | Lay another coat inside the window. | Spray a card, and count the coats that hide.
    | Does one coat more on a card hide the black and white?
thirsty | Let it harden, seal or fill the ground, recoat.
    | Sand finer, and seal what drinks. | Is it duller over filler and sanded spots than elsewhere?
stale-air | Let the exhaust run until the film has dried.
    | Keep air moving past the part after the last coat, cleanly.
    | Did the exhaust stand still while it dried?
damp-can | Mix no more from that can. | Close the hardener's can at once; use a fresh one.
    | Is the hardener cloudy, skinned, or from a can long open?
induction-short | Wash off what is on the film as the data sheet says before anything else.
    | Let the mix stand for its induction time. | Was it sprayed before its induction was over?
burner | Put the burner out; heat without fumes. | Dry with heat that burns nothing in the room.
    | Did a gas or oil burner heat the room with its fumes inside?
coarse | Let it harden, sand with a finer grit, recoat lightly.
    | Step down through the grits; end with the one that the data sheet names.
    | Do the lines follow the marks of the sanding?
soft-ground | Let all of it harden through before sanding and recoating.
    | Let filler and primer dry through before they are sanded and coated.
    | Could a fingernail mark filler or primer when it was coated?
wetted | Let it harden, then try to polish it out; else sand and recoat.
    | Keep water, dew and hands off it until it has cured.
    | Did rain, dew, washing water or a wet hand reach it before it had cured?
batches | Put the cans in one vessel, or end the part at an edge.
    | Mix cans of one colour together before starting. | Do the cans bear different batch numbers?
no-panel | Spray a panel, let it dry, hold it to the part in daylight.
    | Spray out a panel for every colour before the part.
    | Does a panel sprayed as now differ from the part by as much?
loose-tip | Clean the seat of the tip, tighten it, look for a nick.
    | Tighten the tip before every filling. | Does it stop when tip and needle seat are tight?
dry-packing | Oil the needle seal (packing), without silicone, and tighten it until the needle just slides.
    | A drop of silicone-free oil on the needle seal after every cleaning.
    | Do bubbles rise in the cup, or is the needle wet behind its seal?
vent | Clear the vent of the lid, fill the cup, hold it upright.
    | See that the vent is open at every filling.
    | Does it stop with the lid loosened and the cup full?
""")
}
