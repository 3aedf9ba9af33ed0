"""``booth sheet``: the card of one job, on the terminal or in a file."""

from __future__ import annotations

import argparse
import io
from pathlib import Path
from typing import TextIO

from booth.card.forms import form_of, in_form, write_card
from booth.cli.endings import BAD_INPUT
from booth.cli.log_command import one_job, shown_in
from booth.clock import local_date, local_hhmm
from booth.files.safe_text import visible
from booth.log.history import history
from booth.log.store import read_log
from booth.log.summary import JobSummary
from booth.units import System


def sheet(options: argparse.Namespace, folder: Path, out: TextIO, err: TextIO) -> int:
    """Print or write the card; give the exit code: 0, or 2 where the name means none or several."""
    job = (
        one_job(options.job, folder, err, "sheet")
        if options.job is not None
        else _last(folder, err)
    )
    if job is None:
        return BAD_INPUT
    try:
        content = read_log(job.path)
    except OSError as fault:
        print(f"booth sheet: {visible(str(job.path))}: {fault.strerror}.", file=err)
        return BAD_INPUT
    asked = System(options.units) if options.units else None
    system = shown_in(content, asked)
    path = Path(options.output).expanduser() if options.output else None
    form = options.form or (form_of(path) if path is not None else "text")
    said = (*job.copies, *content.said)
    text = in_form(form, content.events, system, local_hhmm, local_date, said, job.name)
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


def _last(folder: Path, err: TextIO) -> JobSummary | None:
    """The job that was opened last; a rehearsal is none."""
    jobs = (each for each in history(folder) if each.opened is not None)
    found = next((each for each in jobs if not each.rehearsal), None)
    if found is None:
        print(f"booth sheet: no jobs yet in {visible(str(folder))}.", file=err)
    return found
