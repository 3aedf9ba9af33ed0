"""The wet edge as strings: where it cuts, and what is inverted behind it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.lettering.bigfigure import QUARTERS, draw
from booth.widgets.rows import ACROSS, merge, width_of
from booth.widgets.wet_edge import (
    EIGHTHS,
    Field,
    aside,
    behind_words,
    cells_of,
    cut,
    eighths,
    filled,
    ink,
    pass_over,
)
from booth.words.shown import Tone
from tests.widgets.ink import height_of, ink_of

DRY, WET = ink(Tone.WAIT), filled(Tone.WAIT)


def test_it_crosses_ground_in_eighths_of_a_cell() -> None:
    crossed = [pass_over([" "] * 2, at, DRY, WET) for at in range(17)]
    assert crossed[0] == (("  ", DRY),)
    assert crossed[3] == (("▍ ", DRY),)
    assert crossed[8] == ((" ", WET), (" ", DRY))
    assert crossed[13] == ((" ", WET), ("▋", DRY))
    assert crossed[16] == (("  ", WET),)


def test_in_ink_the_ground_advances() -> None:
    """A cell of ink that is cut shows the ground at its left: the same block, reversed."""
    assert pass_over(["█"], 3, DRY, WET) == (("▍", WET),)


@pytest.mark.parametrize("char", QUARTERS[1:-1])
def test_a_part_of_a_figure_is_cut_at_its_middle_or_its_nearer_border(char: str) -> None:
    assert [cut(char, at) for at in (1, 7)] == [(char, False), (char, True)]
    middle, reverse = cut(char, 4)
    # Two quarters at the left have changed places with the ground, the two at the right have not.
    assert QUARTERS.index(middle) ^ QUARTERS.index(char) == 1 | 4 and not reverse


def test_a_letter_is_never_torn() -> None:
    assert [cut("m", at) for at in (3, 4)] == [("m", False), ("m", True)]


def test_a_character_of_two_cells_is_passed_whole() -> None:
    cells = cells_of("a車b")
    assert cells == ["a", "車", "", "b"]
    for at in range(33):
        row = pass_over(cells, at, DRY, WET)
        assert "".join(text for text, _ in row) == "a車b" and width_of(row) == 4


def test_accents_stay_on_their_letter() -> None:
    assert cells_of("u\u0308x") == ["u\u0308", "x"]


def test_it_moves_when_its_eighth_changes_and_not_before() -> None:
    assert eighths(0.5, 10) == eighths(0.506, 10) == 40 and eighths(0.5066, 10) == 41
    assert eighths(None, 10) == 0 and eighths(-1.0, 10) == 0 and eighths(7.0, 10) == 80


@given(st.floats(0, 1), st.sampled_from(("4:57", "22.1", "READY", "0:08")))
def test_what_is_read_behind_it_is_what_stood_before_it(edge: float, text: str) -> None:
    """Whatever the edge has passed, turned back, is the figure as it was."""
    lines = draw(text, 60, 6)
    field = Field(60, 6)
    field.put(3, 0, lines)
    assert height_of(text, ink_of(field.rows(edge, Tone.WAIT), edge)) == len(lines)
    assert ink_of(field.rows(edge, Tone.WAIT), edge) == ink_of(field.rows(0.0, Tone.WAIT), 0.0)


@given(st.text(max_size=20), st.floats(0, 1) | st.none(), st.integers(0, 30), st.integers(0, 3))
def test_whatever_is_put_a_row_keeps_its_width(
    text: str, edge: float | None, x: int, y: int
) -> None:
    field = Field(30, 3)
    field.put(x, y, [text.replace("\0", "")])
    assert len(field.rows(edge, Tone.LATE)) == 3


def test_words_are_reversed_behind_a_small_edge_and_only_blanks_are_cut() -> None:
    row = (("hood  ", "bold"), ("wait", ""))
    assert behind_words(row, 0.5, 10, Tone.WAIT) == (("hood ", WET), (" ", "bold"), ("wait", ""))
    at_blank = behind_words(row, 0.45, 10, Tone.WAIT)
    assert at_blank == (("hood", WET), (ACROSS[4], DRY), (" ", "bold"), ("wait", ""))
    assert behind_words(row, None, 10, Tone.WAIT) == merge(row)
    assert behind_words(row, 1.0, 10, Tone.WAIT) == (("hood  wait", WET),)


def test_a_stroke_is_not_lost_where_the_edge_runs_along_it() -> None:
    """Its other side is drawn in what the stroke is drawn in: between the two nothing would be seen."""
    one = ["  ██  "] * 5
    # The stroke lies from the second to the fourth cell of the figure, which begins at the tenth.
    for at in (12 * EIGHTHS, 14 * EIGHTHS):
        by = aside(one, 10, at)
        assert by != 0 and not _along(one, 10 + by, at)
    for at in (11 * EIGHTHS, 13 * EIGHTHS, 15 * EIGHTHS):  # over the ground, and through its middle
        assert aside(one, 10, at) == 0 and not _along(one, 10, at)
    # A stroke that leans loses little: it stays where it is.
    assert aside(["   ▟", "  ▟▛", " ▟▛ ", "▟▛  "], 10, 12 * EIGHTHS) == 0


def _along(lines: list[str], x: int, at: int) -> bool:
    left, right = at // EIGHTHS - 1 - x, at // EIGHTHS - x
    return any((line[left] == "█") != (line[right] == "█") for line in lines)
