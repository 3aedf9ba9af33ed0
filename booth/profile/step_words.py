"""How each step is done, in two to five lines of at most 56 cells, for a first time.

Trade lore: common practice, no source.
"""

from __future__ import annotations

#: Cells of the widest line.
WIDEST = 56

#: Lines of preparation and after care, by the key of the profile that says more of it.
PREPARE = {
    "": "Drain the receiver and the trap; look at the filters.",
    "degrease": "Degrease: one cloth wet, one dry. Again when sanded.",
    "abrade": "Abrade as the data sheet says, edges too.",
    "mask": "Mask; press the edges down.",
    "tack_off": "Wipe with a tack cloth last, right before spraying.",
}
AFTER = {
    "unmask": "Unmask when its time has come: low, back on itself.",
    "handle": "Handle it, turn it, hang it: not before its time.",
    "finish": "Sand or polish only when the data sheet allows.",
    "look": "Next morning: look along it against a lamp; note it.",
}
#: Instead of after care where another product follows: no more than what lies between two products.
BETWEEN = (
    "Sand or take off specks only as its data sheet allows.",
    "The masking stays; press down edges that came up.",
    "Wipe off the dust; tack off right before spraying.",
)

HOW: dict[str, tuple[str, ...]] = {
    "cautions": (
        "Read each one; Enter says that you have read it.",
        "Get dressed for this product before the can is opened.",
        "The data sheet, local codes and licensed practice rule.",
    ),
    "prepare": tuple(PREPARE.values()),
    "weather": (
        "Read air temperature and humidity where you will spray.",
        "Take the temperature of the part itself: it may be",
        "colder than the air, and then it may sweat.",
        "Let part and coating come to the room's temperature.",
    ),
    "fresh-air": (
        "Start the exhaust before the can is opened.",
        "Put out pilot lights, heaters, anything that sparks.",
        "Air comes in clean at one end and leaves at the other,",
        "past you first, then past the part.",
        "The figure is a minimum against fire, nothing more.",
    ),
    "amount": (
        "Give the area of every part; count edges and backs.",
        "Some of what leaves the gun never lands: it is counted.",
        "Mix a little more than the figure: running out in the",
        "last coat shows.",
    ),
    "plan": (
        "See when each coat falls due, and the last one.",
        "Does pot life last? Does a window close overnight?",
        "Change coats or parts now (F12), while it costs nothing.",
    ),
    "mix": (
        "Stir each component to the bottom of its can first.",
        "Pour in the order shown, up to each mark in turn.",
        "Stir slowly for two minutes; scrape sides and bottom.",
        "Say when it is mixed: pot life runs from the last pour.",
    ),
    "efflux": (
        "Stir, wait for bubbles to rise, take its temperature.",
        "Standing cup: fill level, finger on the orifice.",
        "Dip cup: under, wait, lift out straight and quick.",
        "Space as it starts, Space at the first break.",
        "Three runs that agree are worth more than one.",
    ),
    "thin": (
        "Add the smaller amount first; it cannot be taken out.",
        "Stir until no streak is left, then time the cup again.",
        "Stop at the limit of the data sheet.",
    ),
    "strain": (
        "Pour through a clean paper strainer into the gun's cup.",
        "Do not press the last of it through.",
        "Leave room at the top; see that the vent is open.",
        "Wipe the cup's rim and the lid, then close it.",
    ),
    "air": (
        "Open the air valve of the gun, if it has one.",
        "Pull the trigger and hold it: pressure falls as it",
        "flows. Set the regulator while it flows.",
        "Read the gauge at the gun inlet, trigger still pulled.",
    ),
    "catch": (
        "Shut the air at the gun, unless its book says otherwise.",
        "Measuring cup under the tip; pull fully when it says 0.",
        "Let go at the end. Enter how much was caught.",
        "Needle out gives more, in gives less: small turns.",
        "Two catches that agree settle it.",
    ),
    "fan": (
        "Fluid is set first; leave the needle alone now.",
        "Open the fan fully.",
        "Hold the trigger; turn it in slowly until the pattern",
        "just begins to narrow. Stop there.",
    ),
    "pattern": (
        "Flood first: cap turned, fan flat, hold until it drips.",
        "Drips alike left and right? Turn the cap back.",
        "Clean paper, gun square: pull, let go, stand still.",
        "Read the shape where it is wet: even from end to end?",
        "Change one thing, a little, and shoot again.",
    ),
    "pace": (
        "Move from the shoulder; keep the wrist still.",
        "Go along with the moving bar until the arm knows it.",
        "Begin to move before the trigger, let go after the end.",
    ),
    "coats": (
        "Space as a coat begins on a part, Space as it ends.",
        "Start off the part, end off it; edges first.",
        "Aim the middle of the fan at the edge of the last pass.",
        "Wait out the flash-off; then touch the masking: dry?",
    ),
    "film": (
        "At once after the pass, press the gauge in square.",
        "Read the last tooth that is wet and the first dry one.",
        "Use a spot that does not show, or a test panel.",
        "Wipe the gauge before the coating sets.",
    ),
    "clean": (
        "Shut the air, let the pressure out, empty the cup.",
        "Rinse the cup; spray cleaner through until it is clear.",
        "Air off again. Cap and tip off; brush, no wire in holes.",
        "Wipe the needle to its point; oil its seal (packing).",
        "Rags and waste into the metal can; close the lid.",
    ),
    "after": tuple(AFTER.values()),
    "faults": (
        "Look along the film against a lamp.",
        "Name each fault you see, and on which part.",
        "The causes are ranked by what was measured today.",
    ),
    "result": (
        "Say how it came out, good or not, in your own words.",
        "Say what to change next time.",
        "Closing the job keeps all of it for the next one.",
    ),
}

#: Other words for a step where the product needs them: by step and reason.
FIRST_TIME: dict[str, tuple[str, ...]] = {
    "stir": (
        "One can, nothing to mix in: stir to the bottom.",
        "Lift what has settled; stir until the stick is clean.",
        "Stir slowly: air beaten in comes out as bubbles.",
    ),
    "fresh-air, isocyanate": (
        "Supplied air on and tested before the can is opened.",
        "Start the exhaust; nobody else in the room or next door",
        "where the mist can drift.",
        "Keep the exhaust and your air on after the last coat.",
        "The figure is a minimum against fire, nothing more.",
    ),
    "fresh-air, waterborne": (
        "Start the exhaust before you spray; mist is still mist.",
        "Moving, dry air lets the water go: flash-off needs it.",
        "Keep the air off the wet film until it has levelled.",
        "The figure is a minimum against fire, nothing more.",
    ),
    "mix, by weight": (
        "Stir each component to the bottom of its can first.",
        "Cup on the scale, set to zero once, then never again.",
        "Pour slowly up to each weight in turn.",
        "Stir slowly for two minutes; scrape sides and bottom.",
        "Say when it is mixed: pot life runs from the last pour.",
    ),
    "mix, induction": (
        "Stir each component to the bottom of its can first.",
        "Pour in the order shown, up to each mark in turn.",
        "Stir slowly; scrape sides and bottom.",
        "Say when it is mixed: pot life runs from the last pour.",
        "Let it stand for the induction time; stir once more.",
    ),
    "efflux, no target": (
        "The profile names no efflux time: time it anyway, and",
        "what worked today is the target of next time.",
        "Stir, let bubbles rise, take its temperature.",
        "Space as it starts, Space at the first break.",
    ),
    "thin, no thinner": (
        "The profile names no thinner: spray it as supplied.",
        "Too thick? Ask the data sheet before adding anything.",
        "Cold coating is thick: let it come to room temperature.",
    ),
    "thin, waterborne": (
        "Only what the data sheet names, in small amounts.",
        "Stir it in slowly: it thins late and foams early.",
        "Wait until it has settled, then time the cup again.",
        "Stop at the limit of the data sheet.",
    ),
    "strain, coarse metallic": (
        "Strain beforehand, through a wide paper strainer.",
        "Leave the cup's own filter out: flakes would clog it.",
        "Stir again just before filling; flakes sink.",
        "Swirl the cup between passes; see that its vent is open.",
    ),
    "air, hvlp": (
        "Open the air valve of the gun, if it has one.",
        "Hold the trigger and set the regulator to this pressure.",
        "The gauge reads the inlet, not the air cap: the cap may",
        "have 10 psi at most. Only a test cap with a gauge tells.",
        "Wide hose and fittings: this gun drinks air.",
    ),
    "coats, coarse metallic": (
        "Space as a coat begins on a part, Space as it ends.",
        "Flakes show every change: same pace, same distance.",
        "Let each coat go dull before the next one.",
        "A light last coat from a little further off evens it,",
        "if the data sheet asks for one.",
    ),
    "coats, waterborne": (
        "Space as a coat begins on a part, Space as it ends.",
        "Start off the part, end off it; edges first.",
        "Aim the middle of the fan at the edge of the last pass.",
        "Flash-off ends when it is dull all over: damp air",
        "makes it long, moving air makes it short.",
    ),
    "clean, waterborne": (
        "At once: what has dried does not dissolve in water.",
        "Shut the air, let the pressure out, empty the cup.",
        "Rinse with water, then the cleaner the sheet names.",
        "Air off again. Cap and tip off; brush, no wire in holes.",
        "Blow dry: water left inside rusts it. Oil the seal.",
    ),
    "clean, mixed": (
        "Start now, before the mix hardens in the gun.",
        "Keep your air supply, gloves and suit on.",
        "Shut the air, let the pressure out, empty the cup.",
        "Spray cleaner through, then air off and pressure out.",
        "Cap, tip off, brush; oil the needle seal; lid on rags.",
    ),
}

#: What lines of checklists are about, in letters for six metres, where their first words do not say it.
HEADS = {
    "Drain the receiver and the trap; look at the filters.": "DRAIN, FILTERS",
    "Abrade as the data sheet says, edges too.": "ABRADE",
    "Wipe with a tack cloth last, right before spraying.": "TACK CLOTH",
    "Unmask when its time has come: low, back on itself.": "UNMASK",
    "Handle it, turn it, hang it: not before its time.": "HANDLE IT",
    "Sand or polish only when the data sheet allows.": "SAND, POLISH",
    "Next morning: look along it against a lamp; note it.": "LOOK TOMORROW",
    "Sand or take off specks only as its data sheet allows.": "SPECKS",
    "Shut the air, let the pressure out, empty the cup.": "AIR OFF",
    "Rinse the cup; spray cleaner through until it is clear.": "RINSE",
    "Spray cleaner through, then air off and pressure out.": "RINSE",
    "Rinse with water, then the cleaner the sheet names.": "RINSE",
    "Air off again. Cap and tip off; brush, no wire in holes.": "CAP AND TIP",
    "Cap and tip off, brush; oil packing; lid on the rags.": "CAP AND TIP",
    "Wipe the needle to its point; oil its seal (packing).": "NEEDLE, OIL",
    "Blow dry: water left inside rusts it. Oil the packing.": "BLOW DRY, OIL",
    "Rags and waste into the metal can; close the lid.": "RAGS IN CAN",
    "At once: what is mixed sets inside the gun.": "AT ONCE",
    "Still dressed and breathing as for spraying.": "STILL DRESSED",
}
