"""Writes a line on the screen only where it says something new: a line drawn again costs a frame."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static

_SAID = "_said"


def put(shown: Static, line: Content) -> None:
    """Let `shown` say `line`."""
    if getattr(shown, _SAID, None) != line:
        setattr(shown, _SAID, line)
        shown.update(line)
