"""What a subject is: a name, its arguments, the function it asks, and how its answer is told."""

from __future__ import annotations

import dataclasses
import functools
import shlex
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from booth.figure import docs
from booth.figure.answer import Answer, Item
from booth.figure.arguments import Argument, arguments_of, call
from booth.figure.docs import Function
from booth.figure.exceptions import LACKING, ROWS, Row
from booth.figure.results import tell
from booth.figure.shapes import words_of


def plain_name(name: str) -> str:
    """Give the name of a function without its unit and without 'at': ``dew_point_c``, dew point."""
    return words_of(name).removesuffix(" at")


@dataclass(frozen=True)
class Subject:
    """One thing that can be asked.

    function: what is called; functions: of the trade, that it answers; the first of them, or all if
    `all_told`, give purpose, limits and source; typed: examples that its own docstring has not.
    """

    name: str
    function: Function
    functions: tuple[Function, ...]
    all_told: bool = False
    typed: tuple[str, ...] = ()

    @property
    def row(self) -> Row:
        """What is other in it than would follow from its function."""
        return ROWS.get(self.function.__name__, Row())

    @property
    def told(self) -> tuple[Function, ...]:
        """The functions whose docstrings are shown."""
        return self.functions if self.all_told else self.functions[:1]

    @functools.cached_property
    def says(self) -> str:
        """What is asked, as the list of subjects has it."""
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
        """Where the rule is published."""
        return " / ".join(dict.fromkeys(docs.section(each, "Source") for each in self.told))

    def argument(self, name: str) -> Argument | None:
        """Give the argument of that name, if any."""
        return next((each for each in self.arguments if each.name == name), None)

    def answer(self, given: Mapping[str, Any]) -> Answer:
        """Answer with the values given. Raises BadInput."""
        row, first = self.row, self.functions[0]
        label = (row.label or plain_name(self.function.__name__)).format_map(given)
        found = call(self.function, self.arguments, given)
        if found is None or found == ():
            answer = Answer(
                (
                    Item(
                        label.split("|")[0] or self.name,
                        LACKING.get(self.function.__name__, "none"),
                    ),
                )
            )
        else:
            answer = tell(first, found, label)
        if answer.outside is not None:
            return answer
        rules = dict.fromkeys((*map(docs.formula, self.told), answer.rule))
        caution = getattr(first, "__globals__", {}).get("CAUTION", "")
        notes = dict.fromkeys((*answer.notes, row.note.format_map(given), caution))
        return dataclasses.replace(
            answer,
            rule="; ".join(rule for rule in rules if rule) or self.source.partition(";")[0],
            notes=tuple(note for note in notes if note),
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
