"""The styles of pieces of text, as the toolkit writes them, in colours of the theme; "" is plain text."""

from __future__ import annotations

from booth.words.tone import Tone

QUIET, STRONG, HEAD = "$quiet", "bold $foreground", "bold $quiet"
MARKED = "bold $background on $foreground"


def toned(tone: Tone) -> str:
    """The style of a word or figure in this state."""
    return f"bold ${tone.css}"


def inked(tone: Tone) -> str:
    """The style of a line or a block in the colour of this state."""
    return f"${tone.css}"


def filled(tone: Tone) -> str:
    """The style of a block filled with the colour of this state."""
    return f"$background on ${tone.css}"
