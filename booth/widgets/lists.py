"""Lists of which one line stays in sight: what is picked from, and the steps of the job."""

from __future__ import annotations

import enum
from collections.abc import Sequence

import msgspec
from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import (
    HEAD,
    MARKED,
    QUIET,
    Row,
    blank,
    exactly,
    first_in_sight,
    inked,
    sized,
    spread,
)
from booth.widgets.text import fit, pad, plain
from booth.words.shown import Lines, PickLine, Tone

#: From this room on what stands behind a name can be read.
LEAST_BEHIND = 34
#: A name keeps so many cells, whatever must be seen behind it.
LEAST_NAME = 12
PICKED = "bold reverse"


def step(lines: Sequence[PickLine], picked: int, by: int) -> int:
    """The line so many further on, headings left out; the same where there is none."""
    at, left = picked, abs(by)
    while left and 0 <= at + (1 if by > 0 else -1) < len(lines):
        at += 1 if by > 0 else -1
        if not lines[at].head:
            picked, left = at, left - 1
    return picked


def rows_each(lines: Sequence[PickLine], height: int) -> int:
    """Give how many rows a line takes: two where there is room, to be read from further off."""
    return 2 if height >= 2 * len(lines) and not any(line.head for line in lines) else 1


def _first(shown: Lines, height: int) -> int:
    return first_in_sight(len(shown.lines), shown.picked, height, height // 2)


@sized
def lay_out_lines(shown: Lines, width: int, height: int) -> list[Row]:
    """Give the list for a size; what stands behind the names gives way where there is little room.

    An arrow at the edge says that the list goes on there.
    """
    lines, first = shown.lines, _first(shown, height)
    last = first + height
    seen = lines[first:last]
    longest = max((cell_len(plain(line.name)) for line in seen if not line.head), default=0)
    column = min(longest, max(width - 6, 1))
    roomy = width - column >= LEAST_BEHIND
    drawn: list[Row] = []
    for number, line in enumerate(seen, first):
        more = " "
        if number == first and first > 0:
            more = "↑"
        elif number == last - 1 and last < len(lines):
            more = "↓"
        row = _line(line, number == shown.picked, column, roomy, width - 2)
        drawn.append((*row, (f" {more}", QUIET)))
        drawn += blank(width, rows_each(lines, height) - 1)
    return drawn


def _line(line: PickLine, picked: bool, column: int, roomy: bool, width: int) -> Row:
    if line.head:
        return exactly(((plain(line.name), HEAD),), width)
    style = PICKED if picked else ""
    mark = (f"{'→' if picked else line.mark or ' '} ", style)
    behind = plain(line.behind) if line.must or roomy else ""
    room = width - 4 - cell_len(behind)
    if behind and line.must and room < column:
        behind = fit(behind, max(width - 4 - LEAST_NAME, 0))
        column = max(width - 4 - cell_len(behind), LEAST_NAME)
    name = (pad(line.name, column), style)
    return exactly((mark, name, ("  ", style), (behind, style or QUIET)), width, style)


class PickList(Drawn):
    """Draws Lines; a click picks one, a second click on it takes it."""

    draw = staticmethod(lay_out_lines)

    def index_at(self, shown: Lines, offset: Offset, size: Size) -> int | None:
        at = _first(shown, size.height) + offset.y // rows_each(shown.lines, size.height)
        return at if at < len(shown.lines) and not shown.lines[at].head else None


class StepState(enum.Enum):
    """The shape and the style of a state."""

    DONE = "√", inked(Tone.GOOD)
    CURRENT = "→", MARKED
    SKIPPED = "–", QUIET
    AGAIN = Tone.CAUTION.shape, inked(Tone.CAUTION)
    OPEN = " ", ""


# A word beside the name only where the name keeps this much.
WORDS, NAME_KEEPS = {StepState.SKIPPED: " skipped", StepState.AGAIN: " take again"}, 12


class StepRow(msgspec.Struct, frozen=True):
    """number: as shown; name: in the painter's words; state."""

    number: int
    name: str
    state: StepState = StepState.OPEN


def _current(steps: tuple[StepRow, ...]) -> int:
    """The position of the current step; the first open one where none is; else the last."""
    states = [step.state for step in steps]
    for state in (StepState.CURRENT, StepState.OPEN):
        if state in states:
            return states.index(state)
    return len(steps) - 1


def window(count: int, current: int, height: int) -> tuple[int, int]:
    """Give the first and one past the last step to show; rows are left to count those out of sight."""
    if count <= height:
        return 0, count
    start = first_in_sight(count, current, height, height // 3)
    end = start + height
    if height >= 3:
        return start + (start > 0), end - (end < count)
    return start, end


def _step(step: StepRow, digits: int, width: int) -> Row:
    (shape, style), name = step.state.value, plain(step.name)
    head = f"{shape} {step.number:>{digits}} "
    left: Row = ((head + name, style),)
    word = WORDS.get(step.state, "")
    room = width - cell_len(head) - len(word)
    if word and room >= min(NAME_KEEPS, cell_len(name)):
        return spread(left, ((word, style),), width, style)
    return exactly(left, width, style)


@sized
def lay_out_steps(steps: tuple[StepRow, ...], width: int, height: int) -> list[Row]:
    """Give the list for a size."""
    start, end = window(len(steps), _current(steps), height)
    digits = max(len(str(step.number)) for step in steps)
    rows = [_step(step, digits, width) for step in steps[start:end]]
    if height >= 3:
        if start > 0:
            rows.insert(0, ((f"↑ {start} more", QUIET),))
        if end < len(steps):
            rows.append(((f"↓ {len(steps) - end} more", QUIET),))
    return rows


class StepList(Drawn):
    """Draws the steps; a click on one asks for it."""

    class Picked(Drawn.Picked):
        """A step was clicked; index: its position."""

    DEFAULT_CSS = "StepList { width: 28; background: $surface; }"

    draw = staticmethod(lay_out_steps)

    def index_at(self, shown: tuple[StepRow, ...], offset: Offset, size: Size) -> int | None:
        start, end = window(len(shown), _current(shown), size.height)
        position = start + offset.y - int(start > 0 and size.height >= 3)
        return position if start <= position < end else None
