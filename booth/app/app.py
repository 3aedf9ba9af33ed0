"""The application: one clock, one tick, one door for keys, and what is the same on every screen.

What the first frame does not need is loaded after it.
"""

from __future__ import annotations

import asyncio
import contextlib
import signal
from collections.abc import Awaitable, Callable
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from textual import events
from textual.screen import Screen
from textual.timer import Timer

from booth.app.preferences import Preferences
from booth.app.sound import Sound
from booth.clock import Clock
from booth.files.places import Places
from booth.forms.key import Key
from booth.screens.base import OwnScreen
from booth.screens.home import Home
from booth.screens.keyline import CLICKED
from booth.units.kinds import System
from booth.widgets import themes
from booth.widgets.textual_internals import FaultApp, mend

if TYPE_CHECKING:
    from booth.app.alarms import Alarms
    from booth.files.faults import Fault
    from booth.log.open_jobs import OpenJobs
    from booth.log.session import Session
    from booth.shop.model import Shop

#: However fast time is made to run, the screen is not drawn more often than this.
LEAST_TICK_S = 0.05
#: The first frame does not wait for what ticks [s].
FIRST_TICK_S = 0.1


class BoothApp(FaultApp):
    """booth."""

    TITLE = "booth"
    CSS_PATH = "home.tcss"
    COMMAND_PALETTE_BINDING = "ctrl+p"

    def __init__(
        self,
        clock: Clock,
        places: Places,
        sound: Sound | None = None,
        profile: str | None = None,
    ) -> None:
        super().__init__()
        mend()
        self.clock = clock
        self.places = places
        self.sound = sound or Sound(places.cache_dir, self.bell)
        self.preferences = Preferences.read(places.preferences_file)
        themes.install(self, self.preferences.theme)
        self.system = System(self.preferences.units or System.US)
        self._wanted_profile = profile
        self._timer: Timer | None = None
        self._all_read = False

    def get_theme_variable_defaults(self) -> dict[str, str]:
        """The tones exist under any theme."""
        return themes.variable_defaults()

    @cached_property
    def alarms(self) -> Alarms:
        """What rings."""
        from booth.app.alarms import Alarms

        return Alarms(self)

    @cached_property
    def jobs(self) -> OpenJobs:
        """The jobs that are open."""
        from booth.log.open_jobs import OpenJobs

        return OpenJobs(self.places.jobs_dir, self.clock.now().boot)

    @cached_property
    def shop(self) -> Shop:
        """The painter's equipment, as read last."""
        from booth.shop.model import Shop

        return Shop()

    # -- starting and leaving ---------------------------------------------------------------

    def on_mount(self) -> None:
        self.push_screen(Home(self._wanted_profile))
        self._mind_signals()
        self.app_resume_signal.subscribe(self, self._resumed)
        self.set_timer(FIRST_TICK_S, self.tick)

    def _read_styles(self) -> None:
        """The styles of all screens but the first, once."""
        if not self._all_read:
            self._all_read = True
            self.stylesheet.read(Path(__file__).with_name("booth.tcss"))
            self.refresh_css(animate=False)

    def _mind_signals(self) -> None:
        """A closed terminal or a polite kill leaves the terminal as it was found."""
        loop = asyncio.get_running_loop()
        for name in ("SIGTERM", "SIGHUP", "SIGINT"):
            number = getattr(signal, name, None)
            if number is None:
                continue
            with contextlib.suppress(NotImplementedError, RuntimeError, ValueError):
                loop.add_signal_handler(number, self._leave_on_signal, number)

    def _leave_on_signal(self, number: int) -> None:
        self.exit(return_code=128 + number)

    def _resumed(self, _: Any) -> None:
        """After Ctrl+Z and fg the terminal has forgotten everything."""
        self.screen.refresh(layout=True, repaint=True)
        for widget in self.screen.walk_children():
            widget.refresh()

    def on_unmount(self) -> None:
        if "jobs" in self.__dict__:
            self.jobs.close()

    # -- keys -------------------------------------------------------------------------------

    async def on_event(self, event: events.Event) -> None:
        """Keys go to the screen that is up, one after the other, each with its own time."""
        screen = self.screen if self._screen_stack else None
        if screen is not None and isinstance(event, events.Key) and await self._silences(event.key):
            return
        if isinstance(screen, OwnScreen) and isinstance(event, events.Key | events.Paste):
            if isinstance(event, events.Paste):
                await screen.paste(event.text)
            else:
                await self._key(screen, event)
            return
        await super().on_event(event)

    async def _silences(self, key: str) -> bool:
        """Whether a key has silenced what rings, on whatever screen, or was the glove that just did."""
        if key not in ("escape", "pageup"):
            return False
        return await self.alarms.silence() or (key == "escape" and self.alarms.just_silenced)

    async def _key(self, screen: OwnScreen[Any], event: events.Key) -> None:
        if event.key == "ctrl+z":
            self.action_suspend_process()
        elif event.key != "pageup":  # for alarms alone
            await screen.press(Key(event.key, event.character), self.clock.at(event.time))

    def on_click(self, event: events.Click) -> None:
        """A word of the key line is the key it stands for."""
        key = event.style.meta.get(CLICKED)
        if isinstance(key, str):
            event.stop()
            self.simulate_key(key)

    async def show(
        self,
        screen: OwnScreen[Any],
        then: Callable[[Any], Awaitable[None] | None] | None = None,
    ) -> None:
        """Open a screen; returns when it stands there."""
        self._read_styles()
        screen.then = then
        await self.push_screen(screen)

    # -- time -------------------------------------------------------------------------------

    def tick(self) -> None:
        """One heartbeat for everything, on the whole second; more often while tenths run."""
        if not self.is_running:
            return
        self.alarms.mind_clock()
        self.alarms.mind_stopwatches()
        self.draw_all()
        self.alarms.mind()
        if self._timer is not None:
            self._timer.stop()
        frames = max((screen.frames for screen in self.own_screens), default=0)
        wait_s = self.clock.real_s_to_next(1.0 / frames if frames else 1.0)
        self._timer = self.set_timer(max(wait_s, LEAST_TICK_S), self.tick)

    @property
    def own_screens(self) -> tuple[OwnScreen[Any], ...]:
        """The screens that are open, the one that is up last."""
        return tuple(screen for screen in self.screen_stack if isinstance(screen, OwnScreen))

    def draw_all(self) -> None:
        """Draw every screen at one and the same now."""
        now = self.clock.now()
        for screen in self.own_screens:
            if screen.is_mounted:
                screen.draw(now)

    def mind_alarms(self) -> None:
        """Show and sound what rings now."""
        self.alarms.mind()

    def flash(self, word: str) -> None:
        """Fill the window with one word for a moment."""
        from booth.widgets.flash import Flash

        self.screen.mount(Flash(word))

    # -- what is the same everywhere --------------------------------------------------------

    async def command(self, id: str) -> None:
        """Do what a command asks for that is the same on every screen."""
        match id:
            case "units":
                self.change_units()
            case "theme":
                names = [theme.name for theme in themes.THEMES]
                at = names.index(self.theme) if self.theme in names else 0
                self.theme = names[(at + 1) % len(names)]
                self.remember("theme", self.theme)
            case "alarm":
                self.flash("ALARM")
                self.sound.alarm()
            case "palette":
                self.action_command_palette()
            case "quit":
                self.exit()
            case "help":
                from booth.bench.commands import key_table
                from booth.screens.sheet import Sheet

                await self.show(Sheet("Keys", (key_table(),)))

    def change_units(self) -> None:
        """US or metric, on every screen at once; what was typed keeps its meaning."""
        before, self.system = self.system, self.system.other
        for screen in self.own_screens:
            screen.units_changed(before)
        self.remember("units", self.system.value)
        self.draw_all()

    @property
    def hints(self) -> bool:
        """Whether it is shown how each step is done."""
        return self.preferences.hints

    def remember(self, key: str, value: str | bool) -> None:
        """Keep a preference for the next start; that it cannot be kept is no reason to stop."""
        self.preferences = self.preferences.changed(key, value)
        with contextlib.suppress(OSError):
            self.preferences.write(self.places.preferences_file)

    def get_system_commands(self, screen: Screen[Any]) -> Any:
        """Everything of the table of commands, and every step of the job that is open."""
        from booth.app.palette import palette

        return palette(screen)

    # -- jobs and shop ----------------------------------------------------------------------

    async def take_up(self, session: Session) -> None:
        """Put a job on the bench, above the list of jobs."""
        from booth.screens.bench import BenchScreen
        from booth.screens.bench_desk import BenchDesk
        from booth.screens.sheet import Sheet

        await self._back_to_home()
        await self.show(BenchScreen(BenchDesk(self, session)))
        news = session.news()
        if news:
            await self.show(Sheet("About this job's log", tuple(news)))
        self.alarms.mind()

    async def leave_job(self) -> None:
        """Back to the list of jobs; a job that is not closed rings there too."""
        await self._back_to_home()
        self.jobs.leave()
        if isinstance(self.screen, Home):
            self.screen.come_back()
        self.alarms.mind()

    async def _back_to_home(self) -> None:
        while len(self.screen_stack) > 1 and not isinstance(self.screen, Home):
            await self.pop_screen()

    def read_shop(self) -> tuple[Fault, ...]:
        """Read the shop file anew; give what is wrong with it."""
        from booth.shop.read import read_shop

        result = read_shop(self.places.shop_file)
        self.shop = result.shop
        if not self.preferences.units and result.shop.system:
            self.system = System(result.shop.system)
        return result.faults
