"""Several jobs side by side, as lines for a terminal so wide, or as a table in Markdown. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from booth.card.as_markdown import escaped, table
from booth.card.compare import Agree, Comparison, Row
from booth.words.columns import broken, filled_up

#: Columns for the name of a fact, and for whether the jobs agree in it.
LABEL, AGREE = 16, 13
#: So wide is the column of a job at least; it is no wider than it can be read in.
LEAST_JOB, MOST_JOB = 22, 44
BETWEEN = 2
NOTHING = "-"


class Laid(NamedTuple):
    """heads: the lines above the columns; rows: each with its lines and whether the jobs agree."""

    heads: tuple[str, ...]
    rows: tuple[tuple[Agree, tuple[str, ...]], ...]


def jobs_that_fit(count: int, width: int) -> int:
    """How many jobs of `count` stand side by side in a window so wide; one at least."""
    room = width - LABEL - AGREE
    return max(min(count, room // (LEAST_JOB + BETWEEN)), 1)


def laid_out(
    told: Comparison, rows: Sequence[Row], width: int, first: int = 0, most: int | None = None
) -> Laid:
    """Lay the jobs from `first` on side by side, as many as fit, at most `most`.

    rows: those of `told` that are wanted. Whether they agree is said of all jobs, in sight or not.
    """
    count = len(told.heads) - first
    seen = min(jobs_that_fit(count, width), most or count)
    job = min((width - LABEL - AGREE) // seen - BETWEEN, MOST_JOB)
    widths = (LABEL - BETWEEN, AGREE - BETWEEN, *([max(job, 1)] * seen))
    shown = slice(first, first + seen)
    heads: list[str] = []
    for part in zip(*told.heads[shown], strict=True):
        heads += _lines(("", "", *part), widths)
    numbers = ("", "", *(f"#{first + at + 1}" for at in range(seen)))
    lines: list[tuple[Agree, tuple[str, ...]]] = []
    section = ""
    for row in rows:
        if row.section != section:
            section = row.section
            lines.append((Agree.DIFFERS, ("", section)))
        cells = (each.text or NOTHING for each in row.cells[shown])
        said = (row.label, row.agree.in_words, *cells)
        lines.append((row.agree, tuple(_lines(said, widths))))
    return Laid((*_lines(numbers, widths), *heads), tuple(lines))


def _lines(cells: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    """One row of columns, as many lines as its highest cell takes."""
    every = [broken(cell, width) for cell, width in zip(cells, widths, strict=True)]
    for at in range(max(map(len, every))):
        line = (
            filled_up(lines[at] if at < len(lines) else "", width + BETWEEN)
            for lines, width in zip(every, widths, strict=True)
        )
        yield "".join(line).rstrip()


def beside_as_text(told: Comparison, width: int) -> str:
    """Give all jobs side by side, those that do not fit in blocks one below the other."""
    lines = [f"! {each}" for each in told.said]
    lines += [""] if lines else []
    fits = jobs_that_fit(len(told.heads), width)
    for first in range(0, len(told.heads), fits):
        laid = laid_out(told, told.rows, width, first, fits)
        lines += [*([""] if first else []), *laid.heads, ""]
        lines += [line for _, row in laid.rows for line in row]
    return "\n".join(lines) + "\n"


def beside_as_markdown(told: Comparison) -> str:
    """Give all jobs side by side as one table."""
    heads = ["", "", *(escaped(f"#{at} {' '.join(each)}") for at, each in enumerate(told.heads, 1))]
    rows = (
        (
            escaped(f"{row.section}: {row.label}" if row.section else row.label),
            escaped(row.agree.in_words),
            *(escaped(each.text) for each in row.cells),
        )
        for row in told.rows
    )
    said = [f"> {escaped(each)}  " for each in told.said]
    return "\n".join([*said, *([""] if said else []), *table(heads, rows)]) + "\n"
