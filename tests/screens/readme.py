"""What the README's pictures show: the program worked by keys on an invented Saturday morning.

The clock is moved by hand. In those that move time is told faster than it passes; what stands on the
screen is what the program shows at that time.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Sequence
from contextlib import AbstractAsyncContextManager
from typing import NamedTuple

from booth.log import events as ev
from booth.moment import later
from tests.job.make import q
from tests.long_day import long_day
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench
from tests.screens.drawn import Screen, screen_of
from tests.screens.test_fits import bundled

PARTS = ("left door", "right door", "hood")


# -- what was kept before ------------------------------------------------------------------------


def so_far(clock: ManualClock) -> Sequence[ev.Event]:
    """Until the gun is set."""
    start = clock.now()

    def done(*steps: str) -> list[ev.Event]:
        return [ev.StepDone(n=0, at=start, step=step) for step in steps]

    return [
        *done("cautions"),
        ev.WeatherRead(n=0, at=start, air=q(22.0, "degC"), humidity=q(48, "%"), part=q(21, "degC")),
        *done("weather", "fresh-air", "amount", "plan"),
        ev.BatchMixed(n=0, at=start, batch=1, total=q(600, "ml")),
        *done("mix"),
    ]


def clocks(clock: ManualClock) -> Sequence[ev.Event]:
    """The same and the cup; two parts flash off."""
    now = clock.now()
    events: list[ev.Event] = list(so_far(clock))
    events += [ev.EffluxTimed(n=0, at=now, cup="ford-4", seconds=each) for each in (21.4, 21.8)]
    for part, ago in (("hood", 260.0), ("left door", 120.0)):
        events.append(ev.CoatBegun(n=0, at=later(now, -ago - 70), part=part, coat=1))
        events.append(ev.CoatEnded(n=0, at=later(now, -ago), part=part, coat=1))
    return events


def caught_too_little(clock: ManualClock) -> Sequence[ev.Event]:
    """Until a catch of the coating was below what the profile asks for."""
    caught = ev.CatchMade(
        n=0,
        at=clock.now(),
        seconds=30.0,
        amount=q(112, "ml"),
        delivery_ml_min=224.0,
        liquid="paint",
        turns=q(2, "turn"),
    )
    return [*so_far(clock), caught]


# -- pictures ------------------------------------------------------------------------------------


async def coats(at: AtApp) -> None:
    await at.pass_time(7)


async def cup(at: AtApp) -> None:
    for seconds in (21.4, 22.3, 22.1):
        await at.press("space")
        await at.pass_time(seconds)
        await at.press("space")


async def pattern(at: AtApp) -> None:
    await at.settle()


async def quiet(at: AtApp) -> None:
    """What rings is silenced."""
    for _ in range(12):
        if "silences" in at.text:
            await at.press("escape")
            await at.pass_time(1)


async def film(at: AtApp) -> None:
    for _ in range(20):
        if "heavy at both ends ▸" in at.text:
            break
        await at.press("right")
    await at.press("down", "down")


class Film:
    """The frames taken so far: how long each is seen [s], and its screen."""

    def __init__(self, at: AtApp) -> None:
        self.at = at
        self.frames: list[tuple[float, Screen]] = []

    def take(self, seconds: float) -> None:
        """Take what stands on the screen."""
        self.frames.append((seconds, screen_of(self.at.app)))

    async def run(self, passes_s: float, times: int, seconds: float) -> None:
        """Let time pass, and take every look at it."""
        for _ in range(times):
            await self.at.pass_time(passes_s)
            self.take(seconds)


#: A frame of time that passes is seen so long, and what is to be read [s].
QUICK_S, READ_S = 0.12, 2.5


async def catching(film: Film) -> None:
    """The needle opened by half a turn: half a minute of catching, and what follows from it."""
    at = film.at
    film.take(READ_S)
    await at.press("space")
    film.take(0.8)
    await film.run(1, 2, 0.8)
    await film.run(1, 28, QUICK_S)
    await film.run(1, 2, 0.6)
    await film.run(1, 1, 1.5)
    await at.until(lambda: "caught for" in at.text)
    film.take(1.0)
    for entry in ("4.6", "2.5"):
        for digit in entry:
            await at.type(digit)
            film.take(0.5)
        await at.press("enter")
        film.take(0.8)
    film.take(2 * READ_S)


async def waiting(film: Film) -> None:
    """Two parts in flash-off until the first of them is ready, and its next coat."""
    at = film.at
    film.take(READ_S)
    await film.run(5, 42, QUICK_S)
    await film.run(1, 9, 0.4)
    await film.run(1, 1, READ_S)
    await at.pass_time(1)
    await at.press("space")
    film.take(0.8)
    await film.run(1, 6, 0.8)


class Scene(NamedTuple):
    """The step that is open, what is done there, and how it is shown; before: what was kept."""

    step: str
    act: Callable[[AtApp], Awaitable[None]]
    size: tuple[int, int] = (80, 24)
    before: Callable[[ManualClock], Sequence[ev.Event]] = so_far
    bright: bool = False

    def opened(self) -> AbstractAsyncContextManager[AtApp]:
        return _opened(self.step, self.before, PARTS, self.size)


class Reel(NamedTuple):
    """The same of a picture that moves. rests: the frame for whoever wants no motion."""

    step: str
    act: Callable[[Film], Awaitable[None]]
    before: Callable[[ManualClock], Sequence[ev.Event]]
    rests: int

    def opened(self) -> AbstractAsyncContextManager[AtApp]:
        return _opened(self.step, self.before, ("left door", "hood"), (80, 24))


def _opened(
    step: str,
    before: Callable[[ManualClock], Sequence[ev.Event]],
    parts: tuple[str, ...],
    size: tuple[int, int],
) -> AbstractAsyncContextManager[AtApp]:
    clock = ManualClock()
    profile = bundled("two-pack-clear")
    return at_bench(step, *before(clock), profile=profile, parts=parts, clock=clock, size=size)


SCENES = {
    "cup": Scene("efflux", cup),
    "pattern": Scene("pattern", pattern, (100, 30)),
    "film": Scene("pattern", film, (100, 30)),
    "bright": Scene("coats", coats, (100, 30), clocks, bright=True),
    "large": Scene("catch", quiet, (160, 44), long_day),
}
REELS = {
    "catching": Reel("catch", catching, caught_too_little, rests=-1),
    "waiting": Reel("coats", waiting, clocks, rests=0),
}
