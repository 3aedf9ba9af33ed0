"""An answer: its figures, what has to be said with them, its rule; as the text that is printed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import msgspec

from booth.figure.shape import Shape
from booth.trade.result import Outside
from booth.units import System

#: Notes up to so many characters stand beside the figure; longer ones are told by --why.
SHORT = 90
BETWEEN = " | "


class Manner(msgspec.Struct, frozen=True):
    """How numbers are shown: in one system or in both, to so many digits at most."""

    systems: tuple[System, ...] = (System.US,)
    digits: int | None = None


class Item(msgspec.Struct, frozen=True):
    """One figure of an answer: a number with its shape, or words.

    low, high: the band of an estimate, None where there is none; estimate: it rests on a rule of
    thumb and is never shown without that word; way: 1 where it may only be rounded up, -1 where
    only down; tight: goes on from the figure before it; begins: stands on a line of its own.
    """

    name: str
    value: float | str | bool | None
    shape: Shape | None = None
    low: float | None = None
    high: float | None = None
    estimate: bool = False
    way: int = 0
    tight: bool = False
    begins: bool = False

    def text(self, manner: Manner) -> str:
        """Give it for the line."""
        if self.shape is None or isinstance(self.value, (str, bool)):
            told = {True: "yes", False: "no", None: "none"}.get(self.value, self.value)  # type: ignore[arg-type]
            return f"{self.name} {str(told).rstrip('.')}".strip()
        first, *others = dict.fromkeys(self._number(each, manner) for each in manner.systems)
        told = f"{first} ({others[0]})" if others else first
        return f"{self.name} {'estimate ' if self.estimate else ''}{told}".strip()

    def _number(self, system: System, manner: Manner) -> str:
        shape = self.shape
        assert shape is not None and not isinstance(self.value, str)

        def told(number: float | None, way: int) -> str:
            if number is None or not self.estimate:
                return shape.show(number, system, manner.digits, way)
            return shape.estimated(number, system, manner.digits, way)

        whole = told(self.value, self.way)
        if self.low is None or self.high is None:
            return whole
        return f"{whole}, {told(self.low, -1)} to {told(self.high, 1)}"


class Told(msgspec.Struct, frozen=True):
    """One argument as it was understood.

    assumed: nobody gave it; source: the profile or shop file it was taken from, '' where it was
    typed; how: of a range, where; plain: it goes without saying that it is so unless something else is said.
    """

    name: str
    text: str
    assumed: bool = False
    source: str = ""
    how: str = ""
    plain: bool = False

    def __str__(self) -> str:
        where = "assumed" if self.assumed else ", ".join(filter(None, (self.source, self.how)))
        return f"{self.name} {self.text}{f' ({where})' if where else ''}"

    @property
    def briefly(self) -> str:
        """Give it where its source is told beside it."""
        return f"{self.name} {self.text}{f' ({self.how})' if self.how else ''}"


class Answer(msgspec.Struct, frozen=True):
    """What a subject answers. notes: sentences that belong to the figures; cautions: what can hurt.

    found: what the trade gave, for those who want it as data.
    """

    items: tuple[Item, ...] = ()
    rule: str = ""
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    outside: Outside | None = None
    found: Any = None

    @property
    def estimate(self) -> bool:
        return any(item.estimate for item in self.items)


def figures(answer: Answer, manner: Manner) -> list[str]:
    """Give the figures, or why there is none, in one line or in some."""
    if answer.outside is not None:
        return [f"no figure: {answer.outside.reason} {answer.outside.advice}"]
    lines = [""]
    for item in answer.items:
        text = item.text(manner)
        if item.begins and lines[-1]:
            lines.append(text)
        elif lines[-1]:
            lines[-1] += f"{' ' if item.tight else '; '}{text}"
        else:
            lines[-1] = text
    return lines


def lines(
    answer: Answer, given: Sequence[Told], source: str, manner: Manner, why: bool
) -> list[str]:
    """Give all that is printed: the answer first, what was assumed or taken beside it, cautions.

    why: with everything given, every note, rule and source.
    """
    found = figures(answer, manner)
    beside = [] if why else [*_short(answer.notes), *_not_typed(given)]
    if len(found) > 1:
        found += beside
    else:
        found = [BETWEEN.join([*found, *beside])]
    found += [f"caution: {each}" for each in answer.cautions]
    if why:
        found += [f"given: {', '.join(map(str, given))}"] if given else []
        found += [f"note: {each}" for each in answer.notes]
        found += [f"rule: {answer.rule}", f"source: {source}"]
    return found


def _short(notes: Sequence[str]) -> list[str]:
    return [note for note in notes if len(note) <= SHORT]


def _not_typed(given: Sequence[Told]) -> list[str]:
    """Give what was assumed, and what was taken from where."""
    found: dict[str, list[str]] = {}
    for each in given:
        if each.source:
            found.setdefault(f"from the {each.source}", []).append(each.briefly)
        elif each.assumed and not each.plain:
            found.setdefault("assumed", []).append(each.briefly)
    return [f"{where}: {', '.join(some)}" for where, some in found.items()]
