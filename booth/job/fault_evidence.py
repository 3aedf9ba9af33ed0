"""What a job measured, made ready to be held against a fault that was seen. Pure.

A film shows what was set when it was laid: figures are taken as they stood when the last coat on the
part began, and only where there was none then, as they stand now. What was not measured stays None:
it speaks neither for nor against a cause.
"""

from __future__ import annotations

from typing import Any, NamedTuple

from booth.job import lasting, measured
from booth.job.coat_plan import coats_wanted, wet_wanted
from booth.job.measured import as_of, known, readings_of, statistics_of
from booth.job.mix_choice import in_use, mixed_with
from booth.job.mixture import now, timed
from booth.job.readings import LATELY_S
from booth.job.recipe import thinner_of
from booth.job.together import poured_together
from booth.job.waits import between_coats
from booth.log.fold import Coat, Job
from booth.moment import Basis, elapsed
from booth.profile.model import Profile, Range
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.efflux_time import equivalent_efflux
from booth.trade.faults.evidence import Evidence
from booth.trade.film.gun_speed import speed_for_wet_film_mm_s
from booth.trade.pattern.fan_profile import profile_from_zones
from booth.trade.pattern.overlap import evenness
from booth.trade.result import Value
from booth.trade.weather.humid_air import dew_margin_c

#: Variation of the film across the passes from which a pattern counts as uneven: that of a parabola
#: half over half, an ordinary fan laid as usual (where to draw the line is common practice, no source).
UNEVEN_FROM = 0.1118
MM_PER_M = 1000.0

Given = dict[str, Any]


def evidence_of(job: Job, part: str = "") -> Evidence:
    """Give the figures of `job` for a fault seen on `part`; on any part where none is named."""
    coats = [each for name in job.parts if part in ("", name) for each in job.coats_on(name)]
    last = max(coats, key=lambda coat: coat.begun.n, default=None)
    then = as_of(job, last.begun.n) if last is not None else job
    given: Given = {}
    for figure in (_efflux, _fluid, _thinner, _hand, _pattern):
        given |= _told(figure(job)) | _told(figure(then))
    given |= _weather(job, last) | _film(job, part) | _waits(job, coats) | _limits(in_use(then))
    return Evidence(**_told(given))


def _told(figures: Given) -> Given:
    return {name: figure for name, figure in figures.items() if figure is not None}


def _limits(profile: Profile) -> Given:
    gun, limits, thinner = profile.gun, profile.limits, thinner_of(profile)
    spans = {
        "efflux_{}_s": profile.efflux.target_s if profile.efflux is not None else None,
        "inlet_{}_kpa": gun.inlet_kpa,
        "delivery_{}_ml_min": gun.delivery_ml_min,
        "distance_{}_mm": gun.distance_mm,
        "air_{}_c": limits.air_c,
        "part_{}_c": limits.part_c,
        "humidity_{}_percent": limits.humidity_percent,
    }
    ends = {
        name.format(end): getattr(span, end)
        for name, span in spans.items()
        for end in ("low", "high")
        if span is not None
    }
    return ends | {
        "dew_margin_low_c": limits.dew_margin_c,
        "overlap_wanted_fraction": gun.overlap_percent and gun.overlap_percent.middle / 100,
        "thinner_high_percent": thinner and thinner.limit_percent,
    }


def _efflux(job: Job) -> Given:
    """Mean efflux time in the profile's cup, by equivalent seconds where another was used."""
    cup, target = timed(now(job)), job.profile.efflux
    wanted = known(cup_named, target.cup) if target is not None else None
    if cup is None or wanted is None:
        return {}
    used, mean = cup
    if used.key == wanted.key:
        return {"efflux_s": mean}
    same = known(equivalent_efflux, mean, used, wanted)
    return {"efflux_s": same.value if isinstance(same, Value) else None}


def _fluid(job: Job) -> Given:
    """Delivery of the coating itself: water says nothing against a target for paint. So it is with
    the inlet pressure of a catch."""
    caught = measured.last_told(measured.catches(job, "paint"), "inlet")
    return {
        "inlet_kpa": measured.inlet_kpa(job) if job.airs else caught,
        "delivery_ml_min": measured.mean_delivery_ml_min(job, "paint"),
    }


def _thinner(job: Job) -> Given:
    """Thinner in the mix; noted as unmeasured where its share is not known and no cup was timed since."""
    fraction = measured.thinner_fraction(job)
    if fraction is not None:
        return {"thinner_percent": fraction * 100, "thinner_unmeasured": False}
    since = max((batch.n for batch in job.batches), default=0)
    blind = any(added.n > since and added.remaining is None for added in job.thinner)
    return {"thinner_unmeasured": True if blind and not measured.efflux_runs(job) else None}


def _hand(job: Job) -> Given:
    """Distance, and the pace: held against the whole span of speeds that the wet film allows."""
    given: Given = {"distance_mm": measured.last_told(job.fans, "distance")}
    wet, speed = job.profile.film.wet_um or Range(), measured.speed_mm_s(job)
    fan, delivery = measured.fan_mm(job), measured.mean_delivery_ml_min(job, "paint")
    if wet.low is None or wet.high is None or speed is None or delivery is None:
        return given
    if fan is None or fan[1] != "measured":
        return given
    overlap, efficiency = measured.overlap_fraction(job)[0], measured.transfer_efficiency(job)
    slowest, fastest = (
        known(speed_for_wet_film_mm_s, film_um, delivery, fan[0], overlap, share)
        for film_um, share in ((wet.high, efficiency.low), (wet.low, efficiency.high))
    )
    # A share is one figure, no band: so is the speed.
    if isinstance(slowest, Value) and isinstance(fastest, Value):
        wanted = min(max(speed, slowest.value), fastest.value)
        given |= {"speed_m_s": speed / MM_PER_M, "speed_wanted_m_s": wanted / MM_PER_M}
    return given


def _pattern(job: Job) -> Given:
    """The overlap that was chosen; how even the film is that the pattern lays at it."""
    overlap, source = measured.overlap_fraction(job)
    given = {"overlap_fraction": overlap} if source == "as chosen" else {}
    zones = next((each.zones for each in reversed(job.patterns) if each.zones), ())
    if zones:
        across = known(profile_from_zones, zones)
        even = known(evenness, across, overlap) if across is not None else None
        if even is not None:
            given |= {"unevenness_fraction": even.cv, "unevenness_high_fraction": UNEVEN_FROM}
    return given


def _weather(job: Job, coat: Coat | None) -> Given:
    """The weather the coat was laid in; the latest reading where it was read only afterwards. One
    that is hours away from the coat is not its weather."""
    read = (coat.weather if coat is not None else None) or job.weather
    if read is None:
        return {}
    if coat is not None and abs(elapsed(read.at, coat.begun.at).seconds) > LATELY_S:
        return {}
    air, humidity, part = read.air.value, read.humidity.value, read.part.value
    margin = known(dew_margin_c, air, humidity, part)
    return {"air_c": air, "humidity_percent": humidity, "part_c": part, "dew_margin_c": margin}


def _film(job: Job, part: str) -> Given:
    """The wet film of the coat that lies furthest outside the range asked of it, and that range.

    A gauge says between which two teeth the film lies: what counts is the place in there that is
    nearest to the range, so that a film is out of range only where no reading of the teeth is in it.
    """
    coats = dict.fromkeys((read.part, read.coat) for read in job.films if part in ("", read.part))
    found: list[tuple[float | None, Range]] = []
    for coat in coats:
        film, span = statistics_of(readings_of(job, *coat)), wet_wanted(job, coat[1]) or Range()
        wanted = span.middle if span != Range() else 0.0
        if film is not None:
            found.append((min(max(wanted, film.mean.low_um), film.mean.high_um), span))

    def past(each: tuple[float | None, Range]) -> float:
        """How far a film lies outside its range, as a share of the end that it passed."""
        wet_um, span = each[0] or 0.0, each[1]
        if span.high is not None and wet_um > span.high:
            return wet_um / span.high - 1.0
        return 1.0 - wet_um / span.low if span.low is not None and wet_um < span.low else 0.0

    asked = wet_wanted(job, None) or Range()
    wet_um, span = max(reversed(found), key=past, default=(None, asked))
    return {"wet_um": wet_um, "wet_low_um": span.low, "wet_high_um": span.high}


class _Laid(NamedTuple):
    """How a coat lay in the wait after the one below it [s]; None each where that is not known."""

    early_s: float | None = 0.0
    late_s: float | None = 0.0
    wait_s: float | None = None


def _laid(job: Job, coat: Coat) -> _Laid:
    """What was kept of a coat, as far as the wait it was held against is known.

    Earlier versions held it against the window of the next product, or against a time that the
    weather did not bear out: no coat was earlier than what is left of its wait as it is known now.
    """
    then = as_of(job, coat.begun.n)
    below = [each for each in then.coats_on(coat.part) if each.number == coat.number - 1]
    if not below or below[0].ended is None:
        return _Laid()
    wait, begun = between_coats(then, below[0], below[0].ended), coat.begun
    passed = elapsed(wait.start, begun.at, then.boots)
    doubtful = begun.doubtful or passed.basis is Basis.DOUBTFUL
    early_s = late_s = None
    if wait.opens_s is not None and not doubtful:
        early_s = min(begun.early_s, max(wait.opens_s - passed.seconds, 0.0))
    if begun.late_s or (wait.closes_s is not None and not doubtful):
        late_s = begun.late_s
    return _Laid(early_s, late_s, wait.opens_s)


def _worst(figures: list[float | None]) -> float | None:
    """The greatest of them; none of them is in time for all we know where one is not known."""
    return max(filter(None, figures), default=None if None in figures else 0.0)


def _waits(job: Job, coats: list[Coat]) -> Given:
    """Coats laid too early or too late, and how much of its pot life the mix had used."""
    if not coats:
        return {}
    laid = [_laid(job, coat) for coat in coats]
    # The part that lacks most.
    least = min((coat.part for coat in coats), key=lambda part: _lacking(job, part))
    shares = [share for coat in coats if (share := _pot_life_used(job, coat))]
    return {
        "early_s": _worst([each.early_s for each in laid]),
        "late_s": _worst([each.late_s for each in laid]),
        "flash_off_s": max(laid, key=lambda each: each.early_s or 0.0).wait_s,
        "pot_life_used": max(shares, default=None),
        "induction_left_s": _worst([_induction_left_s(job, coat) for coat in coats]),
        "coats_laid": len(job.coats_on(least)),
        "coats_wanted": coats_wanted(job, least),
    }


def _lacking(job: Job, part: str) -> tuple[int, int]:
    laid = len(job.coats_on(part))
    return laid - coats_wanted(job, part), laid


def _induction_left_s(job: Job, coat: Coat) -> float | None:
    """What the last batch still had to stand when the coat began."""
    batches = [batch for batch in job.batches if batch.n < coat.begun.n]
    lasts = lasting.induction(job.profile, coat.weather or job.weather)
    if not batches or lasts is None or lasts.seconds is None:
        return None
    return max(lasts.seconds - elapsed(batches[-1].at, coat.begun.at, job.boots).seconds, 0.0)


def _pot_life_used(job: Job, coat: Coat) -> float | None:
    """The age of the mix when the coat ended, as a share of its pot life that day."""
    batches = [batch for batch in job.batches if batch.n < coat.begun.n]
    shares = []
    for mixed in poured_together(job, batches[-1]) if batches else ():
        profile = mixed_with(job.profile, mixed.hardener)
        lasts = lasting.pot_life(profile, coat.weather or job.weather)
        if lasts is not None and lasts.seconds:
            age_s = elapsed(mixed.at, (coat.ended or coat.begun).at).seconds
            shares.append(max(age_s, 0.0) / lasts.seconds)
    return max(shares, default=None)
