"""From the text of a file to its TOML tables and the line of every key, or to syntax faults.

``tomllib`` stops at the first fault. Where that fault lies within one line, the line is set aside
and the rest is read too, so that all faults of a file are told at once.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache
from typing import Any

from booth.files.faults import Faults
from booth.toml.lines import where
from booth.toml.syntax_words import words_for

#: A table under a header that was given twice is set aside under a name that begins so.
SET_ASIDE = "set-aside-"
#: So many lines are set aside before the file is given up.
MOST_SYNTAX_FAULTS = 30
#: tomllib's time and memory grow with the square of the names in one dotted key.
MOST_DOTS = 300

POSITION = re.compile(r"\(at line (\d+), column (\d+)\)$")


def parse(text: str, faults: Faults) -> dict[str, Any]:
    """Read TOML as far as it can be read; `faults` gets its faults and its lines. Never raises."""
    lines = text.removeprefix("\ufeff").replace("\r\n", "\n").split("\n")
    if _too_many_dots(lines, faults):
        return {}
    for _ in range(MOST_SYNTAX_FAULTS):
        try:
            tables = tomllib.loads("\n".join(lines))
        except tomllib.TOMLDecodeError as error:
            faults.whole = False
            if not _set_aside(str(error), lines, faults):
                return {}
        except (ValueError, RecursionError) as error:
            deep = isinstance(error, RecursionError)
            found = "lists within lists without end" if deep else "a number of thousands of digits"
            _give_up(faults, found, "This is another kind of file.")
            return {}
        else:
            faults.lines = cache(lambda: where("\n".join(lines)).lines)
            return tables
    _give_up(faults, f"{MOST_SYNTAX_FAULTS} lines that are no TOML, and more", "Mend these first.")
    return {}


def _give_up(faults: Faults, found: str, advice: str, line: int | None = None) -> None:
    faults.whole = False
    faults.add_at(line, found, faults.what, advice)


def _set_aside(message: str, lines: list[str], faults: Faults) -> bool:
    """Tell the fault and take its line out of `lines`; False where it is no single line's."""
    if message.startswith(("Cannot", "Duplicate")) and _repeats(lines, faults):
        return True
    position = POSITION.search(message)
    number = int(position[1]) if position else _last(lines)
    line = lines[number - 1] if number <= len(lines) else ""
    column = int(position[2]) if position else len(line) + 1
    words = words_for(POSITION.sub("", message).strip(), line, column)
    faults.add_at(number, *words, column=column)
    if not _stands_alone(line):
        return False
    lines[number - 1] = ""
    return True


def _repeats(lines: list[str], faults: Faults) -> bool:
    """Tell every key and table that is given twice, and take the later ones out."""
    taken: set[int] = set()
    for repeat in where("\n".join(lines)).repeats:
        line = lines[repeat.line - 1]
        if repeat.line in taken or not (repeat.table or _balanced(line)):
            continue
        taken.add(repeat.line)
        what = "a second table of this name" if repeat.table else "this key a second time"
        expected = f"it once; it stands in line {repeat.first} already"
        advice = "Put its lines there." if repeat.table else "Delete one of the two."
        faults.add(repeat.path, what, expected, advice, repeat.line)
        # The lines under a second header must not fall to the table before it.
        lines[repeat.line - 1] = f"[{SET_ASIDE}{repeat.line}]" if repeat.table else ""
    return bool(taken)


def _stands_alone(line: str) -> bool:
    """Whether a fault in this line is the line's own: it is a fault without its neighbours too."""
    if not _balanced(line):
        return False
    try:
        tomllib.loads(line)
    except (ValueError, RecursionError):
        return True
    return False


def _balanced(line: str) -> bool:
    """Whether the line, which holds something, opens nothing that it does not close."""
    if '"""' in line or "'''" in line or not line.strip() or line.lstrip().startswith("["):
        return False
    bare = re.sub(r'"(\\.|[^"\\])*"|\'[^\']*\'', "", line)
    return bare.count("[") == bare.count("]") and bare.count("{") == bare.count("}")


def _too_many_dots(lines: list[str], faults: Faults) -> bool:
    for number, line in enumerate(lines, start=1):
        if line.count(".") > MOST_DOTS and not line.lstrip().startswith("#"):
            _give_up(faults, f"{line.count('.')} dots in one line", "", number)
            return True
    return False


def _last(lines: list[str]) -> int:
    """The number of the last line in which something stands."""
    return max((n for n, line in enumerate(lines, start=1) if line.strip()), default=1)
