"""The line of every key, whatever the file's shape; tomllib is the judge of what its keys are."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
import tomli_w
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.toml.lines import where

DEMOS = sorted((Path(__file__).parents[2] / "profiles").glob("*.toml"))

TRICKY = '''\
a = 1  # b = 2
"quoted key" = "x = 1 # no comment"
text = """
c = 3
[not.a.table]
\\""" still inside
"""
literal = \'\'\'
d = 4 \'\' still
\'\'\'
e . f = { g = 1, "h" = [1, 2,
  { i = 3 }] }

[table]  # comment = "x"
j = [
  "k = 5",  # a comment ]
  [6, 7],
  8,
]
[table.below]
l = \'c:\\path\'
[[many]]
m = 1
[[many]]
m = 2
[many.under]
n = 3
[[many.list]]
o = 4
'''

EXPECTED = {
    ("a",): 1,
    ("quoted key",): 2,
    ("text",): 3,
    ("literal",): 8,
    ("e",): 11,
    ("e", "f"): 11,
    ("e", "f", "g"): 11,
    ("e", "f", "h"): 11,
    ("e", "f", "h", 0): 11,
    ("e", "f", "h", 1): 11,
    ("e", "f", "h", 2): 12,
    ("e", "f", "h", 2, "i"): 12,
    ("table",): 14,
    ("table", "j"): 15,
    ("table", "j", 0): 16,
    ("table", "j", 1): 17,
    ("table", "j", 1, 0): 17,
    ("table", "j", 1, 1): 17,
    ("table", "j", 2): 18,
    ("table", "below"): 20,
    ("table", "below", "l"): 21,
    ("many",): 22,
    ("many", 0): 22,
    ("many", 0, "m"): 23,
    ("many", 1): 24,
    ("many", 1, "m"): 25,
    ("many", 1, "under"): 26,
    ("many", 1, "under", "n"): 27,
    ("many", 1, "list"): 28,
    ("many", 1, "list", 0): 28,
    ("many", 1, "list", 0, "o"): 29,
}


def paths(value: Any, path: tuple[str | int, ...] = ()) -> set[tuple[str | int, ...]]:
    """Every path of what tomllib read."""
    found = {path} if path else set()
    pairs = value.items() if isinstance(value, dict) else ()
    if isinstance(value, list):
        pairs = enumerate(value)
    for key, each in pairs:
        found |= paths(each, (*path, key))
    return found


@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_strings_comments_and_nested_values_mislead_nobody(ending: str) -> None:
    text = TRICKY.replace("\n", ending)
    assert paths(tomllib.loads(text)) == set(EXPECTED)
    assert where(text).lines == EXPECTED
    assert where(text).repeats == []


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_every_key_of_a_demo_has_its_line(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    lines = where(text).lines
    assert set(lines) == paths(tomllib.loads(text))
    rows = text.split("\n")
    for key, line in lines.items():
        if isinstance(key[-1], str):
            assert key[-1] in rows[line - 1], (key, line)


scalars = st.one_of(st.text(max_size=8), st.integers(-5, 5), st.booleans())
values = st.recursive(
    scalars,
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3)
    ),
    max_leaves=12,
)


@given(st.dictionaries(st.text(max_size=6), values, max_size=5), st.booleans())
@settings(max_examples=200, deadline=None)
def test_any_toml_that_can_be_written_is_followed(table: dict[str, Any], long: bool) -> None:
    text = tomli_w.dumps(table, multiline_strings=long)
    assert set(where(text).lines) == paths(tomllib.loads(text))


def test_keys_and_tables_given_twice_are_told_with_both_lines() -> None:
    found = where("a = 1\n[t]\nb = 1\nb = 2\n[u]\n[t]\n[[m]]\n[m]\n").repeats
    assert [(each.path, each.line, each.first, each.table) for each in found] == [
        (("t", "b"), 4, 3, False),
        (("t",), 6, 2, True),
        (("m",), 8, 7, True),
    ]


ODD = [
    "",
    "\n\n",
    "a",
    "a =",
    "[",
    "[[",
    'a = "',
    "a = [1",
    "=",
    "#",
    "a = [}",
    "a = {]",
    "a = [1 2]",
    "a = [1}2]",
    "a = {b}",
    "a = ]",
    "a = [[1]",
    "a = {,}",
    "a = [,]",
    "a = [\n}",
]


@pytest.mark.parametrize("text", ODD)
def test_what_is_no_toml_gives_what_was_understood(text: str) -> None:
    assert set(where(text).lines) <= {("a",), ("a", 0), ("a", 1), ("a", 0, 0), ("a", "b")}


@given(st.text("a=[]{}\"',.#\n \\1", max_size=30))
@settings(max_examples=300, deadline=None)
def test_any_text_comes_to_an_end(text: str) -> None:
    assert all(1 <= line <= text.count("\n") + 1 for line in where(text).lines.values())
