"""Settings, weather, mix and cup of one product as lines of a card; and what nobody measured. Pure."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from booth.card.model import Fact
from booth.files.safe_text import visible
from booth.job import measured, mixture
from booth.job.mix_choice import in_use
from booth.job.past_settings import SETTINGS, Setting, settings_of
from booth.job.recipe import thinner_of
from booth.job.steps import steps_of
from booth.log.events import BatchMixed, WeatherRead
from booth.log.fold import Job
from booth.moment import Moment
from booth.profile.model import Range
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, System
from booth.words.event_words import cup_name, quantity
from booth.words.profile_words import range_words

When = Callable[[Moment], str]
#: So many readings of the weather, and batches, stand on a card; the log has them all.
MOST_READINGS = 4
MOST_BATCHES = 4
#: What a step of this kind measures, as it is said to be missing.
MEASURES = {
    "weather": "weather",
    "efflux": "efflux time",
    "air": "inlet pressure",
    "catch": "delivery",
    "fan": "fan width",
    "pattern": "pattern",
    "pace": "pass speed",
    "film": "wet film",
}


def facts_of(job: Job, system: System, time_of: When, until: int | None = None) -> tuple[Fact, ...]:
    """What was measured and set for the product that a job has come to. until: the number of the entry
    that began the next one."""
    return (
        *_settings(job, system),
        *_weather(job, system, time_of),
        *_mix(job, system, time_of, until),
    )


def _settings(job: Job, system: System) -> Iterator[Fact]:
    found = settings_of(job)
    measured_with = {
        "efflux": f" in {cup_name(found.cup)}",
        "delivery": f" of {found.liquid}",
    }
    for each in SETTINGS:
        if each.name not in found.figures:
            continue
        figure, asked = found.figures[each.name], _asked(job, each, found.cup, found.liquid)
        side = measured.compare(figure, asked)
        yield Fact(
            each.label,
            each.figure(figure, system) + measured_with.get(each.name, ""),
            range_words(asked, each.kind, system),
            side if side in ("below", "above") else "",
        )


def _asked(job: Job, setting: Setting, cup: str, liquid: str) -> Range | None:
    """What the profile asks of a setting, where that can be held against what was measured: the time in
    the same cup, the delivery of the coating itself."""
    if setting.name == "efflux":
        asked = job.profile.efflux
        known = CUPS.get(cup)
        same = asked is not None and known is not None and asked.cup in (cup, known.name)
        return asked.target_s if asked is not None and same else None
    if setting.name == "delivery" and liquid != "paint":
        return None
    if setting.name == "thinner":
        thinner = thinner_of(in_use(job))
        return thinner.usual_percent if thinner is not None else None
    found = getattr(job.profile.gun, setting.field, None) if setting.field else None
    return found if isinstance(found, Range) else None


def _weather(job: Job, system: System, time_of: When) -> Iterator[Fact]:
    """What was read last before the product began, and all that was read while its coats were laid."""
    laid = [coat for coats in job.coats.values() for coat in coats]
    first = min((coat.begun.n for coat in laid), default=0)
    last = max((coat.ended.n if coat.ended else coat.begun.n for coat in laid), default=None)
    before = [each for each in job.of(WeatherRead) if each.n < first][-1:]
    read = [
        each for each in job.of(WeatherRead) if each.n >= first and (last is None or each.n < last)
    ]
    told = [*before, *read]
    for each in told[:MOST_READINGS]:
        temperature = Kind.TEMPERATURE
        yield Fact(
            f"weather {time_of(each.at)}",
            f"air {quantity(each.air, temperature, system)}, humidity "
            f"{quantity(each.humidity, Kind.PERCENT, system)}, part "
            f"{quantity(each.part, temperature, system)}",
            group="weather",
        )
    if len(told) > MOST_READINGS:
        yield Fact("weather", f"{len(told) - MOST_READINGS} more readings in the log")


def _mix(job: Job, system: System, time_of: When, until: int | None) -> Iterator[Fact]:
    for each in job.batches[:MOST_BATCHES]:
        label = f"batch {each.batch}, {time_of(each.at)}"
        yield Fact(label, _batch(each, system), group="batch")
    if len(job.batches) > MOST_BATCHES:
        yield Fact("batches", f"{len(job.batches) - MOST_BATCHES} more in the log")
    if job.thinner and not mixture.now(job).known:
        more = ", ".join(quantity(each.amount, Kind.VOLUME, system) for each in job.thinner)
        yield Fact("thinner", f"added {more}; its share is not known")
    if cans := cans_of(job, until):
        yield Fact("cans", cans)


def _batch(batch: BatchMixed, system: System) -> str:
    poured = [
        f"{visible(pour.name)} {quantity(pour.amount, Kind.VOLUME, system)}" for pour in batch.pours
    ]
    said = [" + ".join(poured)] if poured else []
    if batch.total is not None:
        said.append(f"in all {quantity(batch.total, Kind.VOLUME, system)}")
    if batch.onto is not None:
        said.append(f"onto batch {batch.onto}")
    said += [visible(each) for each in (batch.hardener, batch.thinned_with) if _unsaid(each, batch)]
    return ", ".join(said) or "amounts not kept"


def _unsaid(name: str, batch: BatchMixed) -> bool:
    return bool(name) and all(name != pour.name for pour in batch.pours)


def cans_of(job: Job, until: int | None = None) -> str:
    """The batch numbers of the cans as they were noted last while this product was worked with."""
    from booth.instruments.mix.instrument import CANS

    begun = job.begun.n if job.begun is not None else 0
    noted = [
        each.text
        for each in job.notes
        if each.text.startswith(CANS) and begun < each.n and (until is None or each.n < until)
    ]
    return visible(noted[-1].removeprefix(CANS)) if noted else ""


def missing_of(job: Job, has_film: bool) -> tuple[str, ...]:
    """What the steps of this product ask for and nobody measured, with the reason where one was given."""
    found = settings_of(job).figures
    there = {
        "weather": bool(job.of(WeatherRead)),
        "efflux": "efflux" in found,
        "air": "inlet" in found,
        "catch": "delivery" in found,
        "fan": "fan" in found,
        "pattern": bool(job.patterns),
        "pace": "pace" in found,
        "film": has_film,
    }
    said = []
    for step in steps_of(job):
        if step.kind in MEASURES and not there[step.kind]:
            skipped = job.skipped.get(step.key)
            why = f" ({visible(skipped.why)})" if skipped is not None and skipped.why else ""
            said.append(f"{MEASURES[step.kind]}{why}")
    return tuple(dict.fromkeys(said))
