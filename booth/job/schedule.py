"""The rest of the job as a time line: one gun, several parts, each coat after its wait. Pure.

Times are seconds from now: what lies before now is negative. The scheduler knows no job; what is
handed to it is taken from a job in ``planned``.
"""

from __future__ import annotations

import enum
from collections.abc import Sequence
from dataclasses import dataclass


class Span(enum.Enum):
    """What a stretch of time on a part is."""

    SPRAYED = "sprayed"
    SPRAY = "spray"
    WAIT = "wait"
    READY = "ready"
    LATE = "late"


@dataclass(frozen=True, slots=True)
class Block:
    """One stretch on one part: of the coat it is, or follows."""

    part: str
    coat: int
    span: Span
    start_s: float
    end_s: float


@dataclass(frozen=True, slots=True)
class PartState:
    """A part as it stands now.

    coats: finished; spray_s: what a coat on it takes; spraying_s: what is left of the coat being
    sprayed, None where none is; since_s: when its last coat ended; opens_s, closes_s: its next coat.
    """

    name: str
    coats: int
    spray_s: float
    spraying_s: float | None = None
    since_s: float = 0.0
    opens_s: float = 0.0
    closes_s: float | None = None


@dataclass(frozen=True, slots=True)
class Rules:
    """coats: wanted on every part; wait_s: from the end of a coat to the next; closes_s: the end of
    the recoat window, from the end of the coat, None where it never closes; starts_s: nothing may
    be sprayed before (induction)."""

    coats: int
    wait_s: float = 0.0
    closes_s: float | None = None
    starts_s: float = 0.0


@dataclass(frozen=True, slots=True)
class Pot:
    """A batch in use, or to be mixed: its name, when it was mixed, when its pot life is over."""

    name: str
    start_s: float
    end_s: float


class Cause(enum.Enum):
    """What cannot be met."""

    WINDOW = "recoat window"
    POT_LIFE = "pot life"


@dataclass(frozen=True, slots=True)
class Trouble:
    """A window or a pot life that cannot be met.

    part, coat: the first that it meets; by_s: by how much; at_s: when it is over; pot: the batch.
    """

    cause: Cause
    part: str
    coat: int
    by_s: float
    at_s: float
    pot: str = ""


@dataclass(frozen=True, slots=True)
class Schedule:
    """blocks: from now on, in order of time; ends: when the last coat is on, by part;
    troubles: what cannot be met; remaining: how many coats are still to be sprayed."""

    blocks: tuple[Block, ...]
    ends: tuple[tuple[str, float], ...]
    troubles: tuple[Trouble, ...]
    remaining: int

    @property
    def last_s(self) -> float:
        return max((end for _, end in self.ends), default=0.0)


@dataclass(slots=True)
class _Part:
    state: PartState
    place: int
    coats: int
    since_s: float
    opens_s: float
    closes_s: float | None


def schedule(parts: Sequence[PartState], rules: Rules, pots: Sequence[Pot] = ()) -> Schedule:
    """Give the rest of the job: the gun goes on wherever a part is ready, and waits only if none is.

    Of the parts that are ready the one with the fewest coats comes first, in the order given; but a
    part whose window would close meanwhile goes before it. The same input gives the same plan.
    """
    blocks: list[Block] = []
    troubles: list[Trouble] = []
    live = [
        _Part(each, place, each.coats, each.since_s, each.opens_s, each.closes_s)
        for place, each in enumerate(parts)
    ]
    ends = {each.name: each.since_s for each in parts if each.coats}
    free_s, remaining = 0.0, 0
    for part in live:
        if part.state.spraying_s is not None:
            end = max(part.state.spraying_s, 0.0)
            free_s = max(free_s, end)
            remaining += 1
            ends[part.state.name] = end
            blocks.append(Block(part.state.name, part.coats + 1, Span.SPRAY, 0.0, end))
            _after_coat(part, end, rules)
    free_s = max(free_s, rules.starts_s) if _waiting(live, rules) else free_s
    while waiting := _waiting(live, rules):
        start = max(free_s, min(part.opens_s for part in waiting))
        part = _choose([each for each in waiting if each.opens_s <= start], start)
        blocks += _before_coat(part, start)
        if part.closes_s is not None and start > part.closes_s:
            late = start - part.closes_s
            troubles.append(
                Trouble(Cause.WINDOW, part.state.name, part.coats + 1, late, part.closes_s)
            )
        free_s = start + part.state.spray_s
        remaining += 1
        ends[part.state.name] = free_s
        blocks.append(Block(part.state.name, part.coats + 1, Span.SPRAY, start, free_s))
        _after_coat(part, free_s, rules)
    troubles += _pot_troubles(pots, blocks)
    blocks.sort(key=lambda block: (block.start_s, block.end_s, block.part, block.coat))
    in_order = tuple((each.name, ends[each.name]) for each in parts if each.name in ends)
    return Schedule(tuple(blocks), in_order, tuple(troubles), remaining)


def _waiting(parts: list[_Part], rules: Rules) -> list[_Part]:
    return [part for part in parts if part.coats < rules.coats]


def _choose(ready: list[_Part], start: float) -> _Part:
    """The next part: the order of coats, unless a window closes while another is sprayed."""
    first = min(ready, key=lambda each: (each.coats, each.opens_s, each.place))
    pressed = [
        part
        for part in ready
        if part is not first
        and part.closes_s is not None
        and start <= part.closes_s < start + first.state.spray_s
        and (first.closes_s is None or part.closes_s < first.closes_s)
    ]
    return min(pressed, key=lambda each: (each.closes_s, each.place)) if pressed else first


def _before_coat(part: _Part, start: float) -> list[Block]:
    """The wait before a coat, the time it stood ready, the time past its window."""
    if part.coats == 0:
        return []
    name, found = part.state.name, []
    closes = start if part.closes_s is None else min(max(part.closes_s, part.opens_s), start)
    for span, begin, end in (
        (Span.WAIT, part.since_s, min(part.opens_s, start)),
        (Span.READY, max(part.opens_s, part.since_s), closes),
        (Span.LATE, closes, start),
    ):
        if end > begin:
            found.append(Block(name, part.coats, span, begin, end))
    return found


def _after_coat(part: _Part, end: float, rules: Rules) -> None:
    part.coats += 1
    part.since_s = end
    part.opens_s = end + rules.wait_s
    part.closes_s = None if rules.closes_s is None else end + rules.closes_s


def _pot_troubles(pots: Sequence[Pot], blocks: list[Block]) -> list[Trouble]:
    """Coats that would still be sprayed when the pot life of every batch is over."""
    sprayed = [block for block in blocks if block.span is Span.SPRAY]
    if not pots or not sprayed:
        return []
    pot = max(pots, key=lambda each: each.end_s)
    last = max(block.end_s for block in sprayed)
    if last <= pot.end_s:
        return []
    first = min((b for b in sprayed if b.end_s > pot.end_s), key=lambda b: b.start_s)
    late = last - pot.end_s
    return [Trouble(Cause.POT_LIFE, first.part, first.coat, late, pot.end_s, pot.name)]
