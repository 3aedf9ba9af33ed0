"""All jobs of a folder: the list, what is not closed, which one is meant. No file stops the others."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from msgspec.structs import replace

from booth.clock import local_date
from booth.log.copies import groups_by, told_apart
from booth.log.naming import longer_names
from booth.log.store import log_files
from booth.log.summary import JobSummary, summarise


def history(folder: Path) -> list[JobSummary]:
    """Give every job in `folder` once, the newest first; what cannot be read stands last."""
    paths = log_files(folder)
    longer = longer_names(paths)
    found = each_once([summarise(path, longer.get(path, "")) for path in paths])
    return sorted(found, key=lambda job: (1, 0.0) if job.opened is None else (0, -job.opened.wall))


def each_once(found: list[JobSummary]) -> list[JobSummary]:
    """Each job once: of files that hold one job those that count, with what is to be said of the others."""
    apart = told_apart(groups_by((each.identity, each.path) for each in found))
    return [
        replace(each, copies=said, differs=each.path in apart.differs)
        if (said := apart.words(each.path))
        else each
        for each in found
        if each.path not in apart.begins
    ]


def find_job(folder: Path, named: str) -> list[JobSummary]:
    """Give the jobs that `named` may mean, the newest first; never raises.

    It is a path; or a job's name or its file's; or the mark at the end; or how the name, the file's
    or the date begins; or a part that was sprayed; or a piece of a name or part. What is found in
    the first of these ways is the answer: one is clear, several are for the caller to tell.
    """
    if os.path.isfile(named):
        return [summarise(Path(named))]
    wanted = named.strip().casefold()
    jobs = history(folder) if wanted else []
    for fits in WAYS:
        found = [job for job in jobs if fits(job, wanted)]
        if found:
            return found
    return []


def _begins(job: JobSummary, wanted: str) -> bool:
    date = local_date(job.opened) if job.opened is not None else ""
    return any(each.casefold().startswith(wanted) for each in (job.name, job.path.name, date))


#: The ways to name a job, the plainest first.
WAYS: tuple[Callable[[JobSummary, str], bool], ...] = (
    lambda job, wanted: (
        wanted in (each.casefold() for each in (job.name, job.job, job.path.name, job.path.stem))
    ),
    lambda job, wanted: job.path.stem.casefold().rpartition("-")[2] == wanted,
    _begins,
    lambda job, wanted: wanted in (part.casefold() for part in job.parts),
    lambda job, wanted: any(wanted in each.casefold() for each in (job.path.stem, *job.parts)),
)
