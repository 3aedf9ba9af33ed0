"""The sides of a rack as one line of a plan. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from booth.job.schedule import Block, Span

SPRAYING = (Span.SPRAYED, Span.SPRAY)
#: What is told where sides differ, the first of all: as everywhere, the side that holds the rack up.
WORST_FIRST = (Span.LATE, Span.WAIT, Span.READY)


def as_one(blocks: Sequence[Block]) -> tuple[Block, ...]:
    """The blocks of all sides on one line: each coat as it is, and between the coats what the side
    does that holds the rack up."""
    coats = [each for each in blocks if each.span in SPRAYING]
    between = [each for each in blocks if each.span not in SPRAYING]
    found: list[Block] = []
    edges = sorted({end for each in blocks for end in (each.start_s, each.end_s)})
    for start_s, end_s in pairwise(edges):
        if any(_covers(each, start_s, end_s) for each in coats):
            continue
        told = [each for each in between if _covers(each, start_s, end_s)]
        if not told:
            continue
        worst = min(told, key=lambda each: WORST_FIRST.index(each.span))
        last = found[-1] if found else None
        if last is not None and (last.span, last.end_s) == (worst.span, start_s):
            found[-1] = Block(last.part, last.coat, last.span, last.start_s, end_s)
        else:
            found.append(Block(worst.part, worst.coat, worst.span, start_s, end_s))
    return tuple(sorted((*coats, *found), key=lambda each: (each.start_s, each.end_s)))


def _covers(block: Block, start_s: float, end_s: float) -> bool:
    return block.start_s <= start_s and end_s <= block.end_s
