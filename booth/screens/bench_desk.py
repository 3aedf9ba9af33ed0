"""The desk that the bench stands on: the job's session, and what is around it."""

from __future__ import annotations

import threading
from functools import cache, partial

from booth.bench.act import Context
from booth.bench.instrument import Instrument
from booth.instruments.registry import instrument_for
from booth.job.past import last_good
from booth.learnt.past_jobs import PastJobs
from booth.log.errors import NotKept
from booth.log.events import Event, NoteMade
from booth.log.fold import Job
from booth.log.session import Session
from booth.moment import Moment
from booth.profile.model import Step
from booth.screens.host import Host


class BenchDesk:
    """One job being worked on. refused: why the last entry could not be kept; unkept_note: a note
    that could not be, to be kept again."""

    def __init__(self, host: Host, session: Session) -> None:
        self.host = host
        self.session = session
        self.refused = ""
        self.unkept_note = ""
        self.learn_anew()

    def learn_anew(self, _: object = None) -> None:
        """Past jobs are read when they are asked for, and again where one was left out or taken in."""
        folder = self.host.places.jobs_dir
        self._past = PastJobs(folder)
        # Once a product and gun: what was good before this job does not change while it is worked on.
        self._good = cache(partial(last_good, folder))

    def read_past(self) -> None:
        """Read past jobs in a thread, outside of drawing: what they teach is told when it is there."""
        reading = self._past.reading
        threading.Thread(target=reading.read, name="learning", daemon=True).start()

    @property
    def job(self) -> Job:
        return self.session.job

    def context(self, step: Step, now: Moment) -> Context:
        """The snapshot at a moment."""
        host, good = self.host, self._good(self.job.profile.key, self.job.fitted.gun)
        room = host.room.reading
        return Context(self.job, now, host.system, step, host.shop, good, self._past, room)

    def instrument(self, kind: str) -> Instrument:
        return instrument_for(kind)

    def keep(self, event: Event) -> bool:
        """Keep an event: on disk first; where that fails, nothing moves and `refused` says why."""
        note = event.text if isinstance(event, NoteMade) else ""
        try:
            self.session.record(event)
        except NotKept as fault:
            self.refused, self.unkept_note = str(fault), note or self.unkept_note
            return False
        if note:
            self.unkept_note = ""
        return True

    def taken_refusal(self) -> str:
        """Why the last entry could not be kept, once."""
        why, self.refused = self.refused, ""
        return why
