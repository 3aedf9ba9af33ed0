"""What clocks did between two looks: a machine that slept, beats and ends of running stopwatches."""

from __future__ import annotations

import contextlib
from typing import TYPE_CHECKING

from booth.clock_reading import notice
from booth.job.stopwatches import STOP, heard
from booth.log.errors import NotKept
from booth.log.events import ClockNoticed

if TYPE_CHECKING:
    from booth.app.app import BoothApp


class ClockWatch:
    """Looks at every tick."""

    def __init__(self, app: BoothApp) -> None:
        self.app = app
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
