"""The first screen: a row is a line, whatever the names; what is said about it can all be read."""

from __future__ import annotations

import re

import pytest
from textual.containers import VerticalScroll

from booth.clock import ManualClock
from booth.log.events import CoatBegun, CoatEnded
from booth.units import System
from booth.words.profile_words import profile_lines
from tests.job.make import profile
from tests.screens.at_app import a_job, at_app

LONG = ("left front door with its mirror", "right front door with its mirror", "hood")


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50)])
async def test_a_row_is_one_line_and_its_clock_is_never_cut(size: tuple[int, int]) -> None:
    at = ManualClock().now()
    a_job(at, CoatBegun(n=0, at=at, part=LONG[0], coat=1), CoatEnded(n=0, at=at, part=LONG[0], coat=1),
          parts=LONG)  # fmt: skip
    async with at_app(size=size) as desk:
        await desk.until(lambda: "Past jobs" in desk.text)
        wide = desk.app.screen.query_one("#rows").outer_size.width
        rows = [line[:wide] for line in desk.lines]
        job = next(row for row in rows if "»" in row)
        assert re.search(r"WAIT \d+:\d\d left", job)
        # Every profile is in a line of its own: nothing stands between two of them.
        first = next(n for n, row in enumerate(rows) if "Coating profiles" in row)
        last = next(n for n, row in enumerate(rows) if n > first and "───" in row)
        demo = [row for row in rows[first + 1 : last] if "demo" in row]
        assert len(demo) == last - first - 1 == len(desk.app.screen.profiles)  # type: ignore[attr-defined]


async def test_what_is_said_about_a_row_scrolls_with_left_and_right() -> None:
    async with at_app() as desk:
        await desk.until(lambda: "Past jobs" in desk.text)
        about = desk.app.screen.query_one("#about", VerticalScroll)
        for _ in range(10):
            if about.max_scroll_y:
                break
            await desk.press("down")
        assert about.max_scroll_y > 0
        assert "more of it" in desk.lines[-1]
        await desk.press("right")
        assert about.scroll_y > 0
        await desk.press("left")
        assert about.scroll_y == 0
        await desk.press("right", "up")
        assert about.scroll_y == 0  # another row is read from its beginning


async def test_a_profile_that_is_not_there_is_said() -> None:
    async with at_app() as desk:
        desk.app.wanted_profile = "no-such-one"
        desk.app.screen.read_again()  # type: ignore[attr-defined]
        await desk.until(lambda: "No coating profile 'no-such-one'" in desk.words)


async def test_where_the_files_are_is_said() -> None:
    async with at_app(size=(200, 50)) as desk:
        await desk.until(lambda: "Past jobs" in desk.text)
        await desk.press("end")
        whole = "".join(desk.text.split())
        assert str(desk.places.jobs_dir) in whole and str(desk.places.own_profiles_dir) in whole
        await desk.press("up")
        assert str(desk.places.shop_file) in "".join(desk.text.split())


def test_one_can_has_no_empty_parts_and_a_demo_says_so_once() -> None:
    lines = profile_lines(profile(demo=True, source="Invented values"), System.US)
    assert not any(line.endswith((":", ": ")) for line in lines)
    assert sum("nvented" in line for line in lines) == 1
