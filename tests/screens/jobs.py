"""What was kept in a job before a test begins: it starts where it must, and walks no step to it."""

from __future__ import annotations

from msgspec.structs import replace

from booth.log.events import CoatBegun, CoatEnded, WeatherRead
from booth.moment import later
from tests.job.make import mild
from tests.manual_clock import ManualClock


def mild_now(clock: ManualClock) -> WeatherRead:
    """The weather at which the waits of the trial profile hold as they are: without, none is known."""
    return replace(mild(0), at=clock.now())


def coated(
    clock: ManualClock, part: str, coat: int = 1, *, took_s: float = 60.0, ago_s: float = 0.0
) -> tuple[CoatBegun, CoatEnded]:
    """A coat that ended so long ago."""
    ended = later(clock.now(), -ago_s)
    return (
        CoatBegun(n=0, at=later(ended, -took_s), part=part, coat=coat),
        CoatEnded(n=0, at=ended, part=part, coat=coat),
    )
