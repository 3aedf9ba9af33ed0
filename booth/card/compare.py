"""The cards of several jobs held side by side: one row a fact, with whether they agree. Pure.

What a job came to is taken from its card alone, so that both always say the same.
"""

from __future__ import annotations

import enum
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import NamedTuple

from booth.card.model import Block, Card, CoatLine
from booth.card.outcome import BETWEEN, DEMO, outcome

#: What a card tells that is another one for every job, and stands in the head of its column.
IN_THE_HEAD = ("Opened", "Closed")
#: Verdicts stand without their dates: those are never the same.
VERDICTS = ("Verdict", "Before")


class Agree(enum.Enum):
    """Whether the jobs agree in a row: a shape and a word."""

    SAME = "=", "same"
    DIFFERS = "<>", "differs"
    LACKING = "--", "in some"

    @property
    def in_words(self) -> str:
        return " ".join(self.value)


class Cell(NamedTuple):
    """What a job says in a row. alike: what is held against the other jobs, the times of day left out."""

    text: str = ""
    alike: str = ""


class Row(NamedTuple):
    """section: the product, where the jobs have several; label: the fact; cells: one a job."""

    section: str
    label: str
    cells: tuple[Cell, ...]

    @property
    def agree(self) -> Agree:
        said = [each.alike for each in self.cells]
        if not all(said):
            return Agree.LACKING
        return Agree.SAME if len(set(said)) == 1 else Agree.DIFFERS


class Comparison(NamedTuple):
    """heads: of each job when it was opened, what was sprayed, what it is called; rows: in the order of
    the cards; said: what is wrong with the logs."""

    heads: tuple[tuple[str, str, str], ...]
    rows: tuple[Row, ...]
    said: tuple[str, ...] = ()

    @property
    def differing(self) -> tuple[Row, ...]:
        """The rows in which the jobs do not all say the same."""
        return tuple(each for each in self.rows if each.agree is not Agree.SAME)


#: A row of one card: section and label, and what stands there.
Told = tuple[tuple[str, str], Cell]


def compared(cards: Sequence[Card]) -> Comparison:
    """Hold cards against each other, in their order."""
    several = any(len(card.blocks) > 1 for card in cards)
    columns = [dict(_joined(_told(card, several))) for card in cards]
    rows = tuple(
        Row(*key, tuple(column.get(key, Cell()) for column in columns)) for key in _order(columns)
    )
    said = tuple(f"{card.name}: {each}" for card in cards for each in card.said)
    return Comparison(tuple(map(_head, cards)), rows, said)


def _head(card: Card) -> tuple[str, str, str]:
    opened = next((each.text for each in card.head if each.label == "Opened"), "")
    return opened, card.title, card.name


def _order(columns: Sequence[Mapping[tuple[str, str], Cell]]) -> list[tuple[str, str]]:
    """Every row once: what only a later job has stands behind what stands before it there."""
    order: list[tuple[str, str]] = []
    for column in columns:
        at = 0
        for key in column:
            if key in order:
                at = order.index(key) + 1
            else:
                order.insert(at, key)
                at += 1
    return order


def _joined(told: Iterable[Told]) -> Iterator[Told]:
    """What stands several times under one label, in one cell."""
    found: dict[tuple[str, str], list[Cell]] = {}
    for key, cell in told:
        found.setdefault(key, []).append(cell)
    for key, cells in found.items():
        texts, alikes = zip(*cells, strict=True)
        yield key, Cell(BETWEEN.join(texts), BETWEEN.join(alikes))


def _told(card: Card, several: bool) -> Iterator[Told]:
    title = f"{card.title}{DEMO if card.demo else ''}"
    yield ("", "Coating"), Cell(title, title)
    for fact in outcome(card):
        text = fact.text.partition(", ")[0] if fact.label in VERDICTS else fact.text
        yield ("", fact.label), Cell(text, text)
    for fact in card.head:
        if fact.label not in IN_THE_HEAD:
            yield ("", fact.label), Cell(fact.text, fact.text)
    for block in card.blocks:
        section = block.title if several else ""
        yield from _block(block, section)


def _block(block: Block, section: str) -> Iterator[Told]:
    count: dict[str, int] = {}
    for fact in (*block.about, *block.facts):
        number = count[fact.group] = count.get(fact.group, 0) + 1
        if not fact.group:
            told = fact.in_words or "yes"
            yield (section, fact.label), Cell(told, told)
            continue
        own = fact.label.removeprefix(fact.group).strip()
        yield (section, f"{fact.group} {number}"), Cell(f"{own}: {fact.text}", fact.text)
    if block.missing:
        missing = ", ".join(block.missing)
        yield (section, "not measured"), Cell(missing, missing)
    for coat, lines in groupby(sorted(block.coats, key=_number), key=_number):
        yield from _coat(coat, tuple(lines), section)
    for fact in block.film:
        yield (section, "film in all"), Cell(f"{fact.label}: {fact.in_words}", fact.in_words)


def _number(coat: CoatLine) -> str:
    return coat.coat.partition(",")[0]


def _coat(coat: str, lines: Sequence[CoatLine], section: str) -> Iterator[Told]:
    """One coat over all parts: what is the same on all of them once, else with the part's name."""
    columns: tuple[tuple[str, Callable[[CoatLine], str]], ...] = (
        ("", lambda each: each.coat.partition(", ")[2]),
        ("waited", lambda each: f"{each.waited} after {each.after}" if each.waited else ""),
        ("sprayed in", lambda each: each.sprayed),
        ("wet film", lambda each: each.wet_of_wanted),
        ("remark", lambda each: each.remark),
    )
    if not any(each.begun for each in lines):  # a part without any
        told = ", ".join(each.part for each in lines)
        yield (section, coat), Cell(told, told)
        return
    for label, told_of in columns:
        texts = {each.part: told_of(each) for each in lines if told_of(each)}
        if not texts:
            continue
        alike = len(set(texts.values())) == 1 and len(texts) == len(lines)
        cell = (
            next(iter(texts.values()))
            if alike
            else BETWEEN.join(f"{part}: {text}" for part, text in texts.items())
        )
        yield (section, f"{coat} {label}".strip()), Cell(cell, cell)
