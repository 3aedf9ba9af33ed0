"""What cannot be brought onto the disk: every screen says so, the job does not move, nothing typed is lost."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from booth.log.events import CoatBegun, Event, NoteMade, StepSkipped, Voided
from booth.log.session import Session
from booth.log.store import NotKept
from tests.screens.test_whole_job import Painter, painter

SAID = "The disk is full. This entry is NOT kept."


@contextmanager
def full_disk() -> Iterator[None]:
    """No entry comes onto the disk."""

    def refuse(self: Session, event: Event) -> Event:
        raise NotKept(SAID)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Session, "record", refuse)
        yield


async def _told(p: Painter) -> None:
    assert "NOT KEPT" in p.text and SAID in p.text
    await p.press("enter")
    await p.until(lambda: "NOT KEPT" not in p.text)


async def test_a_note_is_there_to_be_kept_again() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("coats")
        with full_disk():
            await p.press("f2")
            await p.type("gun two")
            await p.press("enter")
            await _told(p)
        assert p.kept(NoteMade) == []
        await p.press("f2")
        await p.until(lambda: "gun two" in p.text)
        await p.press("enter")
        await p.until(lambda: bool(p.kept(NoteMade)))
        assert p.kept(NoteMade)[0].text == "gun two"
        await p.press("f2")
        assert "gun two" not in p.text


async def test_no_coat_begins_no_step_moves_nothing_is_voided() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("coats")
        skipped = len(p.kept(StepSkipped))
        with full_disk():
            await p.press("space")
            await _told(p)
            assert "SPRAYING" not in p.text
            await p.press("f6")
            await _told(p)
            assert p.kind == "coats" and len(p.kept(StepSkipped)) == skipped
        await p.press("space")
        await p.until(lambda: bool(p.kept(CoatBegun)))
        with full_disk():
            await p.press("backspace")
            await _told(p)
            assert "SPRAYING" in p.text and p.kept(Voided) == []
            await p.press("f4")
            await p.until(lambda: "Log of this job" in p.text)
            await p.press("backspace")
            await _told(p)
        assert p.kept(Voided) == []


async def test_an_alarm_that_cannot_be_silenced_in_the_log_says_so() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("coats")
        await p.press("space")
        await p.pass_time(60)
        await p.press("space")
        await p.pass_time(3600)
        assert "silences" in p.text
        with full_disk():
            await p.press("escape")
            await _told(p)
        await p.beat()
        assert "silences" in p.text
