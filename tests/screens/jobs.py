"""What was kept in a job before a test begins: it starts where it must, and walks no step to it."""

from __future__ import annotations

from booth.log.events import CoatBegun, CoatEnded, Event
from booth.moment import later
from tests.instruments.at_bench import in_mild_weather
from tests.manual_clock import ManualClock


def coated(
    clock: ManualClock, part: str, coat: int = 1, *, took_s: float = 60.0, ago_s: float = 0.0
) -> tuple[Event, ...]:
    """A coat that ended so long ago, in weather that has just been read."""
    ended = later(clock.now(), -ago_s)
    return (
        *in_mild_weather(clock),
        CoatBegun(n=0, at=later(ended, -took_s), part=part, coat=coat),
        CoatEnded(n=0, at=ended, part=part, coat=coat),
    )
