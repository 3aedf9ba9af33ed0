"""Many past jobs on the screen: typing finds, one product, one gun, side by side, job after job."""

from __future__ import annotations

import pytest

from booth.log import events as ev
from booth.words.job_search import Searched
from tests.card.jobs import coated, measured
from tests.job.make import profile
from tests.screens.at_app import AtApp, a_job, at_app
from tests.screens.test_history import ago, closed

SIZES = [(80, 24), (100, 30), (200, 50)]


def three_jobs() -> None:
    """The newest last: a clear with dust, a base without a gun, a clear with a note."""
    dust = ev.FaultSeen(n=0, at=ago(68), fault="dust")
    a_job(ago(70), dust, closed(69, "usable", next_time="wet the floor"), gun="Blue gun")
    base = profile(key="test-base", name="Silver test base")
    a_job(ago(40), closed(39, "redo"), parts=("tank",), profile=base)
    note = ev.NoteMade(n=0, at=ago(9), text="the compressor ran all the time")
    a_job(ago(10), note, closed(8), parts=("fender",), gun="Small gun")


def rows(at: AtApp) -> list[str]:
    return [line for line in at.lines if "2025-06-1" in line]


@pytest.mark.parametrize("size", SIZES)
async def test_each_letter_narrows_the_list_and_the_row_says_where(size: tuple[int, int]) -> None:
    async with at_app(size=size) as at:
        three_jobs()
        await at.open("Past jobs")
        assert len(rows(at)) == 3
        await at.type("dus")
        (row,) = rows(at)
        assert "fault: dust" in row and "1 of 3  with dus" in at.lines[0]
        await at.type("t floor")
        (row,) = rows(at)
        assert "next time: wet the floor" in at.words, "in full under the list"
        await at.press("backspace")
        assert "with dust floo" in at.lines[0]
        await at.press("escape")
        assert len(rows(at)) == 3 and "with" not in at.lines[0]


async def test_letters_are_no_commands_here_and_those_have_other_keys() -> None:
    async with at_app() as at:
        three_jobs()
        await at.open("Past jobs")
        for letter in "rvneuatqf/":
            await at.press(letter)
            assert at.screen == "History" and f"with {letter}" in at.lines[0]
            await at.press("escape")
        await at.press("question_mark")
        assert at.screen == "Sheet" and "narrows the list" in at.words


async def test_nothing_found_says_so_and_what_to_do() -> None:
    async with at_app() as at:
        three_jobs()
        await at.open("Past jobs")
        await at.type("dust zebra")
        assert rows(at) == [] and "0 of 3" in at.lines[0]
        assert "Jobs with one of them: dust 1, zebra none." in at.words
        assert "Bksp" in at.key_line and "all jobs" in at.key_line
        for absent in ("choose", "read", "reopen", "mark", "repeatability"):
            assert absent not in at.key_line
        await at.press("enter", "right", "left", "f6", "f11", "f12", "up", "end")
        assert at.screen == "History"


async def test_one_product_and_one_gun_by_keys_without_letters() -> None:
    async with at_app(size=(100, 30)) as at:
        three_jobs()
        await at.open("Past jobs")
        await at.press("f4")
        assert at.screen == "Menu" and "Silver test base" in at.text and "2 jobs" in at.text
        await at.pick("Silver test base")
        await at.press("enter")
        (row,) = rows(at)
        assert "tank" in row and "product Silver test base" in at.lines[0]
        await at.press("f4", "enter", "f5")
        await at.pick("Blue gun")
        await at.press("enter")
        (row,) = rows(at)
        assert "Blue gun" in row and "gun Blue gun" in at.lines[0]
        await at.type("fender")
        assert "No job of gun Blue gun holds fender." in at.words
        await at.press("escape")
        assert len(rows(at)) == 3


async def test_the_picked_job_stays_picked_while_the_list_narrows() -> None:
    async with at_app() as at:
        three_jobs()
        await at.open("Past jobs")
        await at.press("end")
        picked = next(line for line in rows(at) if "→" in line)
        await at.type("clear")
        assert next(line for line in rows(at) if "→" in line) == picked
        await at.press("escape")
        assert next(line for line in rows(at) if "→" in line) == picked


@pytest.mark.parametrize("key", ["f6", "insert"])
async def test_two_marked_jobs_lie_side_by_side(key: str) -> None:
    async with at_app() as at:
        for hours, parts in ((70, ("hood",)), (40, ("tank",))):
            a_job(ago(hours), *measured(), *coated(parts), closed(hours - 1), parts=parts)
        await at.open("Past jobs")
        await at.press("f11")
        assert at.screen == "History" and "Mark two jobs" in at.words
        assert "side by side" not in at.key_line
        await at.press(key, key)
        assert "#1" in rows(at)[0] and "#2" in rows(at)[1] and "side by side" in at.key_line
        await at.press("f11")
        assert at.screen == "SideBySide" and "#1" in at.text and "#2" in at.text
        (parts_row,) = [line for line in at.lines if line.startswith(" Parts")]
        assert parts_row.split() == ["Parts", "<>", "differs", "tank", "hood"]
        assert any("= same" in line for line in at.lines)
        assert "only what differs" in at.key_line
        await at.press("enter")
        assert not any("= same" in line for line in at.lines) and "all rows" in at.key_line
        await at.press("end", "home", "escape")
        assert at.screen == "History"
        await at.press("up", key)
        assert "#2" not in at.text, "its mark is gone"


async def test_more_jobs_than_fit_are_walked_to() -> None:
    async with at_app() as at:
        for hours in (70, 60, 50):
            a_job(ago(hours), closed(hours - 1), parts=(f"part {hours}",))
        await at.open("Past jobs")
        await at.press("f6", "f6", "f6", "f11")
        assert "jobs 1 to 2 of 3" in at.lines[0] and "part 70" not in at.text
        assert "other jobs" in at.key_line
        await at.press("right")
        assert "jobs 2 to 3 of 3" in at.lines[0] and "part 70" in at.text
        await at.press("right", "left", "left")
        assert "jobs 1 to 2 of 3" in at.lines[0]
        await at.pilot.resize_terminal(200, 50)
        await at.beat()
        assert "3 jobs" in at.lines[0] and "part 70" in at.text
        assert "other jobs" not in at.key_line


async def test_units_change_in_all_columns() -> None:
    async with at_app(size=(100, 30)) as at:
        for hours in (70, 60):
            a_job(ago(hours), *measured(), closed(hours - 1))
        await at.open("Past jobs")
        await at.press("f6", "f6", "f11")
        assert at.text.count("28 psi") == 2
        await at.press("u")
        assert at.text.count("1.90 bar") == 2


def timed(hours: float, seconds: float) -> ev.EffluxTimed:
    return ev.EffluxTimed(n=0, at=ago(hours), cup="ford-4", seconds=seconds)


def series() -> None:
    """Twenty-two cups, one of them far off."""
    for number in range(22):
        seconds = 27.0 if number == 15 else 20.0 + number % 2 * 0.4
        hours = 900.0 - 24 * number
        part = "far part" if number == 15 else "door"
        a_job(ago(hours), timed(hours, seconds), closed(hours - 1), parts=(part,))


@pytest.mark.parametrize("size", SIZES)
async def test_the_job_outside_the_limits_is_named_with_its_date(size: tuple[int, int]) -> None:
    async with at_app(size=size) as at:
        series()
        await at.open("Past jobs")
        await at.press("f12")
        await at.until(lambda: "mean" in at.text)
        assert at.screen == "Repeatability" and "Trial clear, 22 jobs" in at.lines[0]
        assert "1 outside" in at.text and "┄" in at.text
        (named,) = [line for line in at.lines if line.strip().startswith("■ 2025-")]
        assert "far part: 27.0 s, above the limits" in named
        # One job after the other, to the one outside; Enter reads it.
        await at.press(*["left"] * 6)
        assert "▲ 2025-" in at.text and "far part: 27.0 s" in at.text
        await at.press("enter")
        assert at.screen == "JobReport" and "far part" in at.text
        await at.press("escape", "escape")
        assert at.screen == "History"


async def test_only_the_jobs_that_are_listed_are_held_against_each_other() -> None:
    async with at_app() as at:
        series()
        await at.open("Past jobs")
        await at.type("door")
        await at.press("f12")
        await at.until(lambda: "mean" in at.text)
        assert "21 jobs" in at.lines[0] and "all inside" in at.text


async def test_too_few_jobs_have_no_limits_and_it_is_said_why() -> None:
    async with at_app() as at:
        for number in range(3):
            a_job(ago(90.0 - number), timed(80, 20.0 + number), closed(70))
        await at.open("Past jobs")
        await at.press("f12")
        await at.until(lambda: "mean" in at.text)
        assert "no limits yet" in at.text and "5 figures or more" in at.words
        assert "┄" not in at.text


async def test_where_nothing_was_measured_it_is_said() -> None:
    async with at_app() as at:
        a_job(ago(20), closed(19))
        await at.open("Past jobs")
        await at.press("f12")
        await at.until(lambda: "Nothing was measured" in at.words)
        await at.press("enter", "left", "right", "up", "down", "escape")
        assert at.screen == "History"


async def test_the_menu_lists_all_that_can_be_done() -> None:
    async with at_app() as at:
        three_jobs()
        await at.open("Past jobs")
        await at.press("left")
        assert at.screen == "Menu"
        for words in ("one product", "one gun", "Mark it", "the same each time", "note", "card"):
            assert words in at.words
        await at.pick("Mark it")
        await at.press("enter")
        assert at.screen == "History" and "#1" in rows(at)[0]


async def test_the_list_of_a_thousand_is_made_only_as_far_as_it_is_seen() -> None:
    async with at_app() as at:
        three_jobs()
        await at.open("Past jobs")
        screen = at.app.screen
        (first, *_) = screen.list.every  # type: ignore[attr-defined]
        assert isinstance(first, Searched)
        many = tuple(first._replace(job=first.job) for _ in range(5000))
        screen.put_jobs(many, True)  # type: ignore[attr-defined]
        await at.settle()
        made = screen.list.rows(80)._made  # type: ignore[attr-defined]
        assert 0 < len(made) < 60
        await at.press("end")
        assert len(made) < 120 and screen.picked == 4999  # type: ignore[attr-defined]
