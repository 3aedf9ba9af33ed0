"""The application: one clock, one tick, and what is the same on every screen. No instrument by name.

What the first frame does not need is loaded after it.
"""

from __future__ import annotations

import asyncio
import contextlib
import signal
import threading
from pathlib import Path
from typing import TYPE_CHECKING, Any

from textual import events
from textual.actions import SkipAction
from textual.app import App
from textual.screen import Screen
from textual.timer import Timer

from booth.app.key_order import dealt_with, may_move, opened
from booth.app.preferences import Preferences
from booth.app.sound import Sound
from booth.clock import Clock
from booth.files.places import Places
from booth.screens.bindings import app_bindings
from booth.screens.home import Home
from booth.units import System, warm
from booth.widgets import themes
from booth.widgets.textual_internals import mend

if TYPE_CHECKING:
    from booth.app.open_jobs import Working
    from booth.log.session import Session
    from booth.shop.model import Shop

#: However fast time is made to run, the screen is not drawn more often than this.
LEAST_TICK_S = 0.05
#: The exit code of a fault of the program itself (EX_SOFTWARE of sysexits.h).
OWN_FAULT = 70


class BoothApp(App[None]):
    """booth."""

    TITLE = "booth"
    CSS_PATH = "home.tcss"
    BINDINGS = app_bindings()
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
        self.wanted_profile = profile
        self.fatal: BaseException | None = None
        self._working: Working | None = None
        self._shop: Shop | None = None
        self._timer: Timer | None = None

    def get_theme_variable_defaults(self) -> dict[str, str]:
        """The tones exist under any theme."""
        return themes.variable_defaults()

    @property
    def working(self) -> Working:
        """The job that is being worked on."""
        if self._working is None:
            from booth.app.open_jobs import Working

            self._working = Working(self)
        return self._working

    @property
    def shop(self) -> Shop:
        """The painter's equipment, as read last."""
        if self._shop is None:
            from booth.shop.model import Shop

            self._shop = Shop()
        return self._shop

    @shop.setter
    def shop(self, shop: Shop) -> None:
        self._shop = shop

    # -- starting and leaving ------------------------------------------------------------------

    def on_mount(self) -> None:
        self.push_screen(Home())
        self._mind_signals()
        self.app_resume_signal.subscribe(self, self._resumed)
        self.call_after_refresh(self._after_first_paint)

    def _after_first_paint(self) -> None:
        self.stylesheet.read(Path(__file__).with_name("booth.tcss"))
        self.refresh_css(animate=False)
        threading.Thread(target=warm, name="units", daemon=True).start()
        self.tick()

    def _mind_signals(self) -> None:
        """A closed terminal or a polite kill leaves the terminal as it was found."""
        loop = asyncio.get_running_loop()
        for name in ("SIGTERM", "SIGHUP"):
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
        if self._working is not None:
            self._working.close()

    def _handle_exception(self, error: Exception) -> None:
        """A fault of the program itself: no traceback on the screen, a report in a file."""
        if self.fatal is None:  # what fails while leaving only follows from it
            self.fatal = self._exception = error
        self._exception_event.set()
        self.exit(return_code=OWN_FAULT)

    async def on_event(self, event: events.Event) -> None:
        """Let what a key set off (a step opened, the focus moved) be done before the next key."""
        key = isinstance(event, events.Key) and bool(self._screen_stack)
        if key:
            await opened(self.screen)
        place = (self.focused or self.screen) if key else None
        moving = may_move(event, place)
        await super().on_event(event)
        if moving:
            await dealt_with(place)

    def on_click(self, event: events.Click) -> None:
        """A word of the key line is the key it stands for."""
        from booth.screens.keyline import CLICKED

        key = event.style.meta.get(CLICKED)
        if isinstance(key, str):
            event.stop()
            self.simulate_key(key)

    # -- time ------------------------------------------------------------------------------------

    def tick(self) -> None:
        """One heartbeat for everything, on the whole second; ten a second while tenths run."""
        if not self.is_running:
            return
        self.working.mind_clock()
        self.draw_all()
        self.working.mind_alarms()
        if self._timer is not None:
            self._timer.stop()
        fast = any(getattr(screen, "fast", False) for screen in self.screen_stack)
        wait_s = self.clock.real_s_to_next(0.1 if fast else 1.0)
        self._timer = self.set_timer(max(wait_s, LEAST_TICK_S), self.tick)

    def draw_all(self) -> None:
        """Draw every screen that knows how, at one and the same now."""
        now = self.clock.now()
        for screen in self.screen_stack:
            draw = getattr(screen, "draw", None)
            if draw is not None and screen.is_mounted:
                draw(now)

    # -- what is the same everywhere -------------------------------------------------------------

    def action_silence(self) -> None:
        """Silence what rings; where nothing does, Escape means what the screen makes of it."""
        if self.working.silence() or self.working.just_silenced:
            return
        escape = getattr(self.screen, "action_escape", None)
        if escape is None:
            raise SkipAction
        escape()

    def action_silence_only(self) -> None:
        """Silence what rings, nothing else."""
        if not self.working.silence():
            raise SkipAction

    def action_try_alarm(self) -> None:
        """Sound the alarm once."""
        self.flash("ALARM")
        self.sound.alarm()

    def flash(self, word: str) -> None:
        """Fill the window with one word for a moment."""
        from booth.widgets.flash import Flash

        self.screen.mount(Flash(word))

    def action_units(self) -> None:
        """US or metric, on every screen at once."""
        self.system = self.system.other
        self.remember("units", self.system.value)
        self.draw_all()

    def action_theme(self) -> None:
        """Dark booth or open door."""
        names = [theme.name for theme in themes.THEMES]
        at = names.index(self.theme) if self.theme in names else 0
        self.theme = names[(at + 1) % len(names)]
        self.remember("theme", self.theme)

    def remember(self, key: str, value: str | bool) -> None:
        """Keep a preference for the next start; that it cannot be kept is no reason to stop."""
        self.preferences = self.preferences.changed(key, value)
        with contextlib.suppress(OSError):
            self.preferences.write(self.places.preferences_file)

    def action_help(self) -> None:
        """The keys that work everywhere, from the table of commands."""
        from booth.bench.commands import key_table
        from booth.screens.sheet import Sheet

        self.push_screen(Sheet("Keys", (key_table(),)))

    def get_system_commands(self, screen: Screen[Any]) -> Any:
        """Everything of the table of commands, and every step of the job that is open."""
        from booth.app.palette import palette

        return palette(self, screen)

    # -- jobs and shop -----------------------------------------------------------------------------

    @property
    def session(self) -> Session | None:
        """The open job's session, if there is one."""
        return self.working.session

    def take_up(self, session: Session) -> None:
        """Put a job on the bench."""
        self.working.take_up(session)

    def leave_job(self) -> None:
        """Back to the list of jobs."""
        self.working.leave()

    def action_home(self) -> None:
        """Leave the bench; the job stays open."""
        self.leave_job()

    def read_shop(self) -> tuple[Any, ...]:
        """Read the shop file anew; give its rows for the home screen."""
        from booth.screens.home_rows import shop_rows
        from booth.shop.read import read_shop

        result = read_shop(self.places.shop_file)
        self.shop = result.shop
        if not self.preferences.units and result.shop.system:
            self.system = System(result.shop.system)
        return shop_rows(self.places.shop_file, result.faults)

    def shop_as_it_is(self) -> dict[str, Any]:
        """The shop as plain data, for the job's own log."""
        import msgspec

        found = msgspec.to_builtins(self.shop)
        assert isinstance(found, dict)
        return found

    def open_shelf(self, key: str) -> None:
        """Open one of the other screens by its key."""
        from booth.screens.by_key import screen_of

        self.push_screen(screen_of(key))
