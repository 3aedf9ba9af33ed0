"""A key counts from when it was pressed, not from when the program got round to it."""

from __future__ import annotations

import asyncio
import threading
import time

import pytest
from textual import events

from booth.bench.model import BOUNCE_S, STALL_S
from booth.clock import MachineClock
from booth.log.events import CoatBegun, EffluxTimed
from booth.moment import elapsed
from tests.screens.at_app import at_bench

#: How long the loop is held, and how near to the key press its stamp has to be: the keys are posted
#: by a thread, and the tolerance is what a loaded machine may take to run it.
HELD_S, NEAR_S = 0.3, 0.1


async def test_pressed_while_the_loop_is_held() -> None:
    """Two keys come from the input thread while the loop sleeps in a handler; and once more."""
    clock = MachineClock(environment={})
    async with at_bench("efflux", clock=clock) as at:
        loop = asyncio.get_running_loop()
        for _ in range(2):
            pressed: list[float] = []

            def press(pressed: list[float] = pressed) -> None:
                """As the input thread does: the event is made, and so stamped, at once."""
                for wait_s in (0.05, BOUNCE_S + 0.1):
                    time.sleep(wait_s)
                    pressed.append(clock.now().continuous)
                    loop.call_soon_threadsafe(at.app.post_message, events.Key("space", " "))

            thread = threading.Thread(target=press)
            thread.start()
            time.sleep(0.05 + HELD_S)  # the loop is held over the first key
            await asyncio.sleep(0.3)
            time.sleep(0.2 + HELD_S)  # and over the second
            thread.join()
            await at.settle()
            run = at.kept(EffluxTimed)[-1]
            assert run.seconds == pytest.approx(pressed[1] - pressed[0], abs=NEAR_S)
            assert run.at.continuous == pytest.approx(pressed[1], abs=NEAR_S)
            assert clock.now().continuous - run.at.continuous > HELD_S / 2
            await asyncio.sleep(BOUNCE_S)


async def test_a_coat_begins_when_space_went_down() -> None:
    clock = MachineClock(environment={})
    async with at_bench("coats", clock=clock) as at:
        key = events.Key("pagedown", None)
        pressed = clock.now()
        time.sleep(HELD_S)
        at.app.post_message(key)
        await at.settle()
        (begun,) = at.kept(CoatBegun)
        assert elapsed(pressed, begun.at).seconds < NEAR_S
        assert elapsed(begun.at, clock.now()).seconds >= HELD_S - NEAR_S


def test_a_bounce_is_shorter_than_any_run_of_a_cup_and_longer_than_a_glove() -> None:
    """No cup of the list runs for a second; a switch bounces for a few hundredths of one."""
    assert 0.1 < BOUNCE_S < 1.0 and STALL_S < BOUNCE_S
