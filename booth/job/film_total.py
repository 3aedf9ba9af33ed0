"""The dry film on a part after its coats, as far as the gauge told it. Pure."""

from __future__ import annotations

import msgspec

from booth.job.measured import known, readings_of, statistics_of
from booth.job.mixture import Stage, stages
from booth.job.recipe import thinner_of
from booth.log.fold import Job
from booth.trade.film.film_thickness import WetCoat, film_in_all
from booth.trade.film.wet_gauge import FilmInterval


class FilmTotal(msgspec.Struct, frozen=True):
    """The film of one product on one part.

    read, unread: the numbers of the coats with a reading, and of those that have ended without one;
    film: what those that were read dry to [um], None where the profile gives no solids; thinned:
    whether the thinner in each of them is known. Where it is not, none is counted, and the film is
    at most this.
    """

    read: tuple[int, ...]
    unread: tuple[int, ...] = ()
    film: FilmInterval | None = None
    thinned: bool = True


def film_total(job: Job, part: str) -> FilmTotal | None:
    """Give what lies on `part` of the product that the job has come to; None before its first coat."""
    laid = job.coats_on(part)
    wet = {each.number: statistics_of(readings_of(job, part, each.number)) for each in laid}
    read = [each for each in laid if wet[each.number] is not None]
    unread = tuple(each.number for each in laid if each.ended and each not in read)
    if not read and not unread:
        return None
    # What was in the gun when the coat was begun; what was added since went into the next one.
    mixes = [stages(job, until=each.begun.n)[-1] for each in read]
    total = FilmTotal(
        tuple(each.number for each in read),
        unread,
        thinned=all(_is_known(job, mix) for mix in mixes),
    )
    solids = job.profile.film.volume_solids_percent
    if solids is None or not read:
        return total
    coats = [
        WetCoat(found.mean.low_um, found.mean.high_um, mix.fraction if mix.known else 0.0)
        for each, mix in zip(read, mixes, strict=True)
        if (found := wet[each.number]) is not None
    ]
    ends = (solids.low or solids.middle, solids.high or solids.middle)
    film = known(film_in_all, coats, *(end / 100 for end in ends))
    return msgspec.structs.replace(total, film=film)


def _is_known(job: Job, mix: Stage) -> bool:
    """Whether the thinner in it is: poured by volume, or none is asked for and none was added."""
    return mix.known or (thinner_of(job.profile) is None and not job.thinner)
