"""What an instrument is handed: the job as it stands, and the few things it may ask of the bench."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from booth.job.past import GoodSettings
from booth.log.events import Event
from booth.log.fold import Job
from booth.moment import Moment
from booth.profile.model import Profile, Step
from booth.shop.model import Shop
from booth.units import System


@dataclass(frozen=True, slots=True)
class Context:
    """All that an instrument draws: an immutable snapshot.

    good: what was set in the last good job of this product and gun, if there was one.
    """

    job: Job
    now: Moment
    system: System
    step: Step
    shop: Shop = field(default_factory=Shop)
    good: GoodSettings | None = None

    @property
    def profile(self) -> Profile:
        """The coating profile of the job."""
        return self.job.profile


class Desk(Protocol):
    """What an instrument may ask of the bench."""

    @property
    def context(self) -> Context:
        """The job and now."""
        ...

    @property
    def jobs_dir(self) -> Path:
        """Where the session logs are, for figures out of past jobs."""
        ...

    @property
    def profiles_dir(self) -> Path:
        """Where the painter's own profiles are."""
        ...

    def keep(self, event: Event) -> Event | None:
        """Keep an event on disk; None (and the screen has said so) where it could not be kept."""
        ...

    def finish_step(self) -> None:
        """The step is done, or passed over with a word why: go on to the next."""
        ...

    def open_kind(self, kind: str) -> None:
        """Go to the step that this kind of instrument serves, where the job has one."""
        ...

    def say(self, sentence: str, *, fault: bool = False) -> None:
        """Say something in the line above the keys."""
        ...

    def signal(self) -> None:
        """Flash the whole screen and sound once."""
        ...

    def tick_sound(self) -> None:
        """A short sound, for a lead-in."""
        ...

    def local_time(self, moment: Moment) -> str:
        """A moment as hh:mm on the wall."""
        ...

    def close_job(self) -> None:
        """The job was closed: leave the bench."""
        ...
