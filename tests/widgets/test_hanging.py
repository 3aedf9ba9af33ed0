"""Lines that hang, as drawn: nothing is lost, and what stands free stays free."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len
from textual.content import Content

from booth.widgets.hanging import MOST_LEAD, Hanging, lead
from booth.widgets.page_view import PageView
from booth.words.shown import Page
from tests.widgets.bench_app import WidgetApp, screen_lines

WORDS = "If that made the ends heavier still, it was too much fluid: close the needle again."


@pytest.mark.parametrize(
    ("before", "blank"),
    [
        ("  5 ", 4),
        ("→ 1 ", 4),
        ("√ ", 2),
        ("  ", 2),
        ("n or F2     ", 12),
        ("    weather 14:56   ", 20),
        ("   1  14:16  ", 13),
    ],
)
def test_rows_go_on_under_the_first_word(before: str, blank: int) -> None:
    rows = Hanging(Content(before + WORDS)).at(44).plain.split("\n")
    assert len(rows) > 1 and rows[0].startswith(before)
    assert all(len(row) - len(row.lstrip()) == blank for row in rows[1:])
    assert " ".join(row[blank:].strip() for row in rows) == WORDS


def test_two_spaces_further_in_are_no_column() -> None:
    text = "a sentence that has two spaces far in the middle of it  goes on as it is"
    assert text.index("  ") > MOST_LEAD and lead(text, 80) == 0


def test_what_would_leave_less_than_half_of_the_row_does_not_hang() -> None:
    assert lead("    weather 14:56   air 72", 30) == 0


@given(st.text("ab 1→é漢\t", max_size=120), st.integers(4, 60))
def test_no_sign_is_lost_and_no_row_is_too_wide(text: str, width: int) -> None:
    drawn = Hanging(Content(text)).at(width)
    assert "".join(drawn.plain.split()) == "".join(text.split())
    hung = drawn.plain.split("\n")
    if len(hung) > 1:
        assert all(cell_len(row.rstrip()) <= width for row in hung if "\t" not in row)


async def test_on_a_page_every_row_has_its_room_and_styles_stay() -> None:
    view = PageView(Page((("now", f"→ 1 {WORDS}"), ("text", f"  2 {WORDS}"))))
    async with WidgetApp(view).run_test(size=(40, 12)) as pilot:
        await pilot.pause()
        lines = [line.rstrip() for line in screen_lines(pilot.app)]
        told = [line for line in lines if line]
        assert " ".join(" ".join(told).split()) == f"→ 1 {WORDS} 2 {WORDS}"
        assert sum(line.startswith("     ") and line[5] != " " for line in told) == len(told) - 2
        await pilot.resize_terminal(100, 12)
        await pilot.pause()
        assert len([line for line in screen_lines(pilot.app) if line.strip()]) == 2
