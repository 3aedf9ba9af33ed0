"""Tables of the trade, written as text that reads as it would in print."""

from __future__ import annotations

import re

__all__: list[str] = []


def rows(text: str) -> list[list[str]]:
    """Give the rows of a table, cells parted by bars; a line set in goes on the row above."""
    lines = re.sub(r"\n +", " ", text).split("\n")
    return [[cell.strip() for cell in line.split("|")] for line in lines if line]
