"""All jobs of a folder: the list, what is not closed, what they teach. No file stops the others."""

from __future__ import annotations

from pathlib import Path

from booth.log.store import log_files
from booth.log.summary import JobSummary, summarise

__all__ = ["find_job", "history", "unfinished"]


def history(folder: Path) -> list[JobSummary]:
    """Give every job in `folder`, the newest first; what cannot be read stands last."""
    found = [summarise(path) for path in log_files(folder)]
    return sorted(found, key=_newest_first)


def unfinished(folder: Path) -> list[JobSummary]:
    """Give the jobs that are not closed, the newest first; what cannot be read stands last."""
    return [each for each in history(folder) if each.is_open or each.fault]


def find_job(folder: Path, named: str) -> list[Path]:
    """Give the logs that `named` may mean: a path, a file's name or the beginning of one, a job's.

    One is the answer; none and several are for the caller to say.
    """
    if named and Path(named).is_file():
        return [Path(named)]
    paths = log_files(folder)
    whole = [path for path in paths if named in (path.name, path.stem)]
    if whole or not named:
        return whole
    by_job = [each.path for each in map(summarise, paths) if each.job == named]
    ends = [path for path in paths if path.stem.endswith(f"-{named}")]
    return by_job or ends or [path for path in paths if path.name.startswith(named)]


def _newest_first(summary: JobSummary) -> tuple[bool, float]:
    unread = summary.opened is None
    return unread, 0.0 if summary.opened is None else -summary.opened.wall
