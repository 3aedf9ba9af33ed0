"""The help: how to ask, the list of subjects, and what one of them takes, rests on and is limited to."""

from __future__ import annotations

import textwrap
from typing import Any

from booth.figure import docs
from booth.figure.arguments import Argument
from booth.figure.catalogue import groups, subjects
from booth.figure.subject import Subject
from booth.units import System

#: Columns of the help, and of the names in it.
WIDTH = 96
NAME_WIDTH = 26

SHORTLY = """\
booth figure SUBJECT [VALUE ...] [NAME=VALUE ...]

Answers one computation of the trade in one line.

  booth figure delivery 6oz 30s                   what the gun delivers
  booth figure mix 600ml 4:1                      how much of each, poured one on the other
  booth figure mix 200g --profile two-pack-clear  the same for a coating of yours
  booth figure dew-point 72F 60%                  at how many degrees water settles
  booth figure viscosity 'Ford #4' 30s            what the seconds of a cup stand for
  booth figure pot-life 4h at 21C 31C             how long the mix can be sprayed today

Any plain word of the trade finds its subject: booth figure cup, booth figure wft.
'booth figure' lists all {count} of them; 'booth figure SUBJECT --help' says what one takes.

Values stand in any order where their units tell them apart, or after their name: time=30s.
You are answered in the units that you type. A time needs its unit.

  --why             with what was given, notes, rule and source
  --units UNITS     us, metric or both, whatever was typed
  --profile NAME    takes what is missing from a coating profile, and says what it took
  --gun NAME        the same from a gun of the shop file; --shop from compressor and room
  --json            as JSON; --schema [SUBJECT] prints the JSON Schema that it keeps to
  -                 one question a line from standard input, one answer a line

Exit code: 0 answered, 2 the words cannot be read, 3 no honest figure; of several the worst.
It gives no permission: data sheet, local codes and licensed practice come first.
"""


def shortly() -> str:
    """Say how to ask, on one screen."""
    return SHORTLY.format(count=len(subjects())).rstrip()


def everything() -> str:
    """Give the list of all subjects, one a line, by what they are about."""
    lines = ["booth figure SUBJECT [VALUE ...]; 'booth figure --help' says how to ask.", ""]
    for title, some in groups().items():
        lines.append(f"{title}:")
        lines += [_wrapped(f"  {each.name:{NAME_WIDTH}}", f" {each.says}") for each in some]
        lines.append("")
    return "\n".join(lines).rstrip()


def list_as_json() -> list[dict[str, Any]]:
    """Give the list of all subjects as JSON."""
    return [
        {
            "subject": each.name,
            "group": title,
            "says": each.says,
            "arguments": [
                {"name": argument.name, "needed": not argument.optional, "many": argument.many}
                for argument in each.arguments
            ],
            "examples": [f"booth figure {each.name} {words}".rstrip() for words in each.examples],
        }
        for title, some in groups().items()
        for each in some
    ]


def _argument(argument: Argument, system: System) -> str:
    name = f"{argument.name}=VALUE" if argument.optional else argument.name.upper()
    what = argument.meaning
    if argument.many and "one or more" not in what:
        what += ", one or more"
    if argument.default is not None:
        what += f" ({argument.reader.show(argument.default, system, None)} if left out)"
    return _wrapped(f"  {name:{NAME_WIDTH}}", f" {what}; {argument.reader.explain(system)}")


def _wrapped(start: str, text: str) -> str:
    indent = " " * (NAME_WIDTH + 3)
    return textwrap.fill(text, WIDTH, initial_indent=start, subsequent_indent=indent)


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
    lines = [" ".join(["booth figure", subject.name, *words]), ""]
    lines += [_paragraph(_sentence(subject.says)), "", "For example:"]
    lines += [f"  booth figure {subject.name} {example}".rstrip() for example in subject.examples]
    for title, optional in (("Takes:", False), ("By name, if wanted:", True)):
        found = [each for each in subject.arguments if each.optional is optional]
        if found:
            lines += ["", title, *(_argument(each, system) for each in found)]
    for function in subject.told:
        lines += [
            "",
            *([_paragraph(_sentence(docs.purpose(function)))] if len(subject.told) > 1 else []),
            _paragraph(f"Limits: {docs.section(function, 'Range')}"),
            _paragraph(f"Source: {docs.section(function, 'Source')}"),
        ]
    return "\n".join(lines)
