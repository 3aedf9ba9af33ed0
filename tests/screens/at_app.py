"""The application with a clock that stands still, worked by keys; what its screen and disk hold."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager
from pathlib import Path

from textual.pilot import Pilot

from booth.app.app import BoothApp
from booth.clock import ManualClock
from booth.files.places import Places
from booth.log.events import Event, JobOpened, UnknownEvent
from booth.log.session import Session
from booth.log.store import read_log
from booth.moment import Moment
from booth.units import System
from tests.instruments.at_bench import Silence
from tests.job.make import profile
from tests.widgets.bench_app import screen_lines

NAMES = {" ": "space", ".": "full_stop", "/": "slash", ",": "comma", "[": "left_square_bracket"}


class AtApp:
    """What a test does to the program and reads from it."""

    def __init__(self, pilot: Pilot[None], clock: ManualClock) -> None:
        self.pilot = pilot
        self.clock = clock

    @property
    def app(self) -> BoothApp:
        app = self.pilot.app
        assert isinstance(app, BoothApp)
        return app

    @property
    def screen(self) -> str:
        """Which screen is up."""
        return type(self.app.screen).__name__

    @property
    def places(self) -> Places:
        return self.app.places

    @property
    def lines(self) -> list[str]:
        return [line.rstrip() for line in screen_lines(self.app)]

    @property
    def text(self) -> str:
        return "\n".join(self.lines)

    @property
    def words(self) -> str:
        """The text without frames and line ends."""
        plain = "".join(" " if "\u2500" <= each <= "\u259f" else each for each in self.text)
        return " ".join(plain.split())

    async def press(self, *keys: str) -> None:
        await self.pilot.press(*keys)
        await self.pilot.pause()

    async def type(self, text: str) -> None:
        await self.press(*(NAMES.get(character, character) for character in text))

    async def open(self, key: str) -> None:
        """Open a screen of the shelf, and let it read what it has to."""
        self.app.open_shelf(key)
        await self.until(lambda: getattr(self.app.screen, "has_read", True))

    async def until(self, done: Callable[[], bool]) -> None:
        """Wait for what a thread does."""
        for _ in range(400):
            await self.pilot.pause()
            if done():
                await self.pilot.pause()
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"it never came about; on the screen:\n{self.text}")


@asynccontextmanager
async def at_app(
    *, size: tuple[int, int] = (80, 24), system: System = System.US
) -> AsyncIterator[AtApp]:
    """The program at its first screen."""
    clock = ManualClock()
    app = BoothApp(clock, Places.standard(), sound=Silence())  # type: ignore[arg-type]
    async with app.run_test(size=size) as pilot:
        app.system = system
        await pilot.pause()
        yield AtApp(pilot, clock)


def a_job(
    at: Moment, *events: Event, parts: tuple[str, ...] = ("door", "hood"), gun: str = ""
) -> Path:
    """Put the log of a job on the disk: opened at `at`, then `events`. Give its path."""
    opened = JobOpened(n=1, at=at, job="trial", profile=profile(), parts=parts, gun=gun)
    session = Session.begin(Places.standard().jobs_dir, opened)
    for event in events:
        session.record(event)
    session.close()
    return session.log.path


def kept(path: Path) -> Sequence[Event | UnknownEvent]:
    """The events in a log."""
    return read_log(path).events
