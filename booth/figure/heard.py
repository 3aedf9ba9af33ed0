"""What is heard while the words are read: which units were typed, and to how many digits.

A painter who types ml is answered in ml; and a figure has no more digits than what it came from.
"""

from __future__ import annotations

import re

import msgspec

from booth.units import System

#: Digits of a figure where what was typed has fewer: what a shop can tell apart.
LEAST_DIGITS = 3
#: No more are ever shown.
MOST_DIGITS = 6

_DIGITS = re.compile(r"[\d.,]*\d")


class Heard(msgspec.Struct):
    """system: what a bare number is taken in; systems, digits: gathered as the words are read."""

    system: System
    systems: set[System] = msgspec.field(default_factory=set)
    digits: list[int] = msgspec.field(default_factory=list)

    def number(self, text: str) -> None:
        """Count the digits of an entry of one number: 0.25 has two, 100 three."""
        found = _DIGITS.findall(text)
        if len(found) == 1:
            self.digits.append(len(re.sub(r"\D", "", found[0]).lstrip("0")) or 1)

    def unit(self, system: System | None) -> None:
        if system is not None:
            self.systems.add(system)

    @property
    def significant(self) -> int:
        """Digits to show: as many as the coarsest that was typed, but three."""
        return min(MOST_DIGITS, max(LEAST_DIGITS, min(self.digits, default=LEAST_DIGITS)))
