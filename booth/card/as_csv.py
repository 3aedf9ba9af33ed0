"""A job as a table for any tool: a row for every entry of its log, and one for every figure in it. Pure.

RFC 4180: a line of names, commas, lines that end in CR LF, quotes where they are needed. The columns
are these, in this order, whatever the job; a later version may add some behind them and changes none:

job         the name of the job
row         'entry', or 'figure' of the entry above it
number      of the entry in the log
time        when, UTC, as 2025-06-15T15:06:40Z; empty where the clock had gone wild
local       the same as a clock on the wall had it, date and time of day
product     what was sprayed when it was kept
part, coat  where the entry names them
kind        of the entry, as in the log
what        of a figure: its name in the log
value, unit of a figure: in the base unit of its kind
shown       of a figure: in the units asked for, with its unit
typed       of a figure: as the painter entered it
words       of an entry: in words
voided      'yes' where it no longer counts

A text that a spreadsheet would take for a formula has an apostrophe before it.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from typing import Any

import msgspec

from booth.card.build import Kept, When
from booth.files.safe_text import visible
from booth.job.products import product_of
from booth.log.events import Event, UnknownEvent
from booth.log.fold import Job, NoJob, fold
from booth.moment import utc_text
from booth.units import Kind, Quantity, System, show
from booth.words.event_words import KIND_OF_UNIT, teller

COLUMNS = (
    *("job", "row", "number", "time", "local", "product", "part", "coat", "kind"),
    *("what", "value", "unit", "shown", "typed", "words", "voided"),
)
ENTRY, FIGURE = "entry", "figure"
#: What begins a formula, also in its wide form.
FORMULA = ("=", "+", "-", "@", "\uff1d", "\uff0b", "\uff0d", "\uff20")
#: The unit of a bare number of an entry, by the end of its name.
UNITS = {
    "seconds": "s",
    "_s": "s",
    "_ml_min": "ml/min",
    "_g_ml": "g/ml",
    "_m3_min": "m3/min",
    "_m2": "m2",
}
#: Fields that are no figures: what an entry is about, and what stands in columns of its own.
ABOUT = frozenset(
    {"n", "at", "part", "coat", "version", "profile", "later", "shop", "racks"}
    | {"batch", "onto", "target", "product"}
)
#: Kinds that a unit alone does not tell.
KINDS = {"tip": Kind.TIP}


def harmless(text: str) -> str:
    """Give a text as a cell that no spreadsheet takes for a formula.

    >>> harmless("=1+1"), harmless("hood")
    ("'=1+1", 'hood')
    """
    shown = visible(text)
    return f"'{shown}" if shown.lstrip(" '").startswith(FORMULA) else shown


def as_csv(
    events: Iterable[Kept], system: System, time_of: When, date_of: When, name: str = ""
) -> str:
    """Give the table. What is handed in: see ``card_of``."""
    events = list(events)
    try:
        job = fold(events)
    except NoJob:
        job = None
    out = io.StringIO(newline="")
    table = csv.DictWriter(out, COLUMNS, restval="", lineterminator="\r\n")
    table.writeheader()
    told = teller(system, job)
    called = harmless(name or (job.opened.job if job is not None else ""))
    for each in events:
        row = {"job": called, **_about(each, job, time_of, date_of)}
        void = job is not None and each.n in job.void
        entry = {"row": ENTRY, "words": harmless(told(each)), "voided": "yes" if void else ""}
        table.writerow({**row, **entry})
        for figure in _figures(each, system):
            table.writerow({**row, "row": FIGURE, "voided": entry["voided"], **figure})
    return out.getvalue()


def _about(each: Kept, job: Job | None, time_of: When, date_of: When) -> dict[str, str]:
    product = job and product_of(job, each.n).profile.name
    kind = each.event if isinstance(each, UnknownEvent) else type(each).__struct_config__.tag
    part, coat = getattr(each, "part", ""), getattr(each, "coat", None)
    return {
        "number": str(each.n),
        "time": utc_text(each.at, "%Y-%m-%dT%H:%M:%SZ", ""),
        "local": f"{date_of(each.at)} {time_of(each.at)}",
        "product": harmless(product or ""),
        "part": harmless(part) if isinstance(part, str) else "",
        "coat": str(coat) if isinstance(coat, int) else "",
        "kind": harmless(str(kind)),
    }


def _figures(each: Kept, system: System) -> Iterator[dict[str, str]]:
    if not isinstance(each, Event):
        return
    for field in msgspec.structs.fields(type(each)):
        value = getattr(each, field.name)
        told = field.name not in ABOUT and value != field.default
        if told or isinstance(value, Quantity):
            yield from _figure(field.name, value, system)


def _figure(what: str, value: Any, system: System) -> Iterator[dict[str, str]]:
    """The rows of what a field holds: a quantity, a number with a unit, several of them by name."""
    if isinstance(value, Quantity):
        kind = KINDS.get(what, KIND_OF_UNIT.get(value.unit))
        shown = show(value.value, kind, system) if kind is not None else ""
        yield _row(what, value.value, value.unit, shown, value.typed)
    elif isinstance(value, dict):
        for name, inner in value.items():
            yield from _figure(f"{what} {name}", inner, system)
    elif isinstance(value, tuple):
        for at, inner in enumerate(value, 1):
            named = getattr(inner, "name", None)
            label = f"{what} {named}" if isinstance(named, str) else f"{what} {at}"
            yield from _figure(label, getattr(inner, "amount", inner), system)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        unit = next((unit for end, unit in UNITS.items() if what.endswith(end)), "")
        kind = KIND_OF_UNIT.get(unit) if unit else None
        yield _row(what, value, unit, show(value, kind, system) if kind is not None else "", "")


def _row(what: str, value: float, unit: str, shown: str, typed: str) -> dict[str, str]:
    return {
        "what": harmless(what),
        "value": f"{value:.12g}",
        "unit": harmless(unit),
        # A number with its unit, made here: below zero it begins with its sign.
        "shown": shown if shown.lstrip("-")[:1].isdigit() else harmless(shown),
        "typed": harmless(typed),
    }
