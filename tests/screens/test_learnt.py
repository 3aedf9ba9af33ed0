"""What this shop has learnt, on the screen: the list, its jobs, one left out and taken in again."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.files.places import Places
from booth.log import events as ev
from booth.log.store import read_log
from booth.screens.learnt_from import about_lines
from booth.units import System
from tests.invented_year import write_year
from tests.learnt.test_left_out import append
from tests.screens.at_app import at_app, at_bench, kept

TITLE = "What this shop has learnt"


def a_year(jobs: int = 12) -> list[Path]:
    return write_year(Places.standard().jobs_dir, jobs=jobs)


async def test_an_empty_shop_says_what_would_teach() -> None:
    async with at_app() as at:
        await at.open(TITLE)
        assert "nothing yet" in at.lines[0]
        await at.press("enter")
        assert at.screen == "LearntScreen"
        await at.press("escape")
        assert at.screen == "Home"


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50)])
async def test_every_subject_with_its_band_and_count(size: tuple[int, int]) -> None:
    a_year(24)
    async with at_app(size=size) as at:
        await at.open(TITLE)
        await at.press("u")
        seen = at.text
        for _ in range(16):
            await at.press("down")
            seen += at.text
        for said in (
            "Waits: times",
            "Delivery by needle turns",
            "What lands",
            "Thinner to",
            "fill its",
        ):
            assert said in seen
        assert "22 waits" in seen and "sure, 4 catches" in seen


async def test_enter_shows_its_jobs_and_leaves_one_out_with_a_reason() -> None:
    paths = a_year(9)
    async with at_app() as at:
        await at.open(TITLE)
        await at.press("enter")
        assert at.screen == "LearntFrom" and "Waits" in at.lines[0]
        assert sum("job-00" in line for line in at.lines) == 9
        before = {path: path.read_bytes() for path in paths}
        await at.press("enter", "down", "enter")
        latest = paths[-1]
        (out,) = kept(latest, ev.LeftOut)
        assert out.reason == ev.LeftOut.REASONS[1]
        # Behind the closing, which stays; nothing that was there is another now.
        assert latest.read_bytes().startswith(before[latest])
        assert isinstance(read_log(latest).events[-2], ev.JobClosed)
        assert all(path.read_bytes() == before[path] for path in paths[:-1])
        assert "Left out" in at.text and out.reason[:20] in at.text
        assert "take it in again" in at.text
        await at.press("enter")
        assert len(kept(latest, ev.TakenIn)) == 1 and "leave this job out" in at.text
        await at.press("escape")
        assert at.screen == "LearntScreen"


async def test_one_s_own_reason_is_typed_and_esc_leaves_it_in() -> None:
    paths = a_year(4)
    async with at_app() as at:
        await at.open(TITLE)
        await at.press("enter", "enter", "escape")
        assert at.screen == "LearntFrom" and not kept(paths[-1], ev.LeftOut)
        await at.press("enter", "x", "y", "enter")
        (out,) = kept(paths[-1], ev.LeftOut)
        assert out.reason == "xy"


async def test_what_cannot_be_kept_is_said_and_nothing_changes(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    paths = a_year(4)
    async with at_app() as at:
        await at.open(TITLE)
        await at.press("enter")
        paths[-1].unlink()
        await at.press("enter", "enter")
        assert "NOT KEPT" in at.text
        await at.press("escape")
        assert at.screen == "LearntFrom"


async def test_from_the_bench_by_key_and_what_was_left_out_counts_there_at_once() -> None:
    a_year(6)
    async with at_bench("weather") as at:
        past = at.bench.desk._past
        await at.press("ctrl+o")
        assert at.screen == "LearntScreen"
        await at.press("escape")
        assert at.screen == "BenchScreen" and at.bench.desk._past is not past


async def test_a_hostile_reason_reaches_the_screen_as_text() -> None:
    paths = a_year(4)
    hostile = "[bold]\x1b[2J[/] " + "w" * 80
    append(paths[0], ev.LeftOut(n=0, at=kept(paths[0], ev.JobClosed)[0].at, reason=hostile))
    async with at_app(size=(120, 40)) as at:
        await at.open(TITLE)
        await at.press("enter")
        assert "\x1b" not in at.text and "[bold]" in at.text


def test_where_there_is_no_room_there_is_no_plot() -> None:
    from booth.learnt.past_jobs import PastJobs

    a_year(8)
    (waits,) = [
        each
        for each in PastJobs(Places.standard().jobs_dir).all_learnt()
        if each.subject == "waits"
    ]
    wide, narrow = (about_lines(waits, System.US, width) for width in (60, 12))
    assert any("├" in line for line in wide) and not any("├" in line for line in narrow)
    assert max(len(line) for line in wide if "·" in line) <= 57
