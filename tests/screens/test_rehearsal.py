"""A whole rehearsal at 80 x 24 by keys alone, from the first screen to the real job that follows."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.cli import dispatch
from booth.files.places import Places
from booth.log.events import (
    AirRead,
    CatchMade,
    CautionAcknowledged,
    CoatBegun,
    CoatEnded,
    FanSet,
    JobClosed,
    JobOpened,
    PassTimed,
    PatternRead,
)
from booth.log.session import Session
from booth.log.store import log_files
from booth.profile.cautions import cautions_with_water
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, a_job, at_app, everything

NAME = "Two-pack clear, 2:1"


async def test_a_whole_rehearsal_and_the_job_that_follows() -> None:
    async with at_app(bundled=True) as at:
        await at.press("home")
        assert "Needed: a clean gun" in at.words and "choose the coating" in at.key_line
        await at.press("enter")
        assert at.screen == "Rehearse" and "REHEARSAL" in at.lines[0]
        await at.open(NAME)
        assert "REHEARSAL" in at.lines[0] and "begin the rehearsal" in at.key_line
        await at.press("enter")
        await _cautions(at)
        await _gun(at)
        await _coats(at)
        await _clean(at)
        await _result(at)
        assert at.stack == ["Home"] and "Jobs not closed" not in at.text
        assert "Closed, still waiting" not in at.text, "of water nothing is waited for"
        await _real_job(at)


async def _next_step(at: AtApp, onto: str) -> None:
    assert "REHEARSAL" in at.lines[0]
    await at.press("enter")
    assert at.step == onto


async def _cautions(at: AtApp) -> None:
    count = 0
    while "read and understood" in at.key_line:
        assert "REHEARSAL" in at.lines[0]
        await at.press("space")
        count += 1
    profile = at.bench.desk.job.profile
    assert len(at.kept(CautionAcknowledged)) == count == len(cautions_with_water(profile))
    assert "weather" not in at.lines[0]
    await _next_step(at, "prepare")
    assert "Cardboard" in at.words
    await _next_step(at, "air")


async def _gun(at: AtApp) -> None:
    await at.type("20")
    await at.press_until("enter", lambda: at.kept(AirRead))
    assert "LOW" in at.words and "REHEARSAL" in at.lines[0]
    await _next_step(at, "catch")
    await at.press("space")
    await at.pass_time(63.5)
    # The whole window says STOP for a moment first.
    await at.until(lambda: "caught for" in at.text)
    await at.type("5oz")
    await at.press_until("enter", lambda: at.kept(CatchMade))
    (caught,) = at.kept(CatchMade)
    assert caught.liquid == "water"
    await _next_step(at, "fan")
    await at.type("11")
    await at.press("enter")
    await at.type("7")
    await at.press_until("enter", lambda: at.kept(FanSet))
    await _next_step(at, "pattern")
    await at.press("right")
    await at.press_until("enter", lambda: at.kept(PatternRead))
    await _next_step(at, "pace")
    await at.press("right", "right")
    for number in (1, 2, 3):
        await at.press("space")
        await at.pass_time(1.0)
        await at.press("space")
        assert len(at.kept(PassTimed)) == number
    await at.press_until("enter", lambda: at.step == "coats")


async def _coats(at: AtApp) -> None:
    wanted = 2
    for number in range(1, wanted + 1):
        assert f"COAT {number}" in at.text and "READY" not in at.text
        await at.press("space")
        await at.pass_time(60)
        await at.press("space")
        assert (len(at.kept(CoatBegun)), len(at.kept(CoatEnded))) == (number, number)
        if number < wanted:
            assert "In the real job: 8 min at 70 °F" in at.words
    assert "REHEARSED" in at.text and "COATED" not in at.text
    at.heard.sounds.clear()
    await at.pass_time(48 * 3600)
    assert not at.heard.sounds, "of water nothing rings"
    await _next_step(at, "clean")


async def _clean(at: AtApp) -> None:
    await at.press_until("space", lambda: "tick this line" not in at.key_line)
    await at.pass_time(2.0)
    await _next_step(at, "result")


async def _result(at: AtApp) -> None:
    assert "TO CHANGE" in at.text and "Inlet 20 psi" in at.words
    assert "Verdict" not in at.text
    await at.press_until("enter", lambda: at.stack == ["Home"])
    (path,) = log_files(at.places.jobs_dir)
    opened, closed = everything(path)[0], everything(path)[-1]
    assert isinstance(opened, JobOpened) and opened.rehearsal
    assert isinstance(closed, JobClosed) and closed.verdict == ""
    assert closed.to_change[0].startswith("Inlet 20 psi, the profile asks for 26 to 30 psi.")


async def _real_job(at: AtApp) -> None:
    """It begins with what the rehearsal said, and is a job: all its cautions, no approval taken over."""
    await at.open("Past jobs")
    assert f"Rehearsal: {NAME}" in at.text
    await at.press("escape")
    await at.press("home")
    await at.open(NAME)
    assert "REHEARSAL" not in at.text
    assert "to change first: Inlet 20 psi" in at.words
    await at.press("enter")
    assert at.step == "cautions" and "REHEARSAL" not in at.text
    assert "1 of 13" in at.text, "none was read for the coating"
    (real,) = (
        path
        for path in log_files(at.places.jobs_dir)
        if not everything(path)[0].rehearsal  # type: ignore[union-attr]
    )
    assert len(everything(real)) == 1


# -- from the command line ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        (["--rehearse"], "rehearsal:"),
        (["--rehearse", "two-pack-clear"], "rehearsal:two-pack-clear"),
        (["--rehearse", "--profile", "two-pack-clear"], "rehearsal:two-pack-clear"),
        (["--rehearse", "--system", "car-silver"], "rehearsal:system:car-silver"),
    ],
)
def test_what_the_command_line_asks_for(
    words: list[str], wanted: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str | None] = []
    monkeypatch.setattr(dispatch, "_screen", lambda name: asked.append(name) or 0)
    assert dispatch.run(words) == 0 and asked == [wanted]


@pytest.mark.parametrize(
    ("wanted", "named"),
    [
        ("rehearsal:two-pack-clear", NAME),
        ("rehearsal:car-silver", "Silver over epoxy primer"),
        ("rehearsal:system:car-silver", "Silver over epoxy primer"),
    ],
)
async def test_by_name_it_goes_straight_to_the_rehearsal(wanted: str, named: str) -> None:
    clock = ManualClock()
    a_job(
        clock.now(), profile=trial(key="two-pack-clear", name=NAME)
    )  # an open job is no rehearsal
    async with at_app(profile=wanted, clock=clock, bundled=True) as at:
        await at.settle()
        assert at.stack == ["Home", "NewJob"]
        assert f"REHEARSAL with water: {named}" in at.lines[0]


async def test_without_a_name_it_is_asked_of_which_coating() -> None:
    async with at_app(profile="rehearsal:", bundled=True) as at:
        assert at.stack == ["Home", "Rehearse"]
        await at.press("escape")
        assert at.stack == ["Home"]


async def test_a_name_that_is_not_there_is_said() -> None:
    async with at_app(profile="rehearsal:nothing", bundled=True) as at:
        assert at.stack == ["Home"] and "No coating profile 'nothing'" in at.words


async def test_an_open_rehearsal_is_taken_up_and_never_stands_for_the_job() -> None:
    clock = ManualClock()
    path = a_rehearsal(clock)
    async with at_app(profile="rehearsal:two-pack-clear", clock=clock, bundled=True) as at:
        row = at.home.chosen
        assert row is not None and row.path == path and row.title.startswith(f"Rehearsal: {NAME}")
        await at.press("enter")
        assert at.screen == "BenchScreen" and "REHEARSAL" in at.lines[0]
        await at.press("f11")
        assert "no setting for a coating" in at.words
        await at.press("f4")
        assert "Log of this rehearsal" in at.lines[0]
    async with at_app(profile="two-pack-clear", clock=clock, bundled=True) as at:
        assert at.stack == ["Home", "NewJob"] and "REHEARSAL" not in at.text


def a_rehearsal(clock: ManualClock) -> Path:
    own, parts = trial(key="two-pack-clear", name=NAME), ("cardboard",)
    opened = JobOpened(n=1, at=clock.now(), job="", profile=own, parts=parts, rehearsal=True)
    session = Session.begin(Places.standard().jobs_dir, opened)
    session.close()
    return session.log.path
