"""What an instrument is handed: an immutable snapshot of the job, now, and what stands around it."""

from __future__ import annotations

import msgspec

from booth.job.past import GoodSettings, PastJobs
from booth.log.fold import Job, Stopwatch
from booth.moment import Moment, elapsed
from booth.profile.model import Profile, Step
from booth.shop.model import Gun, Shop
from booth.units import System


class Context(msgspec.Struct, frozen=True):
    """All that an instrument draws and decides by.

    good: what was set in the last good job of this product and gun, if there was one; past: the
    jobs of this shop, read when they are asked for.
    """

    job: Job
    now: Moment
    system: System
    step: Step
    shop: Shop = msgspec.field(default_factory=Shop)
    good: GoodSettings | None = None
    past: PastJobs = msgspec.field(default_factory=PastJobs)

    @property
    def profile(self) -> Profile:
        return self.job.profile

    @property
    def gun(self) -> Gun | None:
        """The gun of this job, where the shop file knows it."""
        return self.shop.gun(self.job.opened.gun)

    def running(self, stopwatch: str) -> Stopwatch | None:
        return self.job.stopwatches.get(stopwatch)

    def since(self, moment: Moment) -> float:
        return elapsed(moment, self.now).seconds
