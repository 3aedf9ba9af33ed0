"""``booth log``: the list of jobs, or one job as text."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path
from typing import TextIO

from booth.card.report import report
from booth.clock import local_date, local_hhmm
from booth.files.faults import quoted
from booth.files.safe_text import visible
from booth.log.events import JobOpened
from booth.log.history import find_job, history
from booth.log.parse import LogContent
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.units import System
from booth.words.report import jobs_table


def list_jobs(folder: Path, out: TextIO, kept: Path | None = None) -> int:
    """Print the jobs in `folder`, the newest first, and where their files are. kept: see ``history``.

    Raises OSError where the folder cannot be listed.
    """
    found = history(folder, kept)
    if not found:
        with contextlib.suppress(FileNotFoundError):
            os.listdir(folder)  # raises where there may well be jobs, but none can be seen
        print(f"No jobs yet in {visible(str(folder))}.", file=out)
        return 0
    print(jobs_table(found, local_date), file=out)
    print(f"The files, one a job, are in {visible(str(folder))}.", file=out)
    return 0


def show_job(
    named: str,
    folder: Path,
    system: System | None,
    out: TextIO,
    err: TextIO,
    kept: Path | None = None,
) -> int:
    """Print one job; exit code 2 where the name means none or several, which are then listed."""
    job = one_job(named, folder, err, "log", kept)
    if job is None:
        return 2
    try:
        content = read_log(job.path)
    except OSError as fault:
        print(f"booth log: {visible(str(job.path))}: {fault.strerror}.", file=err)
        return 2
    shown = shown_in(content, system)
    said = (*job.copies, *content.said)
    print(report(content.events, shown, local_hhmm, local_date, said, job.name), file=out)
    return 0


def one_job(
    named: str, folder: Path, err: TextIO, command: str, kept: Path | None = None
) -> JobSummary | None:
    """The job that a name means; None where it means none or several, which is said."""
    jobs = find_job(folder, named, kept)
    if len(jobs) == 1:
        return jobs[0]
    said = f"{len(jobs)} jobs" if jobs else "no job"
    print(f"booth {command}: {said} by the name {quoted(named)}; 'booth log' lists all.", file=err)
    if jobs:
        print(f"\n{jobs_table(jobs, local_date)}", end="", file=err)
    return None


def shown_in(content: LogContent, asked: System | None) -> System:
    """The units asked for, else those in which the job was worked."""
    opened = next((each for each in content.events if isinstance(each, JobOpened)), None)
    known = opened is not None and opened.system in set(System)
    return asked or System(opened.system if opened is not None and known else "us")
