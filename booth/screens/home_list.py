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

from booth.words.shown import PickLine

if TYPE_CHECKING:
    from booth.log.fold import Job
    from booth.profile.model import Profile

JOBS, PROFILES, REST = "Jobs not closed", "Coating profiles", "Shop"
#: At the glance so many of the newest logs are opened, and so much of either end is read [bytes].
MOST_LOGS, HEAD, TAIL = 40, 65536, 4096


class HomeRow(msgspec.Struct, frozen=True):
    """One line to pick: what it is for ('job', 'profile', 'faults', 'shop', 'history'), and what it
    is made from. id: tells it again after the disk was read anew; key: of its coating profile."""

    kind: str
    id: str
    section: str
    title: str
    behind: str = ""
    mark: str = ""
    key: str = ""
    path: Path | None = None
    job: Job | None = None
    profile: Profile | None = None
    about: tuple[str, ...] = ()


class Listed(msgspec.Struct, frozen=True):
    """The rows in their order, each section under its heading."""

    rows: tuple[HomeRow, ...] = ()

    def lines(self, behind: Callable[[HomeRow], str]) -> tuple[PickLine, ...]:
        """What is to be seen. behind: gives what stands behind a row at this moment."""
        return tuple(
            PickLine(row.title, behind(row), must=True, mark=row.mark)
            if isinstance(row, HomeRow)
            else PickLine(row, head=True)
            for row in self._stacked
        )

    @property
    def _stacked(self) -> tuple[HomeRow | str, ...]:
        """Rows and headings, an empty line between two sections."""
        found: list[HomeRow | str] = []
        section = ""
        for row in self.rows:
            if row.section != section:
                found += ["", row.section] if section else [row.section]
                section = row.section
            found.append(row)
        return tuple(found)

    def row(self, line: int) -> HomeRow | None:
        """The row on a line; None where a heading stands there."""
        stacked = self._stacked
        row = stacked[line] if 0 <= line < len(stacked) else None
        return row if isinstance(row, HomeRow) else None

    def line(self, id: str) -> int:
        """The line of a row; of the first row where that one is not there."""
        every = [row.id if isinstance(row, HomeRow) else "" for row in self._stacked]
        first = next((at for at, each in enumerate(every) if each), 0)
        return every.index(id) if id and id in every else first

    def id_of(self, profile_key: str) -> str:
        """The first open job of a coating profile, else that profile itself or its faults."""
        return next((row.id for row in self.rows if row.key and row.key == profile_key), "")


def job_row(path: Path, name: str, parts: Sequence[str], **more: object) -> HomeRow:
    """The row of a job that is not closed."""
    title = f"{name}: {', '.join(parts)}"
    return HomeRow("job", f"job:{path.name}", JOBS, title, mark="»", path=path, **more)  # type: ignore[arg-type]


def profile_row(key: str, name: str, demo: bool, **more: object) -> HomeRow:
    """The row of a coating profile."""
    behind = "demo" if demo else ""
    return HomeRow("profile", f"profile:{key}", PROFILES, name, behind, key=key, **more)  # type: ignore[arg-type]


SHOP = HomeRow("shop", "shop", REST, "Shop")
HISTORY = HomeRow("history", "history", REST, "Past jobs")


# -- a first glance ------------------------------------------------------------------------------


def glance(jobs_dir: Path, profiles_dirs: Sequence[Path]) -> tuple[HomeRow, ...]:
    """Give the rows as far as names tell them. Never raises."""
    profiles = {row.key: row for row in _profiles(profiles_dirs)}
    by_name = sorted(profiles.values(), key=lambda row: row.title.casefold())
    return (*_jobs(jobs_dir), *by_name, SHOP, HISTORY)


def _profiles(folders: Sequence[Path]) -> Iterator[HomeRow]:
    import tomllib

    for folder in reversed(folders):  # the painter's own come first: they take the place of others
        for path in _named(folder, ".toml"):
            try:
                found = tomllib.loads(path.read_text("utf-8-sig"))
                name = found["name"]
            except (OSError, ValueError, KeyError, RecursionError):
                continue
            if isinstance(name, str):
                yield profile_row(path.stem, name, found.get("demo") is True)


class _Profile(msgspec.Struct):
    name: str
    key: str = ""


class _Opened(msgspec.Struct):
    event: str
    parts: tuple[str, ...]
    profile: _Profile


_opened = msgspec.json.Decoder(_Opened)


def _jobs(folder: Path) -> Iterator[HomeRow]:
    for path in sorted(_named(folder, ".jsonl"), reverse=True)[:MOST_LOGS]:
        try:
            with path.open("rb") as file:
                first = file.read(HEAD).partition(b"\n")[0]
                file.seek(max(0, os.fstat(file.fileno()).st_size - TAIL))
                last = file.read(TAIL)
            opened = _opened.decode(first)
        except (OSError, ValueError):
            continue
        if b'"event":"job closed"' not in last:
            yield job_row(path, opened.profile.name, opened.parts, key=opened.profile.key)


def _named(folder: Path, ending: str) -> list[Path]:
    try:
        names = sorted(os.listdir(folder))
    except OSError:
        return []
    return [folder / name for name in names if name.endswith(ending) and name[0] != "."]
