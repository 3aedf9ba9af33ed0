"""The desk of the bench: what instruments may ask for, done with the session, the clock, the sound."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from booth.clock import Clock, local_hhmm
from booth.bench.context import Context
from booth.job.past import last_good
from booth.job.steps import steps_of
from booth.log.events import Event
from booth.log.fold import Job
from booth.log.session import Session
from booth.log.store import NotKept
from booth.moment import Moment
from booth.screens.sheet import Sheet
from booth.shop.model import Shop
from booth.units import System

if TYPE_CHECKING:
    from booth.app.app import BoothApp
    from booth.screens.bench import Bench


class BenchDesk:
    """One job being worked on, seen from the screen."""

    def __init__(self, app: BoothApp, session: Session) -> None:
        self.app = app
        self.session = session
        self.bench: Bench | None = None
        opened = session.job.opened
        # Once: what was good before this job does not change while it is being worked on.
        self._good = last_good(app.places.jobs_dir, opened.profile.key, opened.gun)

    @property
    def clock(self) -> Clock:
        """The one clock."""
        return self.app.clock

    def now(self) -> Moment:
        """Now."""
        return self.clock.now()

    @property
    def job(self) -> Job:
        """The job as it stands."""
        return self.session.job

    @property
    def system(self) -> System:
        """The units shown."""
        return self.app.system

    @property
    def shop(self) -> Shop:
        """The painter's equipment."""
        return self.app.shop

    @property
    def jobs_dir(self) -> Path:
        """Where the session logs are."""
        return self.app.places.jobs_dir

    @property
    def profiles_dir(self) -> Path:
        """Where the painter's own profiles are."""
        return self.app.places.own_profiles_dir

    def context_at(self, now: Moment) -> Context:
        """All that an instrument draws, at `now`."""
        step = self.bench.step if self.bench is not None else self.job.profile.steps[0]
        return Context(self.job, now, self.system, step, self.shop, self._good)

    @property
    def context(self) -> Context:
        """All that an instrument draws, now."""
        return self.context_at(self.now())

    def keep(self, event: Event) -> Event | None:
        """Keep an event: on disk first; where that fails, say so and let nothing move."""
        try:
            kept = self.session.record(event)
        except NotKept as fault:
            self.app.push_screen(Sheet("NOT KEPT", (str(fault),), grave=True))
            return None
        self.say("")
        if self.bench is not None and self.bench.is_mounted:
            self.bench.draw(self.now())
        self.app.working.mind_alarms()
        return kept

    def finish_step(self) -> None:
        """The open step is done."""
        if self.bench is not None:
            self.bench.finish_step()

    def open_kind(self, kind: str) -> None:
        """Go to the step that this kind of instrument serves, where the job has one."""
        found = next((step for step in steps_of(self.job) if step.kind == kind), None)
        if self.bench is not None and found is not None:
            self.bench.ask_step(found)

    def say(self, sentence: str, *, fault: bool = False) -> None:
        """Say something in the line above the keys."""
        if self.bench is not None and self.bench.is_mounted:
            self.bench.say(sentence, fault=fault)

    def signal(self) -> None:
        """Flash and sound: the end of a timed catch."""
        self.app.flash("STOP")
        self.app.sound.signal()

    def tick_sound(self) -> None:
        """One beat of a lead-in."""
        self.app.sound.tick()

    def local_time(self, moment: Moment) -> str:
        """A moment as hh:mm on the wall."""
        return local_hhmm(moment)

    def close_job(self) -> None:
        """The job is closed: let go of its log and leave the bench."""
        self.app.leave_job()

    def remember_hints(self, shown: bool) -> None:
        """Keep whether the how-to lines are wanted."""
        self.app.remember("hints", shown)
