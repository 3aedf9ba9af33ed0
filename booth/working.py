"""The job that is being worked on, for every screen: its session, its alarms, what the clock did.

Loaded after the first frame is on the screen: the list of jobs needs none of it to be drawn.
"""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING

from textual.css.query import NoMatches

from booth.alarming import Ringer
from booth.clock import local_hhmm
from booth.job.events import AlarmAcknowledged, ClockNoticed
from booth.job.session import Session
from booth.job.store import NotKept
from booth.job.waits import Alarm, alarms
from booth.moment import Moment, elapsed
from booth.reading import notice
from booth.screens.bench import Bench
from booth.screens.bench_desk import BenchDesk
from booth.screens.faces import alarm_line
from booth.screens.home import Home
from booth.screens.sheet import Sheet
from booth.widgets.alarm_bar import AlarmBar

if TYPE_CHECKING:
    from booth.app import BoothApp

MOST_LINES = 3
#: An Escape so soon after the one that silenced was the same glove [s].
SAME_GLOVE_S = 1.0


class Working:
    """At most one job at a time."""

    def __init__(self, app: BoothApp) -> None:
        self.app = app
        self.session: Session | None = None
        self._ringer = Ringer()
        self._silenced: Moment | None = None
        self._last_reading = app.clock.reading()

    # -- taking up and leaving --------------------------------------------------------------------

    def take_up(self, session: Session) -> None:
        """Put a job on the bench."""
        self.close()
        self.session = session
        bench = Bench(BenchDesk(self.app, session))
        if not self.app.preferences.hints:
            bench.add_class("-no-hints")
        self.app.push_screen(bench)
        if session.told:
            self.app.push_screen(Sheet("About this job's log", session.told))

    def leave(self) -> None:
        """Back to the list of jobs; the log is let go, the waits are in it."""
        while len(self.app.screen_stack) > 1 and not isinstance(self.app.screen, Home):
            self.app.pop_screen()
        self.close()
        self.mind_alarms()
        if isinstance(self.app.screen, Home):
            self.app.screen.come_back()

    def close(self) -> None:
        """Let go of the log."""
        if self.session is not None:
            self.session.close()
            self.session = None

    # -- time ---------------------------------------------------------------------------------------

    def mind_clock(self) -> None:
        """Notice a machine that slept or a wall clock that was moved, and write it down."""
        reading = self.app.clock.reading()
        change = notice(self._last_reading, reading)
        self._last_reading = reading
        if change is None or self.session is None:
            return
        event = ClockNoticed(
            n=0, at=self.app.clock.now(), slept_s=change.slept_s, stepped_s=change.stepped_s
        )
        with contextlib.suppress(NotKept):
            self.session.record(event)

    # -- alarms -------------------------------------------------------------------------------------

    def ringing(self) -> tuple[Alarm, ...]:
        """What rings now."""
        if self.session is None:
            return ()
        return alarms(self.session.job, self.app.clock.now())

    def mind_alarms(self) -> None:
        """Show and sound what rings now, whatever screen is up."""
        now = self.app.clock.now()
        ringing = self.ringing()
        heard = self._ringer.hear(tuple(alarm.key for alarm in ringing), now)
        lines = [alarm_line(alarm, now, local_hhmm) for alarm in ringing]
        if lines:
            more = len(lines) - MOST_LINES
            lines = [*lines[:MOST_LINES], *([f"and {more} more"] if more > 0 else [])]
            lines[0] += "   Esc or Page Up silences"
        bar = self._bar(make=bool(lines))
        if bar is not None:
            bar.show(tuple(lines), heard.beat)
        if heard.sound:
            self.app.sound.alarm()

    def _bar(self, make: bool) -> AlarmBar | None:
        """The bar of the screen that is up; made where a screen has none yet."""
        screen = self.app.screen
        try:
            return screen.query_one(AlarmBar)
        except NoMatches:
            if not make:
                return None
        bar = AlarmBar()
        screen.mount(bar)
        return bar

    def silence(self) -> bool:
        """Acknowledge all that rings; False where nothing does."""
        ringing = self.ringing()
        if not ringing or self.session is None:
            return False
        now = self.app.clock.now()
        for alarm in ringing:
            try:
                self.session.record(AlarmAcknowledged(n=0, at=now, alarm=alarm.key))
            except NotKept as fault:
                if isinstance(self.app.screen, Sheet):
                    return False  # said already: let Escape close what says it
                self.app.push_screen(Sheet("NOT KEPT", (str(fault),), grave=True))
                return True
        self._silenced = now
        self.mind_alarms()
        return True

    @property
    def just_silenced(self) -> bool:
        """Whether something was silenced a moment ago."""
        if self._silenced is None:
            return False
        return elapsed(self._silenced, self.app.clock.now()).seconds < SAME_GLOVE_S
