"""The application: one clock, one session, the alarms over every screen, and nothing about any instrument."""

from __future__ import annotations

import asyncio
import contextlib
import signal
import threading
from typing import Any

from textual.app import App
from textual.css.query import NoMatches
from textual.screen import Screen
from textual.timer import Timer

from booth.alarming import Ringer
from booth.clock import Clock, local_hhmm
from booth.job.events import AlarmAcknowledged, ClockNoticed
from booth.job.session import Session
from booth.job.store import NotKept
from booth.job.waits import alarms
from booth.places import Places
from booth.preferences import Preferences
from booth.reading import notice
from booth.screens.bindings import app_bindings
from booth.screens.faces import alarm_line
from booth.screens.home import Home
from booth.screens.home_rows import HomeRow
from booth.screens.sheet import Sheet
from booth.shop.model import Shop
from booth.sound import Sound
from booth.units import System, warm
from booth.widgets import themes
from booth.widgets.alarm_bar import AlarmBar
from booth.widgets.flash import Flash

#: However fast time is made to run, the screen is not drawn more often than this.
LEAST_TICK_S = 0.05


class BoothApp(App[None]):
    """booth."""

    TITLE = "booth"
    CSS_PATH = "booth.tcss"
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
        themes.install(self)
        self.clock = clock
        self.places = places
        self.sound = sound or Sound(places.cache_dir, self.bell)
        self.preferences = Preferences.read(places.preferences_file)
        self.theme = self.preferences.theme
        self.system = System(self.preferences.units)
        self.shop = Shop()
        self.session: Session | None = None
        self.ringer = Ringer()
        self.wanted_profile = profile
        self.fatal: BaseException | None = None
        self._last_reading = clock.reading()
        self._ticking = False
        self._timer: Timer | None = None

    def get_theme_variable_defaults(self) -> dict[str, str]:
        """The tones exist under any theme."""
        return themes.variable_defaults()

    # -- starting and leaving ------------------------------------------------------------------

    def on_mount(self) -> None:
        self.push_screen(Home())
        self._mind_signals()
        self.app_resume_signal.subscribe(self, self._resumed)
        self._ticking = True
        self.call_after_refresh(self._after_first_paint)

    def _after_first_paint(self) -> None:
        threading.Thread(target=warm, name="units", daemon=True).start()
        self._tick()

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
        self._ticking = False
        if self.session is not None:
            self.session.close()

    def _handle_exception(self, error: Exception) -> None:
        """A fault of the program itself: no traceback on the screen, a report in a file."""
        self.fatal = error
        self._exception = error
        self._exception_event.set()
        self.exit(return_code=70)

    # -- time ------------------------------------------------------------------------------------

    def _tick(self) -> None:
        """One heartbeat for everything, on the whole second; ten a second while tenths run."""
        if not self._ticking or not self.is_running:
            return
        self._mind_clock()
        now = self.clock.now()
        fast = False
        for each in self.screen_stack:
            draw = getattr(each, "draw", None)
            if draw is not None and each.is_mounted:
                draw(now)
                fast = fast or bool(getattr(each, "fast", False))
        self.mind_alarms()
        if self._timer is not None:
            self._timer.stop()
        wait_s = self.clock.real_s_to_next(0.1 if fast else 1.0)
        self._timer = self.set_timer(max(wait_s, LEAST_TICK_S), self._tick)

    def _mind_clock(self) -> None:
        """Notice a machine that slept or a wall clock that was moved, and write it down."""
        reading = self.clock.reading()
        change = notice(self._last_reading, reading)
        self._last_reading = reading
        if change is None or self.session is None:
            return
        event = ClockNoticed(
            n=0, at=self.clock.now(), slept_s=change.slept_s, stepped_s=change.stepped_s
        )
        with contextlib.suppress(NotKept):
            self.session.record(event)

    def hasten(self) -> None:
        """Something fast has begun: do not wait for the whole second."""
        self._tick()

    # -- alarms ----------------------------------------------------------------------------------

    def mind_alarms(self) -> None:
        """Show and sound what rings now, whatever screen is up."""
        now = self.clock.now()
        ringing = alarms(self.session.job, now) if self.session is not None else ()
        heard = self.ringer.hear(tuple(alarm.key for alarm in ringing), now)
        lines = [alarm_line(alarm, now, local_hhmm) for alarm in ringing]
        if lines:
            lines = [*lines[:3], *([f"and {len(lines) - 3} more"] if len(lines) > 3 else [])]
            lines[0] += "   Esc or Page Up silences"
        self._bar().show(tuple(lines), heard.beat) if lines or self._has_bar() else None
        if heard.sound:
            self.sound.alarm()

    def _has_bar(self) -> bool:
        return bool(self.screen.query(AlarmBar))

    def _bar(self) -> AlarmBar:
        try:
            return self.screen.query_one(AlarmBar)
        except NoMatches:
            bar = AlarmBar()
            self.screen.mount(bar)
            return bar

    def action_silence(self) -> None:
        """Acknowledge what rings; where nothing rings, Escape does what the screen makes of it."""
        now = self.clock.now()
        ringing = alarms(self.session.job, now) if self.session is not None else ()
        if not ringing or self.session is None:
            from textual.actions import SkipAction

            escape = getattr(self.screen, "action_escape", None)
            if escape is None:
                raise SkipAction
            escape()
            return
        for alarm in ringing:
            try:
                self.session.record(AlarmAcknowledged(n=0, at=now, alarm=alarm.key))
            except NotKept as fault:
                self.push_screen(Sheet("NOT KEPT", (str(fault),), grave=True))
                return
        self.mind_alarms()

    def action_try_alarm(self) -> None:
        """Sound the alarm once."""
        self.flash("ALARM")
        self.sound.alarm()

    def flash(self, word: str) -> None:
        """Fill the window with one word for a moment."""
        self.screen.mount(Flash(word))

    # -- what is the same everywhere -------------------------------------------------------------

    def action_units(self) -> None:
        """US or metric, on every screen at once."""
        self.system = System.METRIC if self.system is System.US else System.US
        self.remember("units", self.system.value)
        self._draw_all()

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

    def _draw_all(self) -> None:
        now = self.clock.now()
        for screen in self.screen_stack:
            draw = getattr(screen, "draw", None)
            if draw is not None and screen.is_mounted:
                draw(now)

    # -- shop ---------------------------------------------------------------------------------------

    def read_shop(self) -> tuple[HomeRow, ...]:
        """Read the shop file anew; what is wrong with it is a row to open."""
        from booth.screens.home_rows import shop_rows
        from booth.shop.read import read_shop

        result = read_shop(self.places.shop_file)
        self.shop = result.shop
        return shop_rows(self.places.shop_file, result.faults)

    def shop_as_it_is(self) -> dict[str, Any]:
        """The shop as plain data, for the job's own log."""
        import msgspec

        return msgspec.to_builtins(self.shop)

    def open_shelf(self, key: str) -> None:
        """Open one of the other screens by its key."""
        from booth.screens.shelf import screen_of

        self.push_screen(screen_of(key))

    # -- jobs --------------------------------------------------------------------------------------

    def take_up(self, session: Session) -> None:
        """Put a job on the bench."""
        from booth.screens.bench import Bench
        from booth.screens.bench_desk import BenchDesk

        if self.session is not None:
            self.session.close()
        self.session = session
        bench = Bench(BenchDesk(self, session))
        if not self.preferences.hints:
            bench.add_class("-no-hints")
        self.push_screen(bench)
        if session.told:
            self.push_screen(Sheet("About this job's log", session.told))

    def leave_job(self) -> None:
        """Back to the list of jobs; the log is let go, the waits are in it."""
        from booth.screens.bench import Bench

        while len(self.screen_stack) > 1 and not isinstance(self.screen, Home):
            was_bench = isinstance(self.screen, Bench)
            self.pop_screen()
            if was_bench:
                break
        if self.session is not None:
            self.session.close()
            self.session = None
        if isinstance(self.screen, Home):
            self.screen.read_again()

    def action_home(self) -> None:
        """Leave the bench."""
        self.leave_job()

    def action_help(self) -> None:
        """The keys that work everywhere, from the table of commands."""
        from booth.commands import COMMANDS, key_name

        lines = [
            f"{' or '.join(key_name(key) for key in each.keys):<16} {each.says}"
            for each in COMMANDS
        ]
        self.push_screen(Sheet("Keys", ("\n".join(lines),)))

    def get_system_commands(self, screen: Screen[Any]) -> Any:
        """Everything of the table of commands, and every step of the job that is open."""
        from booth.palette import palette

        return palette(self, screen)


