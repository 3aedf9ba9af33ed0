"""The steps of the job, the current one kept in sight; each state has its shape."""

from __future__ import annotations

import enum

import msgspec
from rich.cells import cell_len
from textual.geometry import Offset, Size

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import MARKED, QUIET, Row, exactly, first_in_sight, inked, sized, spread
from booth.widgets.text import plain
from booth.words.tone import Tone


class StepState(enum.Enum):
    """The shape and the style of a state."""

    DONE = "√", inked(Tone.GOOD)
    CURRENT = "→", MARKED
    SKIPPED = "–", QUIET
    OPEN = " ", ""


# A word beside the name only where the name keeps this much.
SKIPPED, NAME_KEEPS = " skipped", 12


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


def _row(step: StepRow, digits: int, width: int) -> Row:
    (shape, style), name = step.state.value, plain(step.name)
    head = f"{shape} {step.number:>{digits}} "
    left: Row = ((head + name, style),)
    if step.state is StepState.SKIPPED:
        room = width - cell_len(head) - len(SKIPPED)
        if room >= min(NAME_KEEPS, cell_len(name)):
            return spread(left, ((SKIPPED, style),), width, style)
    return exactly(left, width, style)


@sized
def lay_out(steps: tuple[StepRow, ...], width: int, height: int) -> list[Row]:
    """Give the list for a size."""
    start, end = window(len(steps), _current(steps), height)
    digits = max(len(str(step.number)) for step in steps)
    rows = [_row(step, digits, width) for step in steps[start:end]]
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

    draw = staticmethod(lay_out)

    def index_at(self, shown: tuple[StepRow, ...], offset: Offset, size: Size) -> int | None:
        start, end = window(len(shown), _current(shown), size.height)
        position = start + offset.y - int(start > 0 and size.height >= 3)
        return position if start <= position < end else None
