"""What an entry becomes, and what is said when it cannot: the types that carry both."""

from __future__ import annotations

import unicodedata

import msgspec

#: Characters of an entry that a sentence repeats.
_QUOTED = 32


class Quantity(msgspec.Struct, frozen=True):
    """A quantity as it was entered.

    value: the number in the base unit; unit: that unit (``ml/min``); typed: the painter's text.
    """

    value: float
    unit: str
    typed: str


class EntryError(ValueError):
    """An entry that is not understood; the message is a sentence for the painter."""


def quoted(text: str) -> str:
    """Give `text` in quotation marks, shortened, with what cannot be shown replaced by ``?``."""
    shown = "".join(_plain(character) for character in text[: _QUOTED + 1])
    return f"“{shown[:_QUOTED]}…”" if len(shown) > _QUOTED else f"“{shown}”"


def _plain(character: str) -> str:
    category = unicodedata.category(character)[0]
    return {"C": "?", "Z": " "}.get(category, character)
