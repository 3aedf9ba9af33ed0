"""The strip of clocks: order, what fits, and what a second costs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.widgets.clock_strip import ClockStrip, lay_out
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.rows import strings, width_of
from booth.words.shown import ClockFace, Tone
from tests.widgets.bench_app import WidgetApp, screen_lines

DOORS = ClockFace("doors coat 2", "flash-off", "4:31", edge=0.5, estimate=True)
OPENS = ClockFace("left door", "two-pack glossy topcoat window opens", "4:31", short="opens")
SILLS = ClockFace("sills coat 1", "recoat window", "+3:12", Tone.LATE, edge=1.0)
POT = ClockFace("clear, batch 1", "pot life", "1:48:10")
BOTH = (DOORS, SILLS)


def many(count: int) -> tuple[ClockFace, ...]:
    return tuple(replace(DOORS, title=f"part {n}", estimate=False) for n in range(count))


def test_a_row_a_clock_most_urgent_first() -> None:
    assert strings(lay_out(BOTH, 80, 2)) == [
        " sills coat 1  recoat window                                      ■ LATE  +3:12 ",
        " doors coat 2  flash-off                                          ▬ WAIT  ~4:31 ",
    ]


def test_where_height_is_scarce_they_stand_side_by_side() -> None:
    assert strings(lay_out(BOTH, 80, 1)) == [
        " sills …  recoat window   ■ LATE  +3:12   doors coat 2  flash-off ▬ WAIT  ~4:31 "
    ]


def test_what_a_clock_is_about_is_said_in_short_before_the_name_gives_way() -> None:
    assert strings(lay_out((OPENS,), 60, 1)) == [
        " left door  opens                              ▬ WAIT  4:31 "
    ]
    assert strings(lay_out((OPENS,), 36, 1)) == [" left door  opens      ▬ WAIT  4:31 "]


def test_each_clock_has_its_own_edge_and_none_where_nothing_is_known() -> None:
    first, second, third = lay_out((SILLS, DOORS, POT), 40, 3)
    passed = [
        sum(len(text) for text, style in row if "reverse" in style)
        for row in (first, second, third)
    ]
    assert passed == [40, 20, 0]


def test_equals_keep_their_order() -> None:
    first = strings(lay_out((POT, DOORS, SILLS), 200, 2))[0]
    assert first.index("sills") < first.index("clear") < first.index("doors")


@pytest.mark.parametrize(("width", "height"), [(80, 4), (80, 2), (40, 4), (200, 2), (24, 3)])
@pytest.mark.parametrize("count", [1, 2, 3, 5, 8, 13])
def test_every_clock_is_shown_or_counted(width: int, height: int, count: int) -> None:
    text = "\n".join(strings(lay_out(many(count), width, height)))
    shown = text.count("4:31")
    hidden = int(text.split("+")[1].split()[0]) if "more" in text else 0
    assert shown >= 1
    assert shown + hidden == count


def test_eighty_columns_take_two_in_a_row_and_wide_ones_more() -> None:
    def in_first_row(width: int, height: int, count: int) -> int:
        return strings(lay_out(many(count), width, height))[0].count("part")

    assert in_first_row(80, 2, 4) == 2
    assert in_first_row(200, 2, 6) == 6


@given(
    st.lists(
        st.builds(
            ClockFace,
            title=st.text(max_size=20),
            what=st.text(max_size=12),
            remaining=st.text("0123456789:+", max_size=8),
            tone=st.sampled_from(Tone),
            edge=st.none() | st.floats(-1, 2),
            estimate=st.booleans(),
        ),
        min_size=1,
        max_size=9,
    ),
    st.integers(0, 130),
    st.integers(0, 9),
)
def test_every_size_is_filled_exactly(faces: list[ClockFace], width: int, height: int) -> None:
    rows = lay_out(tuple(faces), width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


async def test_a_second_repaints_only_the_rows_with_another_text() -> None:
    strip = ClockStrip()
    async with WidgetApp(FigurePanel(), strip).run_test(size=(80, 10)) as pilot:
        strip.shown = BOTH
        await pilot.pause()
        assert screen_lines(pilot.app)[-1:] == strings(lay_out(BOTH, 80, 1))
        before = strip.painted_rows
        strip.shown = (replace(DOORS), replace(SILLS))
        assert strip.painted_rows == before
        strip.shown = (replace(DOORS, remaining="4:30"), SILLS)
        assert strip.painted_rows == before + 1
        await pilot.pause()
        assert "~4:30" in screen_lines(pilot.app)[-1]
