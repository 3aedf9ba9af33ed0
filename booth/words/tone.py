"""The states of a figure. Each has a word and a shape told by its outline: none rests on colour."""

from __future__ import annotations

import enum


class Tone(enum.Enum):
    """What a figure asks of the painter."""

    LATE = "late"
    CLOSING = "closing"
    READY = "ready"
    CAUTION = "caution"
    RUNNING = "running"
    WAIT = "wait"
    GOOD = "good"
    PLAIN = "plain"

    @property
    def word(self) -> str:
        """The word shown; nothing for a figure that only stands there."""
        return _WORDS[self]

    @property
    def shape(self) -> str:
        """One cell, from the characters that every terminal font has had since the 1980s."""
        return _SHAPES[self]

    @property
    def css(self) -> str:
        return f"tone-{self.value}"

    @property
    def urgency(self) -> int:
        return _ORDER[self]


_WORDS = {
    Tone.LATE: "LATE",
    Tone.CLOSING: "CLOSING",
    Tone.READY: "READY",
    Tone.CAUTION: "OUT OF RANGE",
    Tone.RUNNING: "RUNNING",
    Tone.WAIT: "WAIT",
    Tone.GOOD: "IN RANGE",
    Tone.PLAIN: "",
}
_SHAPES = {
    Tone.LATE: "■",  # the heaviest mark there is
    Tone.CLOSING: "▼",  # running down to a point
    Tone.READY: "►",  # go on
    Tone.CAUTION: "▲",  # the outline of a warning sign, as in ISO 7010
    Tone.RUNNING: "»",  # moving
    Tone.WAIT: "║",  # a barrier
    Tone.GOOD: "●",  # on the mark
    Tone.PLAIN: "·",
}
_ORDER = {tone: position for position, tone in enumerate(Tone)}

TONE_CLASSES = frozenset(tone.css for tone in Tone)


def tone_css(widget: str) -> str:
    """Give the rules that let the component classes of `widget` take each tone's theme colour."""
    return "\n".join(
        f"{widget} > .{tone.css} {{ color: $tone-{tone.value}; text-style: bold; }}"
        for tone in Tone
    )
