"""Events add up to a Job: what counts, what was measured, which coat each part has.

``fold`` is a pure function of the events, and ``added`` gives what it would give with one more. It
never fails on an odd order of events (a coat ended that was never begun, say, after a void): what
makes no sense yet is passed over and makes sense again when the missing event is restored.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, Generic, TypeVar

from booth.log import events as ev
from booth.moment import Boot, boots_of
from booth.profile.model import Profile

E = TypeVar("E", bound=ev.Event)


@dataclass(frozen=True, slots=True)
class Coat:
    """One coat on one part. number: 1, 2, …; ended is None while it is being sprayed."""

    part: str
    number: int
    begun: ev.CoatBegun
    ended: ev.CoatEnded | None = None
    weather: ev.WeatherRead | None = None
    touches: tuple[ev.TouchTried, ...] = ()


@dataclass(frozen=True, slots=True)
class Stopwatch:
    """A stopwatch that is not done with. stopped: how long it ran, where it was stopped by hand."""

    started: ev.StopwatchStarted
    stopped: ev.StopwatchStopped | None = None


class _All(Generic[E]):
    """All events of one kind that count, as an attribute of a Job."""

    def __init__(self, kind: type[E]) -> None:
        self.kind = kind

    def __get__(self, job: Job, owner: type[Job]) -> tuple[E, ...]:
        return job.of(self.kind)


@dataclass(frozen=True)
class Job:
    """What the events of one job add up to. Tuples are in the order of the log, without what is void."""

    opened: ev.JobOpened
    events: tuple[ev.Event | ev.UnknownEvent, ...]
    void: frozenset[int] = frozenset()
    counted: Mapping[type[ev.Event], tuple[Any, ...]] = field(default_factory=dict)
    skipped: Mapping[str, ev.StepSkipped] = field(default_factory=dict)
    coats: Mapping[str, tuple[Coat, ...]] = field(default_factory=dict)
    stopwatches: Mapping[str, Stopwatch] = field(default_factory=dict)
    unknown: tuple[ev.UnknownEvent, ...] = ()
    #: the number that the next event will carry
    next_n: int = 1

    ticked = _All(ev.LineTicked)
    weathers = _All(ev.WeatherRead)
    pours = _All(ev.Poured)
    batches = _All(ev.BatchMixed)
    finished = _All(ev.BatchFinished)
    thinner = _All(ev.ThinnerAdded)
    runs = _All(ev.EffluxTimed)
    airs = _All(ev.AirRead)
    catches = _All(ev.CatchMade)
    fans = _All(ev.FanSet)
    patterns = _All(ev.PatternRead)
    passes = _All(ev.PassTimed)
    films = _All(ev.FilmRead)
    areas = _All(ev.AreaAdded)
    amounts = _All(ev.AmountPlanned)
    fresh_air = _All(ev.FreshAirChecked)
    faults = _All(ev.FaultSeen)
    notes = _All(ev.NoteMade)
    clock_changes = _All(ev.ClockNoticed)

    def of(self, kind: type[E]) -> tuple[E, ...]:
        return self.counted.get(kind, ())

    @cached_property
    def done(self) -> Mapping[str, ev.StepDone]:
        return {event.step: event for event in self.of(ev.StepDone)}

    @cached_property
    def cautions(self) -> Mapping[str, ev.CautionAcknowledged]:
        return {event.caution: event for event in self.of(ev.CautionAcknowledged)}

    @cached_property
    def acknowledged(self) -> frozenset[str]:
        return frozenset(event.alarm for event in self.of(ev.AlarmAcknowledged))

    @cached_property
    def numbered(self) -> Mapping[int, ev.Event | ev.UnknownEvent]:
        """Every event by its number; of two with one number, the first."""
        return {event.n: event for event in reversed(self.events)}

    @property
    def closed(self) -> ev.JobClosed | None:
        return next(reversed(self.of(ev.JobClosed)), None)

    @property
    def profile(self) -> Profile:
        return self.opened.profile

    @property
    def parts(self) -> tuple[str, ...]:
        return self.opened.parts

    @property
    def weather(self) -> ev.WeatherRead | None:
        return self.weathers[-1] if self.weathers else None

    @cached_property
    def boots(self) -> tuple[Boot, ...]:
        """The boots of the machine in which it was written: they prove that time has passed."""
        return boots_of(event.at for event in self.events)

    def coats_on(self, part: str) -> tuple[Coat, ...]:
        """The coats on `part`, the last of them possibly still being sprayed."""
        return self.coats.get(part, ())

    def running_coat(self, part: str) -> Coat | None:
        """The coat being sprayed on `part` now, if any."""
        coats = self.coats_on(part)
        return coats[-1] if coats and coats[-1].ended is None else None

    @cached_property
    def finished_batches(self) -> frozenset[int]:
        return frozenset(event.batch for event in self.finished)

    def is_live(self, n: int) -> bool:
        return n not in self.void

    def last_of(self, *kinds: type[ev.Event]) -> ev.Event | None:
        """The latest event of one of these kinds that counts, if any."""
        for event in reversed(self.events):
            if isinstance(event, kinds) and event.n not in self.void:
                return event
        return None


class NoJob(ValueError):
    """There is no 'job opened' among the events, so they add up to nothing."""


@dataclass(slots=True)
class _Draft:
    """The Job while it is being added up."""

    counted: dict[type[ev.Event], list[Any]] = field(default_factory=dict)
    skipped: dict[str, ev.StepSkipped] = field(default_factory=dict)
    coats: dict[str, list[Coat]] = field(default_factory=dict)
    stopwatches: dict[str, Stopwatch] = field(default_factory=dict)

    @classmethod
    def of(cls, job: Job) -> _Draft:
        return cls(
            {kind: list(found) for kind, found in job.counted.items()},
            dict(job.skipped),
            {part: list(coats) for part, coats in job.coats.items()},
            dict(job.stopwatches),
        )

    def add(self, event: ev.Event) -> None:
        kind = type(event)
        if kind in self.counted:
            self.counted[kind].append(event)
        else:
            self.counted[kind] = [event]
        if kind.ENDS:
            self.stopwatches.pop(kind.ENDS, None)
        branch = BRANCHES.get(kind)
        if branch is not None:
            branch(self, event)

    def frozen(self) -> dict[str, Any]:
        return {
            "counted": {kind: tuple(found) for kind, found in self.counted.items()},
            "skipped": self.skipped,
            "coats": {part: tuple(coats) for part, coats in self.coats.items()},
            "stopwatches": self.stopwatches,
        }


def _step_done(draft: _Draft, event: ev.StepDone) -> None:
    draft.skipped.pop(event.step, None)


def _step_skipped(draft: _Draft, event: ev.StepSkipped) -> None:
    draft.skipped[event.step] = event


def _coat_begun(draft: _Draft, event: ev.CoatBegun) -> None:
    coats = draft.coats.setdefault(event.part, [])
    if coats and coats[-1].ended is None:
        return
    coats.append(Coat(event.part, len(coats) + 1, event))


def _coat_ended(draft: _Draft, event: ev.CoatEnded) -> None:
    coats = draft.coats.get(event.part)
    if not coats or coats[-1].ended is not None:
        return
    weathers = draft.counted.get(ev.WeatherRead)
    coats[-1] = replace(coats[-1], ended=event, weather=weathers[-1] if weathers else None)


def _touch(draft: _Draft, event: ev.TouchTried) -> None:
    coats = draft.coats.get(event.part)
    if not coats or coats[-1].ended is None:
        return
    coats[-1] = replace(coats[-1], touches=(*coats[-1].touches, event))


def _stopwatch_started(draft: _Draft, event: ev.StopwatchStarted) -> None:
    draft.stopwatches[event.stopwatch] = Stopwatch(event)


def _stopwatch_stopped(draft: _Draft, event: ev.StopwatchStopped) -> None:
    running = draft.stopwatches.get(event.stopwatch)
    if running is not None:
        draft.stopwatches[event.stopwatch] = Stopwatch(running.started, event)


def _pass_over(draft: _Draft, event: ev.Event) -> None:
    """A void run of a cup was stopped all the same; what was caught waits to be entered anew."""
    watch = draft.stopwatches.get(event.ENDS)
    if watch is not None and watch.stopped is None and watch.started.window_s is None:
        del draft.stopwatches[event.ENDS]


def _stopwatch_dropped(draft: _Draft, event: ev.StopwatchDropped) -> None:
    draft.stopwatches.pop(event.stopwatch, None)


#: The events that change more than the list of their kind.
BRANCHES: dict[type[ev.Event], Callable[[_Draft, Any], None]] = {
    ev.StepDone: _step_done,
    ev.StepSkipped: _step_skipped,
    ev.CoatBegun: _coat_begun,
    ev.CoatEnded: _coat_ended,
    ev.TouchTried: _touch,
    ev.StopwatchStarted: _stopwatch_started,
    ev.StopwatchStopped: _stopwatch_stopped,
    ev.StopwatchDropped: _stopwatch_dropped,
}


def void_numbers(events: Iterable[ev.Event | ev.UnknownEvent]) -> frozenset[int]:
    """Give the numbers of the events that do not count, the last void or restore of each deciding.

    The job's opening cannot be voided: without it there is no job.
    """
    void: set[int] = set()
    for event in events:
        if isinstance(event, ev.Voided):
            void.add(event.target)
        elif isinstance(event, ev.Restored):
            void.discard(event.target)
    return frozenset(void)


def fold(events: Iterable[ev.Event | ev.UnknownEvent]) -> Job:
    """Add events up to a Job. Raises NoJob where none of them opens one."""
    every = tuple(events)
    opened = next((event for event in every if isinstance(event, ev.JobOpened)), None)
    if opened is None:
        raise NoJob("no line of this log opens a job")
    void = void_numbers(every) - {opened.n}
    draft = _Draft()
    for event in every:
        if event.n not in void and isinstance(event, ev.Event):
            draft.add(event)
        elif isinstance(event, ev.Event):
            _pass_over(draft, event)
    return Job(
        opened=opened,
        events=every,
        void=void,
        unknown=tuple(event for event in every if isinstance(event, ev.UnknownEvent)),
        next_n=max(event.n for event in every) + 1,
        **draft.frozen(),
    )


def added(job: Job, event: ev.Event) -> Job:
    """Give what ``fold`` gives of the job's events and this one more, without adding all up anew."""
    every = (*job.events, event)
    if isinstance(event, ev.Voided | ev.Restored):
        return fold(every)
    draft = _Draft.of(job)
    if event.n not in job.void:
        draft.add(event)
    return replace(job, events=every, next_n=max(job.next_n, event.n + 1), **draft.frozen())
