"""What an instrument is handed, and what a key does, as data: a word, and effects for the bench.

The word and the effects are made together, so that they cannot disagree. Effects are carried out in
their order; where an entry cannot be kept, those behind it are not.
"""

from __future__ import annotations

from collections.abc import Callable

import msgspec

from booth.forms.form import Form
from booth.job.past_settings import GoodSettings
from booth.job.the_gun import gun_of
from booth.learnt.past_jobs import PastJobs
from booth.log.events import Event
from booth.log.fold import Job, Stopwatch
from booth.moment import Moment, elapsed
from booth.profile.model import Profile, Step
from booth.shop.model import Gun, Shop
from booth.shop.room_readings import RoomReading
from booth.units import System


class Context(msgspec.Struct, frozen=True):
    """An immutable snapshot: the job, now, and what stands around it.

    good: what was set in the last good job of this product and gun, if there was one; past: the
    jobs of this shop, read when they are asked for; room: what the sensor's file said last, if the
    shop has one.
    """

    job: Job
    now: Moment
    system: System
    step: Step
    shop: Shop = msgspec.field(default_factory=Shop)
    good: GoodSettings | None = None
    past: PastJobs = msgspec.field(default_factory=PastJobs)
    room: RoomReading | None = None

    @property
    def profile(self) -> Profile:
        return self.job.profile

    @property
    def gun(self) -> Gun | None:
        """The gun of this job as it is now, where the shop file knows it."""
        return gun_of(self.job, self.shop)

    def running(self, stopwatch: str) -> Stopwatch | None:
        return self.job.stopwatches.get(stopwatch)

    def since(self, moment: Moment) -> float:
        return elapsed(moment, self.now).seconds


class Effect(msgspec.Struct, frozen=True):
    """Something that a key does."""


class Rest(Effect, frozen=True):
    """Something that a screen has to carry out: another screen, or leaving this one."""


class Act(msgspec.Struct, frozen=True):
    """word: what the key does, for the key line, empty where it is not shown there; text: the key
    is a character of a text."""

    word: str
    do: tuple[Effect, ...] = ()
    text: bool = False


class Keep(Effect, frozen=True):
    """Bring an entry onto the disk."""

    event: Event


class SetForm(Effect, frozen=True):
    """The form is like this now, and the sentence above the keys is done with."""

    form: Form


class Say(Effect, frozen=True):
    """Say a sentence in the line above the keys."""

    words: str
    fault: bool = False


class Offer(Effect, frozen=True):
    """Entries that were voided a moment ago: the same key brings them back."""

    targets: tuple[int, ...] = ()
    words: str = ""


NO_OFFER = Offer()


class GoOn(Effect, frozen=True):
    """Open the next open step."""


class OpenStep(Effect, frozen=True):
    """Open a step by its key."""

    key: str


class PickStep(Effect, frozen=True):
    """Walk the list of steps at this one; "" leaves the list."""

    key: str = ""


class Choice(msgspec.Struct, frozen=True):
    """One line of a menu, and what it does when it is chosen at a later now."""

    words: str
    act: Callable[[Context], Act]
    behind: str = ""


class Menu(Rest, frozen=True):
    """Let the painter choose."""

    title: str
    choices: tuple[Choice, ...]


class Ask(Rest, frozen=True):
    """Let the painter write a line; `act` says what becomes of it. needed: it may not be empty."""

    question: str
    act: Callable[[Context, str], Act]
    why: str = ""
    text: str = ""
    needed: bool = False


class Command(Rest, frozen=True):
    """A command of the table of commands, by its id."""

    id: str


class Scroll(Rest, frozen=True):
    """Move what is read by so many rows."""

    by: int


class CloseJob(Rest, frozen=True):
    """The job is closed: leave the bench."""


NOTHING = Act("")


def refused(sentence: str, word: str = "") -> Act:
    return Act(word, (Say(sentence, fault=True),))
