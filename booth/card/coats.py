"""The coats of one product as lines of a card: when, after how long, how thick against what was asked for."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from booth.card.model import CoatLine, Fact
from booth.files.safe_text import visible
from booth.job.coat_plan import coat_named, wet_wanted
from booth.job.film_total import film_total
from booth.job.measured import readings_of, statistics_of
from booth.job.products import last_coat
from booth.job.racks import row_of, rows_of
from booth.log.fold import Coat, Job
from booth.moment import Basis, Moment, elapsed
from booth.profile.model import Range
from booth.units import Kind, System, show, shown_unit
from booth.words.event_words import TIMELINESS, duration, filled
from booth.words.film_words import total_words
from booth.words.profile_words import range_words

When = Callable[[Moment], str]
NO_COAT = "no coat"


def part_words(job: Job, part: str) -> str:
    """A part as it is called, the side of a rack with its rack: '24 doors, side 1'."""
    row = row_of(job, part)
    side = row.side(part)
    return visible(f"{row.title}, {side}" if side else row.title)


def parts_line(job: Job) -> str:
    """All parts of a job in a line, each rack once with its sides: '24 doors, both sides; hood'."""
    names = [_sided(job, row.title, row.parts) for row in rows_of(job)]
    return visible(("; " if any(", " in each for each in names) else ", ").join(names))


def _sided(job: Job, title: str, parts: tuple[str, ...]) -> str:
    rack = row_of(job, parts[0]).rack
    if rack is None or rack.sides == 1:
        return title
    if len(parts) == rack.sides:
        return f"{title}, {'both' if rack.sides == 2 else f'all {rack.sides}'} sides"
    return f"{title}, {', '.join(part.rpartition(': ')[2] for part in parts)}"


def coat_lines(job: Job, system: System, time_of: When, date_of: When) -> Iterator[CoatLine]:
    """Every coat of the product that a job has come to, part by part; a part without one is told."""
    for part in dict.fromkeys([*job.parts, *job.coats]):
        laid, name = job.coats_on(part), part_words(job, part)
        if not laid:
            yield CoatLine(name, NO_COAT)
        before = _under(job, part)
        for coat in laid:
            yield _line(job, coat, before, name, system, time_of, date_of)
            before = coat


def _under(job: Job, part: str) -> Coat | None:
    """The last coat of the product before on this part."""
    laid = last_coat(job.before[-1], part) if job.before else None
    return laid[1] if laid is not None else None


def _line(
    job: Job,
    coat: Coat,
    before: Coat | None,
    name: str,
    system: System,
    time_of: When,
    date_of: When,
) -> CoatLine:
    read = statistics_of(readings_of(job, coat.part, coat.number))
    asked = wet_wanted(job, coat.number)
    planned = coat_named(job, coat.number, coat.part).name
    called = f"coat {coat.number}"
    begun, ended = coat.begun, coat.ended
    remarks = filled(TIMELINESS, begun, system).removeprefix(", ")
    waited = which = ""
    if before is not None and before.ended is not None:
        which = "the last coat before it" if coat.number == 1 else f"coat {before.number}"
        waited = _between(before.ended.at, begun.at, system)
    return CoatLine(
        part=name,
        coat=called if planned == called else visible(f"{called}, {planned}"),
        day=date_of(begun.at),
        begun=time_of(begun.at),
        waited=waited,
        after=which,
        sprayed=_between(begun.at, ended.at, system) if ended is not None else "",
        wet=film_words(read.mean.low_um, read.mean.high_um, system) if read is not None else "",
        wanted=range_words(asked, Kind.THICKNESS, system),
        remark=remarks if ended is not None else ", ".join(filter(None, (remarks, "not ended"))),
        low_um=read.mean.low_um if read is not None else None,
        high_um=read.mean.high_um if read is not None else None,
        asked_um=_ends(asked),
    )


def _ends(span: Range | None) -> tuple[float | None, float | None]:
    return (None, None) if span is None else (span.low, span.high)


def _between(start: Moment, end: Moment, system: System) -> str:
    passed = elapsed(start, end)
    doubt = "" if passed.basis is Basis.CONTINUOUS else f" ({passed.basis.value})"
    return duration(passed.seconds, system) + doubt


def film_words(low_um: float, high_um: float, system: System) -> str:
    """A film between two teeth, as '50 to 75 µm', or 'over 400 µm' where no tooth stayed dry."""
    if math.isinf(high_um):
        return f"over {show(low_um, Kind.THICKNESS, system)}"
    low, high = (show(end, Kind.THICKNESS, system, unit=False) for end in (low_um, high_um))
    unit = shown_unit(Kind.THICKNESS, system)
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def films_in_all(job: Job, system: System) -> Iterator[Fact]:
    """The dry film of this product on each part, as far as the gauge told it; parts alike together."""
    alike: dict[str, list[str]] = {}
    for part in dict.fromkeys([*job.parts, *job.coats]):
        total = film_total(job, part)
        said = total and total_words(total, job.profile.film.dry_total_um, system)
        if said:
            alike.setdefault(said, []).append(part_words(job, part))
    for said, parts in alike.items():
        joined = ("; " if any(", " in each for each in parts) else ", ").join(parts)
        yield Fact(joined, said)
