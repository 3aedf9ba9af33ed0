"""What stands where: one rule for every step, by the size of the window and what it shows anyway."""

from __future__ import annotations

import pytest

from booth.widgets.room import ALL_FROM, BESIDE_FROM, MOST_TEXT, NONE, RAIL, room_in
from booth.widgets.tables import MOST_SHARE
from booth.words.shown import (
    Bar,
    Gallery,
    Lines,
    Page,
    PartRow,
    Parts,
    Pours,
    Section,
    Timeline,
    Tone,
)


def test_a_small_window_has_room_for_nothing_more() -> None:
    assert room_in(80, 24) == NONE
    assert room_in(BESIDE_FROM[0] - 1, 50) == NONE
    assert room_in(200, BESIDE_FROM[1] - 1) == NONE


def test_a_middling_window_shows_what_was_tried_and_a_large_one_all_of_it() -> None:
    middling, large = room_in(100, 30), room_in(200, 50)
    assert middling.beside and not middling.always and not middling.log
    assert large.always and large.log and large.below > middling.below


@pytest.mark.parametrize("width", range(BESIDE_FROM[0], 400, 7))
@pytest.mark.parametrize("height", [28, 36, 50, 80, 120])
def test_the_figure_keeps_more_than_half_and_text_is_no_wider_than_it_is_read(
    width: int, height: int
) -> None:
    room = room_in(width, height)
    own = width - (RAIL if width >= ALL_FROM[0] else 0)
    assert own - room.beside <= MOST_TEXT
    assert own - room.beside >= 50 and room.beside >= 40
    # Status, keys, and clocks in a sixth of the window stand above and below.
    assert height - 2 - height // 6 - room.below >= 0.4 * height


def test_what_stands_beneath_the_figure_anyway_comes_first() -> None:
    for tall in (Page(()), Section(), Timeline()):
        assert room_in(100, 30, (tall,)) == NONE
        assert room_in(200, 50, (tall,)) == room_in(200, 50)
    assert room_in(100, 30, (), has_rows=False).below < room_in(100, 30).below
    assert room_in(200, 50, (Page(()),), has_rows=False) == room_in(200, 50)
    for low in (Parts((), 0), Pours(()), Bar(1.0)):
        assert room_in(100, 30, (low,)) == room_in(100, 30)
    for chosen_from in (Lines(()), Gallery(())):
        room = room_in(200, 50, (chosen_from,))
        assert not room.below and not room.beside and room.log


@pytest.mark.parametrize("size", [(96, 28), (100, 30), (200, 50), (300, 90)])
@pytest.mark.parametrize("count", range(0, 40, 3))
def test_beside_a_long_list_of_parts_the_field_keeps_its_share(
    size: tuple[int, int], count: int
) -> None:
    parts = Parts(tuple(PartRow(f"part {n}", "", Tone.PLAIN, "", "", "") for n in range(count)), 0)
    room = room_in(*size, (parts,), has_rows=False)
    listed = min(count, int(size[1] * MOST_SHARE))
    assert room.below == 0 or size[1] - 2 - listed - room.below >= int(0.4 * size[1])
    assert bool(room.beside) == bool(room.below)
