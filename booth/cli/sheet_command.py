"""``booth sheet``: the card of one job, or of several side by side, on the terminal or in a file."""

from __future__ import annotations

import argparse
import io
import shutil
from collections.abc import Sequence
from pathlib import Path
from typing import TextIO

from booth.card.build import card_of
from booth.card.forms import form_of, in_form, write_card
from booth.cli.endings import BAD_INPUT
from booth.cli.log_command import one_job, shown_in
from booth.clock import local_date, local_hhmm
from booth.files.safe_text import visible
from booth.log.history import history
from booth.log.parse import LogContent
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.units import System

#: In a file, and where the terminal does not say, lines are so long.
WIDTH = 100


def sheet(
    options: argparse.Namespace,
    folder: Path,
    out: TextIO,
    err: TextIO,
    kept: Path | None = None,
) -> int:
    """Print or write the card; give the exit code: 0, or 2 where a name means none or several. kept: see
    ``history``."""
    job = (
        one_job(options.job, folder, err, "sheet", kept)
        if options.job is not None
        else _last(folder, err, kept)
    )
    others = [one_job(each, folder, err, "sheet", kept) for each in options.beside or ()]
    every = [each for each in (job, *others) if each is not None]
    if len(every) < 1 + len(others):
        return BAD_INPUT
    try:
        held = [(each, read_log(each.path)) for each in every]
    except OSError as fault:
        print(f"booth sheet: {visible(str(fault.filename))}: {fault.strerror}.", file=err)
        return BAD_INPUT
    asked = System(options.units) if options.units else None
    path = Path(options.output).expanduser() if options.output else None
    form = options.form or (form_of(path) if path is not None else "text")
    if others and form not in ("text", "markdown"):
        print(f"booth sheet: jobs side by side are text or markdown, not {form}.", file=err)
        return BAD_INPUT
    text = _beside(held, form, asked, path) if others else _card(held[0], form, asked)
    if path is None:
        if form == "csv" and isinstance(out, io.TextIOWrapper):
            out.reconfigure(newline="")  # its lines end in CR LF, everywhere
        out.write(text)
        return 0
    written = write_card(path, text, form)
    print(f"Written: {visible(str(written.path))}", file=out)
    if written.before is not None:
        print(f"What stood there before is in {visible(written.before.name)}, beside it.", file=out)
    return 0


def _card(held: tuple[JobSummary, LogContent], form: str, asked: System | None) -> str:
    job, log = held
    said = (*job.copies, *log.said)
    system = shown_in(log, asked)
    return in_form(form, log.events, system, local_hhmm, local_date, said, job.name)


def _beside(
    held: Sequence[tuple[JobSummary, LogContent]],
    form: str,
    asked: System | None,
    path: Path | None,
) -> str:
    """The jobs side by side, all in the units of the first."""
    from booth.card.beside import beside_as_markdown, beside_as_text
    from booth.card.compare import compared

    system = shown_in(held[0][1], asked)
    told = compared(
        [
            card_of(log.events, system, local_hhmm, local_date, log.said, job.name)
            for job, log in held
        ]
    )
    if form == "markdown":
        return beside_as_markdown(told)
    width = shutil.get_terminal_size((WIDTH, 24)).columns if path is None else WIDTH
    return beside_as_text(told, width)


def _last(folder: Path, err: TextIO, kept: Path | None) -> JobSummary | None:
    """The job that was opened last; a rehearsal is none."""
    jobs = (each for each in history(folder, kept) if each.opened is not None)
    found = next((each for each in jobs if not each.rehearsal), None)
    if found is None:
        print(f"booth sheet: no jobs yet in {visible(str(folder))}.", file=err)
    return found
