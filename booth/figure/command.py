"""The command itself: questions in, answers out, an exit code."""

from __future__ import annotations

import itertools
import json
import os
import select
import shlex
import stat
import sys
from collections.abc import Iterable, Sequence
from typing import Any, TextIO

import msgspec

from booth.figure.answer import BETWEEN
from booth.figure.catalogue import subjects
from booth.figure.options import BadOption, Options, options_of
from booth.figure.question import (
    ANSWERED,
    BAD_INPUT,
    NO_FIGURE,
    Reply,
    refused,
    reply_to,
    subject_of,
)
from booth.files.safe_text import visible

#: The worst first: what the exit code of several questions is.
_WORST = (BAD_INPUT, NO_FIGURE, ANSWERED)
#: For a terminal that has not the signs of the trade.
_PLAIN = str.maketrans({"°": "", "²": "2", "³": "3", "µ": "u", "“": '"', "”": '"', "∞": "inf"})
#: The word for standard input.
EACH_LINE = "-"
#: The word that says the same as the option.
HELP = "help"
#: How long a pipe may be silent before it is taken to hold no question; with the dash, for ever.
PATIENCE_S = 0.5
#: Columns of the narrowest terminal that lines are broken for.
LEAST_WIDTH = 20


def main(arguments: Sequence[str]) -> int:
    """Answer ``booth figure ...``; give the exit code.

    0 answered, 2 words that cannot be read, 3 no honest figure; of several questions the worst.
    """
    try:
        options = options_of(arguments)
    except BadOption as fault:
        return _print(refused("", str(fault), Options(as_json="--json" in arguments)))
    if options.words[:1] == (HELP,):
        return _help(msgspec.structs.replace(options, words=options.words[1:], help=True))
    if options.words == (EACH_LINE,):
        return _every(sys.stdin, options)
    if options.schema:
        return _schema(options)
    if not options.words and not options.help and _piped(sys.stdin):
        first = sys.stdin.readline()
        if first:
            return _every(itertools.chain([first], sys.stdin), options)
    if not options.words or options.help:
        return _help(options)
    return _print(reply_to(options))


def _piped(stream: TextIO) -> bool:
    """Say whether questions stand ready in a pipe or a file; one that is silent is not waited for."""
    try:
        kind = os.fstat(stream.fileno()).st_mode
        if stat.S_ISREG(kind):
            return True
        return stat.S_ISFIFO(kind) and bool(select.select([stream], [], [], PATIENCE_S)[0])
    except (OSError, ValueError):  # closed, or none of the machine's own
        return False


def _every(questions: Iterable[str], options: Options) -> int:
    """Answer one question a line in one line each; give the worst exit code."""
    codes = {ANSWERED}
    for line in questions:
        try:
            words = shlex.split(line, comments=True)
            asked = options_of(words[2:] if words[:2] == ["booth", "figure"] else words, options)
        except ValueError as fault:  # a quotation mark without its second one, or a bad option
            reply = refused("", f"{line.strip()!r}: {str(fault).rstrip('.')}.", options)
        else:
            if not asked.words:
                continue
            reply = reply_to(asked)
        codes.add(_print(reply, whole=True))
        sys.stdout.flush()
    return next(code for code in _WORST if code in codes)


def _print(reply: Reply, whole: bool = False) -> int:
    """Print a reply. whole: an answer of several lines in one, a refusal in the place of an answer."""
    if reply.data is not None:
        _say(_json(reply.data), sys.stdout)
    elif reply.code == BAD_INPUT:
        where = f" {reply.where}" if reply.where else ""
        first, *others = reply.lines
        text = "\n".join([f"booth figure{where}: {first}", *([] if whole else others)])
        _say(text, sys.stdout if whole else sys.stderr)
    else:
        _say(BETWEEN.join(reply.lines) if whole else _fitted(reply.lines, sys.stdout), sys.stdout)
    return reply.code


def _fitted(lines: Sequence[str], stream: TextIO) -> str:
    """Give lines as a text: in a terminal none is longer than it is wide."""
    if not stream.isatty():
        return "\n".join(lines)
    import shutil
    import textwrap

    width = max(LEAST_WIDTH, shutil.get_terminal_size().columns)
    return "\n".join(textwrap.fill(each, width, subsequent_indent="   ") for each in lines)


def _json(data: Any) -> str:
    return json.dumps(data, allow_nan=False, ensure_ascii=False)


def _schema(options: Options) -> int:
    from booth.figure import data

    named = [subjects().get(word.lower().replace("_", "-")) for word in options.words]
    missing = [word for word, found in zip(options.words, named, strict=True) if found is None]
    if missing:
        known = "'booth figure' lists them."
        return _print(refused("", f"There is no subject {missing[0]!r}. {known}", options))
    wanted = [each for each in named if each is not None] or list(subjects().values())
    _say(json.dumps(data.schema(wanted), indent=2), sys.stdout)
    return ANSWERED


def _help(options: Options) -> int:
    from booth.figure import help
    from booth.units import System

    if not options.words and options.as_json:
        _say(_json(help.list_as_json()), sys.stdout)
        return ANSWERED
    if not options.words:
        _say(help.shortly() if options.help else help.everything(), sys.stdout)
        return ANSWERED
    subject, _ = subject_of(options.words[0], ())
    if subject is None:
        return _print(reply_to(options))
    _say(help.about(subject, options.system or System.US), sys.stdout)
    return ANSWERED


def _say(text: str, stream: TextIO) -> None:
    """Write `text`: nothing in it acts on the terminal, and no character stops it."""
    shown = visible(text, keep_lines=True)
    encoding = getattr(stream, "encoding", None) or "utf-8"
    try:
        shown.encode(encoding)
    except UnicodeEncodeError:
        shown = shown.translate(_PLAIN)
    print(shown.encode(encoding, "replace").decode(encoding), file=stream)
