"""The names of the parts of a job, as they are typed: told apart, and short enough for a row."""

from __future__ import annotations

import re
from collections.abc import Collection

from booth.log.changes import Parts
from booth.log.events import Rack

THE_PART = "the part"
MOST_PARTS = 24
MOST_PIECES = 999
MOST_SIDES = 6
LONGEST_NAME = 40
HINT = "commas between parts: hood, 24 doors x 2 sides"
SIDES = re.compile(r"(?:(?P<name>.*?)\s*[x×]?\s*\b)?(?P<sides>\d+) sides?", re.IGNORECASE)
RACK_OF = re.compile(r"rack of (?=\d)", re.IGNORECASE)
PIECES = re.compile(r"(?P<pieces>\d+)\s*(?P<name>.*)")


class BadParts(ValueError):
    """The parts cannot be told apart; the message is a sentence."""


def parts_from(typed: str, taken: Collection[str] = ()) -> Parts:
    """Read part names parted by commas; 'NUMBER NAME x NUMBER sides' and 'rack of NUMBER, NUMBER sides'
    are racks. taken: names that the job has. Raises BadParts with a sentence."""
    names: list[str] = []
    racks: list[Rack] = []
    for words in _entries(typed):
        rack = _rack(words)
        if rack is not None:
            racks.append(rack)
        names += rack.parts if rack is not None else (words,)
    if not names and not taken:
        return Parts((THE_PART,), ())
    many = len(names) + len(taken)
    if many > MOST_PARTS:
        raise BadParts(f"{many} parts: a job holds up to {MOST_PARTS}. Group some of them.")
    for name in names:
        if len(name) > LONGEST_NAME:
            raise BadParts(f"'{name[:20]}…' is long: up to {LONGEST_NAME} characters a part.")
        if names.count(name) > 1:
            raise BadParts(f"'{name}' is there twice: every part needs a name of its own.")
        if name in taken:
            raise BadParts(f"'{name}' is there already: every part needs a name of its own.")
    return Parts(tuple(names), tuple(racks))


def _entries(typed: str) -> list[str]:
    """What stands between the commas; 'rack of 24, 2 sides' is one entry."""
    found: list[str] = []
    for each in typed.split(","):
        words = " ".join(each.split())
        if found and re.fullmatch(r"\d+ sides?", words, re.IGNORECASE) and RACK_OF.match(found[-1]):
            found[-1] += f" x {words}"
        elif words:
            found.append(words)
    return found


def _rack(words: str) -> Rack | None:
    """The rack that an entry means; None where it is a part alone."""
    sided = SIDES.fullmatch(words)
    name = sided["name"] if sided is not None and sided["name"] else words
    if name == words and not RACK_OF.match(words):
        return None
    held = PIECES.fullmatch(RACK_OF.sub("", name))
    pieces, sides = int(held["pieces"]) if held else 1, int(sided["sides"]) if sided else 1
    if not (1 <= pieces <= MOST_PIECES and 1 <= sides <= MOST_SIDES):
        limits = f"up to {MOST_PIECES} pieces, up to {MOST_SIDES} sides"
        raise BadParts(f"'{words}': a rack has at least one piece and one side, {limits}.")
    return Rack((held["name"] if held else name) or "pieces", pieces, sides)
