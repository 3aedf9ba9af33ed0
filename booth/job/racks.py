"""Racks: pieces alike, sprayed side by side of the rack as one row of the bench. Pure.

Each side is a part of the job, with coats and waits of its own; what is shown of the rack is the side
that holds it up.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import NamedTuple

from booth.job.products import last_coat
from booth.job.wait import Standing, State
from booth.log.events import CoatEnded, Rack
from booth.log.fold import Job
from booth.moment import elapsed

#: What is told of every side, whatever the others do.
URGENT = (State.LATE, State.CLOSING)


class Row(NamedTuple):
    """A part, or a rack with its sides, as one row. rack: None where it is a part alone."""

    title: str
    parts: tuple[str, ...]
    rack: Rack | None = None

    def side(self, part: str) -> str:
        """Which side of the rack a part is, as 'side 2'; "" where there is but one."""
        return part.rpartition(": ")[2] if self.rack is not None and self.rack.sides > 1 else ""

    @property
    def sided(self) -> str:
        """Its name, of a rack with its sides: '24 doors, both sides'."""
        return self.title if self.rack is None else self.rack.sided(self.parts)


def rows_of(job: Job) -> tuple[Row, ...]:
    """The parts of the job in their order, the sides of a rack in one row."""
    racks = {side: rack for rack in job.present.racks for side in rack.parts}
    found: dict[str, Row] = {}
    for part in job.parts:
        rack = racks.get(part)
        if rack is None:
            found[part] = Row(part, (part,))
        else:
            sides = tuple(side for side in rack.parts if side in job.parts)
            found.setdefault(sides[0], Row(rack.title, sides, rack))
    return tuple(found.values())


def row_of(job: Job, part: str) -> Row:
    """The row that a part stands in."""
    return next((row for row in rows_of(job) if part in row.parts), Row(part, (part,)))


def other_sides(job: Job, part: str) -> tuple[str, ...]:
    """The other sides of the same rack."""
    return tuple(each for each in row_of(job, part).parts if each != part)


def painted_last(job: Job, row: Row) -> str:
    """The side of a row on which a coat began last; the first where none is on."""

    def when(part: str) -> int:
        laid = last_coat(job, part)
        return laid[1].begun.n if laid is not None else 0

    return max(row.parts, key=when)


def of_rows(job: Job, found: Iterable[Standing]) -> list[Standing]:
    """What is told of all that runs: of a rack, for one thing, only the side that holds it up longest,
    and every window that is closing or closed."""
    if not job.present.racks:
        return list(found)
    racks = {side: rack.name for rack in job.present.racks for side in rack.parts}
    kept: list[Standing] = []
    slowest: dict[tuple[str, str], Standing] = {}
    for each in found:
        rack = racks.get(each.wait.part)
        if rack is None or each.state in URGENT:
            kept.append(each)
            continue
        key = rack, each.wait.what
        if key not in slowest or _left(each) > _left(slowest[key]):
            slowest[key] = each
    return [*kept, *slowest.values()]


def _left(each: Standing) -> tuple[float, float]:
    """How far it is from being open; of two that are open the younger one is further."""
    left_s = {State.UNKNOWN: math.inf, State.WAIT: each.remaining_s or 0.0}.get(each.state, -1.0)
    return left_s, -each.elapsed_s


def pieces_of(job: Job, part: str) -> int:
    """How many pieces a coat on this part covers."""
    rack = row_of(job, part).rack
    return rack.pieces if rack is not None else 1


def alike(job: Job, part: str) -> tuple[int, int]:
    """How many pieces alike, and how many sides of them, an area on `part` is of; on the whole job
    where it is no part: then only if the job is one rack."""
    rows = rows_of(job)
    if part in job.parts and len(job.parts) > 1:
        return pieces_of(job, part), 1
    rack = rows[0].rack if len(rows) == 1 else None
    return (rack.pieces, len(rows[0].parts)) if rack is not None else (1, 1)


def first_piece_s(job: Job, ended: CoatEnded) -> float:
    """How long before the coat ended the first piece had it [s]: 0 where the part is one piece."""
    coats = job.coats_on(ended.part) if pieces_of(job, ended.part) > 1 else ()
    begun = next((coat.begun for coat in coats if coat.ended is ended), None)
    return 0.0 if begun is None else elapsed(begun.at, ended.at).seconds
