"""One question and its reply: an answer, no figure, or a refusal, each with its exit code."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import msgspec

from booth.figure import answer
from booth.figure.catalogue import subjects
from booth.figure.grammar import Misuse, Taken, read_words
from booth.figure.options import Options
from booth.figure.subject import Subject
from booth.trade.result import BadInput, Outside
from booth.units import System
from booth.units.sentences import in_units

ANSWERED, BAD_INPUT, NO_FIGURE = 0, 2, 3


class Reply(msgspec.Struct, frozen=True):
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
    subject, rest = subject_of(name, rest)
    if subject is None:
        return _which(name, options)
    system = options.system or System.US
    try:
        given = read_words(subject, rest, options.system, _taken(subject, options))
        manner = options.manner(given.heard)
        system = manner.systems[0]
        found = _in_units(subject.answer(given.values), system)
    except (Misuse, BadInput) as fault:
        said = in_units(fault if isinstance(fault, BadInput) else str(fault), system)
        hint = f" 'booth figure {subject.name} --help' says what it takes."
        return refused(subject.name, f"{said}{hint}", options)
    told = given.shown(manner.systems[0])
    code = ANSWERED if found.outside is None else NO_FIGURE
    lines = answer.lines(found, told, subject.source, manner, options.why)
    if not options.as_json:
        return Reply(code, lines)
    from booth.figure.data import answer_as_json

    return Reply(code, lines, answer_as_json(subject, found, told, manner))


def subject_of(name: str, rest: Sequence[str]) -> tuple[Subject | None, list[str]]:
    """Give the subject that a word surely means, if any, and the words behind it."""
    known = subjects()
    exact = known.get(name.lower().replace("_", "-"))
    if exact is not None:
        return exact, list(rest)
    from booth.figure.search import meant_by

    meant = meant_by(name, known)
    return known[meant.subjects[0]] if meant.sure else None, [*meant.more, *rest]


def _which(name: str, options: Options) -> Reply:
    """Say which subjects a word may mean."""
    from booth.figure.search import meant_by

    known = subjects()
    meant = meant_by(name, known)
    names = meant.subjects
    if not names:
        return refused("", f"There is no subject {name!r}. 'booth figure' lists them.", options)
    sentence = f"{name!r} may mean {' or '.join(names)}."
    if meant.spelt:
        sentence = f"There is no subject {name!r}. Did you mean {' or '.join(names)}?"
        return refused("", sentence, options, names)
    lines = [sentence]
    for each in names:
        lines.append(f"  {each:22} {known[each].says}")
        lines.append(f"  {'':22} booth figure {each} {known[each].examples[0]}".rstrip())
    return msgspec.structs.replace(refused("", sentence, options, names), lines=lines)


def _in_units(found: answer.Answer, system: System) -> answer.Answer:
    """Give an answer with every sentence of the trade in the painter's units."""
    outside = found.outside
    if outside is not None:
        reason, advice = in_units(outside.reason, system), in_units(outside.advice, system)
        outside = Outside(reason, advice, in_units(outside.rule, system))
    return msgspec.structs.replace(
        found,
        items=tuple(
            msgspec.structs.replace(item, value=in_units(item.value, system))
            if isinstance(item.value, str)
            else item
            for item in found.items
        ),
        rule=in_units(found.rule, system),
        notes=tuple(in_units(note, system) for note in found.notes),
        cautions=tuple(in_units(caution, system) for caution in found.cautions),
        outside=outside,
    )


def _taken(subject: Subject, options: Options) -> Mapping[str, Taken]:
    if not (options.profile or options.gun or options.shop):
        return {}
    from booth.figure.taken import taken

    return taken(subject, options)
