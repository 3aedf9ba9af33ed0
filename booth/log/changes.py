"""What of a running job was changed: its coats, its parts, the gun; and what it comes to. Pure.

See ``events``, which has all kinds.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from booth.log.opening import Event, JobOpened
from booth.log.rack import Rack
from booth.units.kinds import Quantity

#: More than any job has; a log may have been written by hand.
MOST_PARTS = 200


class CoatsChanged(Event, frozen=True, tag="coats changed"):
    """So many coats are to be laid of the present product. part: on which part; blank: on every one."""

    coats: int
    part: str = ""


class PartsChanged(Event, frozen=True, tag="parts changed"):
    """Parts came to the job or left it. What was laid on one that left stays in the log, and counts
    again where it comes back. racks: of what came, the racks, whose sides stand in `add`."""

    add: tuple[str, ...] = ()
    drop: tuple[str, ...] = ()
    racks: tuple[Rack, ...] = ()


class GunChanged(Event, frozen=True, tag="gun changed"):
    """The gun from here on. tip [mm], cup [ml]: where they are not what the shop file says of it."""

    gun: str = ""
    tip: Quantity | None = None
    cup: Quantity | None = None


class AgeTold(Event, frozen=True, tag="age told"):
    """The clock was in doubt, and the painter said how long ago entry `target` was [s]: what it began
    is counted from there."""

    target: int
    ago_s: float


class Fitted(NamedTuple):
    """The gun, its tip and cup as they are; since: the number of the entry that last changed what
    comes out of it, so that what was read of it before says nothing any more."""

    gun: str
    tip: Quantity | None = None
    cup: Quantity | None = None
    since: int = 0


class Parts(NamedTuple):
    """The parts of a job, and those of its racks of which a side is left."""

    names: tuple[str, ...]
    racks: tuple[Rack, ...]


def fitted_of(opened: JobOpened, live: Iterable[object]) -> Fitted:
    """The gun after these entries."""
    found = Fitted(opened.gun)
    for event in live:
        if isinstance(event, GunChanged):
            other = event.gun != found.gun or _size(event.tip) != _size(found.tip)
            since = event.n if other else found.since
            found = Fitted(event.gun, event.tip, event.cup, since)
    return found


def _size(tip: Quantity | None) -> float | None:
    return None if tip is None else tip.value


def parts_of(opened: JobOpened, live: Iterable[object]) -> Parts:
    """The parts after these entries. A job is never without one: what would leave none is passed over."""
    names, racks = list(opened.parts), list(opened.racks)
    for event in live:
        if isinstance(event, PartsChanged):
            added = [*names, *(each for each in event.add if each.strip())]
            left = [each for each in dict.fromkeys(added) if each not in event.drop]
            names = left[:MOST_PARTS] or names
            racks += event.racks
    real = [each for each in racks if each.is_real]
    held = {each.name: each for each in real if any(side in names for side in each.parts)}
    return Parts(tuple(names), tuple(held.values()))
