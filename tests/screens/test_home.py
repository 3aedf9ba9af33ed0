"""The first screen: a row is a line, whatever the names; what is said about it can all be read."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.files.places import Places
from booth.log.events import CoatBegun
from booth.log.session import Session
from booth.moment import later
from booth.units import System
from booth.widgets.lists import PickList
from booth.widgets.page_view import PageView
from booth.words.profile_words import profile_lines
from tests.job.make import profile
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job, at_app
from tests.screens.jobs import coated

LONG = ("left front door with its mirror", "right front door with its mirror", "hood")
BUNDLED = len(list((Path(__file__).parents[2] / "profiles").glob("*.toml")))
SIZES = [(80, 24), (100, 30), (200, 50)]


@pytest.mark.parametrize("size", SIZES)
async def test_a_row_is_one_line_and_its_clock_is_never_cut(size: tuple[int, int]) -> None:
    clock = ManualClock()
    a_job(clock.now(), *coated(clock, LONG[0]), parts=LONG)
    async with at_app(size=size, bundled=True) as desk:
        wide = desk.app.screen.query_one(PickList).outer_size.width
        rows = [line[:wide] for line in desk.lines]
        job = next(row for row in rows if "»" in row or "→ Trial" in row)
        assert re.search(r"WAIT \d+:\d\d left", job)
        # Every profile begins a row of its own; only the rest of a long name stands between two.
        first = next(n for n, row in enumerate(rows) if "Coating profiles" in row)
        last = next(n for n, row in enumerate(rows) if n > first and not row.strip(" ↓"))
        demo = [row for row in rows[first + 1 : last] if "demo" in row]
        assert all("demo" in row or row.startswith("   ") for row in rows[first + 1 : last])
        profiles = [row for row in desk.home.listed.items if row.section == "Coating profiles"]
        assert len(demo) == len(profiles) == BUNDLED


async def test_what_is_said_about_a_row_scrolls_with_left_and_right() -> None:
    async with at_app(bundled=True) as desk:
        about = desk.app.screen.query_one("#about", PageView)
        for _ in range(10):
            if about.max_scroll_y:
                break
            await desk.press("down")
        assert about.max_scroll_y > 0
        await desk.until(lambda: "more of it" in desk.key_line)  # known once it is laid out
        await desk.press("right")
        assert about.scroll_y > 0
        await desk.press("left")
        assert about.scroll_y == 0
        await desk.press("right", "down")
        assert about.scroll_y == 0  # another row is read from its beginning


async def test_where_the_files_are_is_said() -> None:
    async with at_app(size=(200, 50)) as desk:
        await desk.press("end")
        whole = "".join(desk.text.split())
        assert str(desk.places.jobs_dir) in whole and str(desk.places.own_profiles_dir) in whole
        await desk.press("up", "up")
        assert str(desk.places.shop_file) in "".join(desk.text.split())


async def test_page_up_with_nothing_ringing_keeps_what_is_picked() -> None:
    async with at_app(bundled=True) as desk:
        await desk.press("down", "down")
        picked, shown = desk.home.picked, desk.text
        await desk.press("pageup")
        assert (desk.home.picked, desk.text) == (picked, shown)
        await desk.press("down")
        assert desk.text != shown, "the right half follows"
        await desk.press("up", "pageup", "enter")
        assert desk.screen == "NewJob"


# -- a profile named on the command line -------------------------------------------------------


async def test_a_profile_that_is_not_there_is_said_and_which_there_are() -> None:
    async with at_app(profile="no-such-one", bundled=True) as desk:
        assert desk.stack == ["Home"]
        assert "No coating profile 'no-such-one'" in desk.words
        assert "two-pack-clear" in desk.words
        # Whole, to the last of them.
        assert "system:sealed-wood." in " ".join(desk.lines[-8:])


async def test_without_an_open_job_of_it_the_named_profile_opens_the_new_job() -> None:
    clock = ManualClock()
    a_job(clock.now())  # of another profile
    async with at_app(profile="two-pack-clear", clock=clock, bundled=True) as desk:
        assert desk.stack == ["Home", "NewJob"] and "Two-pack clear, 2:1" in desk.lines[0]
        await desk.press("escape")
        assert desk.home.chosen is not None and desk.home.chosen.key == "two-pack-clear"
        await desk.read_anew()
        assert desk.stack == ["Home"], "asked for once"


async def test_with_an_open_job_of_it_that_job_is_offered_first() -> None:
    clock = ManualClock()
    a_job(clock.now(), profile=profile(key="two-pack-clear", name="Two-pack clear, 2:1"))
    clock.advance(60)
    a_job(clock.now())  # begun later, of another profile
    async with at_app(profile="two-pack-clear", clock=clock, bundled=True) as desk:
        assert desk.stack == ["Home"] and "open" in desk.key_line
        row = desk.home.chosen
        assert row is not None and (row.kind, row.key) == ("job", "two-pack-clear")
        # Two Enters at once take up the one job and begin no other.
        desk.post("enter", "enter")
        await desk.settle()
        assert desk.stack == ["Home", "BenchScreen"]
        assert desk.app.jobs.current is not None
        assert desk.app.jobs.current.job.profile.key == "two-pack-clear"
        assert len(list(desk.places.jobs_dir.glob("*.jsonl"))) == 2


async def test_of_several_open_jobs_of_it_the_one_worked_on_last_is_offered() -> None:
    clock = ManualClock()
    path = a_job(clock.now(), parts=("worked on last",))
    a_job(later(clock.now(), 60), parts=("begun last",))
    with Session.resume(path).log as log:
        log.append(CoatBegun(n=2, at=later(clock.now(), 120), part="worked on last", coat=1))
    clock.advance(180)
    async with at_app(profile="trial-clear", clock=clock, bundled=True) as desk:
        assert desk.home.chosen is not None and desk.home.chosen.path == path


@pytest.mark.parametrize("keys", [("enter",), ("enter", "enter", "enter")])
async def test_an_enter_that_comes_before_everything_is_read(
    monkeypatch: pytest.MonkeyPatch, keys: tuple[str, ...]
) -> None:
    """As soon as the list shows: what was asked for by name opens, once, and one job begins."""
    monkeypatch.setattr("booth.screens.home.PAINTED_S", 60.0)
    clock = ManualClock()
    a_job(clock.now())  # an open job of another profile is offered first in the list
    async with at_app(clock=clock, profile="two-pack-clear", early=keys, bundled=True) as desk:
        begun = len(keys) > 1
        assert desk.stack == ["Home", "BenchScreen" if begun else "NewJob"]
        assert len(list(desk.places.jobs_dir.glob("*.jsonl"))) == 1 + begun


@pytest.mark.parametrize("profile_name", [None, "trial-clear"])
async def test_a_log_that_cannot_be_opened_stands_in_its_own_row(profile_name: str | None) -> None:
    clock = ManualClock()
    path = a_job(clock.now())
    path.with_name("20250101-0000-x-0001.jsonl").write_bytes(b"[/ x \x1b[2J\n")
    async with at_app(clock=clock, profile=profile_name, bundled=True) as desk:
        assert desk.screen == "Home"
        row = next(each for each in desk.home.listed.items if each.kind == "faults")
        assert row.title == "20250101-0000-x-0001.jsonl" and "\x1b" not in desk.text
        assert "cannot be opened" in desk.text
        await desk.pick(row.title)
        assert "left as it is" in desk.words
        await desk.press("enter")
        assert desk.screen == "Sheet" and "No line of it opens a job" in desk.words


def _own_profile(text: str, name: str = "mine.toml") -> None:
    folder = Places.standard().own_profiles_dir
    folder.mkdir(parents=True)
    (folder / name).write_text(text, "utf-8")


async def test_a_profile_with_a_fault_says_which_and_where() -> None:
    _own_profile('name = "[/ x"\nsource = 5\n')
    async with at_app(bundled=True) as desk:
        await desk.pick("mine.toml")
        assert "fault" in desk.text and "source" in desk.words
        await desk.press("enter")
        assert desk.screen == "Sheet" and "source" in desk.words


async def test_a_profile_with_a_fault_that_was_asked_for_is_shown() -> None:
    _own_profile('name = "x"\n')
    async with at_app(profile="mine", bundled=True) as desk:
        assert "Coating profile 'mine' has faults" in desk.words
        await desk.press("enter")
        assert desk.screen == "Sheet" and "mine.toml" in desk.words


async def test_a_faulty_copy_is_not_passed_over_for_the_bundled_profile_of_its_name() -> None:
    _own_profile('name = "x"\n', "two-pack-clear.toml")
    async with at_app(profile="two-pack-clear", bundled=True) as desk:
        assert "Coating profile 'two-pack-clear' has faults" in desk.words
        assert desk.screen == "Home"


def test_one_can_has_no_empty_parts_and_a_demo_says_so_once() -> None:
    lines = profile_lines(profile(demo=True, source="Invented values"), System.US)
    assert not any(line.endswith((":", ": ")) for line in lines)
    assert sum("nvented" in line for line in lines) == 1
