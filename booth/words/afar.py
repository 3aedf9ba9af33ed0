"""Words for six metres: a state in one short word, and what a sentence is about. Pure.

A short form is a whole word of the state, or one that says the same; the state itself then stands in
the text beneath the figure.
"""

from __future__ import annotations

import re

#: What is left of a state where name and state have to share a row of letters.
SHORT = {
    "ALL COATS ARE ON": "ALL ON",
    "AT LEAST": "LEAST",
    "CANNOT TELL": "UNSURE",
    "CHECK CLOCK": "CLOCK?",
    "FIRST DRY?": "DRY?",
    "FITS BY GUESS": "GUESS",
    "FORGOTTEN": "STOP IT",
    "FRONT NOT KNOWN": "FRONT?",
    "FRONT TOO SLOW": "SLOW",
    "IN RANGE": "IN",
    "LET IT COOL FIRST": "COOL IT",
    "LIMIT REACHED": "LIMIT",
    "MEASURE": "READ",
    "NEARLY OVER": "CLOSING",
    "NO TARGET": "TARGET?",
    "NO THINNER": "NONE",
    "NOT KNOWN": "UNSURE",
    "OUT OF RANGE": "OUT",
    "OUTSIDE LIMITS": "LIMITS",
    "OUTSIDE THE CUP": "OUTSIDE",
    "OVER THE LEAST": "ABOVE",
    "OVER THE LIMIT": "OVER",
    "POT LIFE SHORT": "SHORT",
    "SPACE AT ITS END": "SPACE",
    "SPRAYING": "SPRAY",
    "TAKE AGAIN": "AGAIN",
    "TIME AGAIN": "AGAIN",
    "TIME THE CUP": "TIME IT",
    "TO THE LIMIT": "LIMIT",
    "TOO LITTLE AIR": "LITTLE",
    "WARM IT FIRST": "WARM IT",
    "WHAT AREA?": "AREA?",
    "WINDOW MISSED": "MISSED",
    "WITHIN LIMITS": "WITHIN",
}
TOO = "TOO "
#: Where what a sentence is about ends.
STOPS = re.compile(r"[.:;,?!]")
#: Words that nothing ends with.
SMALL = set("A AN AND AS AT BE BY FOR FROM IN IT IS OF ON OR THE TO WITH".split())  # noqa: SIM905 - read more easily so


def short_state(word: str) -> str:
    """The state in one short word; as it is where there is none.

    >>> short_state("OUTSIDE LIMITS"), short_state("TOO THICK"), short_state("WAIT")
    ('LIMITS', 'THICK', 'WAIT')
    """
    return SHORT.get(word) or word.removeprefix(TOO)


def key_words(sentence: str) -> str:
    """What a sentence is about: its beginning, up to the first stop, in capitals.

    >>> key_words("Degrease: one cloth wet, one dry."), key_words("Mask; press the edges down.")
    ('DEGREASE', 'MASK')
    """
    return STOPS.split(sentence, maxsplit=1)[0].strip().upper()


def without_loose_end(words: list[str]) -> list[str]:
    """Words that were cut off somewhere, not ending in one that wants another behind it."""
    while len(words) > 1 and words[-1].upper() in SMALL:
        words = words[:-1]
    return words
