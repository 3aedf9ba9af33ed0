"""What a card draws: the pattern that was read last, the film it lays, when each coat was laid. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from booth.card.coats import When, part_words
from booth.card.model import Line, Span, TimeLine
from booth.instruments.pattern import BAND, FANS_DEEP, LEAST_PASSES, SAMPLES, paper_of
from booth.job.measured import last_told, overlap_fraction
from booth.job.patterns import Pattern, pattern_of, section_at
from booth.job.products import products_of
from booth.log.fold import Coat, Job
from booth.moment import Moment, elapsed
from booth.trade.pattern.overlap import MOST_OVERLAP
from booth.units import Kind, System, shown_unit, shown_value
from booth.words.event_words import duration
from booth.words.shown import Paper, Section

#: A stretch of this length and more in which nothing is sprayed is drawn as a gap [s].
GAP_S = 2 * 3600.0


def pattern_drawn(job: Job, system: System) -> tuple[str, Paper | None, Section | None]:
    """The pattern read last for this product, in words and as it is drawn; nothing where none was read.

    The film section is that of the overlap that was chosen or asked for; none where the shape has none.
    """
    read = job.patterns[-1] if job.patterns else None
    pattern = pattern_of(read) if read is not None else None
    if read is None or pattern is None:
        return "", None, None
    return pattern.words, paper_of(pattern), _section(job, pattern, system)


def _section(job: Job, pattern: Pattern, system: System) -> Section | None:
    overlap, where = overlap_fraction(job)
    if not 0 <= overlap <= MOST_OVERLAP:
        return None
    passes = max(LEAST_PASSES, round(FANS_DEEP / (1 - overlap)))
    samples = section_at(pattern, overlap, passes, SAMPLES)
    if not samples:
        return None
    scale, unit = (passes - 1) * (1 - overlap) + 1, "fans"
    width_mm = last_told((*job.patterns, *job.fans), "width")
    if width_mm:
        scale = shown_value(scale * width_mm, Kind.LENGTH, system)
        unit = shown_unit(Kind.LENGTH, system)
    placed = tuple((share * scale, film) for share, film in samples)
    across = f"{passes} passes, {overlap * 100:.0f} % overlap, {where}"
    return Section(placed, *BAND, across=across, unit=unit)


def time_line(job: Job, system: System, time_of: When, date_of: When) -> TimeLine | None:
    """When each coat of each product was laid, part by part; None where none has ended."""
    laid = [
        (own.product, part, coat)
        for own in products_of(job)
        for part in dict.fromkeys([*job.parts, *own.coats])
        for coat in own.coats_on(part)
        if coat.ended is not None
    ]
    if not laid:
        return None
    first = min((coat.begun.at for _, _, coat in laid), key=lambda each: each.wall)
    rows: dict[str, list[Span]] = {}
    for product, part, coat in laid:
        rows.setdefault(part, []).append(_span(job, product, coat, first))
    spans = [span for each in rows.values() for span in each]
    end_s = max(span.end_s for span in spans)
    last = max((coat.ended.at for _, _, coat in laid if coat.ended), key=lambda each: each.wall)
    return TimeLine(
        tuple(Line(part_words(job, part), tuple(each)) for part, each in rows.items()),
        end_s,
        tuple((start, end, duration(end - start, system)) for start, end in _gaps(spans)),
        f"{date_of(first)} {time_of(first)}",
        f"{date_of(last)} {time_of(last)}",
    )


def _span(job: Job, product: int, coat: Coat, first: Moment) -> Span:
    assert coat.ended is not None
    start_s = elapsed(first, coat.begun.at, job.boots).seconds
    end_s = max(elapsed(first, coat.ended.at, job.boots).seconds, start_s)
    return Span(start_s, end_s, str(coat.number), product)


def _gaps(spans: Iterable[Span]) -> Iterator[tuple[float, float]]:
    """The long stretches in which nothing was sprayed."""
    done_s = 0.0
    for span in sorted(spans, key=lambda each: each.start_s):
        if span.start_s - done_s >= GAP_S:
            yield done_s, span.start_s
        done_s = max(done_s, span.end_s)


def without_gaps(second: float, gaps: Sequence[tuple[float, float, str]], as_s: float) -> float:
    """Where a moment stands on a line on which each gap is as wide as `as_s` [s]."""
    at = second
    for start, end, _ in gaps:
        if second >= end:
            at -= (end - start) - as_s
        elif second > start:
            at -= (second - start) - as_s * (second - start) / (end - start)
    return at
