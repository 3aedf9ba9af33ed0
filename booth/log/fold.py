"""Events add up to a Job: what counts, what was measured, which coat each part has. Pure.

No odd order of events fails (a coat ended that was never begun, say, after a void): what makes no
sense yet is passed over, and makes sense again when the missing event is restored.

Where a job has several products, what is measured, mixed and laid belongs to the one it is done with:
it counts from where that one began. The weather, areas and notes are the whole job's.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Generic, TypeVar

from msgspec import Struct

from booth.log import events as ev
from booth.log.changes import Fitted, Parts, fitted_of, parts_of
from booth.log.coats import Coat, coats_of
from booth.log.stretches import Entry, stretches_of
from booth.moment import Boot, boots_of
from booth.profile.model import Profile

E = TypeVar("E", bound=ev.Event)
#: What says nothing any more once another gun or tip is in the hand.
OF_THE_GUN = (ev.AirRead, ev.CatchMade, ev.FanSet, ev.PatternRead)


class Stopwatch(Struct, frozen=True):
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
    events: tuple[Entry, ...]
    void: frozenset[int]
    #: the present product, and its number, 1 for the first
    profile: Profile
    product: int
    #: what began it; the first begins with the job
    begun: ev.ProductBegun | None
    #: the earlier products that were begun, each as a job of its own
    before: tuple[Job, ...]
    #: what counts: of the present product, and of the whole job
    live: tuple[Entry, ...]
    counted: Mapping[type[Entry], tuple[Any, ...]]
    #: steps passed over, and not done since
    skipped: Mapping[str, ev.StepSkipped]
    #: by part; the weather of a coat is what was read last when it ended
    coats: Mapping[str, tuple[Coat, ...]]
    stopwatches: Mapping[str, Stopwatch]
    #: the parts and racks as they are now
    present: Parts
    #: the gun, its tip and cup
    fitted: Fitted
    #: the number that the next event will carry
    next_n: int

    ticked = _All(ev.LineTicked)
    pours = _All(ev.Poured)
    batches = _All(ev.BatchMixed)
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
    faults = _All(ev.FaultSeen)
    notes = _All(ev.NoteMade)

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
    def numbered(self) -> Mapping[int, Entry]:
        """Every event by its number; of two with one number, the first."""
        return {event.n: event for event in reversed(self.events)}

    @property
    def closed(self) -> ev.JobClosed | None:
        return next(reversed(self.of(ev.JobClosed)), None)

    @property
    def parts(self) -> tuple[str, ...]:
        return self.present.names

    @property
    def weather(self) -> ev.WeatherRead | None:
        return next(reversed(self.of(ev.WeatherRead)), None)

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
        return frozenset(event.batch for event in self.of(ev.BatchFinished))

    def is_live(self, n: int) -> bool:
        return n not in self.void

    def last_of(self, *kinds: type[ev.Event]) -> ev.Event | None:
        """The latest event of one of these kinds that counts, if any."""
        found = (event for event in reversed(self.live) if isinstance(event, kinds))
        return next(found, None)


def kept_by(job: Job, what: str, at: object, found: Callable[[], Any]) -> Any:
    """Give what follows from a job (and from `at`), found once: a Job never changes."""
    kept: dict[str, tuple[object, Any]] = vars(job).setdefault("kept", {})
    if what not in kept or kept[what][0] != at:
        kept[what] = at, found()
    return kept[what][1]


class NoJob(ValueError):
    """There is no 'job opened' among the events, so they add up to nothing."""


def _skipped(live: Iterable[Entry]) -> dict[str, ev.StepSkipped]:
    found: dict[str, ev.StepSkipped] = {}
    for event in live:
        if isinstance(event, ev.StepSkipped):
            found[event.step] = event
        elif isinstance(event, ev.StepDone):
            found.pop(event.step, None)
    return found


def _stopwatches(events: Iterable[Entry], void: frozenset[int]) -> dict[str, Stopwatch]:
    found: dict[str, Stopwatch] = {}
    for event in events:
        counts = event.n not in void
        if isinstance(event, ev.StopwatchStarted) and counts:
            found[event.stopwatch] = Stopwatch(event)
        elif isinstance(event, ev.StopwatchStopped) and counts and event.stopwatch in found:
            found[event.stopwatch] = Stopwatch(found[event.stopwatch].started, event)
        elif isinstance(event, ev.StopwatchDropped) and counts:
            found.pop(event.stopwatch, None)
        elif isinstance(event, ev.Event) and event.ENDS in found:
            watch = found[event.ENDS]
            # A void run of a cup was stopped all the same; what was caught waits to be entered anew.
            if counts or (watch.stopped is None and watch.started.window_s is None):
                del found[event.ENDS]
    return found


def void_numbers(events: Iterable[Entry]) -> frozenset[int]:
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


def fold(events: Iterable[Entry]) -> Job:
    """Add events up to a Job. Raises NoJob where none of them opens one."""
    every = tuple(events)
    opened = next((event for event in every if isinstance(event, ev.JobOpened)), None)
    if opened is None:
        raise NoJob("no line of this log opens a job")
    void = void_numbers(every) - {opened.n}
    live = tuple(event for event in every if event.n not in void)
    stretches = stretches_of(live, len(opened.products))
    coats, present = coats_of(live, stretches), parts_of(opened, live)
    jobs: list[Job] = []
    for stretch, laid in zip(stretches, coats, strict=True):
        own = stretch.counting(live)
        is_last = stretch is stretches[-1]
        fitted = fitted_of(opened, live[: stretch.end])
        jobs.append(
            Job(
                opened=opened,
                events=every,
                void=void,
                profile=opened.products[stretch.product - 1],
                product=stretch.product,
                begun=stretch.begun,
                before=tuple(jobs),
                live=own,
                counted=_by_kind(own, fitted.since),
                skipped=_skipped(own),
                coats=laid,
                stopwatches=_stopwatches(every, void) if is_last else {},
                present=present,
                fitted=fitted,
                next_n=max(event.n for event in every) + 1,
            )
        )
    return jobs[-1]


def _by_kind(own: Iterable[Entry], gun_since: int) -> dict[type[Entry], tuple[Any, ...]]:
    counted: dict[type[Entry], list[Any]] = {}
    for event in own:
        if event.n < gun_since and isinstance(event, OF_THE_GUN):
            continue
        counted.setdefault(type(event), []).append(event)
    return {kind: tuple(found) for kind, found in counted.items()}
