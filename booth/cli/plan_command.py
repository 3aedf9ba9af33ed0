"""``booth plan``: the whole day of one product or a coating system, without the screen."""

from __future__ import annotations

import argparse
import json
import re
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path

from booth.cli.endings import BAD_INPUT
from booth.cli.surroundings import places
from booth.files.faults import nearest, quoted
from booth.files.safe_text import visible
from booth.job.day_plan import day_plan
from booth.job.part_names import BadParts, parts_from
from booth.log.events import WeatherRead
from booth.moment import Moment
from booth.profile.library import Library, NoProfile, how_to_see, load_folder
from booth.profile.model import Profile
from booth.profile.system import CoatingSystem, load_systems
from booth.units import EntryError, Kind, Quantity, System, read
from booth.words.day_plan_words import as_json, as_text

#: The readings it takes, each with its kind.
READINGS = {"air": Kind.TEMPERATURE, "humidity": Kind.PERCENT, "part_at": Kind.TEMPERATURE}
CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")
NEVER = Moment(0.0, 0.0, "")


class _Misuse(ValueError):
    """What was typed cannot be taken; the message is a sentence."""


def plan(options: argparse.Namespace) -> int:
    """Print the plan; give the exit code: 0, or 2 for what cannot be taken."""
    try:
        products = _products(options.name)
        weather = _weather(options)
        parts = parts_from(options.parts)
        coat = _quantity(options.coat, Kind.TIME, "--coat")
        start_s = _start(options.start)
    except (_Misuse, BadParts, NoProfile) as fault:
        print(f"booth plan: {visible(str(fault))}", file=sys.stderr)
        return BAD_INPUT
    pieces = {side: rack.pieces for rack in parts.racks for side in rack.parts}
    found = day_plan(products, weather, parts.names, coat.value if coat else None, pieces)
    if options.json:
        print(json.dumps(as_json(found), allow_nan=False))
    else:
        print(as_text(found, start_s, weather is not None, _system(options.air)), end="")
    return 0


def _products(name: str) -> Sequence[Profile]:
    folders = places().profiles_dirs
    library = load_folder(folders)
    if library.get(name) is not None or library.faulty(name) is not None:
        return (library.named(name),)
    systems = load_systems(folders, library)
    for file, system in systems.items():
        if file.stem == name and isinstance(system, CoatingSystem):
            return system.profiles
        if file.stem == name:
            raise NoProfile(f"The coating system has faults: {how_to_see(file)}")
    raise NoProfile(_unknown(name, library, systems))


def _unknown(name: str, library: Library, systems: Mapping[Path, object]) -> str:
    """That there is neither a profile nor a system of this name, and which there are."""
    profiles = {each.key: each.name for each in library.profiles}
    listed = {file.stem: getattr(each, "name", file.stem) for file, each in systems.items()}
    # What it is called on the screen is as good a guess as the name of its file.
    called = {told: key for key, told in {**profiles, **listed}.items()}
    near = nearest(name, (*profiles, *listed, *called))
    meant = f" Did you mean {called.get(near, near)}?" if near else ""
    there = [
        f"{what}: {', '.join(sorted(found)) or 'none'}."
        for what, found in (("Coating profiles", profiles), ("Coating systems", listed))
    ]
    return f"No coating profile {quoted(name)}, nor a coating system.{meant} {' '.join(there)}"


def _system(air: str | None) -> System:
    """The units in which temperatures are told: those that were typed."""
    return System.US if (air or "").strip().upper().endswith("F") else System.METRIC


def _weather(options: argparse.Namespace) -> WeatherRead | None:
    given = {
        name: _quantity(getattr(options, name), kind, f"--{name.replace('_', '-')}")
        for name, kind in READINGS.items()
    }
    air, humidity, part = (given[name] for name in READINGS)
    if air is None and humidity is None and part is None:
        return None
    if air is None or humidity is None or part is None:
        missing = next(name for name, each in given.items() if each is None)
        raise _Misuse(f"all three are needed: --{missing.replace('_', '-')} is missing.")
    if not 0 < humidity.value <= 100:
        raise _Misuse("relative humidity lies between 0 and 100 %.")
    speed = _quantity(options.air_speed, Kind.SPEED, "--air-speed")
    return WeatherRead(n=1, at=NEVER, air=air, humidity=humidity, part=part, air_speed=speed)


def _quantity(text: str | None, kind: Kind, named: str) -> Quantity | None:
    if text is None:
        return None
    try:
        return read(text, kind, System.METRIC)
    except EntryError as fault:
        raise _Misuse(f"{named} {text!r}: {fault}") from None


def _start(text: str) -> float:
    time = CLOCK.fullmatch(text)
    if time is None:
        raise _Misuse(f"--start {text!r}: a time of day is wanted, as 09:00.")
    return 3600.0 * int(time[1]) + 60.0 * int(time[2])
