"""What the job has measured so far, each figure in one place, for every step to use. Pure."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import NamedTuple, ParamSpec, TypeVar

from booth.job.mixture import mean, now
from booth.log.events import CatchMade, EffluxTimed, Event, FilmRead, PassTimed
from booth.log.fold import Job, fold
from booth.profile.model import Range
from booth.trade.film.gun_speed import (
    mean_wet_film_um,
    speed_for_wet_film_mm_s,
    speed_of_pass_mm_s,
)
from booth.trade.film.transfer_efficiency import (
    EfficiencyBand,
    default_band,
    transfer_efficiency_from_film,
)
from booth.trade.film.wet_gauge import (
    FilmInterval,
    FilmStatistics,
    film_between_teeth,
    film_statistics,
)
from booth.trade.result import BadInput, Estimate, Outside, Value

P = ParamSpec("P")
T = TypeVar("T")


def known(compute: Callable[P, T], *given: P.args, **named: P.kwargs) -> T | None:
    """What `compute` gives; None where it cannot take what it is given: an odd line of a log, say."""
    try:
        return compute(*given, **named)
    except BadInput:
        return None


def efflux_runs(job: Job) -> tuple[EffluxTimed, ...]:
    """The runs that speak for the mix as it is now: of the cup used last, since it was mixed or
    thinner was added."""
    return now(job).alike


def mean_efflux_s(job: Job) -> float | None:
    """Mean efflux time of the mix as it is now [s], the cup's own correction applied."""
    return now(job).mean_s


def last_told(events: Iterable[Event], field: str) -> float | None:
    """What these entries told last of a quantity, where any of them did."""
    told = [getattr(event, field) for event in events]
    return next((each.value for each in reversed(told) if each is not None), None)


def catches(job: Job, liquid: str) -> tuple[CatchMade, ...]:
    """The catches of 'water' or 'paint' at the needle setting of the last one of them."""
    found = [each for each in job.catches if each.liquid == liquid]
    turns = last_told(found[-1:], "turns")
    return tuple(each for each in found if last_told([each], "turns") == turns)


def mean_delivery_ml_min(job: Job, liquid: str = "paint") -> float | None:
    """Mean delivery at the last needle setting [ml/min]."""
    return mean([each.delivery_ml_min for each in catches(job, liquid)])


def delivery_ml_min(job: Job) -> tuple[float, str] | None:
    """The delivery to reckon with and where it is from: paint caught, else water, else the profile.

    In a rehearsal the pace of the real job is practised: water, which runs faster, says nothing of it.
    """
    for liquid in () if job.opened.rehearsal else ("paint", "water"):
        mean = mean_delivery_ml_min(job, liquid)
        if mean is not None:
            return mean, f"caught with {liquid}"
    target = job.profile.gun.delivery_ml_min
    return (target.middle, "from the profile") if target is not None else None


def inlet_kpa(job: Job) -> float | None:
    """The inlet pressure read last [kPa]."""
    return job.airs[-1].inlet.value if job.airs else None


def fan_mm(job: Job) -> tuple[float, str] | None:
    """The fan width to reckon with [mm]: measured on paper, else the profile's."""
    width = last_told((*job.patterns, *job.fans), "width")
    if width is not None:
        return width, "measured"
    span = job.profile.gun.fan_mm
    return (span.middle, "from the profile") if span is not None else None


def overlap_fraction(job: Job) -> tuple[float, str]:
    """The overlap to reckon with [0..1): as chosen, else the profile's, else a half."""
    chosen, asked = last_told(job.patterns, "overlap"), job.profile.gun.overlap_percent
    if chosen is not None:
        return chosen / 100, "as chosen"
    return (0.5, "common practice") if asked is None else (asked.middle / 100, "from the profile")


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
    own = (read for read in job.films if (read.part, read.coat) == (part, coat))
    return tuple(read for read in own if known(film_of, read) is not None)


def statistics_of(readings: tuple[FilmRead, ...]) -> FilmStatistics | None:
    """Their mean and spread as the teeth allow; None where there are none."""
    return film_statistics([film_of(read) for read in readings]) if readings else None


def as_of(job: Job, n: int) -> Job:
    """The job as it was when event `n` was kept, what was voided since left out."""
    return fold(event for event in job.events if event.n <= n and job.is_live(event.n))


#: Timed passes that differ by less than this share from the last one are the same pace.
SAME_PACE = 0.1


def steady_passes(job: Job) -> tuple[PassTimed, ...]:
    """The last timed pass, and those right before it that agree with it within a tenth."""
    found: list[PassTimed] = []
    last: float | None = None
    for each in reversed(job.passes):
        if each.seconds <= 0 or each.length.value <= 0:
            continue
        speed = each.length.value / each.seconds
        last = speed if last is None else last
        if abs(speed - last) > SAME_PACE * last:
            break
        found.append(each)
    return tuple(reversed(found))


def speed_mm_s(job: Job) -> float | None:
    """The speed of the gun as timed last [mm/s]."""
    passes = steady_passes(job)
    if not passes:
        return None
    length_mm = sum(each.length.value for each in passes) * 1000
    return speed_of_pass_mm_s(length_mm, sum(each.seconds for each in passes))


def implied_efficiency(job: Job, part: str, coat: int | None) -> Estimate | Outside:
    """The transfer efficiency [1] that the readings of one coat imply, or what is missing for it.

    Delivery, fan, overlap and speed are those that were known when the coat was read.
    """
    readings = readings_of(job, part, coat)
    film = statistics_of(readings)
    if film is None:
        return _missing("No film of this coat was read.", "Read it with a notch gauge.")
    then = as_of(job, readings[-1].n)
    delivery, fan, speed = mean_delivery_ml_min(then), fan_mm(then), speed_mm_s(then)
    if delivery is None:
        not_caught = "The delivery of the coating itself was not caught."
        return _missing(not_caught, "Catch the coating, not water.")
    if fan is None or fan[1] != "measured":
        return _missing("The fan was not measured.", "Measure it on paper.")
    if speed is None:
        return _missing("No pass was timed.", "Time a pass at the step Pace.")
    overlap = overlap_fraction(then)[0]
    try:
        return transfer_efficiency_from_film(film.mean, delivery, fan[0], overlap, speed)
    except BadInput as fault:
        return _missing(fault.sentence, "Check delivery, fan and the timed pass.")


def _missing(reason: str, advice: str) -> Outside:
    return Outside(reason, advice, "wet film read x gun speed x pitch / delivery caught")


def parts_are_large(job: Job) -> bool:
    """Whether the parts are large and flat, as the step Amount was told; large where it was not."""
    return not job.amounts or job.amounts[-1].lands != "small"


def amount_efficiency(job: Job, large_flat_part: bool) -> EfficiencyBand:
    """The transfer efficiency to reckon amounts of whole parts with.

    The gauge on a panel knows nothing of what flies past the edges of small and open parts: for
    those it is the usual band of the gun.
    """
    if large_flat_part:
        return transfer_efficiency(job, large_flat_part)
    return default_band(is_hvlp(job), large_flat_part)


def transfer_efficiency(job: Job, large_flat_part: bool | None = None) -> EfficiencyBand:
    """The transfer efficiency to reckon the pace with: the latest coat's by the gauge, else a usual
    band, by default for the kind of parts that the step Amount was told.

    Its `source` says where it is from. `large_flat_part` matters to the usual band only.
    """
    coats = dict.fromkeys((read.part, read.coat) for read in reversed(job.films))
    for part, number in coats:
        implied = implied_efficiency(job, part, number)
        if isinstance(implied, Estimate) and implied.low > 0:
            coat = f"coat {number} on {part}" if number else part
            source = f"from the gauge, {coat}"
            return EfficiencyBand(implied.low, implied.likely, implied.high, source)
    large = parts_are_large(job) if large_flat_part is None else large_flat_part
    return default_band(is_hvlp(job), large)


def is_hvlp(job: Job) -> bool:
    """Whether the gun of this job is an HVLP one, by the shop file; else whether the product asks for
    one."""
    guns = job.opened.shop.get("guns", ())
    own = [gun for gun in guns if isinstance(gun, dict) and gun.get("name") == job.fitted.gun]
    return own[0].get("hvlp") is True if own else job.profile.gun.hvlp


def thinner_fraction(job: Job) -> float | None:
    """Thinner in the mix by volume of the mixed coating [1]; None where amounts are not known."""
    stage = now(job)
    return stage.fraction if stage.known else None


def compare(number: float, span: Range | None) -> str:
    """'below', 'in' or 'above' a range; '' where there is none."""
    if span is None:
        return ""
    if span.low is not None and number < span.low:
        return "below"
    if span.high is not None and number > span.high:
        return "above"
    return "in"


#: What a hand can hold over a panel [mm/s] (common practice, no source).
HAND_MM_S = (200.0, 800.0)


class Basis(NamedTuple):
    """What the pace of the gun rests on: delivery [ml/min], fan [mm], overlap [1], each with where it is from; what lands [1]."""

    delivery_ml_min: float
    delivery_from: str
    fan_mm: float
    fan_from: str
    overlap: float
    overlap_from: str
    lands: EfficiencyBand

    def speed_for(self, wet_um: float) -> Estimate | None:
        """The speed [mm/s] that lays this wet film; None where a figure makes no sense."""
        fan = self.fan_mm, self.overlap, self.lands
        return _estimate(known(speed_for_wet_film_mm_s, wet_um, self.delivery_ml_min, *fan))

    def film_at(self, speed_mm_s: float) -> Estimate | None:
        """The mean wet film [um] at this speed; None where a figure makes no sense."""
        fan = self.fan_mm, self.overlap
        return _estimate(
            known(mean_wet_film_um, self.delivery_ml_min, *fan, speed_mm_s, self.lands)
        )


def _estimate(found: Value | Estimate | None) -> Estimate | None:
    """What lands is always a band, so what follows from it is always an estimate."""
    assert not isinstance(found, Value)
    return found


def basis_of(
    job: Job, delivery: float | None = None, fan: float | None = None
) -> tuple[Basis | None, tuple[str, ...]]:
    """Give what the pace rests on, or what is missing; `delivery`, `fan`: where typed instead."""
    poured = (delivery, "as typed") if delivery is not None else delivery_ml_min(job)
    wide = (fan, "as typed") if fan is not None else fan_mm(job)
    missing = []
    if poured is None or poured[0] <= 0:
        rehearsed = job.opened.rehearsal
        missing.append("the coating's delivery" if rehearsed else "the delivery (step Catch)")
    if wide is None or wide[0] <= 0:
        missing.append("the width of the fan (step Fan)")
    if missing or poured is None or wide is None:
        return None, tuple(missing)
    return Basis(*poured, *wide, *overlap_fraction(job), transfer_efficiency(job)), ()
