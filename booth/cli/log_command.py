"""``booth log``: the list of jobs, or one job as text."""

from __future__ import annotations

from pathlib import Path
from typing import TextIO

from booth.clock import local_date, local_hhmm
from booth.files.safe_text import visible
from booth.log.events import JobOpened
from booth.log.history import find_job, history
from booth.log.store import read_log
from booth.units import System
from booth.words.report import jobs_table, report


def list_jobs(folder: Path, out: TextIO) -> int:
    """Print the jobs in `folder`, the newest first."""
    found = history(folder)
    if not found:
        print(f"No jobs yet in {visible(str(folder))}.", file=out)
        return 0
    print(jobs_table(found, local_date), file=out)
    return 0


def show_job(named: str, folder: Path, system: System | None, out: TextIO, err: TextIO) -> int:
    """Print one job; exit code 2 where the name means none or several."""
    paths = find_job(folder, named)
    if len(paths) != 1:
        said = "no job" if not paths else f"{len(paths)} jobs"
        print(
            f"booth log: {said} by the name {visible(named)!r}; 'booth log' lists them.", file=err
        )
        for path in paths:
            print(f"  {visible(path.stem)}", file=err)
        return 2
    try:
        content = read_log(paths[0])
    except OSError as fault:
        print(f"booth log: {visible(str(paths[0]))}: {fault.strerror}.", file=err)
        return 2
    opened = next((each for each in content.events if isinstance(each, JobOpened)), None)
    shown = system or System(opened.system if opened and opened.system in set(System) else "us")
    print(report(content.events, shown, local_hhmm, local_date, content.said), file=out)
    return 0
