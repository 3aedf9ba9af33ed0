"""The words after a subject become its arguments.

Values stand in their places, in any order where their units tell them apart, or after their name:
``time=30s``, ``--time 30s``, ``--time=30s``; the names at, from and to may also stand before their
value as a word. Arguments that may be left out are given by name.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from booth.figure.answer import Told
from booth.figure.arguments import Argument
from booth.figure.heard import Heard
from booth.figure.placing import Ambiguous, Placing
from booth.figure.readers import Amount, near
from booth.figure.subject import Subject
from booth.trade.mixing.components import Measure
from booth.trade.result import BadInput
from booth.units import EntryError, System
from booth.units.sentences import in_units

#: Names that may stand before their value without any sign.
WORDS = ("at", "from", "to")
_NAMED = re.compile(r"^(?:--)?([A-Za-z][A-Za-z_-]*)=(.*)$", re.DOTALL)


class Misuse(ValueError):
    """The words do not fit the subject; the message is a sentence."""


class Taken(NamedTuple):
    """A value that nobody typed. source: the profile or shop file it is from; how: of a range, where."""

    value: Any
    source: str
    how: str = ""


class Given(NamedTuple):
    """values: by the names of the arguments; told: what was understood; system, heard: its units."""

    values: dict[str, Any]
    told: list[tuple[Argument, list[Any], Taken | None]]
    heard: Heard

    def shown(self, system: System) -> list[Told]:
        """Give what was understood, as it is read back."""
        digits = self.heard.significant
        found = []
        for argument, values, source in self.told:
            text = " ".join(argument.reader.show(value, system, digits) for value in values)
            assumed = source is ASSUMED
            plain = assumed and (values[0] is False or isinstance(values[0], Measure))
            where = ("", "") if source is None or assumed else (source.source, source.how)
            found.append(Told(argument.name, text, assumed, *where, plain))
        return found


ASSUMED = Taken(None, "assumed")


def sort_words(subject: Subject, words: Sequence[str]) -> tuple[dict[str, list[str]], list[str]]:
    """Give the texts of the arguments that were named, and the words without a name. Raises Misuse."""
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
    return found, unnamed


def read_words(
    subject: Subject,
    words: Sequence[str],
    system: System | None,
    taken: Mapping[str, Taken] | None = None,
) -> Given:
    """Read the arguments. system: that of bare numbers; None: the one the typed units are of.

    taken: what a profile or the shop file says, by argument; what was typed comes first. Raises
    Misuse with a sentence.
    """
    taken = taken or {}
    named, unnamed = sort_words(subject, words)
    needed = [each for each in subject.arguments if not each.optional]
    free = [each for each in needed if each.name not in named or each.many]
    texts = _placed(free, unnamed, taken, named, system or System.US)
    for name, found in named.items():
        texts[name] = [*found, *texts.get(name, ())]
    given = _read(subject, texts, taken, system or System.US)
    missing = [each.name for each in needed if each.name not in {*texts, *taken}]
    if missing:
        raise Misuse(f"{', '.join(missing)} {'is' if len(missing) == 1 else 'are'} missing.")
    if system is None and given.heard.systems == {System.METRIC}:
        return _read(subject, texts, taken, System.METRIC)
    return given


def _placed(
    free: Sequence[Argument],
    words: Sequence[str],
    taken: Mapping[str, Taken],
    named: Mapping[str, Sequence[str]],
    system: System,
) -> dict[str, list[str]]:
    """Give the words without a name by argument: first those that nothing else tells."""
    if not words:
        return {}
    open_ = [each for each in free if each.name not in taken and each.name not in named]
    best = None
    for slots in dict.fromkeys((tuple(open_), tuple(free))):
        try:
            placed = Placing(slots, system).place(words)
        except Ambiguous as fault:
            raise Misuse(str(fault)) from None
        if placed is not None and placed.fits:
            return dict(placed.texts)
        best = best or placed
    if best is None:
        raise Misuse(f"{words[min(len(open_), len(words) - 1)]!r} is one word too many.")
    return dict(best.texts)


def _read(
    subject: Subject,
    texts: Mapping[str, Sequence[str]],
    taken: Mapping[str, Taken],
    system: System,
) -> Given:
    heard = Heard(system)
    values: dict[str, Any] = {}
    told: list[tuple[Argument, list[Any], Taken | None]] = []
    for argument in subject.arguments:
        source = None
        words = [word for text in texts.get(argument.name, ()) for word in argument.words(text)]
        try:
            found = [argument.reader.read(word, heard) for word in words]
        except (EntryError, BadInput) as fault:
            said = in_units(fault if isinstance(fault, BadInput) else str(fault), system)
            raise Misuse(f"{argument.name}: {said}") from None
        if not found and argument.name in taken and not _idle(argument, values):
            source = taken[argument.name]
            found = list(source.value) if argument.many else [source.value]
        elif not found and argument.default is not None:
            found, source = [_assumed(argument, values)], ASSUMED
        if not found:
            continue
        values[argument.name] = found if argument.many else found[0]
        told.append((argument, found, source))
    return Given(values, told, heard)


def _amount(values: Mapping[str, Any]) -> Amount | None:
    return next((value for value in values.values() if isinstance(value, Amount)), None)


def _assumed(argument: Argument, values: Mapping[str, Any]) -> Any:
    """Give what is assumed: an amount that was typed as a weight is poured on a scale."""
    amount = _amount(values)
    return amount.measure if argument.parameter == "measure" and amount else argument.default


def _idle(argument: Argument, values: Mapping[str, Any]) -> bool:
    """Say whether what was typed leaves nothing for it to do: the density of what was not weighed."""
    amount = _amount(values)
    optional = argument.parameter == "density_g_ml" and argument.optional
    return optional and amount is not None and amount.measure is Measure.VOLUME
