"""The panel of the one figure: what gives way when room gets scarce, and what is painted when."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from rich.cells import cell_len

from booth.widgets.figure_panel import FigurePanel, lay_out, lettered, letters_of
from booth.widgets.heads import Block, heads
from booth.widgets.rows import strings, width_of
from booth.widgets.wet_edge import Field
from booth.words.shown import Band, Readout, Tone
from tests.widgets.bench_app import WidgetApp, screen_lines
from tests.widgets.ink import height_of, ink_of

WAITING = Readout("4:31", tone=Tone.WAIT, whose="hood", lines=("touch test decides",))
DELIVERY = Readout("182", "ml/min", "mean of 3", Tone.CAUTION, lines=("target 200",), whose="paint")
BAND = Band(0.36, 0.56, "190", "210", "ml/min, wanted")
#: Cells of a window, with what is left for the panel where rows and a form stand beneath it.
WINDOWS = ((80, 24, 15), (100, 30, 20), (200, 50, 36))


def test_whose_and_state_above_the_figure() -> None:
    assert strings(lay_out(WAITING, 52, 10)) == [
        "  █  █ ▟▀▀▙ ▟▀▀▙ █▀▀▙           █   ▐▌▗▛▀▀▙ █ ▀▜▛▀  ",
        "  █▀▀█ █  █ █  █ █  █   ████    █▗▛▙▐▌▐▛▀▀█ █  ▐▌   ",
        "  █  █ ▜▄▄▛ ▜▄▄▛ █▄▄▛           █▛ ▝█▌▐▌  █ █  ▐▌   ",
        "                                                    ",
        "                  █  █ ▄ ▝▀▀▙  ▀█                   ",
        "                  ▀▀▀█    ▀▀▙   █                   ",
        "                     █ ▀ ▗▄▄▛   █                   ",
        "                                                    ",
        "                                                    ",
        "  touch test decides                                ",
    ]


def test_six_rows() -> None:
    assert strings(lay_out(WAITING, 30, 6)) == [
        "  hood                ▬ WAIT  ",
        "     █▌ ▐█ ▄▖ ▝▀▀█▖  ▜█       ",
        "     █▙▄▟█ ▀▘  ▄▄█▘  ▐█       ",
        "        ▐█ ▄▖    █▌  ▐█       ",
        "        ▐█ ▀▘ ▗▄▄▛▘  ▐█       ",
        "                              ",
    ]


def test_two_rows_and_one() -> None:
    assert strings(lay_out(WAITING, 24, 2)) == [
        "  hood          ▬ WAIT  ",
        "          4:31          ",
    ]
    assert strings(lay_out(WAITING, 34, 1)) == ["4:31  ▬ WAIT  hood                "]
    assert strings(lay_out(DELIVERY, 14, 1)) == ["182 ml/min …  "]


def test_the_edge_passes_over_all_of_the_field_and_over_no_word_beneath() -> None:
    rows = lay_out(replace(WAITING, edge=0.5), 52, 10)
    for row in rows[:8]:
        passed = sum(cell_len(text) for text, style in row if "reverse" in style)
        assert passed == 26, row
    assert not any("reverse" in style for row in rows[8:] for _, style in row)


def test_the_field_is_full_at_the_alarm_and_empty_where_nothing_is_known() -> None:
    full = lay_out(replace(WAITING, edge=1.0, lines=()), 52, 10)
    assert all("reverse" in style for row in full for _, style in row)
    none = lay_out(replace(WAITING, edge=None, lines=()), 52, 10)
    assert not any("reverse" in style for row in none for _, style in row)


def test_the_band_is_a_bar_on_the_scale_with_its_ends_in_digits() -> None:
    *_, bar, words, explained, _ = strings(lay_out(replace(DELIVERY, band=BAND, edge=0.3), 60, 18))
    assert bar == "─" * 22 + "▀" * 12 + "─" * 26
    assert words.startswith(" " * 19 + "190" + " " * 12 + "210  ml/min, wanted")
    assert explained.strip() == "mean of 3"


def test_a_band_open_at_one_end_and_marks_where_to_stop() -> None:
    low = lay_out(
        replace(DELIVERY, band=Band(0.4, None, "3.0", "", "°C, at least"), edge=0.2), 60, 18
    )
    *_, bar, words, _, _ = strings(low)
    assert bar == "─" * 24 + "▀" * 36 and words.startswith(" " * 24 + "3.0  °C, at least")
    marked = replace(DELIVERY, marks=((0.25, "364 ml"), (0.75, "545 ml")), edge=0.25)
    *_, bar, words, _, _ = strings(lay_out(marked, 60, 18))
    assert [n for n, char in enumerate(bar) if char == "▲"] == [15, 45]
    assert words.split() == ["364", "ml", "545", "ml"]


def test_what_is_only_wanted_is_dim_and_its_head_is_not() -> None:
    asked = Readout("190-210", "ml/min", whose="catch", word="MEASURE", band=BAND, wanted=True)
    rows = lay_out(asked, 80, 14, 4)
    styles = [{style for text, style in row if text.strip()} for row in rows]
    assert {"$tone-plain"} in styles[:5] and styles[5:12].count({"$quiet"}) >= 4
    assert not any("tone-good" in style for row in rows for _, style in row)


def test_unit_stands_on_the_base_line() -> None:
    lines = strings(lay_out(DELIVERY, 60, 6))
    assert lines[4].rstrip().endswith("▀▙▄▟▀ █▙▄▄▄ ml/min")


def test_unit_beneath_where_the_figure_gets_larger() -> None:
    lines = strings(lay_out(replace(DELIVERY, figure="182.5"), 34, 20))
    assert [line.strip() for line in lines].count("ml/min") == 1


@pytest.mark.parametrize(
    ("whose", "shown"),
    [
        ("front bumper left", "front bumper"),
        ("rear quarter panel outside", "rear quarter"),
        ("Tür links", "Tür links"),
    ],
)
def test_a_name_is_shortened_by_whole_words(whose: str, shown: str) -> None:
    """Where one row of letters has room for both, the state whole."""
    found = heads(replace(WAITING, whose=whose), 116, 5, 1)
    read = ink_of([((line, ""),) for line in _lines(found, 116, 5)], None)
    assert height_of(shown, read) == 5 and height_of("WAIT", read) == 5
    longer = whose.split()[: len(shown.split()) + 1]
    assert shown == whose or height_of(" ".join(longer), read) == 0


def test_a_word_too_long_for_the_field_is_set_smaller_and_never_cut() -> None:
    word = "Kotflügelverbreiterung"
    found = heads(replace(WAITING, whose=word), 96, 5, 2)
    read = ink_of([((line, ""),) for line in _lines(found, 96, 12)], None)
    assert height_of(word, read, 3, 4) and height_of("WAIT", read) == 5


def _lines(found: tuple[tuple[Block, ...], ...], width: int, height: int) -> list[str]:
    field = Field(width, height)
    for place, band in enumerate(found):
        for block in band:
            field.put(block.x, place * 6, block.lines)
    return strings(field.rows(None, Tone.PLAIN))


def test_a_word_of_its_own_and_none() -> None:
    assert "▬ HOLD" in "".join(strings(lay_out(replace(WAITING, word="HOLD"), 30, 6)))
    assert "▬" not in "".join(strings(lay_out(replace(WAITING, word=""), 30, 6)))
    assert "·" not in "".join(strings(lay_out(Readout("12"), 30, 6)))


@pytest.mark.parametrize(("width", "window", "height"), WINDOWS)
@pytest.mark.parametrize("tone", Tone)
@pytest.mark.parametrize("edge", [None, 0.505, 1.0])
def test_figure_whose_and_state_are_read_from_six_metres(
    width: int, window: int, height: int, tone: Tone, edge: float | None
) -> None:
    letters = letters_of(window)
    shown = Readout("22.1", "s", tone=tone, whose="Ford #4", edge=edge)
    rows = lay_out(shown, width, height, letters)
    read = ink_of(rows, edge)
    for text in filter(None, (lettered(shown), "Ford #4", tone.word)):
        assert height_of(text, read) >= letters, text


def test_letters_are_at_least_four_five_and_eight_rows() -> None:
    assert [letters_of(rows) for rows in (24, 30, 50)] == [4, 5, 8]


@given(
    st.text(max_size=8),
    st.text(max_size=8),
    st.text(max_size=20),
    st.sampled_from(Tone),
    st.lists(st.text(max_size=30), max_size=4),
    st.none() | st.floats(0, 1),
    st.integers(0, 100),
    st.integers(0, 40),
)
def test_every_size_is_filled_exactly(
    figure: str,
    unit: str,
    whose: str,
    tone: Tone,
    lines: list[str],
    edge: float | None,
    width: int,
    height: int,
) -> None:
    shown = Readout(figure, unit, unit, tone, None, tuple(lines), whose=whose, edge=edge, band=BAND)
    rows = lay_out(shown, width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


@pytest.mark.parametrize("height", range(2, 30))
def test_figure_name_and_state_stay_to_the_last(height: int) -> None:
    """They are there at every height, as text or in blocks, and the figure is never cut."""
    rows = lay_out(WAITING, 52, height)
    text, read = "\n".join(strings(rows)), ink_of(rows, None)
    for each in ("hood", "WAIT"):
        assert each in text or height_of(each, read)
    assert "4:31" in text or height_of("4:31", read)


async def test_it_repaints_only_what_changed() -> None:
    panel = FigurePanel()
    async with WidgetApp(panel).run_test(size=(30, 6)) as pilot:
        panel.shown = WAITING
        await pilot.pause()
        assert screen_lines(pilot.app) == strings(lay_out(WAITING, 30, 6))
        before = panel.painted_rows
        panel.shown = replace(WAITING)
        panel.shown = replace(WAITING, like="0:00")
        panel.shown = replace(WAITING, edge=0.001)  # not an eighth of a cell yet
        assert panel.painted_rows == before
        panel.shown = replace(WAITING, word="HOLD")
        assert panel.painted_rows == before + 1
        await pilot.pause()
        assert screen_lines(pilot.app)[0].strip() == "hood                ▬ HOLD"


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
    async with WidgetApp(panel).run_test(size=(40, 12)) as pilot:
        panel.shown = nasty
        await pilot.pause()
        text = "\n".join(screen_lines(pilot.app))
        for shown in ("[/ x", "[m2]", "[bold]␛[2J", "‹U+202E›GO", "[@click=app.quit]x"):
            assert shown in text
        assert "\x1b" not in text and "\u202e" not in text


@pytest.mark.parametrize(("width", "height"), [(80, 12), (166, 28)])
def test_a_figure_that_stands_still_has_no_gap_at_its_1_and_its_unit_stands_by_it(
    width: int, height: int
) -> None:
    still, counting = (
        Readout("21.1", "s", tone=tone, word="") for tone in (Tone.PLAIN, Tone.RUNNING)
    )
    columns = []
    for shown in (still, counting):
        text = strings(lay_out(shown, width, height))
        row = next(row for row in text if " s " in f"{row} ")
        unit = row.rindex("s")
        inked = [x for x in range(unit) if any(line[x] != " " for line in text)]
        gaps = [after - before - 1 for before, after in pairwise(inked)]
        columns.append((max(gaps), unit - inked[-1] - 1))
    (gap, unit_off), (wide_gap, _) = columns
    assert gap < wide_gap, "only while it counts all numerals are of one width"
    assert unit_off <= 2


def test_a_figure_that_has_no_room_for_blocks_is_plain_text_with_a_plain_1() -> None:
    assert "21.1 s" in "".join(strings(lay_out(Readout("21.1", "s"), 7, 2)))
