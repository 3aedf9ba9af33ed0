"""A key counts from when it was pressed, not from when the program got round to it."""

from __future__ import annotations

import asyncio
import threading
import time
from pathlib import Path

import pytest
from textual import events

from booth.app.app import BoothApp
from booth.clock import MachineClock
from booth.files.places import Places
from booth.instruments.efflux import Efflux
from booth.job.steps import steps_of
from booth.log.events import CoatBegun, EffluxTimed, JobOpened
from booth.log.session import Session
from booth.log.store import read_log
from booth.moment import elapsed
from tests.instruments.at_bench import Silence
from tests.job.make import profile

#: How long the loop is held, and how near to the key press its stamp has to be: the keys are posted
#: by a thread, and the tolerance is what a loaded machine may take to run it.
STALL_S, NEAR_S = 0.3, 0.1


@pytest.mark.parametrize("times", [1, 3])
async def test_pressed_while_the_loop_is_held(own_home: Path, times: int) -> None:
    """Two keys come from the input thread while the loop sleeps in a handler."""
    clock = MachineClock(environment={})
    app = BoothApp(clock, Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=(80, 24)) as pilot:
        session = Session.begin(
            app.places.jobs_dir,
            JobOpened(n=1, at=clock.now(), job="x", profile=profile(), parts=("hood",)),
        )
        app.take_up(session)
        await pilot.pause()
        bench = app.screen
        step = next(each for each in steps_of(session.job) if each.kind == "efflux")
        await bench.open_step(step)  # type: ignore[attr-defined]
        loop = asyncio.get_running_loop()
        for _ in range(times):
            pressed: list[float] = []

            def press(pressed: list[float] = pressed) -> None:
                """As the input thread does: the event is made, and so stamped, at once."""
                for wait_s in (0.05, 1.0):
                    time.sleep(wait_s)
                    pressed.append(clock.now().continuous)
                    key = events.Key("space", " ")
                    asyncio.run_coroutine_threadsafe(_post(app, key), loop)

            thread = threading.Thread(target=press)
            thread.start()
            time.sleep(0.05 + STALL_S)  # the loop is held over the first key
            await asyncio.sleep(0.5)
            time.sleep(0.3 + STALL_S)  # and over the second
            thread.join()
            await pilot.pause()
            await pilot.pause()
            run = [e for e in read_log(session.log.path).events if isinstance(e, EffluxTimed)][-1]
            assert run.seconds == pytest.approx(pressed[1] - pressed[0], abs=NEAR_S)
            assert run.at.continuous == pytest.approx(pressed[1], abs=NEAR_S)
            assert clock.now().continuous - run.at.continuous > STALL_S / 2


async def _post(app: BoothApp, key: events.Key) -> None:
    app.post_message(key)


async def test_a_coat_begins_when_space_went_down(own_home: Path) -> None:
    clock = MachineClock(environment={})
    app = BoothApp(clock, Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=(80, 24)) as pilot:
        session = Session.begin(
            app.places.jobs_dir,
            JobOpened(n=1, at=clock.now(), job="x", profile=profile(), parts=("hood",)),
        )
        app.take_up(session)
        await pilot.pause()
        step = next(each for each in steps_of(session.job) if each.kind == "coats")
        await app.screen.open_step(step)  # type: ignore[attr-defined]
        key = events.Key("pagedown", None)
        pressed = clock.now()
        time.sleep(STALL_S)
        app.post_message(key)
        await pilot.pause()
        await pilot.pause()
        (begun,) = [e for e in read_log(session.log.path).events if isinstance(e, CoatBegun)]
        assert elapsed(pressed, begun.at).seconds < NEAR_S
        assert elapsed(begun.at, clock.now()).seconds >= STALL_S - NEAR_S


def test_the_cup_knows_a_bounce_from_a_stop() -> None:
    """The two are told apart by less than any cup of the list can run."""
    from booth.instruments.efflux import BOUNCE_S

    assert Efflux.GO and 0.1 < BOUNCE_S < 1.0
