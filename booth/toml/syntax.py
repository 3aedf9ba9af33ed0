"""From the text of a file to its TOML tables and the line of every key, or to syntax faults.

``tomllib`` stops at the first fault. Where that fault lies within one line, the line is set aside
and the rest is read too, so that all faults of a file are told at once. What ``tomllib`` says about a
fault, and the line itself, are put into a painter's words: three with bars between them, what was
found, what was expected, what to do.
"""

from __future__ import annotations

import re
import tomllib
from functools import cache
from typing import Any

from booth.files.faults import Faults, quoted
from booth.toml.lines import where

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


ENDING = r"\s*,?\s*(#.*)?$"
VALUE = r"^\s*(?P<key>[\w.\"'-]+)\s*=\s*"
NUMBER = r"[-+]?\d[\d.,/ ]*"
HEADER = re.compile(r"\s*\[\[?[ \t]*[A-Za-z][\w. \t-]*\]\]?\s*(#.*)?$")

#: The usual slips of a hand-written file by their pattern, most telling first.
SLIPS: dict[str, str] = {
    r"[\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb]": (
        'a curly quotation mark | straight quotation marks, "like this"'
        " | A word processor makes curly ones: use a plain text editor."
    ),
    VALUE + ENDING: (
        "a key with nothing after its = | a value after the ="
        " | Write the value, or delete the line if the data sheet does not say."
    ),
    VALUE + r"(True|False|TRUE|FALSE|yes|no|Yes|No)" + ENDING: (
        "{value} | true or false, in small letters and without quotation marks |"
    ),
    VALUE + r"[-+]?\d+,\d+" + ENDING: (
        "the number {value} with a comma | a bare number with a point, as in 1.5 |"
    ),
    VALUE + NUMBER + r"(?P<unit>[^\W\d_]|%|°|µ|\"|').*$": (
        "{value} without quotation marks | a quantity with its unit in quotation marks"
        ' | Write {key} = "{value}".'
    ),
    VALUE + r"[^\W\d_][^\"'=\[\]{}]*$": (
        "the words {value} without quotation marks | a text in quotation marks"
        ' | Write {key} = "{value}".'
    ),
    r"^\s*(?P<key>[\w.\"'-]+)\s*:": (
        "a colon after the key {key} | an equals sign | Write {key} = and then the value."
    ),
}

CONTROL = "a control character | plain text | Delete it; it may not be visible."
BACKSLASH = "a backslash | no backslash within quotation marks | Write / or two backslashes."
KEY_VALUE = "key = value | A comment begins with #."

#: What tomllib says, by its beginning.
MEANINGS: dict[str, str] = {
    "Unterminated string": "a text that never ends | a closing quotation mark |",
    "Illegal character '\\n'": "a text that does not end in this line | a closing quotation mark |",
    "Illegal character": CONTROL,
    "Found invalid character": CONTROL,
    "Unclosed array": (
        "a list that is not closed, or lacks a comma between two items"
        " | commas between the items and a ] at the end | Look here and in the lines above."
    ),
    "Unclosed inline table": (
        "a { that is not closed, or lacks a comma between two keys"
        " | { key = value, key = value } in one line |"
    ),
    "Duplicate inline table key": "a key twice within { } | each key once |",
    "Cannot": "a key or table that was given before | each once |",
    "Expected ']": "a table name that is not closed | [name], alone in its line |",
    "Expected '='": f"no = after the key | {KEY_VALUE}",
    "Expected newline": "something more after the value | one key = value in a line |",
    "Unescaped '\\'": BACKSLASH,
    "Invalid hex value": BACKSLASH,
    "Invalid date": "a date that does not exist | a value |",
    "Invalid value": (
        'a value that cannot be read | a text in "quotation marks", a bare number, true, false, '
        "or a list in [ ] |"
    ),
    "Invalid statement": f"a line that is neither key = value nor [table] | {KEY_VALUE}",
    "Invalid initial character for a key": (
        "a key that begins with a strange character | a key of letters, digits, _ and - |"
    ),
}


def words_for(message: str, line: str, column: int) -> tuple[str, str, str]:
    """Say what is wrong with `line`; `message` is what tomllib said without the position."""
    words = f"what is no TOML near column {column} | key = value |"
    if message.startswith(("Invalid value", "Unclosed array")) and HEADER.match(line):
        found = f"{quoted(line.strip(), marks='')} inside a list that is not closed"
        return found, "a ] in a line above it", "Close the list before the next table."
    is_inside = message.startswith(("Illegal", "Unterminated", "Unescaped", "Invalid hex", "Found"))
    slip = None if is_inside else next((slip for slip in SLIPS if re.search(slip, line)), None)
    if slip:
        words = SLIPS[slip]
    else:
        words = next((MEANINGS[start] for start in MEANINGS if message.startswith(start)), words)
    found, expected, advice = (_filled(part.strip(), line) for part in words.split("|"))
    return found, expected, advice


def _filled(text: str, line: str) -> str:
    """Put the key and the value of `line` into `text`."""
    key, equals, value = line.partition("=")
    if not equals:
        key = line.partition(":")[0]
    parts = {"key": key.strip(), "value": value.split("#")[0].strip().rstrip(",").strip()}
    # Not str.format: what was found in the file may itself hold braces.
    return re.sub(r"\{(key|value)\}", lambda match: quoted(parts[match[1]], marks=""), text)
