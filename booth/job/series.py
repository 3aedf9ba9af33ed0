"""What was measured job after job with one product: whether it comes out the same. Figures only.

One place where past jobs are gathered for it (``gathered``), and one where their figures are taken
(``figures_of``).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from pathlib import Path
from statistics import fmean

import msgspec

from booth.job import measured
from booth.job.past_logs import why_left_out
from booth.job.past_settings import SETTINGS, settings_of
from booth.job.products import products_of
from booth.log.fold import Coat, Job, NoJob, fold
from booth.log.parse import parse
from booth.log.store import log_bytes
from booth.moment import Basis, Moment, elapsed
from booth.trade.repeatability.individuals import ControlLimits, control_limits
from booth.units import Kind

#: So many jobs, the latest, are looked at: more do not fit side by side in a window, and how a shop
#: worked years ago says little of how it works now.
MOST_JOBS = 100


class Measure(msgspec.Struct, frozen=True):
    """What is measured once in a job. cup, gun, parts: what has to be one and the same for figures to
    be of one kind, since limits over a mixture say nothing; places: of seconds that stay seconds."""

    label: str
    kind: Kind
    places: int | None = None
    cup: str = ""
    gun: str = ""
    parts: tuple[str, ...] = ()


class Figure(msgspec.Struct, frozen=True):
    """One figure of one job [base unit]."""

    job: Path
    opened: Moment
    value: float


class Series(msgspec.Struct, frozen=True):
    """One figure over many jobs, the oldest first, and what they scatter by."""

    measure: Measure
    figures: tuple[Figure, ...]
    limits: ControlLimits

    @property
    def outside(self) -> tuple[Figure, ...]:
        return tuple(self.figures[place - 1] for place in self.limits.outside)

    def side(self, figure: Figure) -> str:
        """'above' or 'below' the limits, else empty."""
        if figure not in self.outside:
            return ""
        return "above" if figure.value > self.limits.mean else "below"


def gathered(paths: Iterable[Path], product: str, gun: str = "") -> Iterator[tuple[Path, Job]]:
    """Give what jobs came to with a product, in the order given. product: its key; gun: where named,
    only jobs with it. Rehearsals are no jobs; what the painter left out, and what cannot be read, counts
    for nothing."""
    for path in paths:
        try:
            job = fold(parse(log_bytes(path)).events)
        except (OSError, NoJob):
            continue
        if job.opened.rehearsal or why_left_out(job) is not None:
            continue
        for own in products_of(job):
            if own.profile.key == product and gun in ("", own.fitted.gun):
                yield path, own


def series_of(jobs: Iterable[tuple[Path, Job]]) -> tuple[Series, ...]:
    """Give every figure that was measured in jobs of one product, the oldest job first; what was measured
    before a coat first, then coat by coat."""
    found: dict[Measure, list[Figure]] = {}
    for path, job in sorted(jobs, key=lambda each: each[1].opened.at.wall):
        for measure, value in figures_of(job).items():
            found.setdefault(measure, []).append(Figure(path, job.opened.at, value))
    order = sorted(found, key=lambda each: (_order(each), each.label))
    return tuple(_series(each, found[each]) for each in order)


def _series(measure: Measure, figures: Sequence[Figure]) -> Series:
    return Series(measure, tuple(figures), control_limits([each.value for each in figures]))


#: Of the settings of a job those that are measured; the others are chosen.
MEASURED = ("efflux", "delivery", "inlet", "pace")
WET, WAITED, SPRAYED = "wet film", "wait before", "sprayed in"
_LABELS = [*(each.label for each in SETTINGS if each.name in MEASURED), WET, WAITED, SPRAYED]


def _order(measure: Measure) -> int:
    return next(at for at, label in enumerate(_LABELS) if measure.label.startswith(label))


def figures_of(job: Job) -> Mapping[Measure, float]:
    """What a job came to with one product, each once [base unit]: settings as its card tells them, and
    of every coat the wet film, the wait before it and the time it took, each the mean of the parts.

    A delivery is that of the coating itself. A film that was thicker than the gauge, and a time that
    no clock vouches for, are left out.
    """
    good, gun, parts = settings_of(job), job.fitted.gun, tuple(sorted(job.parts))
    found: dict[Measure, float] = {}
    for each in SETTINGS:
        if each.name not in MEASURED or each.name not in good.figures:
            continue
        if each.name == "delivery" and good.liquid != "paint":
            continue
        cup, by = (good.cup, "") if each.name == "efflux" else ("", gun)
        found[Measure(each.label, each.kind, each.places, cup, by)] = good.figures[each.name]
    numbers = sorted({coat.number for coats in job.coats.values() for coat in coats})
    for number in numbers:
        laid = [coat for coats in job.coats.values() for coat in coats if coat.number == number]
        for measure, values in (
            (Measure(f"{WET}, coat {number}", Kind.THICKNESS, gun=gun), _films(job, laid)),
            (Measure(f"{WAITED} coat {number}", Kind.TIME), _waits(job, laid)),
            (Measure(f"{SPRAYED}, coat {number}", Kind.TIME, gun=gun, parts=parts), _times(laid)),
        ):
            if values:
                found[measure] = fmean(values)
    return found


def _films(job: Job, laid: Iterable[Coat]) -> list[float]:
    read = (
        measured.statistics_of(measured.readings_of(job, coat.part, coat.number)) for coat in laid
    )
    means = [each.mean for each in read if each is not None]
    return [(each.low_um + each.high_um) / 2 for each in means if each.high_um < float("inf")]


def _waits(job: Job, laid: Iterable[Coat]) -> list[float]:
    found = []
    for coat in laid:
        before = next((e for e in job.coats_on(coat.part) if e.number == coat.number - 1), None)
        if before is not None and before.ended is not None:
            found += _sure_s(before.ended.at, coat.begun.at)
    return found


def _times(laid: Iterable[Coat]) -> list[float]:
    return [
        seconds
        for coat in laid
        if coat.ended is not None
        for seconds in _sure_s(coat.begun.at, coat.ended.at)
    ]


def _sure_s(start: Moment, end: Moment) -> list[float]:
    """The time between the two [s]; none where the clocks contradict each other."""
    passed = elapsed(start, end)
    return [] if passed.basis is Basis.DOUBTFUL else [passed.seconds]
