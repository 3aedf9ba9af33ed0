"""An answer: its figures, its rule, what else has to be said; as one line and as JSON."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from booth.figure.shapes import Shape
from booth.trade.result import Outside
from booth.units import System


@dataclass(frozen=True, slots=True)
class Item:
    """One figure of an answer: a number with its shape, or words.

    low, high: the band of an estimate, None where there is none; estimate: it rests on a rule of
    thumb and is never shown without that word; tight: goes on from the figure before it.
    """

    name: str
    value: float | str | bool | None
    shape: Shape | None = None
    low: float | None = None
    high: float | None = None
    estimate: bool = False
    tight: bool = False

    def text(self, system: System) -> str:
        """Give it for the line."""
        if self.shape is None or isinstance(self.value, (str, bool)):
            told = {True: "yes", False: "no", None: "none"}.get(self.value, self.value)  # type: ignore[arg-type]
            return f"{self.name} {str(told).rstrip('.')}".strip()
        told = self.shape.show(self.value, system)
        if self.low is not None and self.high is not None:
            ends = " to ".join(self.shape.show(end, system) for end in (self.low, self.high))
            told += f", {ends}"
        return f"{self.name} {'estimate ' if self.estimate else ''}{told}".strip()

    def plain(self, system: System) -> dict[str, Any]:
        """Give it for JSON: numbers in the trade's unit, whichever units are shown."""
        found: dict[str, Any] = {"name": self.name, "value": finite(self.value)}
        if self.shape is not None:
            found["unit"] = self.shape.unit
        if self.low is not None or self.high is not None:
            found["low"], found["high"] = finite(self.low), finite(self.high)
        return {**found, "estimate": self.estimate, "shown": self.text(system)}


def finite(value: Any) -> Any:
    return None if isinstance(value, float) and not math.isfinite(value) else value


@dataclass(frozen=True, slots=True)
class Answer:
    """What a subject answers. notes: sentences that belong to the figures, cautions with them."""

    items: tuple[Item, ...] = ()
    rule: str = ""
    notes: tuple[str, ...] = ()
    outside: Outside | None = None

    @property
    def estimate(self) -> bool:
        return any(item.estimate for item in self.items)


def line(answer: Answer, given: Sequence[str], source: str, system: System) -> str:
    """Give the answer in one line: figures, notes, what was given, rule, source."""
    if answer.outside is not None:
        first = f"no figure: {answer.outside.reason} {answer.outside.advice}"
    else:
        first = answer.items[0].text(system)
        for item in answer.items[1:]:
            first += f"{' ' if item.tight else '; '}{item.text(system)}"
    parts = [first, *answer.notes]
    if given:
        parts.append(f"given: {', '.join(given)}")
    return " | ".join([*parts, f"rule: {answer.rule}", f"source: {source}"])
