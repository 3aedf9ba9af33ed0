"""What is true of each line of the first screen, from what was read: jobs, profiles, faults, words."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from msgspec.structs import replace

from booth.clock import local_day_hhmm
from booth.files.faults import Fault, counted
from booth.files.safe_text import visible
from booth.files.slug import system_key
from booth.job.after_close import CLOSED_LATELY_S, running_on
from booth.job.steps import next_open
from booth.job.wait import State
from booth.log.fold import Job
from booth.log.open_jobs import OpenJob, OpenJobs
from booth.log.rack import in_a_line
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.profile.library import Library
from booth.profile.system import CoatingSystem
from booth.screens.home_list import (
    HISTORY,
    JOBS,
    LEARNT,
    PROFILES,
    REST,
    SHOP,
    STILL,
    SYSTEMS,
    HomeRow,
    job_row,
    profile_row,
    system_row,
)
from booth.units import System
from booth.words.shown import PickLine
from booth.words.system_words import lines_of
from booth.words.wait_words import faces, state_word, still_words, tone_of, what_words


def job_rows(
    jobs: Sequence[OpenJob], unread: Sequence[JobSummary], when: Callable[[Moment], str]
) -> tuple[HomeRow, ...]:
    """Jobs that are not closed, then logs that hold none that can be opened."""
    rows = []
    for each in jobs:
        job = each.job
        row = job_row(each.path, job.opened.title, job.opened.begun_from, *job.present)
        rows.append(replace(row, behind=when(job.opened.at), job=job, about=(each.name,)))
    for log in unread:
        id, name = f"job:{log.path.name}", log.path.name
        about = (log.fault, f"The file is left as it is: {log.path}")
        rows.append(HomeRow("faults", id, JOBS, name, "cannot be opened", "!", about=about))
    return tuple(rows)


def still_rows(jobs: OpenJobs, now: Moment) -> tuple[HomeRow, ...]:
    """Read the jobs that were closed lately: those in which something runs on."""
    after_s = now.wall - CLOSED_LATELY_S
    jobs.found.read_closed(after_s, lambda job: bool(running_on(job, now)))
    return tuple(
        HomeRow(
            kind="still",
            id=f"still:{each.path.name}",
            section=STILL,
            title=each.job.opened.title,
            path=each.path,
            job=each.job,
            about=(each.name,),
        )
        for each in jobs.jobs(closed=True)
    )


def profile_rows(library: Library) -> tuple[HomeRow, ...]:
    """Profiles by name, then the files that could not be read, with their faults."""
    rows = [
        profile_row(profile.key, profile.name, profile.demo, profile)
        for profile in library.profiles
    ]
    rows += [
        _faults(f"faults:{path}", PROFILES, Path(path).name, faults, Path(path).stem)
        for path, faults in library.broken.items()
    ]
    return tuple(rows)


def system_rows(systems: Mapping[Path, CoatingSystem | tuple[Fault, ...]]) -> tuple[HomeRow, ...]:
    """Coating systems by name, then the files that could not be read, with their faults."""
    read = [each for each in systems.values() if isinstance(each, CoatingSystem)]
    rows = [
        system_row(each.key, each.name, each.demo, each)
        for each in sorted(read, key=lambda each: each.name.casefold())
    ]
    rows += [
        _faults(f"faults:{path}", SYSTEMS, path.name, each, system_key(path.stem))
        for path, each in systems.items()
        if not isinstance(each, CoatingSystem)
    ]
    return tuple(rows)


def _faults(id: str, section: str, title: str, faults: Sequence[Fault], key: str = "") -> HomeRow:
    count = counted(len(faults), "fault")
    told = tuple(str(fault) for fault in faults)
    return HomeRow("faults", id, section, title, count, "!", key, about=told)


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
    row = replace(SHOP, about=about)
    return (row, _faults("faults:shop", REST, path.name, faults)) if faults else (row,)


#: About what past jobs taught.
TAUGHT = (
    "From your own jobs: how long waits really took, what the guns deliver by their turns, what of it "
    "lands, how much thinner each product takes, how fast the compressor fills.",
    "",
    "Each with its band and the number of observations, beside what the sheet says, never in its "
    "place.",
)


def past_rows(jobs_dir: Path, own_profiles_dir: Path) -> tuple[HomeRow, ...]:
    """What was learnt from what was sprayed before; that itself, and where the files are."""
    about = (
        "Every job that was kept, the newest first: read, find, reopen.",
        "",
        "One file a job, in",
        str(jobs_dir),
        "",
        "Your own coating profiles go into",
        str(own_profiles_dir),
        "and coating systems, which list several of them, into its folder 'systems'.",
    )
    return replace(LEARNT, about=TAUGHT), replace(HISTORY, about=about)


def clock_of(job: Job, now: Moment) -> str:
    """The most urgent clock of a job; empty where none runs."""
    running = faces(job, now)
    if not running:
        return ""
    return f"{running[0].shown_word} {running[0].remaining} {running[0].title}"


def still_line(row: HomeRow, now: Moment) -> PickLine:
    """The clock of a closed job that changes next: what, of which part, when. Where the list is narrow a
    long part is cut, not what it is about."""
    found = running_on(row.job, now) if row.job is not None else ()
    if not found:
        return PickLine(row.title)
    first = found[0]
    unknown = f" {state_word(first).lower()}" if first.state is State.UNKNOWN else ""
    title = f"{what_words(first)}{unknown}: {visible(first.wait.part)}"
    behind = still_words(first, now, local_day_hhmm)
    return PickLine(title, behind, must=True, mark=tone_of(first).shape)


def _still_words(job: Job, name: Sequence[str], now: Moment) -> tuple[str, ...]:
    running = [
        f"{tone_of(each).shape} {each.wait.part}: {what_words(each)} {state_word(each)} "
        f"{still_words(each, now, local_day_hhmm)}"
        for each in running_on(job, now)
    ]
    closed = [f"Closed {local_day_hhmm(job.closed.at, now)}."] if job.closed is not None else []
    return (
        job.opened.title,
        in_a_line(*job.present),
        "",
        *(running or ["Nothing runs any more."]),
        "",
        *closed,
        f"What lies on the parts goes on, in the job {', '.join(name)}.",
        "",
        "Enter reads what was kept; the data sheet decides.",
    )


def describe(row: HomeRow, now: Moment, system: System) -> tuple[str, ...]:
    """The words about a row."""
    if row.kind == "still" and row.job is not None:
        return _still_words(row.job, row.about, now)
    if row.profile is not None:
        return lines_of(row.profile, system)
    return _job_words(row.job, row.about, now) if row.job is not None else row.about


def _job_words(job: Job, name: Sequence[str], now: Moment) -> tuple[str, ...]:
    running = [
        f"{face.tone.shape} {face.title}: {face.what} {face.shown_word} {face.remaining}"
        for face in faces(job, now)
    ]
    return (
        job.opened.title,
        *([job.opened.present(job.product)] if job.opened.later else []),
        in_a_line(*job.present),
        "",
        *(running or ["No clock is running."]),
        "",
        f"Next step: {next_open(job).name}",
        f"{counted(len(job.events), 'entry', 'entries')} kept, in the job {', '.join(name)}.",
        "",
        "Enter opens the job again.",
    )
