"""Larger windows say more: at three sizes what stands beside the figure, and that nothing else changes."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

import pytest
from textual.geometry import Region
from textual.widget import Widget

from booth.log.store import log_files
from booth.units import System
from booth.widgets.beside import BesideView
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.film_plot import FilmPlot
from booth.widgets.form_view import FormView
from booth.widgets.log_tail import LogTail
from booth.widgets.room import MOST_TEXT
from booth.widgets.said import Said
from booth.widgets.themes import THEMES
from booth.widgets.time_line import TimelineView
from booth.widgets.tries import TriesView
from booth.widgets.wet_edge import cells_of
from tests.long_day import PARTS, clear, long_day
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench
from tests.screens.jobs import coated

SMALL, MIDDLING, LARGE = (80, 24), (100, 30), (200, 50)
TRIED = ("weather", "amount", "mix", "efflux", "thin", "air", "catch", "fan", "pace", "film")


@asynccontextmanager
async def on(step: str, size: tuple[int, int]) -> AsyncIterator[AtApp]:
    """The long day with a step open, every alarm silenced."""
    clock = ManualClock()
    day = long_day(clock)
    at_step = at_bench(
        step, *day, clock=clock, size=size, system=System.METRIC, profile=clear(), parts=PARTS
    )
    async with at_step as at:
        for _ in range(12):
            if "silences" in at.text:
                await at.press("escape")
                await at.pass_time(1)
        yield at


def seen(at: AtApp, kind: type[Widget]) -> list[Region]:
    """Where widgets of a kind are in sight."""
    found = at.app.screen.query(kind)
    return [each.region for each in found if each.region.area and each.is_on_screen]


@pytest.mark.parametrize("step", TRIED)
async def test_what_was_tried_stands_beside_words_and_rows_where_there_is_room(step: str) -> None:
    for size in (SMALL, MIDDLING, LARGE):
        async with on(step, size) as at:
            if size == SMALL:
                assert not seen(at, BesideView) and not seen(at, LogTail)
                continue
            (tries,) = seen(at, TriesView)
            (panel,), (form,) = seen(at, FigurePanel), seen(at, FormView)
            assert tries.y >= panel.bottom and tries.x >= form.right, (
                "beneath the figure, beside rows"
            )
            assert tries.bottom <= size[1] - 1
            assert panel.height >= 0.4 * size[1], "the figure stays the dominant thing"
            assert bool(seen(at, LogTail)) == (size == LARGE)


@pytest.mark.parametrize("size", [MIDDLING, LARGE])
async def test_the_day_stands_at_coats_and_the_film_at_the_pattern(size: tuple[int, int]) -> None:
    async with on("coats", size) as at:
        (line,) = seen(at, TimelineView)
        assert line.height >= len(PARTS) + 2 and "▼" in at.text
        await at.open_step("pattern")
        assert bool(seen(at, FilmPlot)) == (size == LARGE)


@pytest.mark.parametrize("step", [*TRIED, "coats", "cautions", "prepare", "result", "plan"])
async def test_text_is_never_wider_than_it_is_read(step: str) -> None:
    async with on(step, LARGE) as at:
        for words in at.app.screen.query(Said):
            assert words.region.width - 4 <= MOST_TEXT
        for row in at.lines[1:-1]:
            assert len(row) <= LARGE[0]
        how = at.app.screen.query_one(".how")
        assert not how.region.area or how.region.width - 4 <= MOST_TEXT


async def test_an_empty_step_says_how_it_is_done_where_its_tries_will_stand() -> None:
    async with at_bench("efflux", size=LARGE, profile=clear()) as at:
        assert "how it is done" in at.text and not seen(at, TriesView)
        (before,) = seen(at, FigurePanel)
        await at.press("space")
        await at.pass_time(21.5)
        await at.press("space")
        assert seen(at, TriesView) and seen(at, FigurePanel) == [before], "the figure stands still"
    async with at_bench("efflux", size=MIDDLING, profile=clear()) as at:
        assert not seen(at, BesideView)


async def test_the_log_follows_the_steps_the_newest_at_the_bottom() -> None:
    async with on("air", LARGE) as at:
        await at.type("2.05")
        await at.press("enter")
        await at.press("enter")
        assert "air: inlet 2.05 bar" in at.text
        rail = [row[:34] for row in at.lines]
        at_row = max(y for y, row in enumerate(rail) if "air: inlet 2.05" in row)
        assert "next-product" not in "".join(rail[at_row + 1 :])


async def test_all_cautions_are_in_sight_and_a_checklist_stands_whole() -> None:
    async with on("cautions", LARGE) as at:
        (beside,) = seen(at, BesideView)
        listed = [row[beside.x :] for row in at.lines[beside.y : beside.bottom]]
        assert sum("→" in row for row in listed) == 1
        total = int(at.text.split("1 of ")[1].split()[0])
        assert sum(bool(row.strip()) for row in listed) == total
        await at.open_step("prepare")
        for line in at.bench.bench.step.how:
            assert line in at.text


async def test_drawing_keeps_nothing_and_a_second_repaints_nothing_of_it() -> None:
    async with on("efflux", LARGE) as at:
        (path,) = log_files(at.places.jobs_dir)
        before = path.read_bytes()
        tries, tail = at.app.screen.query_one(TriesView), at.app.screen.query_one(LogTail)
        painted = tries.painted_rows, tail.painted_rows
        for _ in range(65):
            await at.pass_time(1)
        assert (tries.painted_rows, tail.painted_rows) == painted
        assert path.read_bytes() == before
        await at.pilot.resize_terminal(*SMALL)
        await at.settle()
        assert not seen(at, BesideView)
        await at.pilot.resize_terminal(*LARGE)
        await at.settle()
        assert seen(at, TriesView) and path.read_bytes() == before


async def test_points_are_told_by_shape_whatever_the_colours(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """The same characters in both themes and without any colour; that inks stand out in sixteen is
    held by tests/widgets/test_themes.py."""
    shown = []
    for theme, colour in (*((each.name, "") for each in THEMES), (THEMES[0].name, "1")):
        monkeypatch.setenv("NO_COLOR", colour)
        async with on("catch", LARGE) as at:
            at.app.theme = theme
            await at.settle()
            (tries,) = seen(at, TriesView)
            shown.append([row[tries.x :] for row in at.lines[tries.y : tries.bottom]])
    assert shown[0] == shown[1] == shown[2]
    drawn = "".join(shown[0])
    assert drawn.count("○") == 2 and drawn.count("■") == 4, "water and coating, and what they are"


@pytest.mark.parametrize("step", TRIED)
async def test_rows_are_as_wide_as_their_place(step: str) -> None:
    async with on(step, LARGE) as at:
        tries = at.app.screen.query_one(TriesView)
        for row in tries._rows:
            assert len(cells_of("".join(text for text, _ in row))) == tries.size.width


@pytest.mark.parametrize(("count", "is_shown"), [(4, True), (12, False)])
async def test_a_line_of_which_a_part_would_be_missing_is_not_shown(
    count: int, is_shown: bool
) -> None:
    clock = ManualClock()
    parts = tuple(f"part {number}" for number in range(1, count + 1))
    day = coated(clock, "part 1", ago_s=30.0)
    async with at_bench("coats", *day, clock=clock, size=MIDDLING, parts=parts) as at:
        assert bool(seen(at, TimelineView)) == is_shown
        (panel,) = seen(at, FigurePanel)
        assert panel.height >= 0.4 * MIDDLING[1]
