"""Events add up to a Job: what counts, what was measured, which coat each part has.

``fold`` is a pure function of the events. It never fails on an odd order of events (a coat ended that
was never begun, say, after a void): what makes no sense yet is passed over and makes sense again
when the missing event is restored.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from booth.log import events as ev
from booth.profile.model import Profile


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
class Job:
    """What the events of one job add up to. Tuples are in the order of the log."""

    opened: ev.JobOpened
    events: tuple[ev.Event | ev.UnknownEvent, ...]
    void: frozenset[int] = frozenset()
    done: Mapping[str, ev.StepDone] = field(default_factory=dict)
    skipped: Mapping[str, ev.StepSkipped] = field(default_factory=dict)
    ticked: tuple[ev.LineTicked, ...] = ()
    cautions: Mapping[str, ev.CautionAcknowledged] = field(default_factory=dict)
    weathers: tuple[ev.WeatherRead, ...] = ()
    pours: tuple[ev.Poured, ...] = ()
    batches: tuple[ev.BatchMixed, ...] = ()
    finished: tuple[ev.BatchFinished, ...] = ()
    thinner: tuple[ev.ThinnerAdded, ...] = ()
    runs: tuple[ev.EffluxTimed, ...] = ()
    airs: tuple[ev.AirRead, ...] = ()
    catches: tuple[ev.CatchMade, ...] = ()
    fans: tuple[ev.FanSet, ...] = ()
    patterns: tuple[ev.PatternRead, ...] = ()
    passes: tuple[ev.PassTimed, ...] = ()
    coats: Mapping[str, tuple[Coat, ...]] = field(default_factory=dict)
    films: tuple[ev.FilmRead, ...] = ()
    areas: tuple[ev.AreaAdded, ...] = ()
    amounts: tuple[ev.AmountPlanned, ...] = ()
    fresh_air: tuple[ev.FreshAirChecked, ...] = ()
    faults: tuple[ev.FaultSeen, ...] = ()
    notes: tuple[ev.NoteMade, ...] = ()
    acknowledged: frozenset[str] = frozenset()
    clock_changes: tuple[ev.ClockNoticed, ...] = ()
    closed: ev.JobClosed | None = None
    unknown: tuple[ev.UnknownEvent, ...] = ()

    @property
    def profile(self) -> Profile:
        """The coating profile as it was when the job was opened."""
        return self.opened.profile

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts by name."""
        return self.opened.parts

    @property
    def weather(self) -> ev.WeatherRead | None:
        """The latest weather reading."""
        return self.weathers[-1] if self.weathers else None

    def coats_on(self, part: str) -> tuple[Coat, ...]:
        """The coats on `part`, the last of them possibly still being sprayed."""
        return self.coats.get(part, ())

    def running_coat(self, part: str) -> Coat | None:
        """The coat being sprayed on `part` now, if any."""
        coats = self.coats_on(part)
        return coats[-1] if coats and coats[-1].ended is None else None

    @property
    def finished_batches(self) -> frozenset[int]:
        """The batches that are used up or thrown away."""
        return frozenset(event.batch for event in self.finished)

    @property
    def next_n(self) -> int:
        """The number that the next event will carry."""
        return max((event.n for event in self.events), default=0) + 1

    def is_live(self, n: int) -> bool:
        """Whether event `n` counts."""
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

    opened: ev.JobOpened
    lists: dict[str, list[Any]] = field(default_factory=dict)
    done: dict[str, ev.StepDone] = field(default_factory=dict)
    skipped: dict[str, ev.StepSkipped] = field(default_factory=dict)
    cautions: dict[str, ev.CautionAcknowledged] = field(default_factory=dict)
    coats: dict[str, list[Coat]] = field(default_factory=dict)
    acknowledged: set[str] = field(default_factory=set)
    closed: ev.JobClosed | None = None

    def add(self, name: str, event: Any) -> None:
        self.lists.setdefault(name, []).append(event)


def _step_done(draft: _Draft, event: ev.StepDone) -> None:
    draft.done[event.step] = event
    draft.skipped.pop(event.step, None)


def _step_skipped(draft: _Draft, event: ev.StepSkipped) -> None:
    draft.skipped[event.step] = event


def _caution(draft: _Draft, event: ev.CautionAcknowledged) -> None:
    draft.cautions[event.caution] = event


def _coat_begun(draft: _Draft, event: ev.CoatBegun) -> None:
    coats = draft.coats.setdefault(event.part, [])
    if coats and coats[-1].ended is None:
        return
    coats.append(Coat(event.part, len(coats) + 1, event))


def _coat_ended(draft: _Draft, event: ev.CoatEnded) -> None:
    coats = draft.coats.get(event.part)
    if not coats or coats[-1].ended is not None:
        return
    weathers = draft.lists.get("weathers")
    last = coats[-1]
    coats[-1] = Coat(
        last.part, last.number, last.begun, event, weathers[-1] if weathers else None, ()
    )


def _touch(draft: _Draft, event: ev.TouchTried) -> None:
    coats = draft.coats.get(event.part)
    if not coats or coats[-1].ended is None:
        return
    last = coats[-1]
    coats[-1] = Coat(
        last.part, last.number, last.begun, last.ended, last.weather, (*last.touches, event)
    )


def _acknowledged(draft: _Draft, event: ev.AlarmAcknowledged) -> None:
    draft.acknowledged.add(event.alarm)


def _closed(draft: _Draft, event: ev.JobClosed) -> None:
    draft.closed = event


def _listed(name: str) -> Callable[[_Draft, Any], None]:
    def branch(draft: _Draft, event: Any) -> None:
        draft.add(name, event)

    return branch


#: One branch an event.
BRANCHES: dict[type[ev.Event], Callable[[_Draft, Any], None]] = {
    ev.StepDone: _step_done,
    ev.StepSkipped: _step_skipped,
    ev.LineTicked: _listed("ticked"),
    ev.CautionAcknowledged: _caution,
    ev.WeatherRead: _listed("weathers"),
    ev.Poured: _listed("pours"),
    ev.BatchMixed: _listed("batches"),
    ev.BatchFinished: _listed("finished"),
    ev.ThinnerAdded: _listed("thinner"),
    ev.EffluxTimed: _listed("runs"),
    ev.AirRead: _listed("airs"),
    ev.CatchMade: _listed("catches"),
    ev.FanSet: _listed("fans"),
    ev.PatternRead: _listed("patterns"),
    ev.PassTimed: _listed("passes"),
    ev.CoatBegun: _coat_begun,
    ev.CoatEnded: _coat_ended,
    ev.FilmRead: _listed("films"),
    ev.TouchTried: _touch,
    ev.AreaAdded: _listed("areas"),
    ev.AmountPlanned: _listed("amounts"),
    ev.FreshAirChecked: _listed("fresh_air"),
    ev.FaultSeen: _listed("faults"),
    ev.NoteMade: _listed("notes"),
    ev.AlarmAcknowledged: _acknowledged,
    ev.ClockNoticed: _listed("clock_changes"),
    ev.JobClosed: _closed,
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
    draft = _Draft(opened)
    for event in every:
        if event.n in void:
            continue
        branch = BRANCHES.get(type(event))  # type: ignore[arg-type]
        if branch is not None:
            branch(draft, event)
    return Job(
        opened=opened,
        events=every,
        void=void,
        done=draft.done,
        skipped=draft.skipped,
        cautions=draft.cautions,
        coats={part: tuple(coats) for part, coats in draft.coats.items()},
        acknowledged=frozenset(draft.acknowledged),
        closed=draft.closed,
        unknown=tuple(event for event in every if isinstance(event, ev.UnknownEvent)),
        **{name: tuple(found) for name, found in draft.lists.items()},
    )
