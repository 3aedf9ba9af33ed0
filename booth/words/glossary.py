"""The words of the trade that the program shows: one word for one thing, each in one plain sentence.

The table stands in ``terms``; here it is read, and a term is found in a text or by another word.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache

import msgspec

from booth.words.terms import TABLE

_NEVER = "never: "


class Term(msgspec.Struct, frozen=True):
    """word; forms: the other ways it may stand; says: what it means; never: words not used for it."""

    word: str
    forms: tuple[str, ...]
    says: str
    never: tuple[str, ...] = ()

    @property
    def line(self) -> str:
        """The word and its sentence."""
        return f"{self.word}: {self.says}"

    @property
    def elsewhere(self) -> str:
        """What others call it, as a sentence; other spellings left out, "" where none is left."""
        own = _letters(self.word)[:4]
        *most, last = ("", *(each for each in self.never if _letters(each)[:4] != own))
        return (
            f"Some call it {', '.join(most[1:])}{' or ' if most[1:] else ''}{last}." if most else ""
        )


def _letters(word: str) -> str:
    return re.sub("[^a-z]", "", word.lower())


def _term(paragraph: str) -> Term:
    names, says, *rest = (line.strip() for line in paragraph.splitlines())
    word, *forms = names.split(", ")
    never = rest[0].removeprefix(_NEVER).split(", ") if rest else []
    return Term(word, tuple(forms), says, tuple(never))


TERMS = tuple(map(_term, re.split(r"\n(?! )", TABLE.strip())))


def found_in(words: Iterable[str], text: str) -> list[str]:
    """Which words stand in a text, whole, in any case; those all in capitals only so."""
    return [word for word in words if _sought((word,)).search(text)]


@cache
def _sought(words: tuple[str, ...]) -> re.Pattern[str]:
    """The longest first: 'dry film' is not 'film'."""
    parts = []
    for word in sorted(words, key=len, reverse=True):
        spaced = re.escape(word).replace(r"\ ", r"\s+")
        parts.append(spaced if word == word.upper() else f"(?i:{spaced})")
    return re.compile(rf"(?<![\w-])(?:{'|'.join(parts)})(?![\w-])")


@cache
def _by_form() -> dict[str, Term]:
    return {form.lower(): each for each in TERMS for form in (each.word, *each.forms)}


def terms_in(texts: Iterable[str]) -> tuple[Term, ...]:
    """The terms that stand in some texts, in the order of the alphabet."""
    known = _by_form()
    every = tuple(form for each in TERMS for form in (each.word, *each.forms))
    found = {
        known[" ".join(match[0].lower().split())].word
        for text in texts
        for match in _sought(every).finditer(text)
    }
    return tuple(each for each in TERMS if each.word in found)


def terms_like(word: str) -> tuple[Term, ...]:
    """The terms that a word may mean: by the word, a form, or a word that is not used for it."""
    sought = " ".join(word.lower().replace("-", " ").split())
    if not sought:
        return ()

    def names(term: Term) -> list[str]:
        every = (term.word, *term.forms, *term.never)
        return [each.lower().replace("-", " ") for each in every]

    exact = tuple(each for each in TERMS if sought in names(each))
    begun = (each for each in TERMS if any(name.startswith(sought) for name in names(each)))
    return exact or tuple(begun)
