"""Whose the figure is and how it stands, in block letters along the top of its field. Pure."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rich.cells import cell_len

from booth.widgets.lettering.bigfigure import LEAST_ROWS, draw, side_by_side
from booth.widgets.text import fit, plain
from booth.words.shown import Readout, Tone

#: What parts two words beside one another, as a share of their height.
GAP = 0.75


class Block(NamedTuple):
    """Lines and the cell at which they begin."""

    x: int
    lines: tuple[str, ...]


#: What stands in one band of the field, and the bands from the top down.
Band = tuple[Block, ...]


def shorter(name: str) -> Iterator[str]:
    """A name, then with ever fewer of its words: never a part of one."""
    words = plain(name).split()
    for count in range(len(words), 0, -1):
        yield " ".join(words[:count])


def signals(readout: Readout) -> tuple[str, ...]:
    """The state with its sign, and without it where room is short."""
    word = plain(readout.shown_word).strip()
    if not word or readout.tone is Tone.PLAIN:
        return (word,) if word else ()
    return (f"{readout.tone.shape} {word}", word)


def heads(readout: Readout, width: int, rows: int, most: int) -> tuple[Band, ...]:
    """Give the bands, each `rows` high; at most `most` of them.

    One band holds both, the name at the left, the state at the right; else each has its own; where
    there is room for one only, the name is shortened by whole words. The state is never shortened:
    what does not fit so is set smaller.
    """
    whose, states = plain(readout.whose).strip(), signals(readout)
    gap = max(2, round(rows * GAP))
    if not whose and not states:
        return ()
    if not whose or not states:
        texts = shorter(whose) if whose else iter(states)
        return (
            _first(texts, width, rows, bool(states)) or (_small(whose or states[-1], width, rows),),
        )
    for state in states:
        both = _beside(whose, state, width, rows, gap)
        if both:
            return (both,)
    if most > 1:
        return (
            _first(shorter(whose), width, rows, False) or (_small(whose, width, rows),),
            _first(iter(states), width, rows, True) or (_small(states[-1], width, rows, True),),
        )
    for name in shorter(whose):
        both = _beside(name, states[-1], width, rows, gap)
        if both:
            return (both,)
    # The state is what has to be seen from afar: the name stands small in what room it leaves.
    alone = _first(iter(states), width, rows, True) or (_small(states[-1], width, rows, True),)
    room = alone[0].x - 2
    return (((Block(0, (fit(whose, room),)),) if room > 0 else ()) + alone,)


def _beside(whose: str, state: str, width: int, rows: int, gap: int) -> Band:
    found = side_by_side((whose, state), width, rows, gap)
    if not found:
        return ()
    left, right = found
    return (Block(0, left), Block(width - len(right[0]), right))


def _first(texts: Iterator[str], width: int, rows: int, right: bool) -> Band:
    for text in texts:
        found = side_by_side((text,), width, rows, 0)
        if found:
            return (Block(width - len(found[0][0]) if right else 0, found[0]),)
    return ()


def _small(text: str, width: int, rows: int, right: bool = False) -> Block:
    """As large as it fits, and if only as plain text."""
    lines = tuple(draw(text, width, rows)) if rows >= LEAST_ROWS else (fit(text, width),)
    return Block(max(width - cell_len(lines[0]), 0) if right and lines else 0, lines)


def head_text(readout: Readout, width: int) -> Band:
    """The same in one row of plain text, where there is no room for blocks."""
    whose, states = plain(readout.whose).strip(), signals(readout)
    state = fit(states[0], width) if states else ""
    room = width - cell_len(state) - 2 * bool(state)
    left = (Block(0, (fit(whose, room),)),) if whose and room > 0 else ()
    right = (Block(width - cell_len(state), (state,)),) if state else ()
    return left + right
