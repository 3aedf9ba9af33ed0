"""The stopwatches of a job at a given now: what runs, what is over, what is to be heard. Pure.

A stopwatch is a logged moment: it goes on while the program is gone, and ends by itself. The bar of
the pace is one too: its window is the time of a pass, and what it is says whether its turns sound.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from booth.log.events import StopwatchStarted
from booth.log.fold import Stopwatch
from booth.moment import Moment, elapsed

CATCH, BAR, PASS = "catch", "pace", "pass"
#: What is heard: a beat of the lead-in or a turn of the bar, the end of the time.
TICK, STOP = "tick", "stop"
#: What the bar of the pace was started as, where its turns are not to be heard.
SILENT = "silent"
#: A pass that nobody ended is forgotten then: 24 m at the slowest that a hand holds, 0.2 m/s [s].
LONGEST_PASS_S = 120.0
#: So is a bar that nobody stopped: half an hour of practice is more than an arm does at a time [s].
LONGEST_BAR_S = 1800.0
#: For so much of a pass it is said that the bar has turned.
LIT = 0.12


@dataclass(frozen=True, slots=True)
class Catching:
    """A catch that is going [s]. lead_in_s: still to be waited before the trigger is pulled, 0 from
    then on; caught_s: for how long it has been; left_s: how long it still is."""

    lead_in_s: float
    caught_s: float
    left_s: float


@dataclass(frozen=True, slots=True)
class Sweeping:
    """The bar of the pace as it sweeps [s]. pass_s: one pass; elapsed_s: since it was started."""

    pass_s: float
    elapsed_s: float
    silent: bool = False

    @property
    def number(self) -> int:
        return int(self.elapsed_s / self.pass_s) + 1

    @property
    def turned(self) -> bool:
        return self.number > 1 and self.elapsed_s / self.pass_s % 1 < LIT


def _going(watches: Mapping[str, Stopwatch], name: str) -> StopwatchStarted | None:
    """The start of the stopwatch of this name, where it was not stopped."""
    watch = watches.get(name)
    return None if watch is None or watch.stopped is not None else watch.started


def catching(watches: Mapping[str, Stopwatch], now: Moment) -> Catching | None:
    """The catch that is going at `now`; None where none is, or its time is over."""
    started = _going(watches, CATCH)
    if started is None or started.window_s is None:
        return None
    since = elapsed(started.at, now).seconds
    lead_in, window_s = started.lead_in_s, started.window_s
    if since < lead_in:
        return Catching(lead_in - since, 0.0, window_s)
    caught = since - lead_in
    return Catching(0.0, caught, window_s - caught) if caught < window_s else None


def sweeping(watches: Mapping[str, Stopwatch], now: Moment) -> Sweeping | None:
    """The bar that sweeps at `now`; None where none does, or it was forgotten."""
    started = _going(watches, BAR)
    if started is None or started.window_s is None or started.window_s <= 0:
        return None
    since = elapsed(started.at, now).seconds
    if since > LONGEST_BAR_S:
        return None
    return Sweeping(started.window_s, since, started.what == SILENT)


def passing_s(watches: Mapping[str, Stopwatch], now: Moment) -> float | None:
    """For how long a pass has been going [s]; None where none is, or it was forgotten."""
    started = _going(watches, PASS)
    if started is None:
        return None
    since = elapsed(started.at, now).seconds
    return since if since <= LONGEST_PASS_S else None


def heard(watches: Mapping[str, Stopwatch], before: Moment, now: Moment) -> tuple[str, ...]:
    """What is to be heard because time went from `before` to `now`: beats and turns, then the end."""
    return (*_turns(watches, before, now), *_beats(watches, before, now))


def _turns(watches: Mapping[str, Stopwatch], before: Moment, now: Moment) -> tuple[str, ...]:
    """A tick where the bar has turned; one, however often it did while nobody looked."""
    was, bar = sweeping(watches, before), sweeping(watches, now)
    if was is None or bar is None or bar.silent or bar.number <= was.number:
        return ()
    return (TICK,)


def _beats(watches: Mapping[str, Stopwatch], before: Moment, now: Moment) -> tuple[str, ...]:
    started = _going(watches, CATCH)
    if started is None or started.window_s is None:
        return ()
    lead_in = started.lead_in_s
    was, is_ = elapsed(started.at, before).seconds, elapsed(started.at, now).seconds
    beats = range(int(lead_in) + 1)
    found = [TICK for beat in beats if was < beat <= is_ or (beat == 0 and was <= 0 < is_)]
    over = lead_in + started.window_s
    return (*found, STOP) if was < over <= is_ else tuple(found)
