"""The panel of the one figure: what gives way when room gets scarce, and what is painted when."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.widgets.figure_panel import FigurePanel, lay_out
from booth.widgets.lettering.bigfigure import draw
from booth.widgets.rows import strings, width_of
from booth.words.shown import Readout, Tone
from tests.widgets.bench_app import WidgetApp, screen_lines

WAITING = Readout("4:31", "", "doors coat 2", Tone.WAIT, lines=("touch test decides",))
DELIVERY = Readout("182", "ml/min", "mean of 3 catches", Tone.CAUTION, lines=("target 200",))


def test_six_rows() -> None:
    assert strings(lay_out(WAITING, 30, 6)) == [
        "         doors coat 2         ",
        "       █  █ ▄ ▝▀▀▙  ▀█        ",
        "       ▀▀▀█    ▀▀▙   █        ",
        "          █ ▀ ▗▄▄▛   █        ",
        "            ║ WAIT            ",
        "      touch test decides      ",
    ]


def test_three_rows_too_narrow_for_blocks() -> None:
    assert strings(lay_out(WAITING, 12, 3)) == [
        "doors coat 2",
        "    4:31    ",
        "   ║ WAIT   ",
    ]


def test_one_row() -> None:
    assert strings(lay_out(WAITING, 34, 1)) == ["4:31  ║ WAIT  doors coat 2        "]
    assert strings(lay_out(DELIVERY, 14, 1)) == ["182 ml/min  ▲…"]


def test_unit_stands_on_the_base_line() -> None:
    lines = strings(lay_out(DELIVERY, 60, 6))
    assert lines[3].rstrip().endswith("█  ▜▄▄▛ █▄▄▄ ml/min")


def test_unit_beneath_where_the_figure_gets_larger() -> None:
    lines = strings(lay_out(replace(DELIVERY, figure="182.5"), 52, 20))
    assert [line.strip() for line in lines].count("ml/min") == 1


def test_state_is_said_large_where_there_is_room() -> None:
    lines = strings(lay_out(WAITING, 52, 19))
    word = [line.strip() for line in draw("║ WAIT", 52, 4)]
    assert "\n".join(word) in "\n".join(line.strip() for line in lines)


def test_a_word_of_its_own_and_none() -> None:
    assert "║ HOLD" in "".join(strings(lay_out(replace(WAITING, word="HOLD"), 30, 6)))
    assert "║" not in "".join(strings(lay_out(replace(WAITING, word=""), 30, 6)))
    assert "·" not in "".join(strings(lay_out(Readout("12"), 30, 6)))


@given(
    st.text(max_size=8),
    st.text(max_size=8),
    st.sampled_from(Tone),
    st.lists(st.text(max_size=30), max_size=4),
    st.integers(0, 100),
    st.integers(0, 40),
)
def test_every_size_is_filled_exactly(
    figure: str, unit: str, tone: Tone, lines: list[str], width: int, height: int
) -> None:
    rows = lay_out(Readout(figure, unit, unit, tone, None, tuple(lines)), width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


@pytest.mark.parametrize("height", range(2, 30))
def test_figure_and_word_stay_to_the_last(height: int) -> None:
    """The word is there at every height, as text or in blocks, and the figure is never cut."""
    lines = strings(lay_out(WAITING, 52, height))
    text = "\n".join(line.strip() for line in lines)
    blocks = [draw("║ WAIT", 52, rows) for rows in range(3, 9)]
    in_blocks = any("\n".join(line.strip() for line in block) in text for block in blocks)
    assert "║ WAIT" in text or in_blocks
    figures = [draw("4:31", 52, rows) for rows in range(1, height)]
    assert any("\n".join(line.strip() for line in figure) in text for figure in figures)


async def test_it_repaints_only_what_changed() -> None:
    panel = FigurePanel()
    async with WidgetApp(panel).run_test(size=(30, 6)) as pilot:
        panel.shown = WAITING
        await pilot.pause()
        assert screen_lines(pilot.app) == strings(lay_out(WAITING, 30, 6))
        before = panel.painted_rows
        panel.shown = replace(WAITING)
        panel.shown = replace(WAITING, like="0:00")
        assert panel.painted_rows == before
        panel.shown = replace(WAITING, lines=("nearly",))
        assert panel.painted_rows == before + 1
        await pilot.pause()
        assert screen_lines(pilot.app)[-1].strip() == "nearly"


async def test_it_follows_the_window() -> None:
    panel = FigurePanel()
    async with WidgetApp(panel).run_test(size=(60, 20)) as pilot:
        panel.shown = WAITING
        await pilot.pause()
        await pilot.resize_terminal(40, 15)
        await pilot.pause()
        assert screen_lines(pilot.app) == strings(lay_out(WAITING, 40, 15))
        panel.shown = replace(WAITING, tone=Tone.LATE)
        await pilot.pause()
        assert screen_lines(pilot.app) == strings(lay_out(panel.shown, 40, 15))


async def test_hostile_text_is_drawn_as_text() -> None:
    nasty = Readout("[/ x", "[m2]", "[bold]\x1b[2J", Tone.WAIT, "\u202eGO", ("[@click=app.quit]x",))
    panel = FigurePanel()
    async with WidgetApp(panel).run_test(size=(40, 9)) as pilot:
        panel.shown = nasty
        await pilot.pause()
        text = "\n".join(screen_lines(pilot.app))
        for shown in ("[/ x", "[m2]", "[bold]␛[2J", "‹U+202E›GO", "[@click=app.quit]x"):
            assert shown in text
        assert "\x1b" not in text and "\u202e" not in text
