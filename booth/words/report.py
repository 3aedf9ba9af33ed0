"""A list of jobs as plain text for a terminal, a printer or a letter. Pure.

How a moment is written is handed in, since only the clock knows the time zone.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from booth.files.safe_text import visible
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.words.columns import cells, filled_up

#: Writes a moment, as a time of day or as a date.
When = Callable[[Moment], str]


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
        if summary.differs:
            unread += [f"! {visible(summary.name)}: {each}" for each in summary.copies]
    table = _aligned([HEADINGS, *rows]) if rows else []
    return "\n".join([*table, *([""] if table and unread else []), *unread]) + "\n"


def _verdict(summary: JobSummary) -> str:
    """The verdict that counts, with that of the closing where it was another one."""
    first = summary.first_verdict
    was = f" (was {first})" if first and first != summary.verdict else ""
    return f"{summary.verdict or ('open' if summary.is_open else 'closed')}{was}"


def _coating(summary: JobSummary) -> str:
    """What was sprayed; of several products, the one that the job has come to as well."""
    return f"{summary.profile_name}, {summary.product}" if summary.product else summary.profile_name


def _aligned(rows: Sequence[Sequence[str]]) -> list[str]:
    widths = [max(map(cells, column)) for column in zip(*rows, strict=True)]
    lines = []
    for row in rows:
        padded = (filled_up(cell, n) for cell, n in zip(row, widths, strict=True))
        lines.append("  ".join(padded).rstrip())
    return lines
