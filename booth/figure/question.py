"""One question and its reply: an answer, no figure, or a refusal, each with its exit code."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from booth.figure import answer
from booth.figure.catalogue import subjects
from booth.figure.grammar import Misuse, Taken, read_words
from booth.figure.options import Options
from booth.figure.readers import near
from booth.figure.subject import Subject
from booth.trade.result import BadInput

ANSWERED, BAD_INPUT, NO_FIGURE = 0, 2, 3


@dataclass(frozen=True, slots=True)
class Reply:
    """code: of the exit; lines: as text; data: as JSON; where: the subject, for a refusal."""

    code: int
    lines: Sequence[str]
    data: Mapping[str, Any] | None = None
    where: str = ""


def refused(where: str, sentence: str, options: Options, meant: Sequence[str] = ()) -> Reply:
    """Give the reply to words that cannot be read. meant: subjects that may have been meant."""
    if not options.as_json:
        return Reply(BAD_INPUT, [sentence], None, where)
    from booth.figure.data import refusal_as_json

    return Reply(BAD_INPUT, [sentence], refusal_as_json(where, sentence, meant), where)


def reply_to(options: Options) -> Reply:
    """Answer the question that the words are."""
    name, *rest = options.words
    subject = subjects().get(name.lower().replace("_", "-"))
    if subject is None:
        close = near(name, subjects())
        known = "'booth figure' lists them." if close.startswith("Known") else close
        return refused("", f"There is no subject {name!r}. {known}", options)
    try:
        given = read_words(subject, rest, options.system, _taken(subject, options))
        found = subject.answer(given.values)
    except (Misuse, BadInput) as fault:
        hint = f" 'booth figure {subject.name} --help' says what it takes."
        return refused(subject.name, f"{fault}{hint}", options)
    manner = options.manner(given.heard)
    told = given.shown(manner.systems[0])
    code = ANSWERED if found.outside is None else NO_FIGURE
    lines = answer.lines(found, told, subject.source, manner, options.why)
    if not options.as_json:
        return Reply(code, lines)
    from booth.figure.data import answer_as_json

    return Reply(code, lines, answer_as_json(subject, found, told, manner))


def _taken(subject: Subject, options: Options) -> Mapping[str, Taken]:
    return {}
