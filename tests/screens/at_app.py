"""The program with a clock that stands still, worked by keys; what its screen and its disk hold."""

from __future__ import annotations

import asyncio
import time
from collections.abc import AsyncIterator, Callable, Sequence
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TypeVar

from msgspec.structs import replace
from textual import events
from textual.keys import _character_to_key
from textual.pilot import Pilot

from booth.app.app import BoothApp
from booth.clock import MachineClock
from booth.files.places import Places
from booth.log.events import Event, JobOpened, UnknownEvent
from booth.log.session import Session
from booth.log.store import log_files, read_log
from booth.moment import Moment, elapsed
from booth.profile.model import Profile
from booth.screens.bench import BenchScreen
from booth.screens.home import Home
from booth.shop.model import Shop
from booth.units import System
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.lists import PickList
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock
from tests.widgets.bench_app import screen_lines

E = TypeVar("E", bound=Event)
#: Two presses of Space by a hand, not by a glove that bounced [s].
APART_S = 1.0
#: What a thread or a timer does is waited for as long as this [s].
PATIENCE_S = 20.0
CHARACTERS = {"space": " ", "slash": "/", "question_mark": "?"}


class Heard:
    """A sound that makes none and remembers what was sounded, in order."""

    def __init__(self) -> None:
        self.sounds: list[str] = []

    def play(self, name: str) -> None:
        self.sounds.append(name)


class AtApp:
    """What a test does to the program and reads from it."""

    def __init__(self, pilot: Pilot[None], clock: ManualClock | MachineClock, heard: Heard) -> None:
        self.pilot = pilot
        self.clock = clock
        self.heard = heard
        self._space: Moment | None = None

    # -- what a test does -------------------------------------------------------------------

    async def press(self, *names: str) -> None:
        """Press keys as the terminal sends them; Space so that it is no bounce."""
        for name in names:
            if name in ("space", "pagedown"):
                await self._wait_for_the_glove()
            self.post(name)
            await self._handled()
        await self.settle()

    async def _wait_for_the_glove(self) -> None:
        now = self.clock.now()
        left_s = APART_S - elapsed(self._space, now).seconds if self._space is not None else 0.0
        if left_s > 0 and isinstance(self.clock, ManualClock):
            self.clock.advance(left_s)
        elif left_s > 0:
            await asyncio.sleep(left_s)

    async def press_now(self, *names: str) -> None:
        """Press keys at this very moment, each after what the one before did."""
        for name in names:
            self.post(name)
            await self._handled()
        await self.settle()

    def post(self, *names: str) -> None:
        """Let the terminal send keys, and wait for nothing."""
        for name in names:
            character = name if len(name) == 1 else CHARACTERS.get(name)
            key = _character_to_key(name) if len(name) == 1 else name
            if name in ("space", "pagedown"):
                self._space = self.clock.now()
            self.app.post_message(events.Key(key, character))

    async def type(self, text: str) -> None:
        """Type a text: faster than a glove, slower than the program."""
        self.post(*text)
        await self.settle()

    async def paste(self, text: str) -> None:
        """Paste a text."""
        self.app.post_message(events.Paste(text))
        await self.settle()

    async def settle(self) -> None:
        """Until everything that was asked for is done and drawn."""
        for _ in range(2):
            await self._handled()
            if not self.app.is_running:
                return
            await self.pilot._wait_for_screen()
            self.app.screen._on_timer_update()
        if self.app.fatal is not None:
            raise self.app.fatal

    async def _handled(self) -> None:
        """Until the application has handled what it was sent up to now."""
        app, done = self.app, asyncio.Event()
        if not app.call_later(done.set):
            return  # it has ended
        faulty = asyncio.ensure_future(app._exception_event.wait())
        handled = asyncio.ensure_future(done.wait())
        await asyncio.wait((faulty, handled), return_when=asyncio.FIRST_COMPLETED)
        for each in (faulty, handled):
            each.cancel()

    async def until(self, done: Callable[[], bool]) -> None:
        """Wait for what a thread or a timer does."""
        until = time.monotonic() + PATIENCE_S
        while time.monotonic() < until:
            await self.settle()
            if done():
                return
            await asyncio.sleep(0.005)
        raise AssertionError(f"it never came about; on the screen:\n{self.text}")

    async def pass_time(self, seconds: float) -> None:
        """Let time pass, and the heartbeat come."""
        assert isinstance(self.clock, ManualClock)
        self.clock.advance(seconds)
        await self.beat()

    async def beat(self) -> None:
        """One heartbeat."""
        self.app.tick()
        await self.settle()

    async def click(self, where: str, offset: tuple[int, int]) -> None:
        """Click on a widget."""
        await self.pilot.click(where, offset=offset)
        await self.settle()

    async def press_until(self, name: str, done: Callable[[], object], most: int = 12) -> None:
        """Press a key until something came about."""
        for _ in range(most):
            if done():
                return
            await self.press(name)
        raise AssertionError(f"{name}, pressed {most} times, led to:\n{self.text}")

    # -- getting somewhere ------------------------------------------------------------------

    async def pick(self, title: str) -> None:
        """Walk down the list that is up to the line whose name begins so."""
        for _ in range(60):
            shown = self.app.screen.query_one(PickList).shown
            if shown.lines[shown.picked].name.startswith(title):
                return
            await self.press("down")
        raise AssertionError(f"no line {title!r}:\n{self.text}")

    async def open(self, title: str) -> None:
        """From the first screen, what stands there under this title; what it reads is read."""
        await self.pick(title)
        await self.press("enter")
        await self.until(lambda: getattr(self.app.screen, "has_read", True))

    async def read_anew(self) -> None:
        """Let the first screen see what was put on the disk meanwhile."""
        self.home.read_again()
        await self.settle()

    async def take_up(self, path: Path, step: str = "") -> None:
        """Put the job at `path` on the bench, with this step open."""
        await self.app.take_up(self.app.jobs.take_up(path))
        if step:
            await self.bench.open_step(step)
        await self.settle()

    async def open_step(self, key: str) -> None:
        """Open a step of the job on the bench."""
        await self.bench.open_step(key)
        await self.settle()

    # -- what a test reads ------------------------------------------------------------------

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
    def stack(self) -> list[str]:
        """Which screens are open, the one that is up last."""
        return [type(each).__name__ for each in self.app.own_screens]

    @property
    def home(self) -> Home:
        return next(each for each in self.app.screen_stack if isinstance(each, Home))

    @property
    def bench(self) -> BenchScreen:
        return next(each for each in self.app.screen_stack if isinstance(each, BenchScreen))

    @property
    def step(self) -> str:
        """The key of the open step."""
        return self.bench.bench.step.key

    @property
    def places(self) -> Places:
        return self.app.places

    @property
    def lines(self) -> list[str]:
        return [line.rstrip() for line in screen_lines(self.app)]

    @property
    def text(self) -> str:
        """All that stands on the screen; what is set in blocks as the words it spells.

        That they are drawn is held by test_six_metres.py.
        """
        return "\n".join([*self.lines, *self._in_blocks])

    @property
    def _in_blocks(self) -> list[str]:
        shown = [each.shown for each in self.app.screen.query(FigurePanel) if each.display]
        seen = [
            each for each in shown if each is not None and "-small" not in self.app.screen.classes
        ]
        return [text for each in seen for text in (each.whose, each.shown_word, each.figure)]

    @property
    def words(self) -> str:
        """The text without frames and line ends."""
        plain = "".join(" " if "\u2500" <= each <= "\u259f" else each for each in self.text)
        return " ".join(plain.split())

    @property
    def key_line(self) -> str:
        return self.lines[-1]

    @property
    def marked(self) -> str:
        """The key of the form's marked row."""
        screen = self.app.screen
        bench = screen.bench.situation(self.clock.now()) if self.screen == "BenchScreen" else screen  # type: ignore[attr-defined]
        row = bench.rows.marked  # type: ignore[attr-defined]
        return row.key if row is not None else ""

    def kept(self, kind: type[E]) -> list[E]:
        """The entries of one kind in the one log on the disk."""
        (path,) = log_files(self.places.jobs_dir)
        return kept(path, kind)


@asynccontextmanager
async def at_app(
    *,
    size: tuple[int, int] = (80, 24),
    system: System = System.US,
    clock: ManualClock | MachineClock | None = None,
    profile: str | None = None,
    bundled: bool = False,
    early: tuple[str, ...] = (),
) -> AsyncIterator[AtApp]:
    """The program at its first screen, all of it read.

    profile: as named on the command line; bundled: with the profiles that come with the program,
    which take as long to read as all else; early: keys that come as soon as the list shows.
    """
    clock, heard = clock or ManualClock(), Heard()
    places = Places.standard()
    if not bundled:
        places = replace(places, profiles_dirs=(places.own_profiles_dir,))
    app = BoothApp(clock, places, sound=heard, profile=profile)  # type: ignore[arg-type]
    app.system = system
    async with app.run_test(size=size) as pilot:
        at = AtApp(pilot, clock, heard)
        at.post(*early)
        await at.settle()
        await at.until(lambda: bool(at.home.has_read))
        yield at


@asynccontextmanager
async def at_bench(
    step: str = "",
    *before: Event,
    profile: Profile | None = None,
    parts: tuple[str, ...] = ("door", "hood"),
    shop: Shop | None = None,
    gun: str = "",
    size: tuple[int, int] = (80, 24),
    system: System = System.US,
    clock: ManualClock | MachineClock | None = None,
) -> AsyncIterator[AtApp]:
    """A job on the bench with a step open. before: what was kept in it."""
    async with at_app(size=size, system=system, clock=clock) as at:
        at.app.shop = shop or Shop()
        path = a_job(at.clock.now(), *before, parts=parts, profile=profile, gun=gun)
        await at.take_up(path, step)
        yield at


def a_job(
    at: Moment,
    *events: Event,
    parts: tuple[str, ...] = ("door", "hood"),
    gun: str = "",
    profile: Profile | None = None,
) -> Path:
    """Put the log of a job on the disk: opened at `at`, then `events`. Give its path."""
    opened = JobOpened(n=1, at=at, job="", profile=profile or trial(), parts=parts, gun=gun)
    session = Session.begin(Places.standard().jobs_dir, opened)
    for event in events:
        session.record(event)
    session.close()
    return session.log.path


def everything(path: Path) -> Sequence[Event | UnknownEvent]:
    """The entries in a log."""
    return read_log(path).events


def kept(path: Path, kind: type[E]) -> list[E]:
    """The entries of one kind in a log."""
    return [event for event in everything(path) if isinstance(event, kind)]
