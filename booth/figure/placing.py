"""Which argument a word without a name is for: in order, or as its unit tells.

``30s 'Ford #4'`` and ``'Ford #4' 30s`` are the same question; so are ``6oz 30s`` and ``6 oz 30 s``.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from booth.figure.arguments import Argument
from booth.figure.heard import Heard
from booth.trade.result import BadInput
from booth.units import EntryError, System

#: With more words than this each stands in its place: nobody types so many in any order.
MOST_WORDS = 9


class Ambiguous(ValueError):
    """Words that could be for one argument as well as for another; the message is a sentence."""


class Placed(NamedTuple):
    """texts: of each argument, by its name; fits: every word reads as what it is placed for."""

    texts: dict[str, list[str]]
    fits: bool


class Placing:
    """Finds where words belong; reads each for an argument once."""

    def __init__(self, slots: Sequence[Argument], system: System) -> None:
        self._slots, self._system = slots, system
        self._known: dict[tuple[str, str], bool] = {}

    def place(self, words: Sequence[str]) -> Placed | None:
        """Give where the words belong; the best that can be said where they do not fit.

        None where there are more words than places. Raises Ambiguous.
        """
        ways = (self._in_order, self._by_unit) if len(words) <= MOST_WORDS else (self._in_order,)
        for typed in self._grouped(words):
            for way in ways:
                found = way(typed)
                if found is not None and found.fits:
                    return found
        return self._best(words) if len(words) <= MOST_WORDS else self._in_order(words)

    def _reads(self, word: str, argument: Argument) -> bool:
        key = word, argument.name
        if key not in self._known:
            try:
                for each in argument.words(word):
                    argument.reader.read(each, Heard(self._system))
                self._known[key] = True
            except (EntryError, BadInput):
                self._known[key] = False
        return self._known[key]

    def _grouped(self, words: Sequence[str]) -> Iterable[Sequence[str]]:
        """Give the words as they are, then with some of them joined to their neighbour: 6 oz."""
        yield words
        if len(words) > MOST_WORDS or not self._slots:
            return
        joints = range(1, len(words))
        exact = len(words) - len(self._slots)
        counts = range(1, 5) if self._slots[-1].many else (exact,)
        for count in counts:
            if not 1 <= count < len(words):
                continue
            found = []
            for kept in itertools.combinations(joints, len(words) - 1 - count):
                ends = list(itertools.pairwise((0, *kept, len(words))))
                # A number and what follows it come first: 10 oz 4:1 is no component 'oz 4'.
                other = sum(b - a > 1 and not words[a][:1].isdigit() for a, b in ends)
                found.append((other, [" ".join(words[a:b]) for a, b in ends]))
            yield from (typed for _, typed in sorted(found, key=lambda each: each[0]))

    def _assigned(self, words: Sequence[str], order: Sequence[int]) -> Placed:
        """Place the words so numbered on the single arguments, all others on the one of many."""
        singles = [slot for slot in self._slots if not slot.many]
        many = [slot for slot in self._slots if slot.many]
        pairs = [(slot, words[number]) for slot, number in zip(singles, order, strict=False)]
        rest = [word for number, word in enumerate(words) if number not in order]
        pairs += [(slot, word) for slot in many for word in rest]
        texts: dict[str, list[str]] = {}
        for slot, word in pairs:
            texts.setdefault(slot.name, []).append(word)
        whole = len(texts) == len(self._slots) and len(pairs) == len(words)
        return Placed(texts, whole and all(self._reads(word, slot) for slot, word in pairs))

    def _in_order(self, words: Sequence[str]) -> Placed | None:
        singles = [slot for slot in self._slots if not slot.many]
        if len(words) > len(singles) and len(singles) == len(self._slots):
            return None
        return self._assigned(words, range(min(len(singles), len(words))))

    def _by_unit(self, words: Sequence[str]) -> Placed | None:
        """Place the words as they read; those that units do not tell apart keep their order."""
        singles = [slot for slot in self._slots if not slot.many]
        if len(words) < len(self._slots):
            return None
        found: list[tuple[int, Placed]] = []
        for order in itertools.permutations(range(len(words)), len(singles)):
            if all(self._reads(words[n], slot) for slot, n in zip(singles, order, strict=True)):
                placed = self._assigned(words, order)
                if placed.fits:
                    found.append((_swaps(order), placed))
        if not found:
            return None
        least = min(swaps for swaps, _ in found)
        first, *others = (placed for swaps, placed in found if swaps == least)
        for other in others:
            name = next(name for name in first.texts if first.texts[name] != other.texts[name])
            raise Ambiguous(
                f"It cannot be told which word is the {name}. Name it, as "
                f"{name}={first.texts[name][0]}, or keep to the order of the help."
            )
        return first

    def _best(self, words: Sequence[str]) -> Placed | None:
        """Give the placing with the most words that read, so that the one that does not is blamed."""
        singles = [slot for slot in self._slots if not slot.many]
        if len(words) > len(singles) and len(singles) == len(self._slots):
            return None
        best, most = self._in_order(words), -1
        slots = range(len(singles))
        for chosen in itertools.combinations(slots, min(len(singles), len(words))):
            for order in itertools.permutations(range(len(words)), len(chosen)):
                pairs = [(singles[slot], words[n]) for slot, n in zip(chosen, order, strict=True)]
                # A time without its unit is blamed as that, not taken for a temperature.
                reads = sum(
                    self._reads(word, slot) or self._reads(f"{word}s", slot) for slot, word in pairs
                )
                if reads > most:
                    most = reads
                    texts = {slot.name: [word] for slot, word in pairs}
                    rest = [word for n, word in enumerate(words) if n not in order]
                    if rest and self._slots[-1].many:
                        texts[self._slots[-1].name] = rest
                    best = Placed(texts, False)
        return best


def _swaps(order: Sequence[int]) -> int:
    """Count the pairs of words that stand the other way round than their arguments do."""
    return sum(a > b for a, b in itertools.combinations(order, 2))
