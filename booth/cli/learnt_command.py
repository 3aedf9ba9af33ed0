"""``booth learnt``: what this shop has learnt from its own jobs, as text or as JSON."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any, TextIO

from booth.cli.endings import BAD_INPUT
from booth.clock import local_date
from booth.files.faults import nearest, quoted
from booth.files.safe_text import visible
from booth.learnt.observation import NO_END, Learnt, Observation
from booth.learnt.past_jobs import PastJobs
from booth.learnt.subjects import BY_KEY, SUBJECTS
from booth.units import System
from booth.words.learnt_words import in_short, title


def learnt(options: argparse.Namespace, folder: Path, out: TextIO, err: TextIO) -> int:
    """Print it; give the exit code: 0, or 2 for a subject that there is not."""
    if options.subject and options.subject not in BY_KEY:
        near = nearest(options.subject, BY_KEY)
        meant = f" Did you mean {near}?" if near else ""
        print(
            f"booth learnt: no subject {quoted(options.subject)}.{meant} There are: "
            f"{', '.join(BY_KEY)}.",
            file=err,
        )
        return BAD_INPUT
    found = [
        each
        for each in PastJobs(folder).all_learnt()
        if options.subject in (None, each.subject)
        and (options.profile is None or options.profile in each.group)
    ]
    if options.form == "json":
        print(json.dumps([as_data(each) for each in found], allow_nan=False), file=out)
        return 0
    if not found:
        print(f"Nothing learnt yet from the jobs in {visible(str(folder))}.", file=out)
        return 0
    print(as_text(found, System(options.units or System.METRIC)), file=out, end="")
    return 0


def as_text(found: list[Learnt], system: System) -> str:
    """A heading a subject, a line a figure."""
    lines: list[str] = []
    for subject in SUBJECTS:
        own = [each for each in found if each.subject == subject.key]
        if own:
            lines += [f"{subject.title} ({subject.key})"]
            lines += [f"  {title(each, system)}: {in_short(each, system)}" for each in own]
    return "".join(f"{line}\n" for line in lines)


def as_data(each: Learnt) -> dict[str, Any]:
    """It as plain data; a figure is in the unit named, a multiple in none; what is not known is null."""
    return {
        "subject": each.subject,
        "of": list(each.group),
        "unit": each.unit.base if each.unit is not None else None,
        "middle": each.middle,
        "low": each.low,
        "high": each.high,
        "covers": each.covers_fraction or None,
        "observations": [_observation(one) for one in each.observations],
        "left_out": [{**_observation(one), "why": why} for one, why in each.without],
    }


def _observation(one: Observation) -> dict[str, Any]:
    return {
        "job": one.job,
        "file": one.file,
        "date": local_date(one.at),
        "low": one.low,
        "high": one.high if one.high < NO_END else None,
        "count": one.count,
        "rehearsal": one.rehearsal,
    }
