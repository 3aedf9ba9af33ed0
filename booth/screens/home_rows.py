"""The rows of the home screen and the words about each, made from what is on disk. No widget here."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import msgspec

from booth.job.steps import next_open
from booth.log.fold import Job, NoJob, fold
from booth.log.history import unfinished
from booth.log.store import read_log
from booth.moment import Moment
from booth.profile.model import Profile
from booth.units import System
from booth.words.profile_words import profile_lines
from booth.words.wait_words import faces

if TYPE_CHECKING:
    from booth.files.faults import Fault
    from booth.profile.library import Library

JOBS, PROFILES, REST = "Jobs not closed", "Coating profiles", "Shop"


class HomeRow(msgspec.Struct, frozen=True):
    """One row: kind 'job', 'profile', 'broken' or 'screen'; job: what the row's log adds up to."""

    id: str
    kind: str
    section: str
    title: str
    extra: str = ""
    mark: str = " "
    key: str = ""
    path: Path | None = None
    about: tuple[str, ...] = ()
    job: Job | None = None


def job_rows(folder: Path, now: Moment, when: Callable[[Moment], str]) -> tuple[HomeRow, ...]:
    """Jobs that are not closed, the newest first; a log that cannot be read is listed as that."""
    rows = []
    for summary in unfinished(folder):
        path = summary.path
        try:
            job = fold(read_log(path).events)
        except (NoJob, OSError) as fault:
            why = f"{path.name}: {fault}. The file is left as it is."
            rows.append(
                HomeRow(f"job:{path.name}", "broken", JOBS, path.name, "cannot be read", "!",
                        about=(why,))
            )  # fmt: skip
            continue
        parts = ", ".join(job.parts)
        rows.append(
            HomeRow(
                f"job:{path.name}", "job", JOBS, f"{job.profile.name}: {parts}",
                when(job.opened.at), "»", path=path, job=job,
            )
        )  # fmt: skip
    return tuple(rows)


def extra_at(row: HomeRow, now: Moment) -> str:
    """What stands behind the title: of a job its most urgent clock at `now`, the name last."""
    running = faces(row.job, now) if row.job is not None else ()
    if not running:
        return row.extra
    return f"{running[0].shown_word} {running[0].remaining} {running[0].title}"


def profile_rows(library: Library) -> tuple[HomeRow, ...]:
    """Profiles by name, then the files that could not be read, with their faults."""
    rows = [
        HomeRow(f"profile:{profile.key}", "profile", PROFILES, profile.name,
                "demo" if profile.demo else "", key=profile.key)
        for profile in sorted(library.profiles, key=lambda each: each.name.lower())
    ]  # fmt: skip
    for path, faults in library.broken.items():
        count = len(faults)
        rows.append(
            HomeRow(f"broken:{path}", "broken", PROFILES, Path(path).name,
                    f"{count} fault{'s' if count != 1 else ''}", "!",
                    about=tuple(str(fault) for fault in faults))
        )  # fmt: skip
    return tuple(rows)


def shop_rows(path: Path, faults: tuple[Fault, ...]) -> tuple[HomeRow, ...]:
    """The shop, and what is wrong with its file, if anything is."""
    about = (
        "Shop",
        "",
        "Guns, the cups you own with their correction, compressor, room. They are used everywhere.",
        "",
        "The file, TOML, also edited by hand:",
        str(path),
    )
    rows = (HomeRow("screen:shop", "screen", REST, "Shop", key="shop", about=about),)
    if not faults:
        return rows
    count = len(faults)
    broken = HomeRow(
        "broken:shop", "broken", REST, path.name, f"{count} fault{'s' if count != 1 else ''}", "!",
        about=tuple(str(fault) for fault in faults),
    )  # fmt: skip
    return (*rows, broken)


def shelf_rows(jobs_dir: Path, own_profiles_dir: Path) -> tuple[HomeRow, ...]:
    """What else there is, and where the files are."""
    about = (
        "Every job that was kept, the newest first: read, find, reopen.",
        "",
        "One file a job, in",
        str(jobs_dir),
        "",
        "Your own coating profiles go into",
        str(own_profiles_dir),
    )
    return (HomeRow("screen:history", "screen", REST, "Past jobs", key="history", about=about),)


def describe(
    row: HomeRow, profiles: Mapping[str, Profile], now: Moment, system: System
) -> tuple[str, ...]:
    """Give the words about a row."""
    if row.kind == "profile" and row.key in profiles:
        return profile_lines(profiles[row.key], system)
    if row.kind != "job" or row.job is None:
        return row.about
    job = row.job
    running = [
        f"{face.tone.shape} {face.title}: {face.what} {face.shown_word} {face.remaining}"
        for face in faces(job, now)
    ]
    return (
        job.profile.name,
        ", ".join(job.parts),
        "",
        *(running or ["No clock is running."]),
        "",
        f"Next step: {next_open(job).name}",
        f"{len(job.events)} entries kept.",
        "",
        "Enter takes the job up again.",
    )
