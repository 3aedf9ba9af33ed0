"""What ``tomllib`` says about a syntax fault, and the line itself, in a painter's words.

The words are three with bars between them: what was found, what was expected, what to do.
"""

from __future__ import annotations

import re

from booth.files.faults import quoted

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
