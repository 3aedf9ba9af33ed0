"""What ``tomllib`` says about a syntax fault, and the line itself, in a painter's words."""

from __future__ import annotations

import re
from dataclasses import dataclass

from booth.files.faults import quoted

__all__ = ["Words", "words_for"]


@dataclass(frozen=True, slots=True)
class Words:
    """What was found, what was expected, what to do."""

    found: str
    expected: str
    advice: str = ""


ENDING = r"\s*,?\s*(#.*)?$"
VALUE = r"^\s*(?P<key>[\w.\"'-]+)\s*=\s*"
NUMBER = r"[-+]?\d[\d.,/ ]*"

HEADER = re.compile(r"\s*\[\[?[ \t]*[A-Za-z][\w. \t-]*\]\]?\s*(#.*)?$")

#: The usual slips of a hand-written file, most telling first: pattern, found, expected, advice.
SLIPS: tuple[tuple[re.Pattern[str], str, str, str], ...] = (
    (
        re.compile(r"[\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb]"),
        "a curly quotation mark",
        'straight quotation marks, "like this"',
        "A word processor makes curly ones: use a plain text editor.",
    ),
    (
        re.compile(VALUE + ENDING),
        "a key with nothing after its =",
        "a value after the =",
        "Write the value, or delete the line if the data sheet does not say.",
    ),
    (
        re.compile(VALUE + r"(True|False|TRUE|FALSE|yes|no|Yes|No)" + ENDING),
        "{value}",
        "true or false, in small letters and without quotation marks",
        "",
    ),
    (
        re.compile(VALUE + r"[-+]?\d+,\d+" + ENDING),
        "the number {value} with a comma",
        "a bare number with a point, as in 1.5",
        "",
    ),
    (
        re.compile(VALUE + NUMBER + r"(?P<unit>[^\W\d_]|%|°|µ|\"|').*$"),
        "{value} without quotation marks",
        "a quantity with its unit in quotation marks",
        'Write {key} = "{value}".',
    ),
    (
        re.compile(VALUE + r"[^\W\d_][^\"'=\[\]{}]*$"),
        "the words {value} without quotation marks",
        "a text in quotation marks",
        'Write {key} = "{value}".',
    ),
    (
        re.compile(r"^\s*(?P<key>[\w.\"'-]+)\s*:"),
        "a colon after the key {key}",
        "an equals sign",
        "Write {key} = and then the value.",
    ),
)

#: What tomllib says (its beginning): what it means, what to do.
MEANINGS: tuple[tuple[str, Words], ...] = (
    ("Unterminated string", Words("a text that never ends", "a closing quotation mark")),
    (
        "Illegal character '\\n'",
        Words("a text that does not end in this line", "a closing quotation mark"),
    ),
    (
        "Illegal character",
        Words("a control character", "plain text", "Delete it; it may not be visible."),
    ),
    (
        "Found invalid character",
        Words("a control character", "plain text", "Delete it; it may not be visible."),
    ),
    (
        "Unclosed array",
        Words(
            "a list that is not closed, or lacks a comma between two items",
            "commas between the items and a ] at the end",
            "Look here and in the lines above.",
        ),
    ),
    (
        "Unclosed inline table",
        Words(
            "a { that is not closed, or lacks a comma between two keys",
            "{ key = value, key = value } in one line",
        ),
    ),
    ("Duplicate inline table key", Words("a key twice within { }", "each key once")),
    ("Cannot", Words("a key or table that was given before", "each once")),
    (
        "Expected ']",
        Words("a table name that is not closed", "[name], alone in its line"),
    ),
    (
        "Expected '='",
        Words("no = after the key", "key = value", "A comment begins with #."),
    ),
    (
        "Expected newline",
        Words("something more after the value", "one key = value in a line"),
    ),
    (
        "Unescaped '\\'",
        Words("a backslash", "no backslash within quotation marks", "Write / or two backslashes."),
    ),
    (
        "Invalid hex value",
        Words("a backslash", "no backslash within quotation marks", "Write / or two backslashes."),
    ),
    ("Invalid date", Words("a date that does not exist", "a value")),
    ("Invalid value", Words("a value that cannot be read", 'a text in "quotation marks", a bare '
        "number, true, false, or a list in [ ]")),
    ("Invalid statement", Words("a line that is neither key = value nor [table]", "key = value",
        "A comment begins with #.")),
    ("Invalid initial character for a key", Words("a key that begins with a strange character",
        "a key of letters, digits, _ and -")),
)  # fmt: skip


def words_for(message: str, line: str, column: int) -> Words:
    """Say what is wrong with `line`; `message` is what tomllib said without the position."""
    key, value = _halves(line)
    if message.startswith(("Invalid value", "Unclosed array")) and HEADER.match(line):
        found = f"{quoted(line.strip(), marks='')} inside a list that is not closed"
        return Words(found, "a ] in a line above it", "Close the list before the next table.")
    if not message.startswith(("Illegal", "Unterminated", "Unescaped", "Invalid hex", "Found")):
        for pattern, found, expected, advice in SLIPS:
            if pattern.search(line):
                told = {"key": quoted(key, marks=""), "value": quoted(value, marks="")}
                return Words(*(_filled(text, told) for text in (found, expected, advice)))
    for beginning, words in MEANINGS:
        if message.startswith(beginning):
            return words
    return Words(f"what is no TOML near column {column}", "key = value")


def _filled(text: str, told: dict[str, str]) -> str:
    # Not str.format: what was found in the file may itself hold braces.
    return re.sub(r"\{(key|value)\}", lambda match: told[match[1]], text)


def _halves(line: str) -> tuple[str, str]:
    key, _, value = line.partition("=")
    if not _:
        key = line.partition(":")[0]
    value = value.split("#")[0].strip().rstrip(",").strip()
    return key.strip(), value
