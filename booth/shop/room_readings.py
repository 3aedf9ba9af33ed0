"""Temperature and humidity of the room, from the file that a logger writes. Never raises.

The file is one JSON object, {"temperature": 14.2, "humidity": 70}, or the two numbers alone.
"temperature_c" and "temperature_f" name their unit, "time" (ISO 8601, or seconds since 1970) says when
it was read; else the file's own time does.
"""

from __future__ import annotations

import os
import re
from pathlib import Path
from threading import Thread

import msgspec

from booth.clock import wall_of
from booth.files.faults import Fault, quoted
from booth.files.file_text import text_of
from booth.moment import Moment, elapsed
from booth.shop.model import Shop
from booth.trade.weather.humid_air import MAGNUS_RANGE_C
from booth.units import EntryError, Kind, System, read, show

#: The file is looked at so often; what is older than STALE_S says nothing about now, what is dated
#: further ahead than AHEAD_S comes from a clock that is wrong (this program's own choice) [s].
EVERY_S, STALE_S, AHEAD_S = 5.0, 15 * 60.0, 120.0
#: A time since 1970 that is larger than this is in milliseconds: in seconds it is the year 5138.
MILLISECONDS_FROM = 1e11
_NUMBER = r"[-+]?\d+(?:[.,]\d+)?"
_PLAIN = re.compile(rf"\s*({_NUMBER})\s*(°?\s*[cf]?)[\s;,]+({_NUMBER})\s*%?\s*", re.IGNORECASE)
EXPECTED = "Expected a JSON object with temperature and humidity, or these two numbers alone."


class RoomReading(msgspec.Struct, frozen=True):
    """What the file said: air [degC], relative humidity [%], when by the wall clock [s]; fault: why it
    says nothing, as a sentence, else empty."""

    air_c: float = 0.0
    humidity_percent: float = 0.0
    wall: float = 0.0
    fault: str = ""

    def age_s(self, now: Moment) -> float:
        """How old it is [s]; below 0 where it is dated ahead of this machine's clock."""
        return now.wall - self.wall

    def is_fresh(self, now: Moment) -> bool:
        """Whether it may be used at `now`."""
        return not self.fault and -AHEAD_S <= self.age_s(now) <= STALE_S


class _Json(msgspec.Struct):
    humidity: float
    temperature: float | None = None
    temperature_c: float | None = None
    temperature_f: float | None = None
    time: float | str | None = None


_json = msgspec.json.Decoder(_Json)


def reading_of(text: str, written_s: float, system: System | None) -> RoomReading:
    """Give what a text says. written_s: the file's own time; system: of a temperature without a unit,
    None where the shop file names none."""
    time: float | str | None = None
    found = _PLAIN.fullmatch(text)
    try:
        if found is not None:
            temperature, humidity = found[1] + found[2], float(found[3].replace(",", "."))
        else:
            said = _json.decode(text)
            temperature, humidity, time = _temperature(said), said.humidity, said.time
        air_c = _degrees_c(temperature, system)
        wall = written_s if time is None else _wall(time)
    except EntryError as fault:
        return RoomReading(fault=str(fault))
    except (ValueError, ArithmeticError, RecursionError):
        return RoomReading(fault=f"{quoted(text.strip())} is not understood. {EXPECTED}")
    low, high = MAGNUS_RANGE_C
    if not (low <= air_c <= high and 0.0 < humidity <= 100.0):
        air = show(air_c, Kind.TEMPERATURE, system or System.METRIC)
        return RoomReading(fault=f"{air} at {humidity:g} % cannot be: look at the sensor.")
    return RoomReading(air_c, humidity, wall)


def _temperature(said: _Json) -> str:
    """The temperature as it would be typed. Raises ValueError where there is none."""
    named = ((said.temperature_c, " C"), (said.temperature_f, " F"), (said.temperature, ""))
    value, unit = next((each for each in named if each[0] is not None), (None, ""))
    if value is None or abs(value) > 1000:  # no unit makes sense of that
        raise ValueError("no temperature")
    return f"{value:.3f}{unit}"


def _degrees_c(text: str, system: System | None) -> float:
    systems = tuple(System) if system is None else (system,)
    found = {read(text, Kind.TEMPERATURE, each).value for each in systems}
    if len(found) > 1:
        told = "has no unit: name it temperature_c or temperature_f, or set units in the shop file."
        raise EntryError(f"The temperature {told}")
    return found.pop()


def _wall(time: float | str) -> float:
    if isinstance(time, str):
        return wall_of(time)
    wall = time / 1000 if time > MILLISECONDS_FROM else time
    if not 0 <= wall <= MILLISECONDS_FROM:
        raise ValueError("no time that a clock shows")
    return wall


def read_room(path: Path, system: System | None) -> RoomReading:
    """Read the file at `path`; what is wrong with it is its fault."""
    text = text_of(path, "a sensor file")
    if isinstance(text, Fault):
        return RoomReading(fault=f"{path.name}: {text.found}.")
    try:
        written_s = os.stat(path).st_mtime
    except OSError as fault:
        return RoomReading(fault=f"{path.name} cannot be read: {fault.strerror}.")
    return reading_of(text, written_s, system)


class RoomReadings:
    """The file as it was read last. It is read in a thread: a slow disk holds nothing up, and what
    comes back late is old by its own time."""

    def __init__(self) -> None:
        self.reading: RoomReading | None = None
        self._path: Path | None = None
        self._asked: Moment | None = None
        self._thread: Thread | None = None

    def mind(self, shop: Shop, shop_file: Path, now: Moment) -> None:
        """Have the file read that the shop names, where the last look is some seconds ago."""
        named = shop.room.readings if shop.room is not None else ""
        path = shop_file.parent / os.path.expanduser(named) if named else None
        if path != self._path:
            self._path, self.reading, self._asked = path, None, None
        is_due = self._asked is None or elapsed(self._asked, now).seconds >= EVERY_S
        if path is None or not is_due or (self._thread is not None and self._thread.is_alive()):
            return
        self._asked = now
        system = System(shop.system) if shop.system else None
        self._thread = Thread(target=self._read, args=(path, system), name="sensor", daemon=True)
        self._thread.start()

    def _read(self, path: Path, system: System | None) -> None:
        found = read_room(path, system)
        if path == self._path:
            self.reading = found
