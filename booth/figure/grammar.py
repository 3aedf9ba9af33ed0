"""The words after a subject become its arguments.

Values stand in their places, or after their name: ``time=30s``, ``--time 30s``, ``--time=30s``; the
names at, from and to may also stand before their value as a word. Arguments that may be left out are
given by name.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from typing import Any

from booth.figure.readers import near
from booth.figure.subject import Subject
from booth.trade.result import BadInput
from booth.units import EntryError, System
from booth.units.sentences import in_units

#: Names that may stand before their value without any sign.
WORDS = ("at", "from", "to")
_NAMED = re.compile(r"^(?:--)?([A-Za-z][A-Za-z_-]*)=(.*)$", re.DOTALL)
_NUMBER = re.compile(r"^[\d.,/]+$")
_UNIT = re.compile(r"^[^\W\d_][\w/.³²]*$|^%$")


class Misuse(ValueError):
    """The words do not fit the subject; the message is a sentence."""


def sort_words(subject: Subject, words: Sequence[str]) -> dict[str, list[str]]:
    """Give the texts of each argument by its name. Raises Misuse."""
    found: dict[str, list[str]] = {}

    def put(name: str, text: str | None) -> None:
        wanted = name.removeprefix("--").lower().replace("_", "-")
        argument = subject.argument(wanted)
        if argument is None:
            known = [each.name for each in subject.arguments]
            raise Misuse(f"There is no {wanted!r} to give here. {near(wanted, known)}")
        if text is None:
            raise Misuse(f"{name} needs a value after it.")
        before = found.setdefault(wanted, [])
        if before and not argument.many:
            raise Misuse(f"{wanted} was given twice: {before[0]!r} and {text!r}.")
        before.append(text)

    rest, unnamed = list(words), []
    while rest:
        word = rest.pop(0)
        named = _NAMED.match(word)
        if named:
            put(named[1], named[2])
        elif word.startswith("--") and len(word) > len("--"):
            put(word, rest.pop(0) if rest else None)
        elif word.lower() in WORDS and rest and subject.argument(word.lower()):
            put(word, rest.pop(0))
        else:
            unnamed.append(word)
    needed = [each for each in subject.arguments if not each.optional]
    # Those with a name first: then "30s cup=..." needs no order.
    for word in unnamed:
        free = (each.name for each in needed if each.many or each.name not in found)
        name = next(free, None)
        if name is None:
            raise Misuse(f"{word!r} is one word too many.")
        put(name, word)
    missing = [each.name for each in needed if each.name not in found]
    if missing:
        raise Misuse(f"{', '.join(missing)} {'is' if len(missing) == 1 else 'are'} missing.")
    return found


def read_words(
    subject: Subject, words: Sequence[str], system: System
) -> tuple[dict[str, Any], list[str]]:
    """Read the arguments; give them, and what was understood. Raises Misuse with a sentence."""
    try:
        return _read(subject, sort_words(subject, words), system)
    except Misuse as fault:
        for number, unit in itertools.pairwise(words):
            if _NUMBER.match(number) and _UNIT.match(unit):
                together = f"'{number} {unit}' or {number}{unit}"
                raise Misuse(f"{fault} Keep a number and its unit together: {together}.") from None
        raise


def _read(
    subject: Subject, texts: dict[str, list[str]], system: System
) -> tuple[dict[str, Any], list[str]]:
    values: dict[str, Any] = {}
    told: list[str] = []
    for argument in subject.arguments:
        try:
            found = [argument.reader.read(text, system) for text in texts.get(argument.name, ())]
        except (EntryError, BadInput) as fault:
            said = in_units(fault if isinstance(fault, BadInput) else str(fault), system)
            raise Misuse(f"{argument.name}: {said}") from None
        assumed = not found and argument.default is not None
        if assumed:
            found = [argument.default]
        if not found:
            continue
        values[argument.name] = found if argument.many else found[0]
        shown = " ".join(argument.reader.show(value, system) for value in found)
        told.append(f"{argument.name} {shown}{' (assumed)' if assumed else ''}")
    return values, told
