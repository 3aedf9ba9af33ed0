"""A dialog lies over another screen: a title, something to read or to choose from, its keys."""

from __future__ import annotations

from typing import Any

from textual.screen import Screen

#: Rows of a dialog besides what it holds (frame, padding, title, keys), and of the screen around it.
AROUND = 10
LEAST_ROWS = 3
#: The commands that work over another screen too.
WORK_OVER: tuple[str, ...] = ("theme", "alarm", "quit")


def room(screen: Screen[Any]) -> int:
    """Give the rows for what a dialog holds, so that its keys stay in sight in a low window."""
    return max((screen.size.height or screen.app.size.height) - AROUND, LEAST_ROWS)
