"""The list to pick from: the picked line stays in sight, and what must be seen is."""

from __future__ import annotations

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.lists import PickList, step
from booth.widgets.lists import lay_out_lines as lay_out
from booth.widgets.rows import strings, width_of
from booth.words.shown import Lines, PickLine
from tests.widgets.bench_app import WidgetApp, screen_lines


def test_list_keeps_the_picked_line_in_sight() -> None:
    lines = tuple(PickLine(f"line {n}", "behind", n == 3) for n in range(12))
    for picked in range(12):
        drawn = strings(lay_out(Lines(lines, picked), 30, 5))
        assert len(drawn) == 5
        assert all(len(row) == 30 for row in drawn)
        assert sum(row.startswith("→ ") for row in drawn) == 1
        assert any(row.startswith(f"→ line {picked} ") for row in drawn)
    assert strings(lay_out(Lines(lines, 0), 30, 5))[-1].endswith("↓")
    assert strings(lay_out(Lines(lines, 11), 30, 5))[0].endswith("↑")
    assert lay_out(Lines(lines, 0), 0, 5) == []


def test_list_is_spread_where_there_is_room() -> None:
    lines = tuple(PickLine(f"line {n}") for n in range(4))
    assert [bool(row.strip()) for row in strings(lay_out(Lines(lines, 0), 30, 8))] == [
        True,
        False,
    ] * 4
    assert [bool(row.strip()) for row in strings(lay_out(Lines(lines, 0), 30, 7))] == [True] * 4 + [
        False
    ] * 3


def test_what_stands_behind_gives_way_unless_it_must_be_seen() -> None:
    lines = (PickLine("dust", "specks"), PickLine("blush", "seen: door", True))
    narrow, wide = (
        strings(lay_out(Lines(lines, 0), 24, 2)),
        strings(lay_out(Lines(lines, 0), 60, 2)),
    )
    assert ("specks" in narrow[0], "specks" in wide[0]) == (False, True)
    assert "seen: door" in narrow[1] and "seen: door" in wide[1]


HEADED = (
    PickLine("Jobs", head=True),
    PickLine("one"),
    PickLine("", head=True),
    PickLine("Profiles", head=True),
    PickLine("two"),
    PickLine("three"),
)


@pytest.mark.parametrize(
    ("picked", "by", "found"),
    [
        (1, 1, 4),
        (4, -1, 1),
        (1, -1, 1),
        (5, 1, 5),
        (1, 99, 5),
        (5, -99, 1),
        (0, 1, 1),
        (1, 2, 5),
        (1, 0, 1),
    ],
)
def test_headings_are_walked_over(picked: int, by: int, found: int) -> None:
    assert step(HEADED, picked, by) == found


def test_of_an_empty_list_and_one_of_headings_nothing_is_picked() -> None:
    assert step((), 0, 1) == 0
    heads = tuple(PickLine("head", head=True) for _ in range(3))
    assert step(heads, 0, 5) == 0 and step(heads, 2, -5) == 2


def test_a_heading_is_drawn_as_one_even_where_the_picked_line_is_said_to_be_there() -> None:
    drawn = strings(lay_out(Lines(HEADED, 0), 30, 6))
    assert drawn[0].startswith("Jobs") and not any(row.startswith("→") for row in drawn)


@given(
    st.lists(
        st.builds(
            PickLine,
            name=st.text(max_size=40),
            behind=st.text(max_size=40),
            must=st.booleans(),
            mark=st.sampled_from(["", "»", "!"]),
            head=st.booleans(),
        ),
        max_size=12,
    ),
    st.integers(0, 12),
    st.integers(0, 90),
    st.integers(0, 20),
)
def test_every_size_is_filled_exactly(
    lines: list[PickLine], picked: int, width: int, height: int
) -> None:
    rows = lay_out(Lines(tuple(lines), picked), width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


@pytest.mark.parametrize("width", [30, 40, 80])
def test_a_long_name_is_cut_with_a_sign_and_what_must_be_seen_is_whole(width: int) -> None:
    name = "left front door with its mirror and its handle, and so on for long"
    (row,) = strings(lay_out(Lines((PickLine(name, "WAIT 4:31", must=True),)), width, 1))
    assert "WAIT 4:31" in row and (name in row or "…" in row)
    assert row.startswith("→ left fron")


HOSTILE = "[/ x [bold] [@click=app.quit]y \x1b[2J\x07\u202e"


async def test_hostile_names_are_drawn_as_they_stand() -> None:
    shown = PickList(id="rows")
    async with WidgetApp(shown).run_test(size=(90, 4)) as pilot:
        shown.shown = Lines((PickLine(HOSTILE, HOSTILE, must=True), PickLine(HOSTILE, head=True)))
        await pilot.pause()
        text = "\n".join(screen_lines(pilot.app))
        assert "[/ x [bold] [@click=app.quit]y ␛[2J" in text
        assert not set("\x1b\x07\u202e") & set(text)


class Listening(WidgetApp):
    def on_drawn_picked(self, message: PickList.Picked) -> None:
        self.heard.append((message.index, message.again))


async def test_a_click_picks_a_line_and_no_heading() -> None:
    shown = PickList(id="rows")
    app = Listening(shown)
    async with app.run_test(size=(40, 6)) as pilot:
        shown.shown = Lines(HEADED, 4)
        await pilot.pause()
        for y in range(6):
            await pilot.click(offset=(5, y))
        assert app.heard == [(1, False), (4, True), (5, False)]


async def test_a_click_on_a_spread_list_is_on_the_line_above_it() -> None:
    shown = PickList(id="rows")
    app = Listening(shown)
    async with app.run_test(size=(40, 8)) as pilot:
        shown.shown = Lines(tuple(PickLine(f"line {n}") for n in range(3)))
        await pilot.pause()
        for y in (0, 1, 4, 5, 6, 7):
            await pilot.click(offset=(5, y))
        assert app.heard == [(0, True), (0, True), (2, False), (2, False)]


def test_ten_thousand_lines_are_drawn_and_walked_at_once() -> None:
    """Only what is in sight is laid out. Measured against the same list of fifty lines: were every
    line laid out, two hundred times as many would take fifty times as long and more."""
    few = tuple(PickLine(f"line {n}", "behind") for n in range(50))
    many = tuple(PickLine(f"line {n}", "behind") for n in range(10_000))

    def shortest(lines: tuple[PickLine, ...], picked: int) -> float:
        took = []
        for _ in range(7):
            before = time.process_time()
            for _ in range(5):
                lay_out(Lines(lines, picked), 100, 40)
                step(lines, picked, 1)
            took.append(time.process_time() - before)
        return min(took)

    assert shortest(many, 5_000) < 20 * shortest(few, 25)
    assert strings(lay_out(Lines(many, 9_999), 40, 20))[-1].startswith("→ line 9999")
    assert step(many, 0, 1_000_000) == 9_999


DOOR = "left front door with its mirror and its handle"


def test_a_long_name_goes_on_in_rows_of_whole_words_where_there_is_room() -> None:
    lines = (PickLine(DOOR, "WAIT 4:31", must=True, mark="»"), PickLine("hood"))
    assert [row.rstrip() for row in strings(lay_out(Lines(lines, 1), 36, 5))] == [
        "» left front door with   WAIT 4:31",
        "  its mirror and its",
        "  handle",
        "→ hood",
        "",
    ]


def test_where_there_is_little_room_the_picked_line_is_whole() -> None:
    lines = (*(PickLine(DOOR) for _ in range(3)), PickLine("hood"))
    for picked in range(3):
        rows = strings(lay_out(Lines(lines, picked), 30, 4))
        at = next(n for n, row in enumerate(rows) if row.startswith("→ "))
        assert " ".join("".join((rows[at], rows[at + 1]))[2:].split()).startswith(DOOR[:24])
        assert sum("…" in row for row in rows) >= 1


async def test_a_click_on_the_second_row_of_a_name_is_on_its_line() -> None:
    shown = PickList(id="rows")
    app = Listening(shown)
    async with app.run_test(size=(36, 5)) as pilot:
        shown.shown = Lines((PickLine(DOOR), PickLine("hood")), 1)
        await pilot.pause()
        for y in (0, 1, 2):
            await pilot.click(offset=(5, y))
        assert app.heard == [(0, False), (0, False), (1, True)]
