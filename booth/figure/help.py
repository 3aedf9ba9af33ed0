"""The help: the list of subjects, and what one of them takes, rests on and is limited to."""

from __future__ import annotations

import textwrap

from booth.figure import docs
from booth.figure.arguments import Argument
from booth.figure.catalogue import groups
from booth.figure.subject import Subject
from booth.units import System

#: Columns of the help, and of the names in it.
WIDTH = 96
NAME_WIDTH = 30

HEAD = """\
booth figure SUBJECT [VALUE ...] [NAME=VALUE ...] [--json] [--us | --metric]

Answers one computation of the trade in one line, with its rule and its source.
Values stand in their places or after their name: time=30s, --time 30s, --time=30s;
at, from and to may stand before their value as a word. Keep a number and its unit
together: 30s or '30 s'. Any unit of the right kind is understood; a bare number
takes the unit that the help names. Results are shown in US units unless --metric is
given; --json gives the numbers in one fixed unit each, whichever is shown.
'booth figure SUBJECT --help' says what a subject takes, and its limits.
"""


def everything() -> str:
    """Give the list of all subjects, each with an example."""
    lines = [HEAD]
    for title, subjects in groups().items():
        lines.append(f"{title}:")
        for subject in subjects:
            lines.append(_wrapped(f"  {subject.name:24}", subject.says, 26))
            example = " ".join(subject.examples[:1])
            lines.append(f"  {'':24}booth figure {subject.name} {example}".rstrip())
        lines.append("")
    return "\n".join(lines).rstrip()


def _argument(argument: Argument, system: System) -> list[str]:
    name = f"{argument.name}=VALUE" if argument.optional else argument.name.upper()
    what = argument.meaning
    if argument.many:
        what += ", one or more"
    if argument.default is not None:
        what += f" ({argument.reader.show(argument.default, system)} if left out)"
    return [
        _wrapped(f"  {name:{NAME_WIDTH}}", what),
        _wrapped(f"  {'':{NAME_WIDTH}}", argument.reader.explain(system)),
    ]


def _wrapped(start: str, text: str, indent: int = NAME_WIDTH + 2) -> str:
    return textwrap.fill(text, WIDTH, initial_indent=start, subsequent_indent=" " * indent)


def _paragraph(text: str) -> str:
    return textwrap.fill(text, WIDTH, subsequent_indent="  ")


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."


def about(subject: Subject, system: System) -> str:
    """Give all that is to be said of one subject."""
    words = [
        each.name.upper() + (" ..." if each.many else "")
        for each in subject.arguments
        if not each.optional
    ]
    if any(each.optional for each in subject.arguments):
        words.append("[NAME=VALUE ...]")
    usage = " ".join(["booth figure", subject.name, *words, "[--json] [--us | --metric]"])
    lines = [usage, "", _paragraph(_sentence(subject.says)), ""]
    for title, optional in (("In this order, or by name:", False), ("By name, if wanted:", True)):
        found = [each for each in subject.arguments if each.optional is optional]
        if found:
            lines += [title, *(text for each in found for text in _argument(each, system))]
    for function in subject.told:
        lines += [
            "",
            *([_paragraph(_sentence(docs.purpose(function)))] if len(subject.told) > 1 else []),
            _paragraph(f"Limits: {docs.section(function, 'Range')}"),
            _paragraph(f"Source: {docs.section(function, 'Source')}"),
        ]
    lines += ["", "For example:"]
    lines += [f"  booth figure {subject.name} {example}".rstrip() for example in subject.examples]
    return "\n".join(lines)
