"""What rings, on whatever screen is up: the bar across its top, the sound, silencing; what clocks did."""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING

from booth.clock import local_day_hhmm
from booth.clock_reading import notice
from booth.job.after_close import alarms_after
from booth.job.stopwatches import STOP, heard
from booth.job.wait import Alarm
from booth.job.waits import alarms
from booth.log.errors import NotKept
from booth.log.events import AlarmAcknowledged, ClockNoticed
from booth.log.open_jobs import OpenJob
from booth.moment import Moment, elapsed
from booth.screens.dialog import Sheet
from booth.widgets.alarm_bar import AlarmBar
from booth.words.wait_words import alarm_line

if TYPE_CHECKING:
    from booth.app.app import BoothApp

MOST_LINES = 3
#: What rings is sounded again after so long [s].
AGAIN_AFTER_S = 5.0
#: An Escape so soon after the one that silenced was the same glove [s].
SAME_GLOVE_S = 1.0


class Alarms:
    """The alarms of all jobs that are for this booth."""

    def __init__(self, app: BoothApp) -> None:
        self.app = app
        self._rang: frozenset[str] = frozenset()
        self._sounded: Moment | None = None
        self._silenced: Moment | None = None
        self._last = app.clock.now()
        self._last_reading = app.clock.reading()

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
        for session in self.app.jobs.sessions:
            with contextlib.suppress(NotKept):
                session.record(event)

    def mind_stopwatches(self) -> None:
        """The beats of a lead-in, the end of a catch: what lies between the last look and now."""
        now, self._last, before = self.app.clock.now(), self.app.clock.now(), self._last
        current = self.app.jobs.current
        for each in heard(current.job.stopwatches, before, now) if current is not None else ():
            if each == STOP:
                self.app.flash("STOP")
                self.app.sound.play("signal")
            else:
                self.app.sound.play("tick")

    def ringing(self) -> tuple[tuple[OpenJob, Alarm], ...]:
        """What rings now, and in which job: open, or closed and running on."""
        now, jobs = self.app.clock.now(), self.app.jobs
        found = [(each, alarms(each.job, now)) for each in jobs.jobs() if each.rings]
        found += [(e, alarms_after(e.job, now)) for e in jobs.jobs(closed=True) if e.rings]
        return tuple((each, alarm) for each, rings in found for alarm in rings)

    def _line(self, job: OpenJob, alarm: Alarm, now: Moment) -> str:
        line = alarm_line(alarm, now, local_day_hhmm)
        current = self.app.jobs.current
        on_bench = current is not None and job.session is current
        return line if on_bench else f"{job.job.opened.title}, {line}"

    def mind(self) -> None:
        """Show and sound what rings now."""
        now = self.app.clock.now()
        ringing = self.ringing()
        lines = [self._line(job, alarm, now) for job, alarm in ringing]
        if lines:
            more = len(lines) - MOST_LINES
            lines = [*lines[:MOST_LINES], *([f"and {more} more"] if more > 0 else [])]
            lines[0] += "   Esc or Page Up silences"
        screen = self.app.screen
        bar = next(iter(screen.query(AlarmBar)), None)
        if bar is None and lines:
            bar = AlarmBar()
            screen.mount(bar)
        if bar is not None:
            bar.show(lines)
        if self._due(frozenset(f"{job.path} {alarm.key}" for job, alarm in ringing), now):
            self._sounded = now
            self.app.sound.play("alarm")

    def _due(self, keys: frozenset[str], now: Moment) -> bool:
        """Whether to sound: at once what is new, then every few seconds until acknowledged."""
        new, self._rang = keys - self._rang, keys
        since = elapsed(self._sounded, now).seconds if self._sounded is not None else AGAIN_AFTER_S
        return bool(new or (keys and since >= AGAIN_AFTER_S))

    async def silence(self) -> bool:
        """Acknowledge all that rings; False where nothing does."""
        ringing = self.ringing()
        now = self.app.clock.now()
        for job, alarm in ringing:
            event = AlarmAcknowledged(n=0, at=now, alarm=alarm.key)
            try:
                self.app.jobs.acknowledge(job.path, event)
            except NotKept as fault:
                if isinstance(self.app.screen, Sheet):
                    return False  # said already: let Escape close what says it
                await self.app.show(Sheet("NOT KEPT", (str(fault),), grave=True))
                return True
        if ringing:
            self._silenced = now
            self.mind()
        return bool(ringing)

    @property
    def just_silenced(self) -> bool:
        """Whether something was silenced a moment ago."""
        if self._silenced is None:
            return False
        return elapsed(self._silenced, self.app.clock.now()).seconds < SAME_GLOVE_S
