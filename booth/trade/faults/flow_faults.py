"""Faults of flow and of laying: runs, orange peel, dry spray, mottling."""

from __future__ import annotations

from booth.trade.faults.evidence import Sign
from booth.trade.faults.fault_model import CORROSION, FAA, TM, Fault, measured, unmeasured

__all__ = ["FLOW_FAULTS"]

RUNS = Fault(
    "runs",
    "runs and sags",
    "Drips, curtains, thick lower edges on upright parts.",
    "Leave it alone while it is wet, or lay the part flat; when it is hard, cut the run down, "
    "sand, and recoat.",
    (
        measured("Too much was laid in one coat.", 3, Sign.WET_HIGH, source=f"{FAA}; {TM}"),
        measured(
            "The mix is too thin to hold on.", 3, Sign.EFFLUX_LOW, source=f"{FAA}; {CORROSION}"
        ),
        measured("More thinner went in than is allowed.", 3, Sign.THINNER_OVER, source=FAA),
        measured("More thinner went in than anyone knows.", 2, Sign.THINNER_UNMEASURED, source=FAA),
        measured("The gun moved too slowly.", 3, Sign.SPEED_SLOW, source=f"{FAA}; {TM}"),
        measured("The gun was too near.", 3, Sign.GUN_NEAR, source=f"{FAA}; {CORROSION}"),
        measured("The gun delivers too much for the pace.", 2, Sign.DELIVERY_HIGH, source=TM),
        measured("A coat was laid on one that had not flashed off.", 2, Sign.TOO_EARLY),
        measured("It was too cold for the solvent to leave.", 2, Sign.AIR_COLD, Sign.PART_COLD),
        measured("The passes overlapped too much.", 1, Sign.OVERLAP_HIGH),
        unmeasured(
            "The gun was tilted, or the trigger held at the turn of a pass.",
            2,
            "Keep the gun square; release the trigger at the end of each pass.",
            "Practise the pass without paint.",
            TM,
        ),
        unmeasured(
            "The surface is too hard or glossy to hold the coat.",
            1,
            "Abrade before the next coat, as the data sheet says.",
            "Prepare the surface as the data sheet says.",
            CORROSION,
        ),
    ),
)

ORANGE_PEEL = Fault(
    "orange-peel",
    "orange peel",
    "A pebbled film like the skin of an orange: the drops did not flow together.",
    "Let it harden, sand it flat, and recoat or polish as the product allows.",
    (
        measured(
            "The mix is too thick to break up and to flow.",
            3,
            Sign.EFFLUX_HIGH,
            source=f"{TM}; {CORROSION}; {FAA}",
        ),
        measured(
            "Too little air to break the fluid up.", 3, Sign.INLET_LOW, source=f"{TM}; {CORROSION}"
        ),
        measured("The gun was too far off: drops dried on the way.", 3, Sign.GUN_FAR, source=TM),
        measured(
            "The gun was so near that the air rippled the film.",
            2,
            Sign.GUN_NEAR,
            source=f"{TM}; {CORROSION}",
        ),
        measured("The coat was too light to flow out.", 2, Sign.WET_LOW),
        measured("The gun moved too fast.", 2, Sign.SPEED_FAST),
        measured("More fluid than the air can break up.", 2, Sign.DELIVERY_HIGH),
        measured(
            "Air or part was so warm that the film set before it flowed.",
            2,
            Sign.AIR_HOT,
            Sign.PART_HOT,
            source=FAA,
        ),
        measured(
            "Air or part was so cold that the mix thickened on it.",
            1,
            Sign.AIR_COLD,
            Sign.PART_COLD,
            source=FAA,
        ),
        measured("Too little flash-off between the coats.", 1, Sign.TOO_EARLY, source=FAA),
        measured("The air was so dry that the film set early.", 1, Sign.DRY_AIR, source=TM),
        measured("The mix had begun to cure.", 2, Sign.POT_LIFE_OVER),
        unmeasured(
            "A thinner too fast for the day, or not the one for this product.",
            2,
            "Use the thinner that the data sheet names for this temperature.",
            "Choose the thinner by the day's temperature.",
            f"{FAA}; {TM}",
        ),
        unmeasured(
            "The mix was not stirred to one, or a draught blew across the film.",
            1,
            "Stir to the bottom; stop the draught, not the exhaust.",
            "Stir before every filling.",
            f"{FAA}; {TM}",
        ),
    ),
)

DRY_SPRAY = Fault(
    "dry-spray",
    "dry spray",
    "A rough, dull, sandy film: drops arrived dry, or overspray settled on it.",
    "Let it dry, rub it down, clean off the dust, and lay a wetter coat.",
    (
        measured("The gun was too far off.", 3, Sign.GUN_FAR, source=f"{FAA}; {TM}; {CORROSION}"),
        measured(
            "Too much air: the drops are too fine and dry on the way.",
            3,
            Sign.INLET_HIGH,
            source=f"{FAA}; {TM}; {CORROSION}",
        ),
        measured("Too little fluid.", 3, Sign.DELIVERY_LOW, source=f"{FAA}; {TM}"),
        measured("The coat was too light.", 2, Sign.WET_LOW),
        measured("The gun moved too fast.", 2, Sign.SPEED_FAST),
        measured("Air or part was too warm.", 2, Sign.AIR_HOT, Sign.PART_HOT),
        measured("The passes overlapped too little.", 2, Sign.OVERLAP_LOW),
        measured("The mix was too thick.", 1, Sign.EFFLUX_HIGH),
        unmeasured(
            "A thinner too fast for the day.",
            2,
            "Use the slower thinner that the data sheet names.",
            "Choose the thinner by the day's temperature.",
            CORROSION,
        ),
        unmeasured(
            "Overspray settled on wet film: passes in the wrong order, or air that does not move.",
            2,
            "Work so that the overspray falls on what is still to be coated.",
            "Plan the order of the passes with the draught.",
        ),
    ),
)

MOTTLING = Fault(
    "mottling",
    "mottling and striping",
    "Clouds or stripes of lighter and darker colour, mostly in metallics.",
    "A light coat laid across may even it out while the window is open; else sand and recoat.",
    (
        measured("The overlap was too small for this pattern.", 3, Sign.OVERLAP_LOW),
        measured("The pattern lays the film unevenly.", 3, Sign.UNEVEN, source=TM),
        measured("The coat was too wet: flakes swam.", 3, Sign.WET_HIGH),
        measured("A coat was laid on one that had not flashed off.", 3, Sign.TOO_EARLY),
        measured("The mix was too thin.", 2, Sign.EFFLUX_LOW),
        measured("More thinner went in than is allowed.", 2, Sign.THINNER_OVER),
        measured("The gun was too near.", 2, Sign.GUN_NEAR),
        measured("The gun delivers too much.", 2, Sign.DELIVERY_HIGH),
        measured("Too little air.", 1, Sign.INLET_LOW),
        measured("It was too cold for the film to set evenly.", 1, Sign.AIR_COLD, Sign.PART_COLD),
        unmeasured(
            "The gun was tilted, so one side of the pattern laid more.",
            2,
            "Keep the gun square to the surface.",
            "Practise the pass without paint.",
            TM,
        ),
        unmeasured(
            "Flakes or pigment had settled in the cup.",
            2,
            "Stir, and shake the cup between passes.",
            "Stir before every filling.",
        ),
    ),
)

FLOW_FAULTS = (RUNS, ORANGE_PEEL, DRY_SPRAY, MOTTLING)
