"""The stopwatches of a job at a given now: what runs, what is over, what is to be heard. Pure.

A stopwatch is a logged moment: it goes on while the program is gone, and ends by itself.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from booth.log.fold import Stopwatch
from booth.moment import Moment, elapsed

CATCH = "catch"
#: What is heard: a beat of the lead-in, the end of the time.
TICK, STOP = "tick", "stop"


@dataclass(frozen=True, slots=True)
class Catching:
    """A catch that is going [s]. lead_in_s: still to be waited before the trigger is pulled, 0 from
    then on; caught_s: for how long it has been; left_s: how long it still is."""

    lead_in_s: float
    caught_s: float
    left_s: float


def catching(watches: Mapping[str, Stopwatch], now: Moment) -> Catching | None:
    """The catch that is going at `now`; None where none is, or its time is over."""
    watch = watches.get(CATCH)
    if watch is None or watch.stopped is not None or watch.started.window_s is None:
        return None
    since = elapsed(watch.started.at, now).seconds
    lead_in, window_s = watch.started.lead_in_s, watch.started.window_s
    if since < lead_in:
        return Catching(lead_in - since, 0.0, window_s)
    caught = since - lead_in
    return Catching(0.0, caught, window_s - caught) if caught < window_s else None


def heard(watches: Mapping[str, Stopwatch], before: Moment, now: Moment) -> tuple[str, ...]:
    """What is to be heard because time went from `before` to `now`: beats, then the end."""
    watch = watches.get(CATCH)
    if watch is None or watch.stopped is not None or watch.started.window_s is None:
        return ()
    start, lead_in = watch.started.at, watch.started.lead_in_s
    was, is_ = elapsed(start, before).seconds, elapsed(start, now).seconds
    beats = range(int(lead_in) + 1)
    found = [TICK for beat in beats if was < beat <= is_ or (beat == 0 and was <= 0 < is_)]
    over = lead_in + watch.started.window_s
    return (*found, STOP) if was < over <= is_ else tuple(found)
