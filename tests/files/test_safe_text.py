"""What acts unseen is shown; what people write in any language stays as it is."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.files.safe_text import visible


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("two-pack clear, 21.5 s", "two-pack clear, 21.5 s"),
        ("Härter 漆 лак", "Härter 漆 лак"),
        ("\x1b[2J", "␛[2J"),
        ("\x00\x07\x7f", "␀␇␡"),
        ("\x9b31m", "‹U+009B›31m"),
        ("\u202eabc\u2066", "‹U+202E›abc‹U+2066›"),
        ("a\u200bb\ufeff", "a‹U+200B›b‹U+FEFF›"),
        ("\ud800", "‹U+D800›"),
        ("a\tb\u00a0c", "a b c"),
        ("a\r\nb\nc\u2028d", "a b c d"),
        ("[bold]x[/ y", "[bold]x[/ y"),
    ],
)
def test_what_is_shown(text: str, shown: str) -> None:
    assert visible(text) == shown


def test_lines_are_kept_when_asked() -> None:
    assert visible("a\r\nb\u2029c\x1b", keep_lines=True) == "a\nb\nc␛"


def test_accents_stay_and_towers_of_them_do_not() -> None:
    assert visible("a\u0323\u0302") == unicodedata.normalize("NFC", "a\u0323\u0302")
    assert visible("x" + "\u0300" * 50).count("\u0300") == 2


@given(st.text())
def test_nothing_that_acts_unseen_is_left(text: str) -> None:
    shown = visible(text)
    assert all(unicodedata.category(char) not in {"Cc", "Cf", "Cs", "Co", "Cn"} for char in shown)
    assert visible(shown) == shown
    shown.encode("utf-8")
