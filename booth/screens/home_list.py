"""The lines of the first screen: what one is for, how they are listed, and a first glance at the disk.

The glance is all that the first frame waits for: names, nothing judged. It loads no reader of profiles
and none of logs; what is true of each line is read right after (``home_rows``).
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from booth.files.slug import REHEARSAL, rehearsal_key, system_key
from booth.log.rack import Rack, in_a_line

if TYPE_CHECKING:
    from booth.log.fold import Job
    from booth.profile.model import Profile
    from booth.profile.system import CoatingSystem

JOBS, PROFILES, REST = "Jobs not closed", "Coating profiles", "Shop"
BEFORE = "Before the can is opened"
STILL = "Closed, still waiting"
SYSTEMS = "Coating systems"
#: At the glance so many of the newest logs are opened, and so much of either end is read [bytes].
MOST_LOGS, HEAD, TAIL = 40, 65536, 32768


class HomeRow(msgspec.Struct, frozen=True):
    """One line to pick: what it is for ('job', 'still', 'rehearse', 'profile', 'faults', 'shop',
    'history', 'learnt'), and what it is made from. id: tells it again after the disk was read anew;
    key: of its coating profile or system; profile: what a job is begun with."""

    kind: str
    id: str
    section: str
    title: str
    behind: str = ""
    mark: str = ""
    key: str = ""
    path: Path | None = None
    job: Job | None = None
    profile: Profile | CoatingSystem | None = None
    about: tuple[str, ...] = ()


def job_row(
    path: Path, profile: str, key: str, parts: Sequence[str], racks: Sequence[Rack] = ()
) -> HomeRow:
    """The row of a job that is not closed."""
    title = f"{profile}: {in_a_line(parts, racks)}"
    return HomeRow("job", f"job:{path.name}", JOBS, title, mark="»", key=key, path=path)


def profile_row(
    key: str, name: str, demo: bool, profile: Profile | CoatingSystem | None = None
) -> HomeRow:
    """The row of a coating profile."""
    behind = "demo" if demo else ""
    return HomeRow("profile", f"profile:{key}", PROFILES, name, behind, key=key, profile=profile)


def system_row(key: str, name: str, demo: bool, system: CoatingSystem | None = None) -> HomeRow:
    """The row of a coating system."""
    row = profile_row(system_key(key), name, demo, system)
    return msgspec.structs.replace(row, section=SYSTEMS)


REHEARSE = HomeRow(
    "rehearse",
    "rehearse",
    BEFORE,
    "Rehearse with water",
    about=(
        "The whole job with water and cardboard: the same steps, the same keys, nothing to spoil.",
        "",
        "At its end it says what to change before the real can is opened: needle, fan, pattern, pace.",
        "",
        "Needed: a clean gun and its air; water; cardboard and a marker; a measuring cup or a scale. "
        "This laptop is the watch.",
        "",
        "Left out: mixing, thinning and the flow cup, for which water is too thin, and every wait. It "
        "never counts as a job: nothing of it is a setting of the coating.",
        "",
        "Enter: choose the coating that it is for.",
    ),
)
SHOP = HomeRow("shop", "shop", REST, "Shop")
HISTORY = HomeRow("history", "history", REST, "Past jobs")
LEARNT = HomeRow("learnt", "learnt", REST, "What this shop has learnt")


def asked_for(rows: Sequence[HomeRow], name: str) -> HomeRow | None:
    """The row of a coating profile, else system, of that name: its first open job, itself, or its
    faults; where it is to be rehearsed, its first open rehearsal, itself, or its faults."""
    plain = name.removeprefix(REHEARSAL)
    keys = (plain, system_key(plain))
    if plain == name:
        return _first(rows, keys)
    others = [row for row in rows if row.kind != "job"]
    return _first(rows, [rehearsal_key(key) for key in keys]) or _first(others, keys)


def plain_name(wanted: str) -> str:
    """The name that was typed for what is asked for."""
    return wanted.removeprefix(REHEARSAL).removeprefix(system_key(""))


def not_there(rows: Sequence[HomeRow], wanted: str) -> str:
    """That nothing has the name asked for, and what has one."""
    known = ", ".join(each.key for each in rows if each.kind == "profile")
    told = f"No coating profile '{plain_name(wanted)}', nor a coating system."
    return f"{told} There are: {known}."


def _first(rows: Sequence[HomeRow], keys: Sequence[str]) -> HomeRow | None:
    """The first row of the first of these keys."""
    return next((row for key in keys for row in rows if row.key and row.key == key), None)


# -- a first glance ------------------------------------------------------------------------------


def glance(jobs_dir: Path, profiles_dirs: Sequence[Path]) -> tuple[HomeRow, ...]:
    """Give the rows as far as names tell them. Never raises."""
    profiles = _by_name(profiles_dirs, profile_row)
    systems = _by_name([folder / "systems" for folder in profiles_dirs], system_row)
    return (*_jobs(jobs_dir), REHEARSE, *profiles, *systems, SHOP, LEARNT, HISTORY)


def _by_name(folders: Sequence[Path], row: Callable[[str, str, bool], HomeRow]) -> list[HomeRow]:
    import tomllib

    rows: dict[str, HomeRow] = {}
    for folder in reversed(folders):  # the painter's own come first: they take the place of others
        for path in _named(folder, ".toml"):
            try:
                found = tomllib.loads(path.read_text("utf-8-sig"))
                name = found["name"]
            except (OSError, ValueError, KeyError, RecursionError):
                continue
            if isinstance(name, str):
                rows[path.stem] = row(path.stem, name, found.get("demo") is True)
    return sorted(rows.values(), key=lambda each: each.title.casefold())


class _Profile(msgspec.Struct):
    name: str
    key: str = ""


class _Opened(msgspec.Struct):
    event: str
    parts: tuple[str, ...]
    profile: _Profile
    coating: str = ""
    coating_key: str = ""
    racks: tuple[Rack, ...] = ()
    rehearsal: bool = False


_opened = msgspec.json.Decoder(_Opened)


def _jobs(folder: Path) -> Iterator[HomeRow]:
    seen: set[bytes] = set()
    for path in sorted(_named(folder, ".jsonl"), reverse=True)[:MOST_LOGS]:
        try:
            with path.open("rb") as file:
                first = file.read(HEAD).partition(b"\n")[0]
                file.seek(max(0, os.fstat(file.fileno()).st_size - TAIL))
                last = file.read(TAIL)
            if first in seen:  # a copy, or the beginning, of another
                continue
            seen.add(first)
            opened = _opened.decode(first)
        except (OSError, ValueError):
            continue
        if b'"event":"job closed"' not in last:
            name, key = opened.profile.name, opened.profile.key
            if opened.coating_key:
                name, key = opened.coating, system_key(opened.coating_key)
            if opened.rehearsal:
                name, key = f"Rehearsal: {name}", rehearsal_key(key)
            yield job_row(path, name, key, opened.parts, opened.racks)


def _named(folder: Path, ending: str) -> list[Path]:
    try:
        names = sorted(os.listdir(folder))
    except OSError:
        return []
    return [folder / name for name in names if name.endswith(ending) and name[0] != "."]
