"""What a subject is: a name, its arguments, the function it asks, and how its answer is told."""

from __future__ import annotations

import functools
import re
import shlex
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import msgspec

from booth.figure import docs
from booth.figure.answer import Answer, Item
from booth.figure.arguments import Argument, arguments_of, call
from booth.figure.docs import Function
from booth.figure.exceptions import LACKING, ROWS, Row
from booth.figure.likely import checked
from booth.figure.results import tell
from booth.figure.shapes import words_of


def _once(*sentences: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(filter(None, sentences)))


#: What the name of a function says beyond the figure itself: 'turns for delivery' are turns.
_CIRCUMSTANCE = re.compile(r" (after|at|for|from|of)\b.*")
#: What is filled into a label from what was given.
_FILLED = re.compile(r" (as|in) \{.*?\}")


@dataclass(frozen=True)
class Subject:
    """One thing that can be asked.

    function: what is called; functions: of the trade, that it answers; the first of them, or all if
    `all_told`, give purpose, limits and source; typed: examples that its own docstring has not.
    """

    function: Function
    functions: tuple[Function, ...]
    all_told: bool = False
    typed: tuple[str, ...] = ()

    @property
    def row(self) -> Row:
        return ROWS.get(self.function.__name__, Row())

    @property
    def words(self) -> str:
        """The name of its function without its unit and without 'at', as words: 'dew point'."""
        return words_of(self.function.__name__).removesuffix(" at")

    @functools.cached_property
    def name(self) -> str:
        return self.row.name or self.words.replace(" ", "-")

    @functools.cached_property
    def key(self) -> str:
        """The keys of its values as data, where its result has no fields to name them."""
        label = _FILLED.sub("", self.row.label) or _CIRCUMSTANCE.sub("", self.words)
        first, *others = (
            part.strip().replace(" ", "_").replace("-", "_") for part in label.split("|")
        )
        return "|".join((first or "reading", *others))

    @property
    def told(self) -> tuple[Function, ...]:
        return self.functions if self.all_told else self.functions[:1]

    @functools.cached_property
    def says(self) -> str:
        return docs.purpose(self.function if self.function.__doc__ else self.functions[0])

    @functools.cached_property
    def arguments(self) -> tuple[Argument, ...]:
        """What it takes, in the order in which values stand in their places."""
        return arguments_of(self.function, self.functions)

    @functools.cached_property
    def examples(self) -> tuple[str, ...]:
        """Words as they are typed, from the examples of the docstring."""
        if self.typed:
            return self.typed
        typed = map(self._typed, docs.calls(self.function))
        return tuple(dict.fromkeys(words for words in typed if words is not None))

    @property
    def source(self) -> str:
        return " / ".join(dict.fromkeys(docs.section(each, "Source") for each in self.told))

    def argument(self, name: str) -> Argument | None:
        return next((each for each in self.arguments if each.name == name), None)

    def answer(self, given: Mapping[str, Any]) -> Answer:
        """Answer with the values given. Raises BadInput."""
        row, first = self.row, self.functions[0]
        label = (row.label or _CIRCUMSTANCE.sub("", self.words)).format_map(given)
        found = call(self.function, self.arguments, given)
        if found is None or found == ():
            nothing = LACKING.get(self.function.__name__, "none")
            answer = Answer((Item(label.split("|")[0] or self.name, nothing),))
        else:
            answer = checked(tell(first, found, label))
        if answer.outside is not None:
            return answer
        caution = getattr(first, "__globals__", {}).get("CAUTION", "")
        formulas = "; ".join(filter(None, map(docs.formula, self.told)))
        return msgspec.structs.replace(
            answer,
            rule=answer.rule or formulas or self.source.partition(";")[0],
            notes=_once(*answer.notes, row.note.format_map(given)),
            cautions=_once(*answer.cautions, caution),
            found=found,
        )

    def _typed(self, values: Mapping[str, Any]) -> str | None:
        """Give the words that stand for the values of parameters, None where one is missing."""
        words = []
        for each in self.arguments:
            value = values.get(each.parameter)
            if each.field:
                value = getattr(value, each.field, None)
            if not each.optional and value in (None, [], ()):
                return None
            if value is None or value == each.default:
                continue
            for one in value if each.many else [value]:
                word = shlex.quote(one if type(one) is str else each.reader.typed(one))
                words.append(f"{each.name}={word}" if each.optional else word)
        return " ".join(words)
