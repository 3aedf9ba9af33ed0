"""A disk that takes its time: keys go where the painter will see them, and none is taken blindly."""

from __future__ import annotations

import asyncio
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from textual import events

from booth.bench.model import BLIND, BOUNCE_S
from booth.clock import MachineClock
from booth.log.events import CoatBegun, CoatEnded, Event, NoteMade
from booth.log.session import Session
from tests.screens.at_app import AtApp, at_bench

#: As a card or a stick that is busy.
SLOW_S = 0.4


@contextmanager
def slow_disk(takes_s: float = SLOW_S) -> Iterator[None]:
    """Every entry takes so long to come onto the disk, and nothing else is done meanwhile."""
    record = Session.record

    def slowly(self: Session, event: Event) -> Event:
        time.sleep(takes_s)
        return record(self, event)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Session, "record", slowly)
        yield


def press_after(at: AtApp, wait_s: float, name: str) -> threading.Thread:
    """A key that comes from the input thread, whatever the loop does: stamped when it is pressed."""
    loop = asyncio.get_running_loop()

    def press() -> None:
        time.sleep(wait_s)
        key = events.Key(name, " " if name == "space" else None)
        loop.call_soon_threadsafe(at.app.post_message, key)

    thread = threading.Thread(target=press)
    thread.start()
    return thread


async def test_a_note_typed_at_once_is_whole_and_begins_no_coat() -> None:
    async with at_bench("coats", clock=MachineClock(environment={})) as at:
        await at.press("space")
        await asyncio.sleep(BOUNCE_S)
        with slow_disk():
            at.post("space", "f2", *"gun two of 2, dust", "enter")
            await at.settle()
        assert [note.text for note in at.kept(NoteMade)] == ["gun two of 2, dust"]
        assert len(at.kept(CoatBegun)) == len(at.kept(CoatEnded)) == 1


@pytest.mark.parametrize("takes_s", [SLOW_S, 1.0])
async def test_a_space_pressed_while_a_note_is_kept_is_not_counted_and_that_is_said(
    takes_s: float,
) -> None:
    async with at_bench("coats", clock=MachineClock(environment={})) as at:
        await at.press("f2")
        with slow_disk(takes_s):
            thread = press_after(at, takes_s / 2, "space")
            at.post("enter")
            await at.settle()
            thread.join()
            await at.settle()
        assert len(at.kept(NoteMade)) == 1 and at.kept(CoatBegun) == []
        assert BLIND in at.words
        await asyncio.sleep(BOUNCE_S)
        await at.press("space")
        assert len(at.kept(CoatBegun)) == 1 and BLIND not in at.words


async def test_a_space_pressed_while_a_coat_is_ended_begins_no_other() -> None:
    """Later than a bounce, and before it could be seen that the coat was ended."""
    async with at_bench("coats", clock=MachineClock(environment={})) as at:
        await at.press("space")
        await asyncio.sleep(BOUNCE_S)
        with slow_disk(1.0):
            thread = press_after(at, 0.85, "pagedown")
            at.post("pagedown")
            await at.settle()
            thread.join()
            await at.settle()
        assert len(at.kept(CoatBegun)) == len(at.kept(CoatEnded)) == 1
        assert BLIND in at.words


async def test_what_is_typed_while_a_dialog_opens_is_typed_there() -> None:
    async with at_bench("coats") as at:
        at.post("f2", *"dust", "enter")
        await at.settle()
        assert [note.text for note in at.kept(NoteMade)] == ["dust"]
        at.post("f6", "end", "enter", *"later", "enter")
        await at.settle()
        assert at.stack == ["Home", "BenchScreen"] and at.step != "coats"


async def test_what_is_pressed_while_a_job_is_opened_is_for_that_job() -> None:
    async with at_bench("coats") as at:
        await at.press("f9")
        at.post("enter", "f2", *"back again", "enter")
        await at.settle()
        assert [note.text for note in at.kept(NoteMade)] == ["back again"]
