"""What was chosen once and holds for the next job: grams or volumes, the tip on the gun. Pure reading.

Taken from the logs of the latest jobs, as the last good settings are; told where it is offered.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from booth.job.measured import last_told
from booth.job.mixture import by_weight
from booth.job.past_logs import past_logs
from booth.job.products import products_of
from booth.log.fold import Job

#: What was chosen longer ago is no habit any more (common practice, no source).
MOST_JOBS = 40


def weighed_last(folder: Path | None, without: str = "") -> bool | None:
    """Whether a scale was used in the latest job in which anything was mixed; None where none was.
    without: name of a job to leave out, the one at hand."""
    for job in _latest(folder, (b'"poured"',), without):
        mixed = [each for each in products_of(job) if each.pours]
        if mixed:
            return any(by_weight(each) for each in mixed)
    return None


def tip_last(folder: Path | None, gun: str, without: str = "") -> float | None:
    """The tip [mm] that was told last of a gun in the latest job with it; None where none was told."""
    for job in _latest(folder, (), without):
        with_gun = [each for each in products_of(job) if each.fitted.gun == gun]
        if with_gun:
            own = with_gun[-1]
            fitted = own.fitted.tip.value if own.fitted.tip is not None else None
            caught = last_told(own.catches, "tip")
            return fitted if caught is None else caught
    return None


def _latest(folder: Path | None, holding: tuple[bytes, ...], without: str) -> Iterator[Job]:
    """The latest jobs whose log holds these bytes, the newest first."""
    for log in islice(past_logs(folder, holding=holding), MOST_JOBS):
        if not (without and log.opened.job == without):
            yield from log.products()[-1:]
