"""Entries become quantities here, or a sentence that says what was found and what is expected."""

from __future__ import annotations

import math
from functools import lru_cache

import msgspec

from booth.units import words
from booth.units.display import base_of, number_text, show, shown_as, with_unit
from booth.units.kinds import Dimension, EntryError, Kind, Quantity, System
from booth.units.numbers import NUMBER, fold, pattern, quoted, value_of
from booth.units.registry import convert, pair
from booth.units.words import Unit, tidy

_CLOCK = (
    r"(?P<sign>[+-]?)(?P<fields>\d+(?::\d\d){1,2})(?:[.,](?P<tenths>\d{1,3}))?\s*(?P<unit>[a-z]*)"
)
_RATIO = r"([\d.,]+) ?: ?([\d.,]+)"
_UNIT = r"""\s*(?P<unit>[a-z°'"#]+(?:[ .]+[a-z]+)*\.?)\s*,?\s*"""
_IMPERIAL = r"\b(imp|imperial|uk|british|brit)\b"
_ABSOLUTE = r"\b(psia|bara|bar ?\(?a\)?|psi ?\(?a\)?|kpaa?|\w+ abs(olute)?)$"
_RANGE = r"\s*(-|to\b|\.\.)\s*\d"
_SIXTY = 60
#: Of a time with colons: how many seconds the last of so many fields is, by the unit behind it.
_LAST_S = {(2, ""): 1, (2, "min"): 1, (2, "h"): _SIXTY, (3, ""): 1, (3, "h"): 1}
#: 72 F 2 C is no sum.
_UNADDED = (Dimension.TEMPERATURE, Dimension.NUMBER)
_DEGREES = (Dimension.TEMPERATURE, Dimension.DIFFERENCE)


class Entry(msgspec.Struct, frozen=True):
    """What was typed, folded, and for what."""

    text: str
    kind: Kind
    system: System

    @property
    def expected(self) -> str:
        us, metric = self.kind.examples
        first, second = (us, metric) if self.system == System.US else (metric, us)
        return f"{self.kind.label}, such as {first} or {second}"

    def fault(self, said: str, about: str | None = None) -> EntryError:
        """What is said of the entry, or of the part of it that this is about; and what is expected."""
        told = quoted(self.text if about is None else about)
        return EntryError(f"{told}{said} Expected {self.expected}.")


class Understood(msgspec.Struct, frozen=True):
    """What an entry said: value [base unit]; number as typed where it was one pair; its first unit."""

    value: float
    number: float | None = None
    unit: Unit | None = None
    note: str = ""


def read(text: str, kind: Kind, system: System) -> Quantity:
    """Read an entry of `kind`; a bare number takes the unit that `system` shows.

    Raises EntryError, and nothing else, with a sentence for the painter.
    """
    understood = understand(text, kind, system)
    # Unusual blanks (a line separator, say) are no part of what was typed.
    return Quantity(understood.value, kind.base, " ".join(text.split()))


def read_amount(text: str, system: System) -> Quantity:
    """Read an amount that may be a volume [ml] or a weight [g]; a bare number is a volume.

    An ``oz`` is a fluid ounce; ``oz wt`` is a weight, and so is the ``oz`` in ``1 lb 4 oz``.
    """
    try:
        return read(text, Kind.VOLUME, system)
    except EntryError as fault:
        if Dimension.MASS in fault.measures:
            try:
                return read(text, Kind.MASS, system)
            except EntryError as other:
                if not other.measures:
                    raise
        raise EntryError(
            str(fault).replace("a volume, such as", "a volume or a weight, such as 200 g,")
        ) from None


def amount_kind(quantity: Quantity) -> Kind:
    return Kind.MASS if quantity.unit == Kind.MASS.base else Kind.VOLUME


def understand(text: str, kind: Kind, system: System) -> Understood:
    """Read an entry and keep how it was understood; as ``read`` otherwise."""
    return _understood(fold(text), kind, system)


@lru_cache(maxsize=1024)
def _understood(folded: str, kind: Kind, system: System) -> Understood:
    """What a folded entry says; of files and forms the same ones are read again and again."""
    entry = Entry(folded, kind, system)
    if kind is Kind.TIME and ":" in entry.text:
        found = _clock(entry.text)
    elif kind is Kind.RATIO and ":" in entry.text:
        found = _ratio(entry)
    else:
        found = _number_and_unit(entry)
    # To 12 digits: 12 in are kept as 304.8 mm, not as 304.79999999999995.
    found = msgspec.structs.replace(found, value=float(f"{found.value:.12g}") + 0.0)
    _check(found.value, entry)
    return found


def _number_and_unit(entry: Entry) -> Understood:
    text, kind = entry.text, entry.kind
    match = pattern(NUMBER).match(text)
    if match is None:
        raise entry.fault(" does not begin with a number.")
    number = value_of(match, text)
    rest = text[match.end() :]
    if pattern(_RANGE).match(rest):
        raise entry.fault(" is more than one number.")
    word = tidy(rest)
    if kind.dimension in _DEGREES and word in ("°", "deg", "degree", "degrees"):
        word = ""
    unit = words.find(word, kind.dimension) if word else shown_as(kind, entry.system)
    if unit is not None:
        value = convert(number, unit, base_of(kind))
        return Understood(value, number, unit, words.note(word, kind.dimension))
    pairs = _pairs(text)
    if pairs is None or len(pairs) == 1:
        raise _no_unit(word, entry)
    return _sum(pairs, entry)


def _pairs(folded: str) -> list[tuple[float, str]] | None:
    """Give the entry as (number, unit word) pairs, as in ``1 min 30 s``; None if it is not such."""
    pairs: list[tuple[float, str]] = []
    place = 0
    while place < len(folded):
        number = pattern(NUMBER).match(folded, place)
        unit = pattern(_UNIT).match(folded, number.end()) if number else None
        if number is None or unit is None:
            return None
        if pairs and number["sign"]:
            return None
        pairs.append((value_of(number, folded), tidy(unit["unit"])))
        place = unit.end()
    return pairs


def _sum(pairs: list[tuple[float, str]], entry: Entry) -> Understood:
    dimension = entry.kind.dimension
    total, last, notes, first = 0.0, math.inf, [], None
    for number, word in pairs:
        unit = words.find(word, dimension)
        if unit is None:
            raise _no_unit(word, entry)
        scale, offset = pair(unit, base_of(entry.kind))
        if offset or scale >= last or dimension in _UNADDED:
            raise entry.fault(" does not add up.")
        total, last, first = total + number * scale, scale, first or unit
        notes.append(words.note(word, dimension))
    return Understood(total, None, first, next((note for note in notes if note), ""))


def _no_unit(word: str, entry: Entry) -> EntryError:
    if pattern(_IMPERIAL).search(word):
        said = ": imperial (UK) measures differ from US ones and are not taken."
        return entry.fault(said, word)
    if entry.kind is Kind.PRESSURE and pattern(_ABSOLUTE).search(word):
        said = " is an absolute pressure; this field takes what the gauge reads."
        return entry.fault(said, word)
    others = words.dimensions_of(word)
    if others:
        fault = entry.fault(f" measures {others[0]}.", word)
        fault.measures = others
        return fault
    if word[:1].isdigit():
        return entry.fault(" holds two numbers.")
    return entry.fault(" is not a unit known here.", word)


def _clock(folded: str) -> Understood:
    match = pattern(_CLOCK).fullmatch(folded)
    problem = EntryError(
        f"{quoted(folded)} is not a time. Write minutes and seconds as 1:05, hours too as 1:02:03."
    )
    if match is None:
        raise problem
    fields = [int(field) for field in match["fields"].split(":")]
    unit = words.find(match["unit"], Dimension.TIME) if match["unit"] else None
    last_s = _LAST_S.get((len(fields), unit.key if unit else match["unit"]))
    if last_s is None or (last_s == _SIXTY and match["tenths"]):
        raise problem
    if max(fields[1:]) >= _SIXTY:
        raise EntryError(f"{quoted(folded)} is not a time: what follows a colon must be below 60.")
    seconds = 0.0
    for field in fields:
        seconds = seconds * _SIXTY + field
    seconds = seconds * last_s + float(f"0.{match['tenths'] or 0}")
    return Understood(-seconds if match["sign"] == "-" else seconds)


def _ratio(entry: Entry) -> Understood:
    match = pattern(_RATIO).fullmatch(entry.text)
    sides = [pattern(NUMBER).fullmatch(side) for side in match.groups()] if match else []
    numbers = [value_of(side, entry.text) for side in sides if side]
    if len(numbers) != 2 or numbers[1] == 0:
        raise entry.fault(" is not a ratio.")
    return Understood(numbers[0] / numbers[1])


def _check(value: float, entry: Entry) -> None:
    kind = entry.kind
    if not math.isfinite(value):
        raise entry.fault(" is too large a number.")
    if value < kind.low == 0:
        raise entry.fault(" is below zero.")
    if value < kind.low:
        least = show(kind.low, kind, entry.system, places=2)
        raise entry.fault(f" is below {least}, the least taken here.")
    if value > kind.high:
        most = show(kind.high, kind, entry.system, places=None if kind is Kind.TIME else 0)
        raise EntryError(
            f"{quoted(entry.text)} is more than {most}, the most taken here."
            f" Check number and unit: expected {entry.expected}."
        )
    if kind is Kind.COUNT and value != int(value):
        raise entry.fault(" is not a whole number.")


def echo(quantity: Quantity, kind: Kind, system: System) -> str:
    """Give what was understood, for the line under a field: ``6 fl oz/min = 177 ml/min``.

    First as typed, then in the units of `system`, then in the other's; how a word was taken that
    can mean two things is said in brackets. For an amount, the quantity's own unit decides.
    """
    if kind in (Kind.VOLUME, Kind.MASS):
        kind = amount_kind(quantity)
    parts: list[tuple[str, str]] = []
    note = ""
    try:
        found = understand(quantity.typed, kind, system)
    except EntryError:
        found = None
    # A bare number that was typed under the other system is not repeated with the wrong unit.
    if found is not None and math.isclose(found.value, quantity.value, rel_tol=1e-9, abs_tol=1e-9):
        note = found.note
        if found.number is not None and found.unit is not None:
            text = number_text(found.number, 6, 0)
            parts.append((with_unit(text, found.unit.name), found.unit.name))
    for each in (system, system.other):
        text = show(quantity.value, kind, each)
        name = "clock" if ":" in text else shown_as(kind, each).name
        if all(name != known and text != told for told, known in parts):
            parts.append((text, name))
    line = " = ".join(text for text, _ in parts)
    return f"{line} ({note})" if note else line
