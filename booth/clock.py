"""Now, in the three senses that matter here: the only place that asks the machine for the time.

It is also the only place that asks for the time zone. Everything else is handed a Clock.
``BOOTH_CLOCK_RATE`` (``60``, or ``60@<continuous anchor>`` where several programs have to agree)
makes time run faster, for tests; it is read here only.
"""

from __future__ import annotations

import math
import os
import sys
import time
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Protocol

import msgspec

from booth.clock_reading import Reading, to_next
from booth.moment import Moment

RATE_VARIABLE = "BOOTH_CLOCK_RATE"
MOST_RATE = 100_000.0
#: Longer than this between the first and the last of three readings: something lay between them.
READ_WITHIN_S = 0.1
#: Boots are told apart by when they began where the machine gives them no name. A restart takes
#: longer than this, and a name that differs within one boot only costs trust, never time.
BOOT_ROUNDING_S = 60.0


class Clock(Protocol):
    """What the rest of the program is handed."""

    def now(self) -> Moment:
        """Give the present moment."""

    def at(self, stamp: float) -> Moment:
        """Give the moment of a key press from its event's ``time``, by its age."""

    def reading(self) -> Reading:
        """Give the three clocks, to be compared by ``notice``."""

    def real_s_to_next(self, step_s: float = 1.0) -> float:
        """Give the real seconds to sleep so as to wake at the next whole `step_s`."""


class BadRate(ValueError):
    """The rate setting cannot be read; the message says what was expected."""


def rate_from(environment: Mapping[str, str], continuous: float) -> tuple[float, float]:
    """Give how much faster than real time runs, and from which continuous reading on.

    Without an anchor of its own the setting counts from `continuous`.

    Raises:
        BadRate: it is not a number above 0 and up to 100,000, with or without '@' and a number.
    """
    typed = environment.get(RATE_VARIABLE, "").strip()
    if not typed:
        return 1.0, continuous
    factor_typed, at, anchor_typed = typed.partition("@")
    try:
        factor = float(factor_typed)
        anchor = float(anchor_typed) if at else continuous
    except ValueError:
        factor = anchor = math.nan
    if not (0 < factor <= MOST_RATE and math.isfinite(anchor)):
        raise BadRate(
            f"{RATE_VARIABLE} is {typed!r}: expected a number above 0 and up to {MOST_RATE:,.0f}, "
            "such as 60, or 60@1234.5 with the continuous reading to count from. "
            "Correct it or remove it."
        )
    return factor, anchor


class Sources(msgspec.Struct, frozen=True):
    """The machine's clocks. stamp: the one that Textual stamps its events with; boot: this boot."""

    wall: Callable[[], float]
    continuous: Callable[[], float]
    monotonic: Callable[[], float]
    stamp: Callable[[], float]
    boot: str


def machine_sources() -> Sources:
    """Give the clocks of the platform we run on. Tried on Linux; elsewhere as documented."""
    if sys.platform == "win32":
        return Sources(
            wall=time.time,
            continuous=time.perf_counter,
            monotonic=_windows_awake() or time.monotonic,
            stamp=time.perf_counter,
            boot=_boot_by_start(time.time(), time.perf_counter()),
        )
    # On Linux the monotonic clock leaves sleep out and CLOCK_BOOTTIME counts it; on macOS
    # CLOCK_MONOTONIC_RAW counts it. A system that has neither cannot tell sleep.
    name = "CLOCK_MONOTONIC_RAW" if sys.platform == "darwin" else "CLOCK_BOOTTIME"
    number = getattr(time, name, time.CLOCK_MONOTONIC)

    def continuous() -> float:
        return time.clock_gettime(number)

    boot = _mac_boot() if sys.platform == "darwin" else _linux_boot()
    return Sources(
        wall=time.time,
        continuous=continuous,
        monotonic=time.monotonic,
        stamp=time.monotonic,
        boot=boot or _boot_by_start(time.time(), continuous()),
    )


def _linux_boot() -> str:
    try:
        with open("/proc/sys/kernel/random/boot_id", encoding="ascii") as file:
            return file.read(100).strip()
    except (OSError, UnicodeDecodeError):
        return ""


def _mac_boot() -> str:
    """Ask the kernel for the name of this boot; empty where none. Documented, not tried."""
    try:
        import ctypes

        libc = ctypes.CDLL(None)
        size = ctypes.c_size_t(128)
        name = ctypes.create_string_buffer(size.value)
        if libc.sysctlbyname(b"kern.bootsessionuuid", name, ctypes.byref(size), None, 0) == 0:
            return name.value.decode("ascii", "replace")
    except (ImportError, OSError, AttributeError):
        pass
    return ""


def _windows_awake() -> Callable[[], float] | None:
    """Give the clock that leaves sleep out, unlike time.monotonic. Documented, not tried."""
    try:
        import ctypes

        ask = ctypes.windll.kernel32.QueryUnbiasedInterruptTime  # type: ignore[attr-defined]
        hundred_ns = ctypes.c_ulonglong()
        if not ask(ctypes.byref(hundred_ns)):
            return None
    except (ImportError, OSError, AttributeError):
        return None

    def awake() -> float:
        ask(ctypes.byref(hundred_ns))
        return hundred_ns.value / 1e7

    return awake


def _boot_by_start(wall: float, continuous: float) -> str:
    return f"began {round((wall - continuous) / BOOT_ROUNDING_S) * BOOT_ROUNDING_S:.0f}"


class MachineClock:
    """The machine's own clocks, at the rate that the setting asks for."""

    def __init__(
        self, sources: Sources | None = None, environment: Mapping[str, str] | None = None
    ) -> None:
        self._sources = sources or machine_sources()
        self.rate, self._anchor = rate_from(
            os.environ if environment is None else environment, self._sources.continuous()
        )

    def _raw(self) -> Reading:
        """Read all three within a tenth of a second: the lid may close between two of them."""
        sources = self._sources
        for _ in range(5):
            continuous = sources.continuous()
            reading = Reading(sources.wall(), continuous, sources.monotonic())
            if sources.continuous() - continuous <= READ_WITHIN_S:
                break
        return reading

    def reading(self) -> Reading:
        raw = self._raw()
        if self.rate == 1.0:
            return raw
        gained = (raw.continuous - self._anchor) * (self.rate - 1.0)
        return Reading(raw.wall + gained, raw.continuous + gained, raw.monotonic * self.rate)

    def now(self) -> Moment:
        reading = self.reading()
        return Moment(reading.wall, reading.continuous, self._sources.boot)

    def at(self, stamp: float) -> Moment:
        # The stamp's clock is compared with itself only; what is no past reading of it counts as now.
        age_s = self._sources.stamp() - stamp
        now = self.now()
        if not (math.isfinite(age_s) and age_s > 0):
            return now
        age_s *= self.rate
        return Moment(now.wall - age_s, now.continuous - age_s, now.boot)

    def real_s_to_next(self, step_s: float = 1.0) -> float:
        return to_next(self.reading().wall, step_s, self.rate)


def _local(moment: Moment, form: str, unknown: str) -> str:
    try:
        return datetime.fromtimestamp(moment.wall).strftime(form)
    except (OverflowError, OSError, ValueError):
        return unknown


def local_hhmm(moment: Moment) -> str:
    return _local(moment, "%H:%M", "--:--")


def local_hhmmss(moment: Moment) -> str:
    return _local(moment, "%H:%M:%S", "--:--:--")


def local_date(moment: Moment) -> str:
    return _local(moment, "%Y-%m-%d", "----------")


def local_day_words(moment: Moment) -> str:
    """The day as it is said: 'Sunday 15 June 2025'; empty where no clock can show it."""
    return _local(moment, "%A %d %B %Y", "").replace(" 0", " ")


def wall_of(text: str) -> float:
    """The wall time [s] of an ISO 8601 text, of this machine's zone where it names none. Raises
    ValueError, also where no clock can show it."""
    try:
        return datetime.fromisoformat(text).timestamp()
    except (OverflowError, OSError) as fault:
        raise ValueError(str(fault)) from None


def local_day_hhmm(moment: Moment, now: Moment) -> str:
    """A moment as it is said at `now`: the time, with the day where that is another one."""
    time, date = local_hhmm(moment), local_date(moment)
    days = {local_date(now): "", _local_date_after(now, 1): "tomorrow "}
    days |= {_local_date_after(now, -1): "yesterday "}
    return f"{days.get(date, f'{date} ')}{time}"


def _local_date_after(moment: Moment, days: int) -> str:
    """By the calendar: a day in which the clocks are set is not 24 hours long."""
    try:
        return f"{datetime.fromtimestamp(moment.wall).date() + timedelta(days=days)}"
    except (OverflowError, OSError, ValueError):
        return ""
