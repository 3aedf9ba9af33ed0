"""Cutting and padding by cells, and the safe way into a widget."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from booth.widgets.text import content, fit, pad, plain


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("clear coat", "clear coat"),
        ("\x1b[2Jgone", "␛[2Jgone"),
        ("a\x07b\x7f", "a␇b␡"),
        ("csi\x9b1m", "csi‹U+009B›1m"),
        ("abc\u202edef", "abc‹U+202E›def"),
        ("a\u2066b\u200dc\ufeff", "a‹U+2066›b‹U+200D›c‹U+FEFF›"),
        ("\ud800", "‹U+D800›"),
        ("one\ttwo\nthree\r\nfour", "one two three four"),
        ("[bold]x[/ ", "[bold]x[/ "),
        ("Ölfarbe", "Ölfarbe"),
    ],
)
def test_what_acts_unseen_is_shown(text: str, shown: str) -> None:
    assert plain(text) == shown


def test_lines_are_kept_on_request() -> None:
    assert plain("a\r\nb\nc", keep_lines=True) == "a\nb\nc"


@given(st.text())
def test_nothing_left_can_steer_a_terminal(text: str) -> None:
    assert not {unicodedata.category(char) for char in plain(text)} & {"Cc", "Cf", "Cs"}


def test_content_is_not_markup() -> None:
    assert content("[@click=app.quit]50 [m2] [/ x").plain == "[@click=app.quit]50 [m2] [/ x"
    assert content("[bold]x[/bold]").spans == []


@pytest.mark.parametrize(
    ("text", "width", "shown"),
    [
        ("flash-off", 9, "flash-off"),
        ("flash-off", 6, "flash…"),
        ("塗装面", 6, "塗装面"),
        ("塗装面", 5, "塗装…"),
        ("塗装面", 4, "塗…"),
        ("塗装面", 1, "…"),
        ("anything", 0, ""),
    ],
)
def test_fit(text: str, width: int, shown: str) -> None:
    assert fit(text, width) == shown


@given(st.text(), st.integers(0, 30))
def test_fit_never_takes_more_than_its_cells(text: str, width: int) -> None:
    assert cell_len(fit(text, width)) <= width


@given(st.text(), st.integers(0, 30), st.sampled_from(["left", "right", "centre"]))
def test_pad_takes_exactly_its_cells(text: str, width: int, align: str) -> None:
    assert cell_len(pad(text, width, align)) == width
