"""No word is cut in its middle, and none that matters is lost: every screen with long names.

A sentence that is left off ends in a space and an ellipsis; an ellipsis right behind a letter stands
only where a choice opens another list.
"""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from booth.job.steps import steps_of
from booth.job.waits import standings
from booth.log import events as ev
from booth.moment import later
from booth.units import System
from booth.words.wait_words import faces, short_words, state_word
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, a_job, at_app
from tests.screens.jobs import coated
from tests.screens.test_fits import bundled
from tests.screens.test_six_metres import WINDOWS, measured

PARTS = (
    "left front door of the van",
    "right front door of the van",
    "tailgate with its window frame",
    "bonnet",
    "sills",
    "roof rack",
)
CUT = re.compile(r"\w*[^\W\d_]…")
#: Choices that open another list or a question: the last word of each.
OPENS = {"words…", "part…", "parts…", "gun…", "tip…", "cup…", "ago…"}


def _look(at: AtApp) -> None:
    for line in at.lines:
        cut = [each for each in CUT.findall(line) if not each.endswith(tuple(OPENS))]
        assert not cut, (at.screen, cut, line, at.text)


def _begun(clock: ManualClock) -> list[ev.Event]:
    """Everything measured, and parts that wait in several states. Invented."""
    named = {"left door": PARTS[0]}
    kept = [
        replace(each, part=named[each.part])  # type: ignore[attr-defined,type-var]
        if getattr(each, "part", "") in named
        else each
        for each in measured(clock)
    ]
    for number, part in enumerate(PARTS[1:4]):
        ago = 60.0 + 4000.0 * number
        began, ended = later(clock.now(), -ago - 60.0), later(clock.now(), -ago)
        kept.append(ev.CoatBegun(n=0, at=began, part=part, coat=1))
        kept.append(ev.CoatEnded(n=0, at=ended, part=part, coat=1))
    return kept


@pytest.mark.parametrize("size", WINDOWS)
async def test_every_screen_of_a_job_with_long_names(size: tuple[int, int]) -> None:
    clock = ManualClock()
    async with at_app(clock=clock, size=size, system=System.METRIC, bundled=True) as at:
        path = a_job(clock.now(), *_begun(clock), parts=PARTS, profile=bundled("two-pack-clear"))
        await at.read_anew()
        for _ in range(len(at.home.listed.items)):
            _look(at)
            await at.press("down")
        await at.take_up(path, "cautions")
        await at.beat()
        for _ in range(8):
            _look(at)  # the alarms, one after the other
            await at.pass_time(2)
            if "silences" in at.text:
                await at.press("escape")
        for step in steps_of(at.bench.desk.job):
            await at.open_step(step.key)
            _look(at)
            if step.kind in ("coats", "weather"):
                _every_state_is_said(at)
                for key in ("right", "l", "question_mark", "f2", "f12"):
                    await at.press(key)
                    _look(at)
                    await _back_to("BenchScreen", at)


@pytest.mark.parametrize("size", WINDOWS)
async def test_a_coating_system_and_its_steps(size: tuple[int, int]) -> None:
    async with at_app(size=size, bundled=True) as at:
        await at.open("Silver over epoxy primer")
        _look(at)
        await at.press("enter")
        for step in steps_of(at.bench.desk.job)[-4:]:
            await at.open_step(step.key)
            _look(at)
            await at.press("up")
            _look(at)
            await at.press("escape")


@pytest.mark.parametrize("size", WINDOWS)
async def test_past_jobs_shop_and_preferences(size: tuple[int, int]) -> None:
    clock = ManualClock()
    closed = ev.JobClosed(n=0, at=clock.now(), verdict="good")
    a_job(clock.now(), *coated(clock, PARTS[0]), closed, parts=PARTS)
    async with at_app(clock=clock, size=size) as at:
        for title in ("Past jobs", "Shop"):
            await at.press("home")
            await at.open(title)
            _look(at)
            await at.press("enter")
            _look(at)
            await _back_to("Home", at)


async def _back_to(screen: str, at: AtApp) -> None:
    for _ in range(6):
        if at.screen != screen:
            await at.pass_time(2)
            await at.press("escape")
    assert at.screen == screen, at.text


def _every_state_is_said(at: AtApp) -> None:
    """Of every clock that is shown: its state, and what opens or closes."""
    job, now = at.bench.desk.job, at.clock.now()
    rows = [line for line in at.lines if any(part[:6] in line for part in (*PARTS, "batch"))]
    text, hidden = "\n".join(rows), re.search(r"\+\d+ more", at.text)
    assert faces(job, now)
    for each in standings(job, now):
        if not hidden:
            assert state_word(each) in text, at.text
            words = short_words(each).split()
            assert any(words[-1] in row for row in rows), (words, text)
