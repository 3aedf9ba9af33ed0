"""Faults of the whole film: blush, poor adhesion between coats, wrinkling, bleeding."""

from __future__ import annotations

from booth.trade.faults.evidence import Sign
from booth.trade.faults.fault_model import FAA, Fault, measured, unmeasured

__all__ = ["FILM_FAULTS"]

#: FAA-H-8083-31 ch. 8: blush usually forms above 80 % humidity; below 60 F or above 95 F.
BLUSH_HUMIDITY_PERCENT = 80.0
BLUSH_COLD_C = (60.0 - 32.0) / 1.8
BLUSH_HOT_C = (95.0 - 32.0) / 1.8
#: 5 F of the part over the dew point: MIL-HDBK-1110 9.6.6.
DEW_MARGIN_C = 5.0 / 1.8
_DEW = {Sign.DEW_NEAR: (DEW_MARGIN_C, "MIL-HDBK-1110 9.6.6")}

BLUSH = Fault(
    "blush",
    "blush",
    "A milky haze: water condensed in the film while solvent cooled it.",
    "Wait: a little may clear as it dries. While the window is open the data sheet may allow a "
    "mist of retarder; else sand and recoat in drier air.",
    (
        measured(
            "The air was too humid.",
            3,
            Sign.HUMID,
            source=FAA,
            fallback={Sign.HUMID: (BLUSH_HUMIDITY_PERCENT, FAA)},
        ),
        measured("The part was too near the dew point.", 3, Sign.DEW_NEAR, fallback=_DEW),
        measured(
            "It was too cold.",
            2,
            Sign.AIR_COLD,
            Sign.PART_COLD,
            source=FAA,
            fallback={Sign.AIR_COLD: (BLUSH_COLD_C, FAA)},
        ),
        measured(
            "It was too hot: the solvent left too fast.",
            1,
            Sign.AIR_HOT,
            source=FAA,
            fallback={Sign.AIR_HOT: (BLUSH_HOT_C, FAA)},
        ),
        measured("Too much air at the gun: it cools the drops.", 2, Sign.INLET_HIGH, source=FAA),
        measured("The coat was so heavy that it held the water.", 1, Sign.WET_HIGH),
        unmeasured(
            "A thinner too fast for the day.",
            3,
            "Use the slower thinner, or the retarder, that the data sheet names.",
            "Choose the thinner by the day's air.",
            FAA,
        ),
        unmeasured(
            "Water in the air line.",
            2,
            "Drain the receiver and the trap.",
            "Drain the trap before every job.",
        ),
    ),
)

POOR_ADHESION = Fault(
    "poor-adhesion",
    "poor adhesion between coats",
    "A coat lifts, peels or chips off the one below.",
    "Take the loose coat off down to a sound one, find the cause, and begin again from there.",
    (
        measured("The recoat window had closed.", 3, Sign.TOO_LATE),
        measured("Moisture on the part: too near the dew point.", 3, Sign.DEW_NEAR, fallback=_DEW),
        measured("The batch was past its pot life.", 3, Sign.POT_LIFE_OVER),
        measured("The coat was too dry to wet the one below.", 2, Sign.WET_LOW),
        measured("The gun was too far off: the coat arrived dry.", 2, Sign.GUN_FAR),
        measured("A coat was laid on one that had not flashed off.", 1, Sign.TOO_EARLY),
        measured("It was too cold for the coats to bond.", 1, Sign.AIR_COLD, Sign.PART_COLD),
        measured("Too much thinner.", 1, Sign.THINNER_OVER, source=FAA),
        unmeasured(
            "The surface was not clean, or not abraded.",
            3,
            "Clean and abrade as the data sheet says before anything else is laid.",
            "Clean, abrade, clean.",
            FAA,
        ),
        unmeasured(
            "The wrong primer, or coats that do not suit each other.",
            3,
            "Ask the data sheets of both coats.",
            "Keep to one system, or try it on a test panel.",
            FAA,
        ),
        unmeasured(
            "The parts were mixed in the wrong ratio, or not stirred to one.",
            2,
            "Go back over the pours in the log.",
            "Pour by the table and stir to the bottom.",
            FAA,
        ),
        unmeasured(
            "Oil or water from the air line between the coats.",
            2,
            "Drain receiver and trap; blow the line on white paper and look.",
            "Service the filters.",
            FAA,
        ),
    ),
)

WRINKLING = Fault(
    "wrinkling",
    "wrinkling",
    "The film shrivels: its top has dried over a soft layer, or a new coat swells the old one.",
    "Let it harden right through, take off the wrinkled coat, and recoat lightly.",
    (
        measured("The coat was too heavy.", 3, Sign.WET_HIGH, source=FAA),
        measured("A coat was laid on one that had not flashed off.", 3, Sign.TOO_EARLY, source=FAA),
        measured("The recoat window was missed: the new coat swells the old.", 3, Sign.TOO_LATE),
        measured(
            "Hot air or a hot part dried the top first.",
            2,
            Sign.AIR_HOT,
            Sign.PART_HOT,
            source=FAA,
        ),
        measured(
            "It was too cold for the coat to dry through.",
            1,
            Sign.AIR_COLD,
            Sign.PART_COLD,
            source=FAA,
        ),
        measured("Too much solvent in the mix.", 2, Sign.THINNER_OVER, source=FAA),
        unmeasured(
            "A thinner that is too fast, or too strong for the coat below.",
            3,
            "Try a hidden spot; lay a barrier coat that the data sheet names.",
            "Try the product on the old finish first.",
            FAA,
        ),
        unmeasured(
            "The temperature changed fast while it dried.",
            1,
            "Leave the part in one temperature until it is dry.",
            "Do not open the door or move the part while it dries.",
            FAA,
        ),
    ),
)

BLEEDING = Fault(
    "bleeding",
    "bleeding",
    "Colour from below comes through the new coat.",
    "Another coat will bleed too: let it harden, lay a sealer that the data sheet names.",
    (
        unmeasured(
            "A soluble colour or stain below: an old red, tannin, filler, marker, tar.",
            3,
            "Seal it with what the data sheet names; try a hidden spot.",
            "Rub an old finish with thinner on a white cloth; if it colours, seal it.",
        ),
        unmeasured(
            "Too much hardener in a filler below.",
            2,
            "Let it cure, seal it, recoat.",
            "Measure the hardener of the filler.",
        ),
        measured("The coat was so wet that it dissolved the one below.", 2, Sign.WET_HIGH),
        measured("A coat was laid on one that had not flashed off.", 2, Sign.TOO_EARLY),
        measured("Too much solvent in the mix.", 1, Sign.THINNER_OVER),
    ),
)

FILM_FAULTS = (BLUSH, POOR_ADHESION, WRINKLING, BLEEDING)
