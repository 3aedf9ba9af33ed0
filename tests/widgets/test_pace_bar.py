"""The bar that sweeps at the pace of the gun."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.pace_bar import BAR, BAR_EDGE, PaceBar, draw_sweep
from booth.widgets.rows import ACROSS, strings, width_of
from booth.words.shown import Bar
from tests.widgets.bench_app import WidgetApp, screen_lines

BARS = st.builds(
    Bar, st.floats(0.1, 60), st.floats(0, 1), number=st.integers(1, 999), turned=st.booleans()
)


def test_drawn() -> None:
    def at(place: float, number: int = 1, turned: bool = False) -> str:
        return strings(draw_sweep(Bar(1.0, place, number, turned), 26, 1))[0]

    assert at(0.0) == "┃██ ·   ·   ·   ·   ·   ·┃"
    assert at(0.5) == "┃   ·   ·   ██  ·   ·   ·┃"
    assert at(1.0, 2, turned=True) == "┃   ·   ·   ·   ·   ·  ███"
    # Just turned at the left: the tick there is lit, the bar has begun to leave it.
    assert at(0.1, 3, turned=True) == "█  ▎█▎  ·   ·   ·   ·   ·┃"


@given(BARS, st.integers(5, 120))
def test_the_bar_keeps_its_length_to_an_eighth(bar: Bar, width: int) -> None:
    [row] = draw_sweep(bar, width, 1)
    eighths = 0
    for text, style in row[1:-1] if len(row) > 2 else row:
        if style == BAR_EDGE:
            # In reverse: what the block leaves free is bar.
            eighths += sum(8 - ACROSS.index(char) for char in text)
        elif style == BAR:
            eighths += sum(ACROSS.index(char) for char in text)
    inner = width - 2
    assert eighths == 8 * min(inner, max(2, inner // 12))


def test_words_where_there_is_room() -> None:
    lines = strings(draw_sweep(Bar(1.0, 0.5, 2), 40, 4))
    assert lines[0] == "← pass 2                    1.0 s a pass"
    assert lines[1] == lines[2] == lines[3]


@given(BARS, st.integers(0, 120), st.integers(0, 9))
def test_every_size_is_filled_exactly(bar: Bar, width: int, height: int) -> None:
    rows = draw_sweep(bar, width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


async def test_the_widget_takes_its_time_from_outside() -> None:
    bar = PaceBar()
    async with WidgetApp(bar).run_test(size=(40, 5)) as pilot:
        bar.shown = Bar(1.0, 0.5, 2)
        await pilot.pause()
        assert screen_lines(pilot.app)[: bar.size.height] == strings(draw_sweep(bar.shown, 40, 5))
        before = bar.painted_rows
        bar.shown = Bar(1.0, 0.4999, 2)
        assert bar.painted_rows == before
