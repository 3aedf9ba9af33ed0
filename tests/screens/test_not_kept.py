"""What cannot be brought onto the disk: every screen says so, the job does not move, nothing typed is lost."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from booth.log.errors import NotKept
from booth.log.events import AlarmAcknowledged, CoatBegun, Event, NoteMade, StepSkipped, Voided
from booth.log.session import Session
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_app, at_bench
from tests.screens.jobs import coated

SAID = "The disk is full. This entry is NOT kept."


@contextmanager
def full_disk() -> Iterator[None]:
    """No entry comes onto the disk."""

    def refuse(self: Session, event: Event) -> Event:
        raise NotKept(SAID)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Session, "record", refuse)
        yield


async def _told(at: AtApp) -> None:
    assert "NOT KEPT" in at.text and SAID in at.text
    await at.press("enter")
    assert "NOT KEPT" not in at.text


async def test_a_note_is_there_to_be_kept_again() -> None:
    async with at_bench("coats") as at:
        with full_disk():
            await at.press("f2")
            await at.type("gun two")
            await at.press("enter")
            await _told(at)
        assert at.kept(NoteMade) == []
        await at.press("f2")
        assert "gun two" in at.text
        await at.press("enter")
        assert [note.text for note in at.kept(NoteMade)] == ["gun two"]
        await at.press("f2")
        assert "gun two" not in at.text


async def test_no_coat_begins_no_step_moves_nothing_is_voided() -> None:
    async with at_bench("coats") as at:
        with full_disk():
            await at.press("space")
            await _told(at)
            assert "SPRAYING" not in at.text
            await at.press("f6", "enter")
            await _told(at)
            assert at.step == "coats" and at.kept(StepSkipped) == []
        await at.press("space")
        assert at.kept(CoatBegun)
        with full_disk():
            await at.press("backspace")
            await _told(at)
            assert "SPRAYING" in at.text and at.kept(Voided) == []
            await at.press("f4")
            assert "Log of this job" in at.text
            await at.press("backspace")
            await _told(at)
        assert at.kept(Voided) == []


async def test_an_alarm_that_cannot_be_silenced_in_the_log_says_so() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door", ago_s=3600), clock=clock) as at:
        await at.beat()
        assert "silences" in at.text
        with full_disk():
            await at.press("escape")
            await _told(at)
        await at.beat()
        assert "silences" in at.text and at.kept(AlarmAcknowledged) == []


async def test_a_job_that_cannot_be_opened_for_writing_is_not_begun() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        await at.type("left door, hood")
        at.places.jobs_dir.parent.mkdir(parents=True, exist_ok=True)
        at.places.jobs_dir.write_text("a file where the folder should be", "utf-8")
        await at.press("enter")
        assert at.screen == "Sheet" and "NOT KEPT" in at.text
        await at.press("enter")
        assert at.screen == "NewJob" and "left door, hood" in at.text, "what was typed stays"
        at.places.jobs_dir.unlink()
        await at.press("enter")
        assert at.screen == "BenchScreen"
