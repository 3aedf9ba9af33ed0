"""All jobs of a folder: the list, what is not closed, which one is meant. No file stops the others."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

from booth.clock import local_date
from booth.log.found_jobs import FoundJobs
from booth.log.summary import JobSummary, summarise


def history(folder: Path, kept: Path | None = None) -> list[JobSummary]:
    """Give every job in `folder` once, the newest first; what cannot be read stands last. kept: the file
    in which it is kept what a list says of many jobs, if anywhere."""
    found = FoundJobs(folder, kept)
    found.look(lambda _: False)
    return found.summaries()


def find_job(folder: Path, named: str, kept: Path | None = None) -> list[JobSummary]:
    """Give the jobs that `named` may mean, the newest first; never raises.

    It is a path; or a job's name or its file's; or the mark at the end; or how the name, the file's
    or the date begins; or a part that was sprayed; or a piece of a name or part. What is found in
    the first of these ways is the answer: one is clear, several are for the caller to tell.
    """
    if os.path.isfile(named):
        return [summarise(Path(named))]
    wanted = named.strip().casefold()
    jobs = history(folder, kept) if wanted else []
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
