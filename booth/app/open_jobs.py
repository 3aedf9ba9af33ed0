"""The jobs that are being worked on, for every screen: their sessions, alarms, what the clock did.

Loaded after the first frame is on the screen: the list of jobs needs none of it to be drawn.
"""

from __future__ import annotations

import contextlib
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from textual.css.query import NoMatches

from booth.app.ringer import Ringer
from booth.clock import local_hhmm
from booth.clock_reading import notice
from booth.job.waits import Alarm, alarms
from booth.log.events import AlarmAcknowledged, ClockNoticed
from booth.log.fold import Job, NoJob
from booth.log.session import Session
from booth.log.store import LogBusy, NotKept
from booth.moment import Moment, elapsed
from booth.screens.bench import Bench
from booth.screens.bench_desk import BenchDesk
from booth.screens.home import Home
from booth.screens.sheet import Sheet
from booth.widgets.alarm_bar import AlarmBar
from booth.words.wait_words import alarm_line

if TYPE_CHECKING:
    from booth.app.app import BoothApp

MOST_LINES = 3
MOST_ADOPTED = 20
#: An Escape so soon after the one that silenced was the same glove [s].
SAME_GLOVE_S = 1.0


class Working:
    """At most one job on the bench; those left open keep their logs, and ring on any screen."""

    def __init__(self, app: BoothApp) -> None:
        self.app = app
        self.session: Session | None = None
        self._aside: list[Session] = []
        self._adopted: list[Session] = []
        self._ringer = Ringer()
        self._silenced: Moment | None = None
        self._last_reading = app.clock.reading()

    # -- taking up and leaving --------------------------------------------------------------------

    def take_up(self, session: Session) -> None:
        """Put a job on the bench."""
        self._put_aside()
        known = session in self._aside and session not in self._adopted
        for those in (self._aside, self._adopted):
            if session in those:
                those.remove(session)
        self.session = session
        bench = Bench(BenchDesk(self.app, session))
        if not self.app.preferences.hints:
            bench.add_class("-no-hints")
        self.app.push_screen(bench)
        if session.told and not known:
            self.app.push_screen(Sheet("About this job's log", session.told))

    def leave(self) -> None:
        """Back to the list of jobs; a job that is not closed rings there too."""
        while len(self.app.screen_stack) > 1 and not isinstance(self.app.screen, Home):
            self.app.pop_screen()
        self._put_aside()
        self.mind_alarms()
        if isinstance(self.app.screen, Home):
            self.app.screen.come_back()

    def aside(self, path: Path) -> Session | None:
        """The session of a job that was left open in this run, by the path of its log."""
        found = (each for each in self._aside if each.log.path.resolve() == path.resolve())
        return next(found, None)

    def adopt(self, jobs: Iterable[tuple[Path, Job]]) -> None:
        """Let jobs ring that were open when the program was last left or killed.

        Only those last written to since this machine was started: another machine's job, in a
        folder that is kept the same on both, has its own writer there.
        """
        boot = self.app.clock.now().boot
        mine = [path for path, job in jobs if job.events and job.events[-1].at.boot == boot]
        for path in mine[:MOST_ADOPTED]:
            here = self.session is not None and self.session.log.path.resolve() == path.resolve()
            if here or self.aside(path) is not None:
                continue
            with contextlib.suppress(LogBusy, NotKept, NoJob, OSError, ValueError):
                session = Session.resume(path)
                self._aside.append(session)
                self._adopted.append(session)
        self.mind_alarms()

    def _put_aside(self) -> None:
        session, self.session = self.session, None
        if session is None:
            return
        if session.job.closed is None:
            self._aside.append(session)
        else:
            session.close()

    def close(self) -> None:
        """Let go of every log."""
        for session in self._open:
            session.close()
        self.session, self._aside, self._adopted = None, [], []

    @property
    def _open(self) -> tuple[Session, ...]:
        return (*([self.session] if self.session is not None else []), *self._aside)

    # -- time ---------------------------------------------------------------------------------------

    def mind_clock(self) -> None:
        """Notice a machine that slept or a wall clock that was moved, and write it down."""
        reading = self.app.clock.reading()
        change = notice(self._last_reading, reading)
        self._last_reading = reading
        if change is None:
            return
        event = ClockNoticed(
            n=0, at=self.app.clock.now(), slept_s=change.slept_s, stepped_s=change.stepped_s
        )
        for session in self._open:
            with contextlib.suppress(NotKept):
                session.record(event)

    # -- alarms -------------------------------------------------------------------------------------

    def ringing(self) -> tuple[tuple[Session, Alarm], ...]:
        """What rings now, and in which job."""
        now = self.app.clock.now()
        return tuple((each, alarm) for each in self._open for alarm in alarms(each.job, now))

    def _line(self, session: Session, alarm: Alarm, now: Moment) -> str:
        line = alarm_line(alarm, now, local_hhmm)
        return line if session is self.session else f"{session.job.profile.name}, {line}"

    def mind_alarms(self) -> None:
        """Show and sound what rings now, whatever screen is up."""
        now = self.app.clock.now()
        ringing = self.ringing()
        keys = tuple(f"{session.job.opened.job} {alarm.key}" for session, alarm in ringing)
        heard = self._ringer.hear(keys, now)
        lines = [self._line(session, alarm, now) for session, alarm in ringing]
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
        if not ringing:
            return False
        now = self.app.clock.now()
        for session, alarm in ringing:
            try:
                session.record(AlarmAcknowledged(n=0, at=now, alarm=alarm.key))
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
