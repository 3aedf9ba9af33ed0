"""The kinds of steps: each is served by one instrument, or is plain."""

from __future__ import annotations

#: How a step of each kind is called on the screen, in the order of the job.
NAMES: dict[str, str] = {
    "cautions": "Cautions",
    "prepare": "Prepare",
    "weather": "Weather",
    "fresh-air": "Fresh air",
    "amount": "Amount",
    "plan": "Plan",
    "mix": "Mix",
    "efflux": "Flow cup",
    "thin": "Thin",
    "strain": "Strain and fill",
    "air": "Air",
    "catch": "Catch",
    "fan": "Fan",
    "pattern": "Test pattern",
    "pace": "Pace",
    "coats": "Coats and waits",
    "film": "Wet film",
    "clean": "Clean the gun",
    "after": "After care",
    "faults": "Faults seen",
    "result": "Result",
    "plain": "Note",
}

#: Cautions and measurements: passing one over asks for a word why.
MUST = frozenset({"cautions", "weather", "efflux", "air", "catch", "pattern"})
