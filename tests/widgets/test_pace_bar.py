"""The bar that sweeps at the pace of the gun."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.pace_bar import BAR_EDGE, PaceBar, draw_sweep, sweep
from booth.widgets.rows import ACROSS, strings, width_of
from tests.widgets.bench_app import WidgetApp, screen_lines

TIMES = st.floats(0, 1e5)
PASSES = st.floats(0.1, 60)


@pytest.mark.parametrize(
    ("elapsed", "place", "rightward", "number"),
    [
        (0.0, 0.0, True, 1),
        (0.5, 0.25, True, 1),
        (2.0, 1.0, False, 2),
        (3.5, 0.25, False, 2),
        (4.0, 0.0, True, 3),
        (-1.0, 0.0, True, 1),
    ],
)
def test_there_and_back(elapsed: float, place: float, rightward: bool, number: int) -> None:
    now = sweep(elapsed, 2.0)
    assert (now.place, now.rightward, now.number) == (place, rightward, number)


def test_no_pace_no_movement() -> None:
    assert sweep(5.0, 0.0).place == 0.0
    assert sweep(5.0, float("nan")).place == 0.0


@given(TIMES, PASSES)
def test_two_passes_bring_it_back(elapsed: float, pass_s: float) -> None:
    # A float of 1e5 s is exact to 1.5e-11 s: 1e-6 of a pass of 0.1 s is far above it.
    one, other = sweep(elapsed, pass_s), sweep(elapsed + 2 * pass_s, pass_s)
    assert other.place == pytest.approx(one.place, abs=1e-6)


@given(TIMES, PASSES, st.floats(0, 0.05))
def test_it_never_leaps(elapsed: float, pass_s: float, later: float) -> None:
    moved = abs(sweep(elapsed + later, pass_s).place - sweep(elapsed, pass_s).place)
    assert moved <= later / pass_s + 1e-6


def test_drawn() -> None:
    def at(elapsed: float) -> str:
        return strings(draw_sweep(elapsed, 1.0, 26, 1))[0]

    assert at(0.0) == "┃██ ·   ·   ·   ·   ·   ·┃"
    assert at(0.5) == "┃   ·   ·   ██  ·   ·   ·┃"
    assert at(1.0) == "┃   ·   ·   ·   ·   ·  ███"
    # Just turned at the left: the tick there is lit, the bar has begun to leave it.
    assert at(2.1) == "█  ▎█▎  ·   ·   ·   ·   ·┃"


@given(TIMES, PASSES, st.integers(5, 120))
def test_the_bar_keeps_its_length_to_an_eighth(elapsed: float, pass_s: float, width: int) -> None:
    [row] = draw_sweep(elapsed, pass_s, width, 1)
    eighths = 0
    for text, style in row[1:-1] if len(row) > 2 else row:
        if style == BAR_EDGE:
            # In reverse: what the block leaves free is bar.
            eighths += sum(8 - ACROSS.index(char) for char in text)
        elif style.endswith("--bar"):
            eighths += sum(ACROSS.index(char) for char in text)
    inner = width - 2
    assert eighths == 8 * min(inner, max(2, inner // 12))


def test_words_where_there_is_room() -> None:
    lines = strings(draw_sweep(1.5, 1.0, 40, 4))
    assert lines[0] == "← pass 2                    1.0 s a pass"
    assert lines[1] == lines[2] == lines[3]


@given(TIMES, PASSES, st.integers(0, 120), st.integers(0, 9))
def test_every_size_is_filled_exactly(e: float, p: float, width: int, height: int) -> None:
    rows = draw_sweep(e, p, width, height)
    assert len(rows) == height
    assert all(width_of(row) == width for row in rows)


async def test_the_widget_takes_its_time_from_outside() -> None:
    bar = PaceBar()
    async with WidgetApp(bar).run_test(size=(40, 5)) as pilot:
        await pilot.pause()
        bar.pass_s, bar.elapsed_s = 1.0, 1.5
        await pilot.pause()
        assert screen_lines(pilot.app)[: bar.size.height] == strings(draw_sweep(1.5, 1.0, 40, 5))
        before = bar.painted_rows
        bar.elapsed_s = 1.5001
        assert bar.painted_rows == before
