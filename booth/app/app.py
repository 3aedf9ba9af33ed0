"""The application: one clock, one tick; what the first frame does not need is loaded after it."""

from __future__ import annotations

from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from textual.timer import Timer

from booth.app.signals import mind_resuming, mind_signals
from booth.app.sound import Sound
from booth.clock import Clock
from booth.files.places import Places
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.home import Home
from booth.screens.host import Host
from booth.screens.preferences import Preferences
from booth.units.kinds import System
from booth.widgets import themes
from booth.widgets.textual_internals import mend

if TYPE_CHECKING:
    from booth.app.alarms import Alarms
    from booth.app.clock_watch import ClockWatch
    from booth.log.session import Session
    from booth.moment import Moment
    from booth.shop.room_readings import RoomReadings

#: However fast time is made to run, the screen is not drawn more often than this.
LEAST_TICK_S = 0.05
#: The first frame does not wait for what ticks [s].
FIRST_TICK_S = 0.3


class BoothApp(Host):
    """booth."""

    TITLE = "booth"
    CSS_PATH = "home.tcss"
    STYLES = Path(__file__).with_name("booth.tcss")
    ENABLE_COMMAND_PALETTE = False

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
        self.sound = sound or Sound(places.cache_dir, self.bell, self.set_timer)
        self.preferences = Preferences.read(places.preferences_file)
        themes.install(self, self.preferences.theme)
        self.system = System(self.preferences.units or System.US)
        self._wanted_profile = profile
        self._timer: Timer | None = None

    @cached_property
    def alarms(self) -> Alarms:
        from booth.app.alarms import Alarms

        return Alarms(self)

    @cached_property
    def clock_watch(self) -> ClockWatch:
        from booth.app.clock_watch import ClockWatch

        return ClockWatch(self)

    @cached_property
    def room(self) -> RoomReadings:  # type: ignore[override]
        from booth.shop.room_readings import RoomReadings

        return RoomReadings()

    def on_mount(self) -> None:
        self.push_screen(Home(self._wanted_profile))
        mind_signals(self)
        mind_resuming(self)
        self.set_timer(FIRST_TICK_S, self.tick)

    def on_unmount(self) -> None:
        if "jobs" in self.__dict__:
            self.jobs.close()

    def front(self, key: Key, at: Moment) -> Deed | None:
        """What rings comes before whatever else a key does."""
        if key.name == "ctrl+z":
            return Deed("", self.action_suspend_process)
        return self.alarms.deed(key, at) if "alarms" in self.__dict__ else None

    def tick(self) -> None:
        """One heartbeat for everything, on the whole second; more often while tenths run."""
        if not self.is_running:
            return
        self.clock_watch.mind_clock()
        self.clock_watch.mind_stopwatches()
        self.room.mind(self.shop, self.places.shop_file, self.clock.now())
        now = self.clock.now()  # one and the same for all: what follows from it is found once
        self.draw_all(now)
        self.alarms.mind(now)
        if self._timer is not None:
            self._timer.stop()
        frames = max((screen.frames for screen in self.own_screens), default=0)
        wait_s = self.clock.real_s_to_next(1.0 / frames if frames else 1.0)
        self._timer = self.set_timer(max(wait_s, LEAST_TICK_S), self.tick)

    def draw_all(self, now: Moment | None = None) -> None:
        """Draw what is in sight at one and the same now: the screen that is up, what it lies over."""
        now = now or self.clock.now()
        for screen in reversed(self.own_screens):
            if screen.is_mounted:
                screen.draw(now)
            if not screen.is_modal:
                break

    def flash(self, word: str) -> None:
        """Fill the window with one word for a moment."""
        from booth.widgets.flash import Flash

        self.screen.mount(Flash(word))

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return themes.variable_defaults()

    async def command(self, id: str) -> None:
        from booth.app.commands import do_command

        await do_command(self, id)

    async def take_up(self, session: Session) -> None:
        """Put a job on the bench, above the list of jobs."""
        from booth.screens.bench import BenchScreen
        from booth.screens.bench_desk import BenchDesk
        from booth.screens.dialog import Sheet

        await self.only_first()
        await self.show(BenchScreen(BenchDesk(self, session)))
        news = session.news()
        if news:
            await self.show(Sheet("About this job's log", tuple(news)))
        self.alarms.mind()

    async def leave_job(self) -> None:
        """Back to the list of jobs; a job that is not closed rings there too."""
        await self.only_first()
        self.jobs.leave()
        if isinstance(self.screen, Home):
            self.screen.come_back()
        self.alarms.mind()
