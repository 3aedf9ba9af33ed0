"""The rest of the job as a time line: one gun, several parts, each coat after its wait. Pure.

Times are seconds from now: what lies before now is negative. The scheduler knows no job; what is
handed to it is taken from a job in ``planned``.
"""

from __future__ import annotations

import enum
from collections.abc import Sequence

import msgspec

#: A coat on one part, where nothing better is known [s]. Common practice, no source.
COAT_S = 300.0


class Span(enum.Enum):
    """What a stretch of time on a part is."""

    SPRAYED = "sprayed"
    SPRAY = "spray"
    WAIT = "wait"
    READY = "ready"
    LATE = "late"


class Block(msgspec.Struct, frozen=True):
    """One stretch on one part: of the coat it is, or follows."""

    part: str
    coat: int
    span: Span
    start_s: float
    end_s: float


class PartState(msgspec.Struct, frozen=True):
    """A part as it stands now.

    coats: finished; spray_s: what a coat on it takes; spraying_s: what is left of the coat being
    sprayed, None where none is; since_s: when its last coat ended; opens_s, closes_s: its next coat,
    opens_s None where that is not known; wanted: its coats, where not as many as on every part;
    is_rack: its window closes from where a coat began, on its first piece.
    """

    name: str
    coats: int
    spray_s: float
    spraying_s: float | None = None
    since_s: float = 0.0
    opens_s: float | None = 0.0
    closes_s: float | None = None
    wanted: int | None = None
    is_rack: bool = False

    def lacks(self, usual: int) -> int:
        """How many coats are to come."""
        return max((usual if self.wanted is None else self.wanted) - self.coats, 0)


class Rules(msgspec.Struct, frozen=True):
    """coats: wanted on every part; waits_s: from the end of each coat to the next, the last for all
    that follow, None where it is not known; closes_s: the end of the recoat window, from the end of
    the coat, None where it never closes; starts_s: nothing may be sprayed before (induction)."""

    coats: int
    waits_s: tuple[float | None, ...] = (0.0,)
    closes_s: float | None = None
    starts_s: float = 0.0

    def after(self, coat: int, end_s: float) -> float | None:
        """When the coat after `coat`, which ends then, may go on."""
        wait_s = self.waits_s[min(coat, len(self.waits_s)) - 1]
        return None if wait_s is None else end_s + wait_s


class Pot(msgspec.Struct, frozen=True):
    """A batch in use, or to be mixed: its name, when it was mixed, when its pot life is over."""

    name: str
    start_s: float
    end_s: float


class Cause(enum.Enum):
    """What cannot be met."""

    WINDOW = "recoat window"
    POT_LIFE = "pot life"
    WAIT = "wait not known"


class Trouble(msgspec.Struct, frozen=True):
    """A window or a pot life that cannot be met.

    part, coat: the first that it meets; by_s: by how much; at_s: when it is over; pot: the batch.
    """

    cause: Cause
    part: str
    coat: int
    by_s: float
    at_s: float
    pot: str = ""


class Schedule(msgspec.Struct, frozen=True):
    """blocks: from now on, in order of time; ends: when the last coat is on, by part;
    troubles: what cannot be met; unknown: coats that have no time, since a wait is not known."""

    blocks: tuple[Block, ...]
    ends: tuple[tuple[str, float], ...]
    troubles: tuple[Trouble, ...]
    unknown: int = 0

    @property
    def last_s(self) -> float:
        return max((end for _, end in self.ends), default=0.0)

    @property
    def remaining(self) -> int:
        """How many coats are still to be sprayed."""
        return sum(block.span is Span.SPRAY for block in self.blocks) + self.unknown


def schedule(parts: Sequence[PartState], rules: Rules, pots: Sequence[Pot] = ()) -> Schedule:
    """Give the rest of the job: the gun goes on wherever a part is ready, and waits only if none is.

    Of the parts that are ready the one with the fewest coats comes first, in the order given; but a
    part whose window would close meanwhile goes before it. The same input gives the same plan.
    """
    blocks: list[Block] = []
    troubles: list[Trouble] = []
    live = {each.name: each for each in parts}

    def spray(part: PartState, start: float, seconds: float) -> float:
        end = start + seconds
        first = start if part.is_rack else end
        blocks.append(Block(part.name, part.coats + 1, Span.SPRAY, start, end))
        live[part.name] = PartState(
            part.name,
            part.coats + 1,
            part.spray_s,
            since_s=end,
            opens_s=rules.after(part.coats + 1, end),
            closes_s=None if rules.closes_s is None else first + rules.closes_s,
            wanted=part.wanted,
            is_rack=part.is_rack,
        )
        return end

    free_s = rules.starts_s
    for part in parts:
        if part.spraying_s is not None:
            free_s = max(free_s, spray(part, 0.0, max(part.spraying_s, 0.0)))
    while waiting := [
        (part.opens_s, part)
        for part in live.values()
        if part.lacks(rules.coats) and part.opens_s is not None
    ]:
        start = max(free_s, min(opens_s for opens_s, _ in waiting))
        part = _choose([each for opens_s, each in waiting if opens_s <= start], start)
        blocks += _before_coat(part, start)
        if part.closes_s is not None and start > part.closes_s:
            late_s = start - part.closes_s
            troubles.append(Trouble(Cause.WINDOW, part.name, part.coats + 1, late_s, part.closes_s))
        free_s = spray(part, start, part.spray_s)
    missing = [part for part in live.values() if part.lacks(rules.coats)]
    troubles += [
        Trouble(Cause.WAIT, part.name, part.coats + 1, 0.0, part.since_s) for part in missing
    ]
    troubles += _pot_troubles(pots, blocks)
    blocks.sort(key=lambda block: (block.start_s, block.end_s, block.part, block.coat))
    ends = tuple((part.name, part.since_s) for part in live.values() if part.coats)
    unknown = sum(part.lacks(rules.coats) for part in missing)
    return Schedule(tuple(blocks), ends, tuple(troubles), unknown)


def _choose(ready: list[PartState], start: float) -> PartState:
    """The next part: the order of coats, unless a window closes while another is sprayed."""
    first = min(ready, key=lambda each: (each.coats, each.opens_s or 0.0))
    pressed = [
        (part.closes_s, place, part)
        for place, part in enumerate(ready)
        if part is not first
        and part.closes_s is not None
        and start <= part.closes_s < start + first.spray_s
        and (first.closes_s is None or part.closes_s < first.closes_s)
    ]
    return min(pressed)[2] if pressed else first


def _before_coat(part: PartState, start: float) -> list[Block]:
    """The wait before a coat, the time it stood ready, the time past its window."""
    if part.coats == 0:
        return []
    closes = start
    if part.closes_s is not None:
        closes = min(max(part.closes_s, part.opens_s or 0.0), start)
    opens = start if part.opens_s is None else part.opens_s
    spans = (
        (Span.WAIT, part.since_s, min(opens, start)),
        (Span.READY, max(opens, part.since_s), closes),
        (Span.LATE, closes, start),
    )
    return [
        Block(part.name, part.coats, span, begin, end) for span, begin, end in spans if end > begin
    ]


def _pot_troubles(pots: Sequence[Pot], blocks: list[Block]) -> list[Trouble]:
    """Coats that would still be sprayed when the pot life of every batch is over."""
    if not pots:
        return []
    pot = max(pots, key=lambda each: each.end_s)
    late = [block for block in blocks if block.span is Span.SPRAY and block.end_s > pot.end_s]
    if not late:
        return []
    first = min(late, key=lambda block: block.start_s)
    late_s = max(block.end_s for block in late) - pot.end_s
    return [Trouble(Cause.POT_LIFE, first.part, first.coat, late_s, pot.end_s, pot.name)]
