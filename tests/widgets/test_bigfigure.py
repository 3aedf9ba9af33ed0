"""Figures in blocks: what they look like, and what must hold at every size."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.widgets.lettering.bigfigure import QUARTERS, can_draw, draw
from booth.widgets.lettering.glyphs import LETTERS, NUMERALS, SIGNS
from booth.widgets.text import fit

# Every size up to a common window's height, then some of the large ones.
ROWS = [*range(3, 17), 20, 27, 40]


def pixels(lines: list[str]) -> list[list[bool]]:
    """The drawing as pixels, two across and two down in each cell."""
    rows: list[list[bool]] = []
    for line in lines:
        bits = [QUARTERS.index(char) for char in line]
        rows.append([bool(b & bit) for b in bits for bit in (1, 2)])
        rows.append([bool(b & bit) for b in bits for bit in (4, 8)])
    return rows


def test_three_rows() -> None:
    assert draw("4:31", 20, 3) == [
        "█  █ ▄ ▝▀▀▙  ▀█ ",
        "▀▀▀█    ▀▀▙   █ ",
        "   █ ▀ ▗▄▄▛   █ ",
    ]


def test_a_word_in_three_rows() -> None:
    assert draw("Ready", 40, 3) == [
        "█▀▀▙ █▀▀▘▗▛▀▀▙ █▀▀▙ ▜▙▟▛",
        "█▀█▘ █▀▀ ▐▛▀▀█ █  █  ▜▛ ",
        "█ ▐▙ █▄▄▖▐▌  █ █▄▄▛  ▐▌ ",
    ]


def test_five_rows() -> None:
    assert draw("09:58", 60, 5) == [
        "▗▟███▄  ▗▟███▄  ▄▄ ▐██████  ▄███▙▖",
        "██  ▐█▌ ██  ▐█▌ ▀▀ ▐█▌     ▐█▌  ██",
        "██  ▐█▌ ▝▜████▌    ▐████▙▖  █████▌",
        "██  ▐█▌     ▐█▌ ▄▄      ██ ▐█▌  ██",
        "▝▜███▀  ▝▜███▀  ▀▀  ▀███▛▘  ▀███▛▘",
    ]


@settings(deadline=None)  # the largest take long on a busy machine
@given(
    st.text("0123456789:.,-+% /ABCWXZ►■", min_size=1, max_size=9).filter(str.strip),
    st.integers(0, 220),
    st.integers(0, 60),
)
def test_it_never_leaves_its_space(text: str, width: int, height: int) -> None:
    lines = draw(text, width, height)
    assert len(lines) <= min(height, 40)
    assert len({len(line) for line in lines}) <= 1
    assert all(len(line) <= width for line in lines)


@pytest.mark.parametrize("rows", ROWS)
def test_all_the_height_is_used_where_width_is_plenty(rows: int) -> None:
    for text in ("4:31", "8", "READY"):
        lines = draw(text, 2000, rows)
        assert len(lines) == rows
        # The top and the bottom row of pixels are both drawn on.
        assert any(pixels(lines)[0]) and any(pixels(lines)[-1])


@pytest.mark.parametrize("rows", ROWS)
def test_a_countdown_keeps_its_width(rows: int) -> None:
    """Every figure in every place, and every two that stand side by side; at one size all there are."""
    times = [f"{s % 10}:{s:02}" for s in range(60)]
    if rows == ROWS[0]:
        times = [f"{m}:{s:02}" for m in range(10) for s in range(60)]
    assert len({len(draw(each, 2000, rows)[0]) for each in times}) == 1


def test_like_keeps_the_size_when_a_figure_drops_off() -> None:
    full, less = draw("10:00", 60, 16), draw("9:59", 60, 16, like="00:00")
    assert len(less) == len(full)
    assert len(draw("9:59", 60, 16)) > len(less)


@pytest.mark.parametrize("rows", ROWS)
def test_no_two_figures_look_alike(rows: int) -> None:
    """The nearest pair still differs in more pixels than one stroke is wide."""
    drawn = {figure: pixels(draw(figure, 2000, rows)) for figure in NUMERALS}
    for (a, one), (b, other) in combinations(drawn.items(), 2):
        differ = sum(
            p != q for r, s in zip(one, other, strict=True) for p, q in zip(r, s, strict=True)
        )
        # 5 against 6 and 8 against 9 are nearest: an opening in one stroke, 1.5 % of a figure's
        # 2 x 0.64 h^2 pixels or more, and never less than two pixels.
        assert differ >= max(2, 0.015 * 1.28 * (2 * rows) ** 2 / 2), (a, b, differ)


@pytest.mark.parametrize("rows", ROWS)
def test_letters_and_signs_are_told_apart(rows: int) -> None:
    everything = [*NUMERALS, *LETTERS, *(sign for sign in SIGNS if sign != " ")]
    drawn: dict[tuple[str, ...], str] = {}
    for char in everything:
        lines = tuple(draw(char, 2000, rows))
        if lines in drawn:
            # O and 0 are one shape in lettering of this kind.
            assert {drawn[lines], char} == {"0", "O"}, (drawn[lines], char)
        drawn[lines] = char


@pytest.mark.parametrize("rows", ROWS[2:])
def test_a_stroke_weighs_about_a_fifth_of_the_height(rows: int) -> None:
    """Half of the way down a 1 there is only its stem. 2 pixels across are as wide as 1 is high."""
    height = 2 * rows
    stem = sum(pixels(draw("1", 2000, rows))[height // 2 + rows // 2]) / 2
    # A fifth, less or more by what a grid of half units and the open counters of small sizes ask.
    assert 0.13 <= stem / height <= 0.24


@pytest.mark.parametrize("rows", ROWS)
def test_figures_keep_the_proportions_of_lettering(rows: int) -> None:
    for width in (20, 40, 80):
        lines = draw("8", width, rows)
        # A cell is one unit wide and two high; the half cell at the edge may be blank.
        assert 0.45 <= (len(lines[0]) - 0.5) / (2 * len(lines)) <= 0.67


@pytest.mark.parametrize(
    ("text", "width", "height"),
    [("4:31", 80, 2), ("4:31", 80, 1), ("4:31", 9, 20), ("塗装 3", 80, 20), ("½", 9, 9)],
)
def test_plain_text_where_blocks_cannot_be(text: str, width: int, height: int) -> None:
    assert draw(text, width, height) == [fit(text, width)]


def test_nothing_where_there_is_no_space() -> None:
    assert draw("4:31", 0, 9) == [] and draw("4:31", 9, 0) == []


def test_hostile_text_is_shown_not_sent() -> None:
    assert draw("\x1b[2J", 40, 9) == ["␛[2J"]


def test_typographic_minus_is_a_minus() -> None:
    assert can_draw("−3.5 %") and draw("−3", 40, 5) == draw("-3", 40, 5)
