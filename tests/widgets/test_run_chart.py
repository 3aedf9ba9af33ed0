"""Figures job after job as dots between their limits."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.rows import strings, toned, width_of
from booth.widgets.run_chart import BOTH, LOWER, OUTSIDE, PICKED, UPPER, draw_run_chart
from booth.words.shown import RunChart

CHART = RunChart(
    (20.0, 21.0, 20.5, 25.0),
    21.6,
    "mean 21.6 s",
    19.0,
    "low 19.0 s",
    24.0,
    "high 24.0 s",
    frozenset({3}),
    ("2025-06-01", "2025-06-20"),
    3,
)


def test_dots_lines_and_their_words() -> None:
    assert strings(draw_run_chart(CHART, 40, 10)) == [
        "             │                     ■    ",
        " high 24.0 s │┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄",
        "             │                          ",
        "             │                          ",
        " mean 21.6 s │──────────────────────────",
        "             │         ▀     ▄          ",
        "             │   ▀                      ",
        "  low 19.0 s │┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄",
        "                                   ▲    ",
        "              2025-06-01  2025-06-20    ",
    ]


def test_one_outside_has_another_shape_and_the_tone_of_it() -> None:
    rows = draw_run_chart(CHART, 40, 10)
    assert (OUTSIDE.shape, toned(OUTSIDE)) in [piece for row in rows for piece in row]


def test_without_limits_there_is_the_mean_alone() -> None:
    chart = RunChart((1.0, 2.0), 1.5, "mean 1.5", ends=("a", "b"))
    text = "\n".join(strings(draw_run_chart(chart, 30, 8)))
    assert "mean 1.5" in text and "┄" not in text


figures = st.lists(st.floats(-1e9, 1e9), min_size=1, max_size=120)


@given(figures, st.integers(1, 200), st.integers(1, 60), st.data())
def test_any_figures_in_any_size(
    given_figures: list[float], width: int, height: int, data: st.DataObject
) -> None:
    picked = data.draw(st.integers(0, len(given_figures) - 1))
    mean = sum(given_figures) / len(given_figures)
    chart = RunChart(tuple(given_figures), mean, "mean", ends=("2025", "2026"), picked=picked)
    rows = draw_run_chart(chart, width, height)
    assert len(rows) == height and all(width_of(row) == width for row in rows)


@given(figures)
def test_every_job_that_has_room_is_drawn_and_the_picked_one_is_marked(
    given_figures: list[float],
) -> None:
    mean = sum(given_figures) / len(given_figures)
    chart = RunChart(tuple(given_figures), mean, "mean", ends=("2025", "2026"))
    rows = strings(draw_run_chart(chart, 200, 30))
    dots = sum(row.count(each) for row in rows for each in (UPPER, LOWER, BOTH))
    assert dots == len(given_figures)
    assert sum(row.count(PICKED) for row in rows) == 1


def test_of_more_jobs_than_fit_the_last_and_the_picked_one_are_drawn() -> None:
    many = tuple(float(number % 7) for number in range(60))
    for picked in (0, 30, 59):
        chart = RunChart(many, 3.0, "mean", ends=("2025", "2026"), picked=picked)
        rows = strings(draw_run_chart(chart, 30, 12))
        assert sum(row.count(PICKED) for row in rows) == 1
