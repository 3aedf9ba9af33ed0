"""The vocabulary of step kinds: each is served by one instrument, or is plain."""

from __future__ import annotations

__all__ = ["KINDS", "MUST", "NAMES"]

#: kind: what it is for, in a line.
KINDS: dict[str, str] = {
    "cautions": "go through what can hurt, one by one",
    "weather": "air temperature, humidity, part temperature, dew point",
    "fresh-air": "how much air keeps the vapour below its fire limit",
    "amount": "how much material the parts need",
    "plan": "the whole job as a time line",
    "mix": "pour the components, start the pot life",
    "efflux": "time a flow cup",
    "thin": "add thinner, stir, time again",
    "strain": "strain and fill the cup",
    "air": "set the air at the gun inlet, trigger pulled",
    "catch": "catch the fluid for a timed minute, set the needle",
    "fan": "open the fan fully, pull it in",
    "pattern": "shoot a test pattern and read its shape",
    "pace": "how fast the gun has to move",
    "coats": "lay the coats and keep the waits",
    "film": "read the wet film with a notch gauge",
    "clean": "clean the gun",
    "faults": "what is seen on the film, and why",
    "result": "how it came out; close the job",
    "plain": "anything else, with a note",
}

#: Cautions and measurements: passing one over asks for a word why.
MUST = frozenset({"cautions", "weather", "efflux", "air", "catch", "pattern"})

#: How a step of each kind is called on the screen.
NAMES: dict[str, str] = {
    "cautions": "Cautions",
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
    "faults": "Faults seen",
    "result": "Result",
    "plain": "Note",
}
