"""The section through the film."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.film_plot import EVEN, HEAVY, THIN, FilmPlot, draw_film
from booth.widgets.rows import inked, strings, width_of
from booth.words.shown import Section
from tests.widgets.bench_app import WidgetApp, screen_lines

UNEVEN = Section(((0, 0), (10, 1.0), (20, 1.4), (30, 0.4)), unit="mm")


def test_an_uneven_film() -> None:
    assert strings(draw_film(UNEVEN, 40, 9)) == [
        "   heavy + │                ▁▂▄▁        ",
        " high 1.20 │┄┄┄┄┄┄┄┄┄┄┄▁▂▄▆▇━━━━▅▁┄┄┄┄┄┄",
        "    target │        ▂▆▇███████████▅▁    ",
        "  low 0.80 │┄┄┄┄┄┄▂▆━━━━━━━━━━━━━━━━▅▁┄┄",
        "    thin - │    ▂▆████████████████████▅▁",
        "           │  ▂▆████████████████████████",
        "           │▂▆██████████████████████████",
        "           └-------       +++++++   ----",
        "            0 mm across the panel  30 mm",
    ]


def test_small_is_the_section_alone() -> None:
    assert strings(draw_film(Section(((0, 0.0), (8, 1.5))), 8, 3)) == [
        "┄┄┄┄┄┄▄▆",
        "┄┄┄▂▆━━━",
        "▂▄██████",
    ]


def test_an_even_film_is_marked_nowhere() -> None:
    rows = draw_film(Section(((0, 1.0), (10, 1.0))), 40, 9)
    styles = {style for row in rows for _, style in row}
    assert inked(EVEN) in styles
    assert not styles & {inked(THIN), inked(HEAVY)}
    assert "+" not in strings(rows)[-2] and "-" not in strings(rows)[-2]


def test_the_band_decides() -> None:
    film = ((0.0, 1.0), (10.0, 1.0))
    assert set(strings(draw_film(Section(film, 1.1, 1.3), 40, 9))[-2][12:]) == {"-"}
    assert set(strings(draw_film(Section(film, 0.5, 0.9), 40, 9))[-2][12:]) == {"+"}


def test_nothing_to_show() -> None:
    assert strings(draw_film(Section(), 22, 2)) == ["no film to show yet   ", " " * 22]


@given(st.lists(st.floats(0, 5), max_size=12), st.integers(0, 90), st.integers(0, 30))
def test_every_size_is_filled_exactly(films: list[float], width: int, height: int) -> None:
    rows = draw_film(Section(tuple((float(x), f) for x, f in enumerate(films))), width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


@given(st.floats(0, 3), st.integers(30, 90), st.integers(5, 30))
def test_a_higher_film_is_never_drawn_lower(film: float, width: int, height: int) -> None:
    """On one scale: a second place holds the scale's top."""

    def filled(share: float) -> int:
        section = Section(((0, share), (50, share), (50, 3.5), (100, 3.5)))
        column = [row[12] for row in strings(draw_film(section, width, height))[:-2]]
        return sum(
            " ▁▂▃▄▅▆▇█".find(char) if char not in "━┄" else 8 * (char == "━") for char in column
        )

    assert filled(film) <= filled(min(3.5, film + 0.5))


async def test_the_widget_draws_what_it_is_given() -> None:
    plot = FilmPlot()
    async with WidgetApp(plot).run_test(size=(40, 9)) as pilot:
        plot.shown = Section()
        await pilot.pause()
        assert screen_lines(pilot.app)[0].startswith("no film to show yet")
        plot.shown = UNEVEN
        await pilot.pause()
        assert screen_lines(pilot.app) == strings(draw_film(UNEVEN, 40, 9))
