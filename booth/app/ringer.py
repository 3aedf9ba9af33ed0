"""When an alarm is sounded again: at once when it is new, then every few seconds until acknowledged."""

from __future__ import annotations

from dataclasses import dataclass

from booth.moment import Moment, elapsed

AGAIN_AFTER_S = 5.0


@dataclass(frozen=True, slots=True)
class Heard:
    """sound: sound it now; beat: alternates while something rings, for the bar on the screen."""

    sound: bool
    beat: bool


class Ringer:
    """Remembers what has been sounded and when."""

    def __init__(self, again_after_s: float = AGAIN_AFTER_S) -> None:
        self._again_after_s = again_after_s
        self._known: frozenset[str] = frozenset()
        self._last: Moment | None = None
        self._beat = False

    def hear(self, keys: tuple[str, ...], now: Moment) -> Heard:
        """Given what rings now, say whether to sound it."""
        if not keys:
            self._known, self._last, self._beat = frozenset(), None, False
            return Heard(False, False)
        new = frozenset(keys) - self._known
        due = self._last is None or elapsed(self._last, now).seconds >= self._again_after_s
        self._known = frozenset(keys)
        self._beat = not self._beat
        if new or due:
            self._last = now
            return Heard(True, self._beat)
        return Heard(False, self._beat)
