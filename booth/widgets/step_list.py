"""The steps of the job, the current one kept in sight; each state has its shape."""

from __future__ import annotations

import enum
from typing import ClassVar

import msgspec
from rich.cells import cell_len
from textual import events
from textual.message import Message
from textual.reactive import reactive

from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, exactly, exactly_rows, spread
from booth.widgets.text import plain


class StepState(enum.Enum):
    DONE = "done"
    CURRENT = "current"
    SKIPPED = "skipped"
    OPEN = "open"

    @property
    def shape(self) -> str:
        return {"done": "√", "current": "→", "skipped": "–", "open": " "}[self.value]

    @property
    def style(self) -> str:
        return f"step-list--{self.value}"


MORE = "step-list--more"
# A word beside the name only where the name keeps this much.
NAME_KEEPS = 12


class StepRow(msgspec.Struct, frozen=True):
    """number: as shown; name: in the painter's words; state."""

    number: int
    name: str
    state: StepState = StepState.OPEN


def _current(steps: tuple[StepRow, ...]) -> int:
    """The position of the current step; the first open one where none is; else the last."""
    for state in (StepState.CURRENT, StepState.OPEN):
        for position, step in enumerate(steps):
            if step.state is state:
                return position
    return len(steps) - 1


def window(count: int, current: int, height: int) -> tuple[int, int]:
    """Give the first and one past the last step to show, the current one a third from the top.

    A row above or beneath is given up to say how many are out of sight.
    """
    if count <= height:
        return 0, count
    first = min(max(0, current - height // 3), count - height)
    start, end = first, first + height
    if height >= 3:
        if start > 0:
            start += 1
        if end < count:
            end -= 1
        # Giving up a row must not hide the current step.
        if current < start:
            start, end = current, end - (start - current)
        elif current >= end:
            start, end = start + (current + 1 - end), current + 1
    return start, end


def _row(step: StepRow, digits: int, width: int) -> Row:
    state, style = step.state, step.state.style
    shape = state.shape
    head = f"{shape} {step.number:>{digits}} "
    name = plain(step.name)
    left: Row = ((head + name, style),)
    word = "skipped" if state is StepState.SKIPPED else ""
    room = width - cell_len(head) - len(word) - 1
    if word and room >= min(NAME_KEEPS, cell_len(name)):
        return spread(left, ((f" {word}", style),), width, style)
    return exactly(left, width, style)


def lay_out(steps: tuple[StepRow, ...], width: int, height: int) -> list[Row]:
    """Give the list for a size: exactly `height` rows of exactly `width` cells."""
    if width <= 0 or height <= 0:
        return []
    if not steps:
        return exactly_rows([(("no steps", MORE),)], width, height)
    start, end = window(len(steps), _current(steps), height)
    digits = max(len(str(step.number)) for step in steps)
    rows = [_row(step, digits, width) for step in steps[start:end]]
    if height >= 3:
        if start > 0:
            rows.insert(0, ((f"↑ {start} more", MORE),))
        if end < len(steps):
            rows.append(((f"↓ {len(steps) - end} more", MORE),))
    return exactly_rows(rows, width, height)


class StepList(Drawn):
    """Draws the steps; a click on one asks for it."""

    class Chosen(Message):
        """A step was clicked."""

        def __init__(self, number: int) -> None:
            super().__init__()
            self.number = number

    COMPONENT_CLASSES: ClassVar[set[str]] = {*(state.style for state in StepState), MORE}
    DEFAULT_CSS = """
StepList { height: 1fr; width: 28; background: $surface; color: $foreground; }
StepList > .step-list--done { color: $tone-good; }
StepList > .step-list--current { color: $background; background: $foreground; text-style: bold; }
StepList > .step-list--skipped { color: $quiet; }
StepList > .step-list--open { color: $foreground; }
StepList > .step-list--more { color: $quiet; }
"""

    steps: reactive[tuple[StepRow, ...]] = reactive((), repaint=False)

    def __init__(
        self,
        steps: tuple[StepRow, ...] = (),
        *,
        name: str | None = None,
        id: str | None = None,
        classes: str | None = None,
    ) -> None:
        super().__init__(name=name, id=id, classes=classes)
        self.steps = steps

    def watch_steps(self) -> None:
        self.redraw()

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return lay_out(self.steps, width, height)

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        if offset is None or not self.steps:
            return
        start, end = window(len(self.steps), _current(self.steps), self.size.height)
        above = int(start > 0 and self.size.height >= 3)
        position = start + offset.y - above
        if start <= position < end:
            event.stop()
            self.post_message(self.Chosen(self.steps[position].number))
