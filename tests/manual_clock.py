"""A clock for tests."""

from __future__ import annotations

from booth.clock_reading import Reading, to_next
from booth.moment import Moment


class ManualClock:
    """A clock that stands still until a test moves it.

    key_age_s: how long ago, in this clock's seconds, a key that is handled now was pressed.
    Event stamps come from the real machine, so they say nothing to this clock.
    """

    def __init__(
        self, wall: float = 1_750_000_000.0, continuous: float = 1000.0, boot: str = "boot 1"
    ) -> None:
        self._reading = Reading(wall, continuous, continuous)
        self._boot = boot
        self._boots = 1
        self.key_age_s = 0.0

    def reading(self) -> Reading:
        return self._reading

    def now(self) -> Moment:
        return Moment(self._reading.wall, self._reading.continuous, self._boot)

    def at(self, stamp: float) -> Moment:
        """Give the present moment less ``key_age_s``, whatever the stamp."""
        now = self.now()
        return Moment(now.wall - self.key_age_s, now.continuous - self.key_age_s, now.boot)

    def real_s_to_next(self, step_s: float = 1.0) -> float:
        return to_next(self._reading.wall, step_s)

    def _move(self, wall: float, continuous: float, monotonic: float) -> None:
        old = self._reading
        self._reading = Reading(
            old.wall + wall, old.continuous + continuous, old.monotonic + monotonic
        )

    def advance(self, seconds: float) -> None:
        """Let time pass."""
        self._move(seconds, seconds, seconds)

    def sleep(self, seconds: float) -> None:
        """Let the machine sleep."""
        self._move(seconds, seconds, 0.0)

    def step_wall(self, seconds: float) -> None:
        """Set the wall clock forward, or back with a negative number."""
        self._move(seconds, 0.0, 0.0)

    def reboot(self, off_s: float = 0.0, up_s: float = 10.0) -> None:
        """Switch the machine off for `off_s` and start it; its new boot has run for `up_s`."""
        self._boots += 1
        self._boot = f"boot {self._boots}"
        self._reading = Reading(self._reading.wall + off_s + up_s, up_s, up_s)
