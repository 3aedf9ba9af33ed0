"""The stopwatches of a job at a given now: what runs, what is over, what is to be heard. Pure.

A stopwatch is a logged moment: it goes on while the program is gone, and ends by itself. The bar of
the pace is one too: its window is the time of a pass, and what it is says whether its turns sound.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

import msgspec

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


class Catching(msgspec.Struct, frozen=True):
    """A catch that is going [s]. lead_in_s: still to be waited before the trigger is pulled, 0 from
    then on; caught_s: for how long it has been; left_s: how long it still is."""

    lead_in_s: float
    caught_s: float
    left_s: float


class Sweeping(msgspec.Struct, frozen=True):
    """The bar of the pace as it sweeps [s]. pass_s: one pass; elapsed_s: since it was started."""

    pass_s: float
    elapsed_s: float
    silent: bool = False

    @property
    def number(self) -> int:
        return int(self.elapsed_s / self.pass_s) + 1

    @property
    def place(self) -> float:
        """Where the gun should be, 0 left to 1 right: odd passes go right."""
        share = self.elapsed_s / self.pass_s % 1
        return share if self.number % 2 else 1 - share

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
    since_s = elapsed(started.at, now).seconds - started.lead_in_s
    caught_s = max(since_s, 0.0)
    left_s = started.window_s - caught_s
    return Catching(max(-since_s, 0.0), caught_s, left_s) if left_s > 0 else None


def sweeping(watches: Mapping[str, Stopwatch], now: Moment) -> Sweeping | None:
    """The bar that sweeps at `now`; None where none does, or it was forgotten."""
    started = _going(watches, BAR)
    if started is None or started.window_s is None or started.window_s <= 0:
        return None
    since = max(elapsed(started.at, now).seconds, 0.0)
    sweeps = Sweeping(started.window_s, since, started.what == SILENT)
    return sweeps if since <= LONGEST_BAR_S else None


def passing_s(watches: Mapping[str, Stopwatch], now: Moment) -> float | None:
    """For how long a pass has been going [s]; None where none is, or it was forgotten."""
    started = _going(watches, PASS)
    since = elapsed(started.at, now).seconds if started is not None else math.inf
    return since if since <= LONGEST_PASS_S else None


def heard(watches: Mapping[str, Stopwatch], before: Moment, now: Moment) -> tuple[str, ...]:
    """What is to be heard because time went from `before` to `now`: beats and turns, then the end."""
    found = []
    was, bar = sweeping(watches, before), sweeping(watches, now)
    # One tick, however often the bar turned while nobody looked.
    if was is not None and bar is not None and bar.number > was.number and not bar.silent:
        found.append(TICK)
    started = _going(watches, CATCH)
    if started is not None and started.window_s is not None:
        since, until = (elapsed(started.at, each).seconds for each in (before, now))
        for beat in range(int(started.lead_in_s) + 1):
            if since < beat <= until or (beat == 0 and since <= 0 < until):
                found.append(TICK)
        if since < started.lead_in_s + started.window_s <= until:
            found.append(STOP)
    return tuple(found)
