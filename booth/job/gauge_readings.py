"""The gauge readings of a job, coat by coat. What they teach is in ``figures``. Pure."""

from __future__ import annotations

from contextlib import suppress

from booth.log.events import FilmRead
from booth.log.fold import Job, fold
from booth.trade.film.wet_gauge import (
    FilmInterval,
    FilmStatistics,
    film_between_teeth,
    film_statistics,
)
from booth.trade.result import BadInput


def film_of(read: FilmRead) -> FilmInterval:
    """Where one reading says the film lies [um]. Raises BadInput for teeth the wrong way round."""
    wetted = read.last_wetted.value
    return film_between_teeth(wetted if wetted > 0 else None, read.first_dry.value)


def coat_on(job: Job, part: str) -> int | None:
    """The coat that lies on `part` now, or is being sprayed; None before the first."""
    coats = job.coats_on(part)
    return coats[-1].number if coats else None


def readings_of(job: Job, part: str, coat: int | None) -> tuple[FilmRead, ...]:
    """The readings of one coat on one part that make sense, the latest last."""
    found = []
    for read in job.films:
        with suppress(BadInput):  # an odd line of a log edited by hand
            if (read.part, read.coat) == (part, coat) and film_of(read):
                found.append(read)
    return tuple(found)


def statistics_of(readings: tuple[FilmRead, ...]) -> FilmStatistics | None:
    """Their mean and spread as the teeth allow; None where there are none."""
    return film_statistics([film_of(read) for read in readings]) if readings else None


def as_of(job: Job, n: int) -> Job:
    """The job as it was when event `n` was kept, what was voided since left out."""
    return fold(event for event in job.events if event.n <= n and job.is_live(event.n))
