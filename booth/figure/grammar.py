"""The words after a subject become its arguments.

Values stand in their places, or after their name: ``time=30s``, ``--time 30s``, ``--time=30s``; the
names at, from and to may also stand before their value as a word. Arguments that may be left out are
given by name.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from booth.figure.readers import near
from booth.figure.subject import Argument, Given, Subject
from booth.trade.result import BadInput
from booth.units import EntryError, System

#: Names that may stand before their value without any sign.
WORDS = ("at", "from", "to")
_NAMED = re.compile(r"^(?:--)?([A-Za-z][A-Za-z_-]*)=(.*)$", re.DOTALL)
_NUMBER = re.compile(r"^[\d.,/]+$")
_UNIT = re.compile(r"^[^\W\d_][\w/.³²]*$|^%$")


class Misuse(ValueError):
    """The words do not fit the subject; the message is a sentence."""


@dataclass(slots=True)
class _Sorted:
    """Texts by argument name, as they are found."""

    subject: Subject
    texts: dict[str, list[str]] = field(default_factory=dict)

    def put(self, argument: Argument, text: str) -> None:
        before = self.texts.setdefault(argument.name, [])
        if before and not argument.many:
            raise Misuse(f"{argument.name} was given twice: {before[0]!r} and {text!r}.")
        before.append(text)

    def named(self, name: str) -> Argument:
        wanted = name.lower().replace("_", "-")
        argument = self.subject.argument(wanted)
        if argument is None:
            known = [each.name for each in self.subject.arguments]
            raise Misuse(f"There is no {wanted!r} to give here. {near(wanted, known)}")
        return argument

    def placed(self, text: str) -> None:
        for argument in self.subject.arguments:
            if not argument.optional and (argument.many or argument.name not in self.texts):
                self.put(argument, text)
                return
        raise Misuse(f"{text!r} is one word too many.")


def sort_words(subject: Subject, words: Sequence[str]) -> dict[str, list[str]]:
    """Give the texts of each argument. Raises Misuse."""
    found = _Sorted(subject)
    rest, unnamed = list(words), []
    while rest:
        word = rest.pop(0)
        named = _NAMED.match(word)
        if named:
            found.put(found.named(named[1]), named[2])
        elif word.startswith("--") and len(word) > len("--"):
            argument = found.named(word.removeprefix("--"))
            if not rest:
                raise Misuse(f"{word} needs a value after it.")
            found.put(argument, rest.pop(0))
        elif word.lower() in WORDS and rest and subject.argument(word.lower()):
            found.put(found.named(word), rest.pop(0))
        else:
            unnamed.append(word)
    # Those with a name first: then "30s cup=..." needs no order.
    for word in unnamed:
        found.placed(word)
    missing = [
        each.name
        for each in subject.arguments
        if not each.optional and each.name not in found.texts
    ]
    if missing:
        raise Misuse(f"{', '.join(missing)} {'is' if len(missing) == 1 else 'are'} missing.")
    return found.texts


def read_words(subject: Subject, words: Sequence[str], system: System) -> tuple[Given, list[str]]:
    """Read the arguments; give them, and what was understood. Raises Misuse with a sentence."""
    try:
        return _read(subject, sort_words(subject, words), system)
    except Misuse as fault:
        for number, unit in itertools.pairwise(words):
            if _NUMBER.match(number) and _UNIT.match(unit):
                together = f"'{number} {unit}' or {number}{unit}"
                raise Misuse(f"{fault} Keep a number and its unit together: {together}.") from None
        raise


def _read(subject: Subject, texts: dict[str, list[str]], system: System) -> tuple[Given, list[str]]:
    values: dict[str, object] = {}
    told: list[str] = []
    for argument in subject.arguments:
        typed = texts.get(argument.name)
        assumed = typed is None and argument.default != ""
        if typed is None and not assumed:
            continue
        try:
            # A default is written in metric units, and reads the same under either system.
            read_as = System.METRIC if assumed else system
            found = [argument.reader.read(text, read_as) for text in typed or [argument.default]]
        except (EntryError, BadInput) as fault:
            raise Misuse(f"{argument.name}: {fault}") from None
        values[argument.name] = found if argument.many else found[0]
        shown = " ".join(argument.reader.show(value, system) for value in found)
        told.append(f"{argument.name} {shown}{' (assumed)' if assumed else ''}")
    return Given(values), told
