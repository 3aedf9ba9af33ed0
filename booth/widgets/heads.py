"""Whose the figure is and how it stands, in block letters along the top of its field. Pure."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rich.cells import cell_len

from booth.widgets.lettering.bigfigure import LEAST_ROWS, draw, side_by_side
from booth.widgets.text import fit, plain
from booth.words.afar import short_state
from booth.words.shown import Readout, Tone

#: What parts two words beside one another, as a share of their height.
GAP = 0.75


class Block(NamedTuple):
    """Lines, the cell at which they begin, and what they say."""

    x: int
    lines: tuple[str, ...]
    said: str


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
    return _signed(word, readout.tone) if word else ()


def _signed(word: str, tone: Tone) -> tuple[str, ...]:
    return (word,) if tone is Tone.PLAIN else (f"{tone.shape} {word}", word)


def unsaid(readout: Readout, bands: tuple[Band, ...]) -> str:
    """What of name and state the bands say in short or small, to be said in full beneath."""
    said = {block.said for band in bands for block in band if len(block.lines) > 1}
    name, states = plain(readout.whose).strip(), signals(readout)
    left = [name] if name and name not in said and name not in plain(readout.label) else []
    left += states[-1:] if not said & {*states} else []
    return ", ".join(left)


def heads(readout: Readout, width: int, rows: int, most: int) -> tuple[Band, ...]:
    """Give the bands, each `rows` high; at most `most` of them.

    One band holds both, the name at the left, the state at the right; else each has its own; where
    there is room for one only, the state is said in short, then the name is shortened by whole words.
    """
    whose, states = plain(readout.whose).strip(), signals(readout)
    short = _signed(short_state(states[-1]), readout.tone) if states else ()
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
    name = _first(shorter(whose), width, rows, False)
    if most > 1:
        return (
            name or (_small(whose, width, rows),),
            _first(iter((*states, *short)), width, rows, True)
            or (_small(states[-1], width, rows, True),),
        )
    for words in shorter(whose):
        for state in (*states, *short):
            both = _beside(words, state, width, rows, gap)
            if both:
                return (both,)
    # The state is what has to be seen from afar: the name stands small in what room it leaves.
    alone = _first(iter((*states, *short)), width, rows, True) or (
        _small(states[-1], width, rows, True),
    )
    room = alone[0].x - 2
    small = fit(whose, room) if room >= cell_len(whose.split()[0]) else ""
    return (((Block(0, (small,), small),) if small else ()) + alone,)


def _beside(whose: str, state: str, width: int, rows: int, gap: int) -> Band:
    found = side_by_side((whose, state), width, rows, gap)
    if not found:
        return ()
    left, right = found
    return (Block(0, left, whose), Block(width - len(right[0]), right, state))


def _first(texts: Iterator[str], width: int, rows: int, right: bool) -> Band:
    for text in texts:
        found = side_by_side((text,), width, rows, 0)
        if found:
            return (Block(width - len(found[0][0]) if right else 0, found[0], text),)
    return ()


def _small(text: str, width: int, rows: int, right: bool = False) -> Block:
    """As large as it fits, and if only as plain text."""
    lines = tuple(draw(text, width, rows)) if rows >= LEAST_ROWS else (fit(text, width),)
    return Block(max(width - cell_len(lines[0]), 0) if right and lines else 0, lines, text)


def head_text(readout: Readout, width: int) -> Band:
    """The same in one row of plain text, where there is no room for blocks."""
    whose, states = plain(readout.whose).strip(), signals(readout)
    state = fit(states[0], width) if states else ""
    room = width - cell_len(state) - 2 * bool(state)
    left = (Block(0, (fit(whose, room),), whose),) if whose and room > 0 else ()
    right = (Block(width - cell_len(state), (state,), state),) if state else ()
    return left + right
