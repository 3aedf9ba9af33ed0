"""The command itself: words in, one line (or JSON) out, an exit code."""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from typing import Any, TextIO

from booth.figure import help
from booth.figure.answer import Answer, line
from booth.figure.catalogue import subjects
from booth.figure.grammar import Misuse, read_words
from booth.figure.readers import near
from booth.figure.subject import Subject
from booth.files.safe_text import visible
from booth.trade.result import BadInput
from booth.units import System
from booth.units.sentences import in_units

USAGE = 2
#: For a terminal that has not the signs of the trade.
_PLAIN = str.maketrans({"°": "", "²": "2", "³": "3", "µ": "u", "“": '"', "”": '"', "∞": "inf"})
_UNITS = {"--us": System.US, "--metric": System.METRIC}
_HELP, _JSON = {"--help", "-h"}, "--json"
_OPTIONS = {*_UNITS, *_HELP, _JSON}


def main(arguments: Sequence[str]) -> int:
    """Answer ``booth figure ...``; give the exit code: 0, or 2 for words that do not fit."""
    options = [word for word in arguments if word in _OPTIONS]
    words = [word for word in arguments if word not in _OPTIONS]
    system = next((_UNITS[word] for word in reversed(options) if word in _UNITS), System.US)
    if not words:
        _say(help.everything(), sys.stdout)
        return 0
    name, *rest = words
    subject = subjects().get(name.lower().replace("_", "-"))
    if subject is None:
        close = near(name, subjects())
        known = "'booth figure' lists them." if close.startswith("Known") else close
        return _misuse("", f"There is no subject {name!r}. {known}")
    if _HELP.intersection(options):
        _say(help.about(subject, system), sys.stdout)
        return 0
    try:
        given, told = read_words(subject, rest, system)
        answer = subject.answer(given)
    except (Misuse, BadInput) as fault:
        hint = f" 'booth figure {subject.name} --help' says what it takes."
        said = in_units(fault if isinstance(fault, BadInput) else str(fault), system)
        return _misuse(f" {subject.name}", f"{said}{hint}")
    if _JSON in options:
        _say(json.dumps(_plain(subject, answer, told, system), allow_nan=False), sys.stdout)
    else:
        _say(in_units(line(answer, told, subject.source, system), system), sys.stdout)
    return 0


def _plain(subject: Subject, answer: Answer, told: Sequence[str], system: System) -> dict[str, Any]:
    """Give the answer for JSON; what is not finite is null."""
    found: dict[str, Any] = {
        "subject": subject.name,
        "values": [item.plain(system) for item in answer.items],
        "notes": [in_units(each, system) for each in answer.notes],
        "given": [visible(each) for each in told],
        "rule": in_units(answer.rule, system),
        "source": subject.source,
        "estimate": answer.estimate,
        "outside": answer.outside is not None,
    }
    if answer.outside is not None:
        reason, advice = answer.outside.reason, answer.outside.advice
        found |= {"reason": in_units(reason, system), "advice": in_units(advice, system)}
    return found


def _misuse(where: str, sentence: str) -> int:
    _say(f"booth figure{where}: {sentence}", sys.stderr)
    return USAGE


def _say(text: str, stream: TextIO) -> None:
    """Write `text`: nothing in it acts on the terminal, and no character stops it."""
    shown = visible(text, keep_lines=True)
    encoding = getattr(stream, "encoding", None) or "utf-8"
    try:
        shown.encode(encoding)
    except UnicodeEncodeError:
        shown = shown.translate(_PLAIN)
    print(shown.encode(encoding, "replace").decode(encoding), file=stream)
