"""The states of a figure. Each has a word and a shape told by its outline: none rests on colour."""

from __future__ import annotations

import enum


class Tone(enum.Enum):
    """What a figure asks of the painter, the most urgent first, with its word and its shape.

    A shape is one cell, from the characters that every terminal font has had since the 1980s; no
    word stands at a figure that only stands there.
    """

    LATE = "LATE", "■"  # the heaviest mark there is
    CLOSING = "CLOSING", "▼"  # running down to a point
    READY = "READY", "►"  # go on
    CAUTION = "OUT OF RANGE", "▲"  # the outline of a warning sign, as in ISO 7010
    RUNNING = "RUNNING", "»"  # moving
    WAIT = "WAIT", "║"  # a barrier
    GOOD = "IN RANGE", "●"  # on the mark
    PLAIN = "", "·"

    def __init__(self, word: str, shape: str) -> None:
        self.word, self.shape = word, shape
        self.css = f"tone-{self.name.lower()}"
        self.urgency = len(type(self).__members__)
