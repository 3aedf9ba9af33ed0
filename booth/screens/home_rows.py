"""The lines of the first screen, and the words about each, from what was read. No widget here."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

import msgspec

from booth.files.faults import Fault
from booth.job.steps import next_open
from booth.log.fold import Job
from booth.log.open_jobs import OpenJob
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.profile.library import Library
from booth.profile.model import Profile
from booth.units import System
from booth.words.pictures import Page, PickLine
from booth.words.profile_words import profile_lines
from booth.words.wait_words import faces

JOBS, PROFILES, REST = "Jobs not closed", "Coating profiles", "Shop"


class HomeRow(msgspec.Struct, frozen=True):
    """One line to pick: what it is for ('job', 'profile', 'faults', 'shop', 'history'), and what it
    is made from. id: tells it again after the disk was read anew."""

    kind: str
    id: str
    section: str
    title: str
    behind: str = ""
    mark: str = ""
    path: Path | None = None
    job: Job | None = None
    profile: Profile | None = None
    about: tuple[str, ...] = ()


def job_rows(
    jobs: Sequence[OpenJob], unread: Sequence[JobSummary], when: Callable[[Moment], str]
) -> tuple[HomeRow, ...]:
    """Jobs that are not closed, then logs that hold none that can be opened."""
    rows = [
        HomeRow(
            "job",
            f"job:{each.path.name}",
            JOBS,
            f"{each.job.profile.name}: {', '.join(each.job.parts)}",
            when(each.job.opened.at),
            "»",
            path=each.path,
            job=each.job,
            about=(each.name,),
        )
        for each in jobs
    ]
    rows += [
        HomeRow(
            "faults",
            f"job:{each.path.name}",
            JOBS,
            each.path.name,
            "cannot be opened",
            "!",
            about=(each.fault, f"The file is left as it is: {each.path}"),
        )
        for each in unread
    ]
    return tuple(rows)


def profile_rows(library: Library) -> tuple[HomeRow, ...]:
    """Profiles by name, then the files that could not be read, with their faults."""
    rows = [
        HomeRow(
            "profile",
            f"profile:{profile.key}",
            PROFILES,
            profile.name,
            "demo" if profile.demo else "",
            profile=profile,
        )
        for profile in sorted(library.profiles, key=lambda each: each.name.lower())
    ]
    rows += [
        _faults(f"faults:{path}", PROFILES, Path(path).name, faults)
        for path, faults in library.broken.items()
    ]
    return tuple(rows)


def _faults(id: str, section: str, title: str, faults: Sequence[Fault]) -> HomeRow:
    count = f"{len(faults)} fault{'s' if len(faults) != 1 else ''}"
    told = tuple(str(fault) for fault in faults)
    return HomeRow("faults", id, section, title, count, "!", about=told)


def shop_rows(path: Path, faults: Sequence[Fault]) -> tuple[HomeRow, ...]:
    """The shop, and what is wrong with its file, if anything is."""
    about = (
        "Shop",
        "",
        "Guns, the cups you own with their correction, compressor, room. They are used everywhere.",
        "",
        "The file, TOML, also edited by hand:",
        str(path),
    )
    row = HomeRow("shop", "shop", REST, "Shop", about=about)
    return (row, _faults("faults:shop", REST, path.name, faults)) if faults else (row,)


def history_row(jobs_dir: Path, own_profiles_dir: Path) -> HomeRow:
    """What was sprayed before, and where the files are."""
    about = (
        "Every job that was kept, the newest first: read, find, reopen.",
        "",
        "One file a job, in",
        str(jobs_dir),
        "",
        "Your own coating profiles go into",
        str(own_profiles_dir),
    )
    return HomeRow("history", "history", REST, "Past jobs", about=about)


def lines(rows: Sequence[HomeRow], now: Moment) -> tuple[tuple[PickLine, ...], tuple[int, ...]]:
    """The list with its headings, and for each row the line it stands on."""
    found: list[PickLine] = []
    at: list[int] = []
    section = ""
    for row in rows:
        if row.section != section:
            found += [PickLine("", head=True)] if section else []
            found.append(PickLine(row.section, head=True))
            section = row.section
        at.append(len(found))
        behind = clock_of(row.job, now) if row.job is not None else ""
        found.append(PickLine(row.title, behind or row.behind, must=True, mark=row.mark))
    return tuple(found), tuple(at)


def clock_of(job: Job, now: Moment) -> str:
    """The most urgent clock of a job; empty where none runs."""
    running = faces(job, now)
    if not running:
        return ""
    return f"{running[0].shown_word} {running[0].remaining} {running[0].title}"


def describe(row: HomeRow, now: Moment, system: System) -> Page:
    """The words about a row."""
    if row.profile is not None:
        told: Sequence[str] = profile_lines(row.profile, system)
    elif row.job is not None:
        told = _job_words(row.job, row.about, now)
    else:
        told = row.about
    return Page(tuple(("text", line) for line in told))


def _job_words(job: Job, name: Sequence[str], now: Moment) -> tuple[str, ...]:
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
        f"{len(job.events)} entries kept, in the job {', '.join(name)}.",
        "",
        "Enter takes the job up again.",
    )
