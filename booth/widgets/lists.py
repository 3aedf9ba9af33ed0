"""Lists of which one line stays in sight: what is picked from, and the steps of the job."""

from __future__ import annotations

import enum
import textwrap
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
from booth.widgets.text import LEFT_OUT, fit, pad, plain
from booth.words.shown import Lines, PickLine, Tone

#: From this room on what stands behind a name can be read.
LEAST_BEHIND = 34
#: A name keeps so many cells, whatever must be seen behind it.
LEAST_NAME = 12
PICKED = "bold reverse"
#: A name takes up to so many rows.
MOST_ROWS = 3


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


def names_of(line: PickLine, room: int) -> list[str]:
    """The name of a line in rows of whole words."""
    name = plain(line.name)
    if line.head or cell_len(name) <= room:
        return [name]
    return textwrap.wrap(name, max(room, 1), max_lines=MOST_ROWS, placeholder=LEFT_OUT) or [""]


def _room(line: PickLine, column: int, roomy: bool, width: int) -> tuple[int, str]:
    """How wide its name may be, and what stands behind it."""
    behind = plain(line.behind) if line.must or roomy else ""
    room = width - 4 - cell_len(behind)
    if behind and line.must and room < column:
        behind = fit(behind, max(width - 4 - LEAST_NAME, 0))
        return max(width - 4 - cell_len(behind), LEAST_NAME), behind
    return (column if behind else max(width - 4, 1)), behind


def _columns(shown: Lines, width: int, height: int) -> tuple[int, bool]:
    """How wide the names are, and whether what stands behind them can be read."""
    first = _first(shown, height)
    seen = shown.lines[first : first + height]
    longest = max((cell_len(plain(line.name)) for line in seen if not line.head), default=0)
    column = min(longest, max(width - 6, 1))
    return column, width - column >= LEAST_BEHIND


def _plan(shown: Lines, width: int, height: int) -> list[tuple[int, list[str]]]:
    """The lines in sight, each with its name in rows: all of it where the list has room, of the picked
    one in any case."""
    column, roomy = _columns(shown, width, height)
    first = _first(shown, height)
    seen = range(first, min(first + height, len(shown.lines)))
    plan = []
    for number in seen:
        line = shown.lines[number]
        plan.append((number, names_of(line, _room(line, column, roomy, width - 2)[0])))
    if len(plan) < len(shown.lines) or sum(len(names) for _, names in plan) > height:
        plan = [
            (number, names if _is_whole(shown, number, names, height) else [names[0]])
            for number, names in plan
        ]
    while sum(len(names) for _, names in plan) > height and len(plan) > 1:
        plan.pop(0 if plan[-1][0] == shown.picked else -1)
    return plan


def _is_whole(shown: Lines, number: int, names: list[str], height: int) -> bool:
    """Whether a name has its rows where not all have: of what is picked, and of what runs."""
    line = shown.lines[number]
    return len(names) <= height and (number == shown.picked or bool(line.must and line.mark))


def rows_in_all(lines: Sequence[PickLine], width: int) -> int:
    """How many rows they take where every name is whole."""
    plan = _plan(Lines(tuple(lines)), width, MOST_ROWS * max(len(lines), 1))
    return sum(len(names) for _, names in plan)


@sized
def lay_out_lines(shown: Lines, width: int, height: int) -> list[Row]:
    """Give the list for a size; what stands behind the names gives way where there is little room.

    An arrow at the edge says that the list goes on there.
    """
    column, roomy = _columns(shown, width, height)
    plan, each = _plan(shown, width, height), rows_each(shown.lines, height)
    drawn: list[Row] = []
    for number, names in plan:
        line, picked = shown.lines[number], number == shown.picked
        room, behind = _room(line, column, roomy, width - 2)
        said = names if len(names) > 1 else [plain(line.name)]
        for n, name in enumerate(said):
            more = " "
            if not drawn and number > 0:
                more = "↑"
            elif number == plan[-1][0] and number < len(shown.lines) - 1 and n == len(said) - 1:
                more = "↓"
            row = _line(line, name, "" if n else behind, picked, room, width - 2, n > 0)
            drawn.append((*row, (f" {more}", QUIET)))
        drawn += blank(width, each - len(names))
    return drawn


def _line(
    line: PickLine, name: str, behind: str, picked: bool, room: int, width: int, goes_on: bool
) -> Row:
    if line.head:
        return exactly(((plain(line.name), HEAD),), width)
    style = PICKED if picked else ""
    sign = " " if goes_on else "→" if picked else line.mark or " "
    pieces = (
        (f"{sign} ", style),
        (pad(name, room), style),
        ("  ", style),
        (behind, style or QUIET),
    )
    return exactly(pieces, width, style)


class PickList(Drawn):
    """Draws Lines; a click picks one, a second click on it takes it."""

    draw = staticmethod(lay_out_lines)

    def index_at(self, shown: Lines, offset: Offset, size: Size) -> int | None:
        y, each = offset.y, rows_each(shown.lines, size.height)
        for at, names in _plan(shown, *size):
            y -= max(len(names), each)
            if y < 0:
                return None if shown.lines[at].head else at
        return None


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
