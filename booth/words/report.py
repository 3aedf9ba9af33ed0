"""A job, and a list of jobs, as plain text for a terminal, a printer or a letter. Pure.

How a moment is written is handed in, since only the clock knows the time zone.
"""

from __future__ import annotations

import unicodedata
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence

from booth.files.safe_text import visible
from booth.job.products import last_coat, products_of
from booth.job.racks import rows_of
from booth.job.verdicts import finished, judgements, next_time, seen_later
from booth.log.events import Event, UnknownEvent
from booth.log.fold import Coat, Job, NoJob, fold
from booth.log.summary import JobSummary
from booth.moment import Basis, Moment, elapsed
from booth.units import System
from booth.words.event_words import TIMELINESS, cup_name, duration, filled, teller

#: Writes a moment, as a time of day or as a date.
When = Callable[[Moment], str]


def report(
    events: Iterable[Event | UnknownEvent],
    system: System,
    time_of: When,
    date_of: When,
    said: Sequence[str] = (),
    name: str = "",
) -> str:
    """Give a job as plain text.

    time_of, date_of: write a moment as local time of day and as local date; said: what is wrong
    with the log, told first; name: what lists call the job, where its log does not say that.
    """
    events = list(events)
    lines = [f"! {visible(sentence)}" for sentence in said]
    if lines:
        lines.append("")
    try:
        job = fold(events)
    except NoJob as fault:
        lines.append(f"This log holds no job: {visible(str(fault))}.")
        return "\n".join([*lines, "", *_entries(events, None, system, time_of, date_of)]) + "\n"
    lines += _header(job, name, time_of, date_of)
    sections: dict[str, Iterable[str]] = {
        "Entries": _entries(events, job, system, time_of, date_of),
        **dict(_products(job, system, time_of, date_of)),
        "Result": _result(job, date_of, time_of),
    }
    for head, told in sections.items():
        if section := [f"  {line}" for line in told]:
            lines += ["", head, *section]
    return "\n".join(lines) + "\n"


def _header(job: Job, name: str, time_of: When, date_of: When) -> Iterator[str]:
    opened = job.opened
    yield f"Job      {visible(name or opened.job)}"
    yield f"Opened   {date_of(opened.at)} {time_of(opened.at)}"
    if opened.later:
        yield f"System   {visible(opened.title)}"
    for number, profile in enumerate(opened.products, 1):
        demo = " (demo: invented values)" if profile.demo else ""
        yield f"Coating  {visible(opened.present(number))}{demo}"
        if profile.product:
            yield f"Product  {visible(profile.product)}"
        yield f"From     {visible(profile.source)}"
    yield f"Parts    {visible(', '.join(row.title for row in rows_of(job)))}"
    if job.fitted.gun:
        yield f"Gun      {visible(job.fitted.gun)}"


def _products(
    job: Job, system: System, time_of: When, date_of: When
) -> Iterator[tuple[str, Iterable[str]]]:
    """Coats and settings, of each product that was begun; its name stands where there are several."""
    for own in products_of(job):
        which = f": {visible(job.opened.present(own.product))}" if job.opened.later else ""
        yield f"Coats and waits{which}", _coats(own, system, time_of, date_of)
        yield f"Last settings{which}", _settings(own, system)


def _entries(
    events: Sequence[Event | UnknownEvent],
    job: Job | None,
    system: System,
    time_of: When,
    date_of: When,
) -> Iterator[str]:
    width = max((len(str(event.n)) for event in events), default=1)
    told = teller(system, job)
    date = ""
    for event in events:
        day = date_of(event.at)
        if day != date:
            date = day
            yield date
        struck = "voided: " if job is not None and event.n in job.void else ""
        yield f"{event.n:>{width}}  {time_of(event.at)}  {struck}{told(event)}"


def _coats(job: Job, system: System, time_of: When, date_of: When) -> Iterator[str]:
    for part in dict.fromkeys([*job.parts, *job.coats]):
        coats = job.coats_on(part)
        if not coats:
            yield f"{visible(part)}: no coat"
        before = _under(job, part)
        for coat in coats:
            yield f"{visible(part)}: " + _coat(coat, before, system, time_of, date_of)
            before = coat
        yield from _film(job, part, system)


def _film(job: Job, part: str, system: System) -> Iterator[str]:
    # Loads all that measures, as the settings do.
    from booth.job.film_total import film_total
    from booth.words.film_words import total_words

    total = film_total(job, part)
    said = total and total_words(total, job.profile.film.dry_total_um, system)
    if said:
        yield f"{visible(part)}: film in all {said}"


def _under(job: Job, part: str) -> Coat | None:
    """The last coat of the product before on this part."""
    laid = last_coat(job.before[-1], part) if job.before else None
    return laid[1] if laid is not None else None


def _coat(coat: Coat, before: Coat | None, system: System, time_of: When, date_of: When) -> str:
    begun = coat.begun
    told = f"coat {coat.number} begun {date_of(begun.at)} {time_of(begun.at)}"
    if before is not None and before.ended is not None:
        which = "the last coat before it" if coat.number == 1 else f"coat {before.number}"
        told += f", {_between(before.ended.at, begun.at, system)} after {which} ended"
    told += filled(TIMELINESS, begun, system)
    if coat.ended is None:
        return told + "; not ended"
    return told + f"; sprayed in {_between(begun.at, coat.ended.at, system)}"


def _between(start: Moment, end: Moment, system: System) -> str:
    passed = elapsed(start, end)
    doubt = "" if passed.basis is Basis.CONTINUOUS else f" ({passed.basis.value})"
    return duration(passed.seconds, system) + doubt


def _settings(job: Job, system: System) -> Iterator[str]:
    # Loads all that measures; a list of jobs, which starts as often, has no need of it.
    from booth.job.past import SETTINGS, settings_of

    found = settings_of(job)
    measured_with = {
        "efflux": f" in {cup_name(found.cup)}",
        "delivery": f" of {found.liquid}",
    }
    for each in SETTINGS:
        if each.name in found.figures:
            figure = each.figure(found.figures[each.name], system)
            yield f"{each.label} {figure}{measured_with.get(each.name, '')}"


def _result(job: Job, date_of: When, time_of: When) -> Iterator[str]:
    later = seen_later(job)
    faults = Counter(fault.fault for fault in job.faults if fault not in later)
    if faults:
        yield "faults seen: " + visible(", ".join(faults))
    if later:
        yield "seen later: " + visible(", ".join(Counter(fault.fault for fault in later)))
    if job.closed is None:
        yield "This job is not closed."
        return
    for judged in reversed(judgements(job)):
        when = f"{date_of(judged.at)} {time_of(judged.at)}"
        if judged.verdict:
            yield f"verdict: {visible(judged.verdict)}, {when}"
        if judged.words:
            yield f"in words: {visible(judged.words)}"
    for each in finished(job):
        on = f" {visible(each.part)}" if each.part else ""
        yield f"{visible(each.work)}:{on} {date_of(each.at)} {time_of(each.at)}"
    if said := next_time(job):
        yield f"next time: {visible(said)}"


HEADINGS = ("Job", "Opened", "Result", "Coating", "Parts", "Entries")


def jobs_table(summaries: Sequence[JobSummary], when: When) -> str:
    """Give a list of jobs as a table, and below it the files that cannot be read."""
    if not summaries:
        return "There are no jobs yet.\n"
    rows: list[tuple[str, ...]] = []
    unread = []
    for summary in summaries:
        if summary.opened is None:
            unread.append(f"! {visible(summary.path.name)}: {visible(summary.fault)}")
            continue
        broken = f", {summary.broken} broken" if summary.broken else ""
        cells = (
            summary.name,
            when(summary.opened),
            _verdict(summary),
            _coating(summary),
            summary.sprayed,
            f"{summary.events}{broken}",
        )
        rows.append(tuple(visible(cell) for cell in cells))
    table = _aligned([HEADINGS, *rows]) if rows else []
    return "\n".join([*table, *([""] if table and unread else []), *unread]) + "\n"


def _verdict(summary: JobSummary) -> str:
    """The verdict that counts, with that of the closing where it was another one."""
    first = summary.first_verdict
    was = f" (was {first})" if first and first != summary.verdict else ""
    return f"{summary.verdict or 'open'}{was}"


def _coating(summary: JobSummary) -> str:
    """What was sprayed; of several products, the one that the job has come to as well."""
    return f"{summary.profile_name}, {summary.product}" if summary.product else summary.profile_name


def _aligned(rows: Sequence[Sequence[str]]) -> list[str]:
    widths = [max(map(_cells, column)) for column in zip(*rows, strict=True)]
    lines = []
    for row in rows:
        padded = (cell + " " * (n - _cells(cell)) for cell, n in zip(row, widths, strict=True))
        lines.append("  ".join(padded).rstrip())
    return lines


def _cells(text: str) -> int:
    """Give how many columns a text takes: accents none, wide characters two (UAX #11)."""
    return sum(
        0 if unicodedata.combining(char) else 2 if unicodedata.east_asian_width(char) in "WF" else 1
        for char in text
    )
