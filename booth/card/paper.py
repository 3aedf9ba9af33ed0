"""What of a card goes on one sheet of paper, and how large: reckoned from its texts. Pure.

What does not fit is named on the sheet with how much of it there is; the page on a screen has all of it.
A4 is 210 x 297 mm, US letter 216 x 279 mm (ISO 216; ANSI/ASME Y14.1): the narrower and the lower of the
two rule. Heights are reckoned for a wide sans serif, with a twentieth kept back.
"""

from __future__ import annotations

import math
import unicodedata
from collections.abc import Iterable, Sequence
from functools import lru_cache

import msgspec

from booth.card.model import Block, Card, CoatLine, Entry
from booth.card.outcome import outcome

MARGIN_MM = 10.0
#: What can be written on, of both sizes [mm]; the twentieth is kept back.
WIDTH_MM, HEIGHT_MM = 210 - 2 * MARGIN_MM, (279 - 2 * MARGIN_MM) * 0.95
#: The labels in the margin, and the rule behind them [mm].
LABELS_MM = 24.0
POINT_MM = 25.4 / 72
LEADING = 1.28
#: Width of a usual letter, as a share of the size of its type.
LETTER = 0.55
#: Sizes of type [pt], the usual one first; the log is smaller.
SIZES = (9.0, 8.0, 7.5, 7.0, 6.0)
LOG_SMALLER, LEAST_LOG = 2.0, 5.5
LOG_COLUMNS = 3
#: Rows of a time line on paper, and how high pictures are [mm].
MOST_ROWS = 8
#: Lines of what the film is in all, each for the parts on which it is the same.
MOST_FILMS = 6
PICTURES_MM = 22.0
HEAD_MM = 17.0
#: The card is half a page, or a little more; the log has the rest. A long one may take most of it.
HALF, MOST = 0.66, 0.93


class Sheet(msgspec.Struct, frozen=True):
    """size, log_size: of the type [pt]; blocks, coats: how many go on it, coats of each block; entries:
    the numbers of their places in the log; rows: of the time line; pictures: whether there is room."""

    size: float
    log_size: float
    blocks: int
    coats: tuple[int, ...]
    entries: frozenset[int]
    rows: int
    pictures: bool


def lines_of(text: str, width_mm: float, size: float) -> int:
    """How many lines a text takes."""
    cells = sum(map(_letters, text))
    room = max(width_mm / (size * POINT_MM * LETTER), 4.0)
    return max(math.ceil(cells / room), 1)


@lru_cache(maxsize=4096)
def _letters(char: str) -> float:
    """How many usual letters wide a letter is, in any sans serif."""
    if unicodedata.east_asian_width(char) in "WF" or char in "MWmw@%":
        return 2.0
    return 1.4 if char.isupper() else 1.0


def _line_mm(size: float) -> float:
    return size * POINT_MM * LEADING


def sheet(card: Card) -> Sheet:
    """Give what goes on the sheet: in the largest type in which all of it fits; else in that in which
    the card takes little more than half of it; else as much of it as fits in the smallest."""
    for size in SIZES:
        found = _laid(card, size, MOST)
        if found is not None and _has_all(card, found):
            return found
    for size in SIZES[:-1]:
        found = _laid(card, size, HALF)
        if found is not None:
            return found
    found = _laid(card, SIZES[-1], MOST, last=True)
    assert found is not None, "the smallest type takes what fits"
    return found


def _has_all(card: Card, found: Sheet) -> bool:
    """Whether every entry that tells something is on it."""
    return all(each.minor or at in found.entries for at, each in enumerate(card.entries))


def _laid(card: Card, size: float, share: float, last: bool = False) -> Sheet | None:
    """The sheet in one size of type; None where that is too large."""
    width, line = WIDTH_MM - LABELS_MM, _line_mm(size)
    room = HEIGHT_MM * share - HEAD_MM
    room -= sum(lines_of(each.in_words, width - 20, size) for each in outcome(card)) * line
    room -= sum(lines_of(each, width, size) for each in card.said) * line
    room -= 2 * line
    rows = min(len(card.line.rows), MOST_ROWS) if card.line is not None else 0
    # A row is 4.6 mm, what stands under them 7.
    line_mm = rows * 4.6 + 9.0 if rows else 0.0
    if line_mm > room / 3:
        rows = 0 if last else rows
        line_mm = 0.0 if last else line_mm
    room -= line_mm
    drawn = [block for block in card.blocks if block.paper is not None]
    pictures = bool(drawn) and len(card.blocks) <= 3 and not last
    blocks = 0
    coats: list[int] = []
    for block in card.blocks:
        facts = _facts_mm(block, width, size)
        if pictures and block.paper is not None:
            facts += PICTURES_MM
        if last and (facts > room or (blocks and facts + line > room)):
            break
        room -= facts
        fit = _coats_fit(block.coats, width, size, room) if last else len(block.coats)
        room -= _coats_mm(block.coats[:fit], width, size)
        blocks, coats = blocks + 1, [*coats, fit]
        if room < 0:
            break
    if room < 0 and not last:
        return None
    log_size = max(size - LOG_SMALLER, LEAST_LOG)
    used = HEIGHT_MM * share - room
    entries = _entries(card.entries, log_size, HEIGHT_MM - used)
    return Sheet(size, log_size, blocks, tuple(coats), entries, rows, pictures)


def _facts_mm(block: Block, width: float, size: float) -> float:
    half = width / 2 - 25
    facts = sum(lines_of(each.in_words, half, size) for each in block.facts)
    films = (
        lines_of(f"{e.label}: film in all {e.text}", width, size) for e in block.film[:MOST_FILMS]
    )
    about = sum(lines_of(each.in_words, width - 20, size) for each in block.about) + sum(films)
    about += len(block.film) > MOST_FILMS
    missing = lines_of(", ".join(block.missing), width, size) if block.missing else 0
    return (2.0 + about + missing + math.ceil(facts / 2) + 0.6) * _line_mm(size)


def _coats_mm(coats: Sequence[CoatLine], width: float, size: float) -> float:
    heads = 1.5 if coats else 0.0
    return (heads + sum(_coat_lines(each, width, size) for each in coats)) * _line_mm(size) * 1.08


def _coat_lines(coat: CoatLine, width: float, size: float) -> int:
    """A row is as high as the cell that needs most lines."""
    cells = (
        *((coat.part, 0.21), (coat.coat, 0.13), (coat.begun, 0.09), (coat.waited, 0.1)),
        *((coat.wet_of_wanted, 0.21), (f"{coat.sprayed}, {coat.remark}", 0.12)),
    )
    return max(lines_of(text, width * share, size) for text, share in cells)


def _coats_fit(coats: Sequence[CoatLine], width: float, size: float, room: float) -> int:
    fit = 0
    while fit < len(coats) and _coats_mm(coats[: fit + 1], width, size) <= room:
        fit += 1
    return fit


def _entries(entries: Sequence[Entry], size: float, room_mm: float) -> frozenset[int]:
    """The places of those that fit: all, else those that tell most, in their order."""
    column = (WIDTH_MM - LABELS_MM) / LOG_COLUMNS - 4
    # A line of a column may stay empty at its foot, and a sentence says what is left off.
    most = max(math.floor(room_mm / _line_mm(size)) - 3, 0) * LOG_COLUMNS
    every = [lines_of(f"{each.time} {each.text}", column - 6, size) for each in entries]
    days = len({each.day for each in entries})
    if sum(every) + days <= most:
        return frozenset(range(len(entries)))
    return frozenset(_first(entries, every, most - days - LOG_COLUMNS))


def _first(entries: Sequence[Entry], every: Sequence[int], most: int) -> Iterable[int]:
    left = most
    for at, each in enumerate(entries):
        if each.minor:
            continue
        left -= every[at]
        if left < 0:
            return
        yield at
