"""Numbers as painters type them: decimal point or comma, groups, fractions, mixed numbers."""

from __future__ import annotations

import re
import unicodedata
from functools import cache

from booth.units.kinds import EntryError

#: No entry of the trade is longer; a longer one was pasted by mistake.
LONGEST = 60
#: Characters of an entry that a sentence repeats.
_QUOTED = 32

_PLAIN = str.maketrans("−‐‑–⁄∕′’‘ʹ″”“ʺº˚", "----//''''" + '""""' + "°°")

NUMBER = (
    r"(?P<sign>[+-]?)\s*(?:"
    r"(?P<whole>\d+)(?:\s+|\s*-\s*)(?P<part>\d+)\s*/\s*(?P<of>\d+)"
    r"|(?P<over>\d+)\s*/\s*(?P<under>\d+)"
    r"|(?P<decimal>\d[\d.,]*|[.,]\d[\d.,]*)"
    r")"
)

_GROUPS = r"\d{1,3}(?:%s\d{3})+"
_POINT = r"\d*\.\d+|\d+\.?"
_COMMA = r"\d*,\d+"
_COMMA_GROUPS = _GROUPS % "," + r"(\.\d+)?"
_POINT_GROUPS = _GROUPS % r"\." + r"(,\d+)?"


@cache
def pattern(text: str) -> re.Pattern[str]:
    """Give the compiled pattern, made when first used: an import costs none of them."""
    return re.compile(text, re.ASCII)


def fold(text: object) -> str:
    """Give the entry as plain lower-case text with single blanks. Raises EntryError."""
    if not isinstance(text, str):
        raise EntryError("An entry must be text: a number and a unit, as they are typed.")
    stripped = text.strip()
    if not stripped:
        raise EntryError("The entry is empty. Type a number, with a unit if you like.")
    if len(stripped) > LONGEST:
        raise EntryError(
            f"The entry is {len(stripped)} characters long; {LONGEST} are enough for a number"
            " and a unit."
        )
    if stripped.isascii() and stripped.isprintable():
        return " ".join(stripped.lower().split())
    characters = []
    for place, character in enumerate(stripped):
        category = unicodedata.category(character)
        if category[0] == "C":
            raise EntryError(
                f"The entry {quoted(stripped)} holds a character that cannot be shown"
                f" (U+{ord(character):04X}). Type it anew."
            )
        if category != "No":
            characters.append(character)
        elif unicodedata.decomposition(character).startswith("<fraction>"):
            characters.append(" " + unicodedata.normalize("NFKC", character))
        elif character in "²³" and place and stripped[place - 1].isalpha():
            characters.append(character)
        else:
            # A raised or ringed digit would otherwise be read as the next digit of the number.
            raise EntryError(f"The number in {quoted(stripped)} is not in plain digits.")
    plain = unicodedata.normalize("NFKC", "".join(characters).translate(_PLAIN))
    plain = plain.translate(_PLAIN).lower().replace("μ", "u")
    return " ".join(plain.split())


def quoted(text: str) -> str:
    """Give `text` in quotation marks, shortened, with what cannot be shown replaced by ``?``."""
    shown = "".join(_plain(character) for character in text[: _QUOTED + 1])
    return f"“{shown[:_QUOTED]}…”" if len(shown) > _QUOTED else f"“{shown}”"


def _plain(character: str) -> str:
    category = unicodedata.category(character)[0]
    return {"C": "?", "Z": " "}.get(category, character)


def value_of(found: re.Match[str], entry: str) -> float:
    """Give the number of a match of NUMBER. Raises EntryError with a sentence."""
    if found["decimal"] is not None:
        value = _decimal(found["decimal"], entry)
    elif found["whole"] is not None:
        value = int(found["whole"]) + _fraction(found["part"], found["of"], entry, proper=True)
    else:
        value = _fraction(found["over"], found["under"], entry, proper=False)
    return -value if found["sign"] == "-" else value


def _fraction(over: str, under: str, entry: str, *, proper: bool) -> float:
    if int(under) == 0:
        raise EntryError(f"The fraction in {quoted(entry)} divides by zero.")
    if proper and int(over) >= int(under):
        raise EntryError(
            f"The fraction in {quoted(entry)} is not smaller than one. Write it as 2 1/2 or 2.5."
        )
    return int(over) / int(under)


def _decimal(text: str, entry: str) -> float:
    if pattern(_POINT).fullmatch(text):
        return float(text)
    if pattern(_COMMA).fullmatch(text):
        whole, _, part = text.partition(",")
        if len(part) == 3 and 1 <= len(whole) <= 3 and int(whole) != 0:
            raise EntryError(
                f"{quoted(text)} can be read two ways. Write {whole}.{part} for the decimal"
                f" or {whole}{part} for the thousands."
            )
        return float(f"{whole or '0'}.{part}")
    if pattern(_COMMA_GROUPS).fullmatch(text):
        return float(text.replace(",", ""))
    if pattern(_POINT_GROUPS).fullmatch(text):
        return float(text.replace(".", "").replace(",", "."))
    raise EntryError(
        f"{quoted(text)} is not a number. Write it as 1234.5, with one point or one comma."
    )
