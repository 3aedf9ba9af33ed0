"""A bench with one step open, a clock that stands still, and what its screen and its log hold."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager

import msgspec
from textual import events
from textual.pilot import Pilot

from booth.app.app import BoothApp
from booth.clock import ManualClock
from booth.files.places import Places
from booth.instruments.base import Instrument
from booth.instruments.context import Context
from booth.log.events import Event, JobOpened, decode
from booth.log.fold import fold
from booth.log.session import Session
from booth.profile.model import Profile
from booth.profile.steps import DEFAULT_STEPS, steps_for
from booth.screens.bench import Bench
from booth.shop.model import Shop
from booth.units import System
from booth.widgets.entry import FieldRow
from tests.job.make import profile as trial
from tests.widgets.bench_app import screen_lines


class Silence:
    """A sound that only counts."""

    def __init__(self) -> None:
        self.ticks = self.signals = 0

    def tick(self) -> None:
        self.ticks += 1

    def signal(self) -> None:
        self.signals += 1

    def alarm(self) -> None: ...


class AtBench:
    """What a test does to the bench and reads from it."""

    def __init__(self, pilot: Pilot[None], clock: ManualClock, sound: Silence) -> None:
        self.pilot = pilot
        self.clock = clock
        self.sound = sound

    @property
    def app(self) -> BoothApp:
        app = self.pilot.app
        assert isinstance(app, BoothApp)
        return app

    @property
    def bench(self) -> Bench:
        return next(each for each in self.app.screen_stack if isinstance(each, Bench))

    @property
    def instrument(self) -> Instrument:
        found = self.bench.instrument
        assert found is not None
        return found

    async def press(self, *keys: str) -> None:
        """Press keys; a word of several characters that names no key is typed."""
        for key in keys:
            await self.pilot.press(key)

    async def type(self, text: str) -> None:
        """Type a text, character by character."""
        for character in text:
            name = {" ": "space", ".": "full_stop", "/": "slash", "%": "percent_sign"}.get(
                character, character
            )
            focused = self.app.focused
            target = focused if focused is not None else self.app.screen
            target.post_message(events.Key(name, character))
            await self.pilot.pause()

    async def pass_time(self, seconds: float) -> None:
        """Let time pass and everything be drawn."""
        self.clock.advance(seconds)
        self.bench.draw(self.clock.now())
        await self.pilot.pause()

    async def open(self, key: str) -> None:
        """Open the step `key`."""
        step = next(step for step in steps_for(self.bench.desk.job.profile) if step.key == key)
        await self.bench.open_step(step)
        await self.pilot.pause()

    @property
    def text(self) -> str:
        """The screen as text."""
        return "\n".join(screen_lines(self.app))

    @property
    def focused_row(self) -> str:
        """The key of the row that has the focus."""
        focused = self.app.focused
        parent = focused.parent if focused is not None else None
        return parent.field.key if isinstance(parent, FieldRow) else ""

    @property
    def log(self) -> list[Event]:
        """What is on disk, the opening left out."""
        (path,) = self.app.places.jobs_dir.glob("*.jsonl")
        lines = path.read_bytes().splitlines()
        return [decode(line) for line in lines][1:]  # type: ignore[misc]


@asynccontextmanager
async def at_bench(
    step: str,
    *,
    profile: Profile | None = None,
    before: Callable[[ManualClock], Sequence[Event]] = lambda clock: (),
    parts: tuple[str, ...] = ("door", "hood"),
    shop: Shop | None = None,
    system: System = System.METRIC,
    size: tuple[int, int] = (100, 30),
) -> AsyncIterator[AtBench]:
    """A job on the bench with `step` open; `before`: what was kept before."""
    clock, sound = ManualClock(), Silence()
    app = BoothApp(clock, Places.standard(), sound=sound)  # type: ignore[arg-type]
    async with app.run_test(size=size) as pilot:
        app.system = system
        app.shop = shop or Shop()
        opened = JobOpened(
            n=1, at=clock.now(), job="trial", profile=profile or trial(), parts=parts,
            shop=app.shop_as_it_is(), gun=app.shop.guns[0].name if app.shop.guns else "",
        )  # fmt: skip
        session = Session.begin(app.places.jobs_dir, opened)
        for event in before(clock):
            session.record(event)
        await pilot.pause()
        app.shop = shop or Shop()  # the home screen has read its own shop file meanwhile
        app.take_up(session)
        for _ in range(50):
            if isinstance(app.screen, Bench) and app.screen.instrument is not None:
                break
            await pilot.pause()
        else:
            raise app.fatal or TimeoutError("the bench did not open")
        desk = AtBench(pilot, clock, sound)
        await desk.open(step)
        yield desk
        await asyncio.sleep(0)


def context_of(
    *kept: Event,
    step: str = "pace",
    profile: Profile | None = None,
    shop: Shop | None = None,
    system: System = System.METRIC,
    parts: tuple[str, ...] = ("door", "hood"),
) -> Context:
    """A context with what was kept, for the pure functions."""
    clock = ManualClock()
    opened = JobOpened(n=1, at=clock.now(), job="trial", profile=profile or trial(), parts=parts)
    job = fold([opened, *(msgspec.structs.replace(event, n=n) for n, event in enumerate(kept, 2))])
    found = next(each for each in DEFAULT_STEPS if each.key == step)
    return Context(job, clock.now(), system, found, shop or Shop())
