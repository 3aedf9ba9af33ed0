"""Rows as data."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.rows import crop, exactly, merge, spread, strings, upward, width_of

ROW = st.lists(st.tuples(st.text("ab 塗装", max_size=6), st.sampled_from(["x", "y"])), max_size=4)


def test_merge_joins_one_style() -> None:
    assert merge([("a", "x"), ("b", "x"), ("", "y"), ("c", "y")]) == (("ab", "x"), ("c", "y"))


def test_crop_marks_what_was_cut() -> None:
    assert crop((("doors", "x"), (" coat 2", "y")), 8) == (("doors", "x"), (" …", "y"))
    assert crop((("left door", "x"), (" coat 2", "y")), 8) == (("left …", "x"),)


def test_spread_lets_the_left_give_way() -> None:
    row = spread((("left door, inside", ""),), ((" 4:31", ""),), 14)
    assert strings([row]) == ["left …    4:31"]


@given(ROW, st.integers(0, 20), st.sampled_from(["left", "right", "centre"]))
def test_exactly_is_exact(row: list[tuple[str, str]], width: int, align: str) -> None:
    assert width_of(exactly(tuple(row), width, align=align)) == width


@given(ROW, ROW, st.integers(0, 20))
def test_spread_is_exact(
    left: list[tuple[str, str]], right: list[tuple[str, str]], width: int
) -> None:
    assert width_of(spread(tuple(left), tuple(right), width)) == width


@pytest.mark.parametrize(
    ("level", "drawn"),
    [(0, "   "), (0.125, "  ▁"), (1.5, " ▄█"), (3, "███"), (9, "███"), (-2, "   ")],
)
def test_upward(level: float, drawn: str) -> None:
    assert "".join(upward(level, 3)) == drawn
