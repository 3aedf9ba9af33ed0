"""Faults that are holes and specks: solvent pop, pinholes, fisheyes, dust."""

from __future__ import annotations

from booth.trade.faults.evidence import Sign
from booth.trade.faults.fault_model import CORROSION, FAA, TO, Fault, measured, unmeasured

__all__ = ["HOLE_FAULTS"]

SOLVENT_POP = Fault(
    "solvent-pop",
    "solvent pop",
    "Small blisters and craters where solvent broke through a film that had skinned over.",
    "Let it harden right through, sand below the craters, and recoat.",
    (
        measured("The coat was too heavy.", 3, Sign.WET_HIGH, source=FAA),
        measured(
            "A coat was laid on one that had not flashed off.",
            3,
            Sign.TOO_EARLY,
            source=f"{TO}; {FAA}",
        ),
        measured("Warm air or a warm part skinned the film over.", 2, Sign.AIR_HOT, Sign.PART_HOT),
        measured("The mix was too thick and skinned over.", 1, Sign.EFFLUX_HIGH),
        measured("The gun moved too slowly.", 1, Sign.SPEED_SLOW),
        unmeasured(
            "A thinner too fast for the day.",
            3,
            "Use the slower thinner that the data sheet names.",
            "Choose the thinner by the day's temperature.",
            f"{FAA}; {TO}",
        ),
        unmeasured(
            "Heat or a draught was put on the film too soon.",
            2,
            "Leave the film in still, extracted air until it has flashed off.",
            "Give the time the data sheet asks for before any heat.",
        ),
    ),
)

PINHOLES = Fault(
    "pinholes",
    "pinholes",
    "Tiny holes down into the film, single or in groups.",
    "Let it harden, sand below the holes, fill them if they go to the ground, and recoat.",
    (
        measured(
            "The coat was so heavy that solvent or moisture was shut in.",
            3,
            Sign.WET_HIGH,
            source=FAA,
        ),
        measured("A coat was laid on one that had not flashed off.", 2, Sign.TOO_EARLY, source=TO),
        measured("The gun was too near and drove air into the film.", 2, Sign.GUN_NEAR),
        measured("Too much air.", 1, Sign.INLET_HIGH),
        measured("The mix was too thick to let air out.", 1, Sign.EFFLUX_HIGH),
        measured("The part was near the dew point: moisture under the film.", 2, Sign.DEW_NEAR),
        unmeasured(
            "Water or oil in the air line, or something foreign in the mix.",
            3,
            "Drain the receiver and the water trap; blow the line on white paper and look.",
            "Drain the trap before every job; strain the mix.",
            FAA,
        ),
        unmeasured(
            "The wrong thinner: too fast, or too slow to leave before the next coat.",
            2,
            "Use the thinner that the data sheet names for this temperature.",
            "Choose the thinner by the day's temperature.",
            f"{FAA}; {TO}",
        ),
        unmeasured(
            "Holes in the ground: open grain, filler, casting.",
            2,
            "Fill and sand before the next coat.",
            "Seal or fill an open ground first.",
        ),
    ),
)

FISHEYES = Fault(
    "fisheyes",
    "fisheyes",
    "Round craters with a rim, the ground showing: the wet film drew back.",
    "Stop. When it is hard, clean with what the data sheet names, sand, clean again, recoat.",
    (
        unmeasured(
            "Silicone, wax, oil or grease on the surface.",
            3,
            "Touch nothing with bare hands; clean with two cloths, one wet and one dry.",
            "Clean before sanding and again after it.",
            f"{FAA}; {CORROSION}",
        ),
        unmeasured(
            "Oil or water in the air line.",
            3,
            "Drain receiver and trap; blow the line on white paper and look.",
            "Service the filters; drain the trap before every job.",
            FAA,
        ),
        unmeasured(
            "Polish, spray lubricant or hand cream used nearby.",
            2,
            "Find it and keep it out of the room.",
            "Keep such products out of the building.",
        ),
        unmeasured(
            "An old finish that does not suit this product.",
            1,
            "Try a hidden spot with a sealer that the data sheet names.",
            "Try the product on the old finish first.",
            CORROSION,
        ),
        measured(
            "Moisture on a part near the dew point.",
            1,
            Sign.DEW_NEAR,
        ),
    ),
)

DUST = Fault(
    "dust",
    "dust",
    "Specks that stand out of the film.",
    "Let it harden, take the specks off with fine paper, and polish or recoat.",
    (
        unmeasured(
            "The part, the clothes or the room were dusty.",
            3,
            "Wipe with a tack cloth; keep the dry floor from being stirred up.",
            "Clean the room the day before; wear a suit that sheds no lint.",
        ),
        unmeasured(
            "The mix was not strained, or skins got in.",
            3,
            "Strain what is left through a fresh strainer.",
            "Strain at every filling.",
        ),
        unmeasured(
            "Exhaust filters clogged or air drawn in through a dusty gap.",
            2,
            "Look at the filters and at where the air comes in; do not spray without the exhaust.",
            "Change the filters in time.",
        ),
        measured("The mix had begun to cure and made bits.", 2, Sign.POT_LIFE_OVER),
        measured("Dry overspray settled on the film: too much air.", 2, Sign.INLET_HIGH),
        measured("Dry overspray settled on the film: the gun was too far off.", 1, Sign.GUN_FAR),
        measured("Dry air holds static charge, which draws dust.", 1, Sign.DRY_AIR),
        measured("Cold kept the film open to dust for long.", 1, Sign.AIR_COLD, Sign.PART_COLD),
    ),
)

HOLE_FAULTS = (SOLVENT_POP, PINHOLES, FISHEYES, DUST)
