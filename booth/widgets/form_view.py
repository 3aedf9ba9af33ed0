"""Draws the rows of a form: label, what was typed or chosen, what was understood; a fault beneath.

It holds nothing: the form stands with whoever keeps it. A click marks a row or turns a choice.
"""

from __future__ import annotations

import textwrap
from typing import ClassVar

from rich.cells import cell_len
from textual import events
from textual.geometry import Size
from textual.message import Message
from textual.reactive import reactive

from booth.forms.field import Given
from booth.forms.form import Row as FormRow
from booth.forms.form import Rows, chosen_words, placeholder
from booth.units import Quantity, show
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Piece, Row, exactly, merge, spread
from booth.widgets.text import fit, pad, plain

LABEL, BOX, DIM = "form-view--label", "form-view--box", "form-view--dim"
MARKED, CURSOR, FAULT = "form-view--marked", "form-view--cursor", "form-view--fault"
LABEL_WIDTH, LEAST_BOX, BOX_WIDTH, WIDE_BOX, GAP = 14, 12, 18, 48, 2
FAULT_ROWS = 2


class Placed:
    """The rows as drawn, and which of the form's rows each belongs to."""

    def __init__(self) -> None:
        self.rows: list[Row] = []
        self.keys: list[str] = []

    def add(self, row: Row, key: str) -> None:
        self.rows.append(row)
        self.keys.append(key)


def lay_out(rows: Rows | None, width: int) -> Placed:
    """Give the form at a width: a row each, faults beneath, what is assumed in a last one."""
    placed = Placed()
    if rows is None or width <= 0:
        return placed
    marked = rows.marked
    for row in rows.sight:
        is_marked = marked is not None and row.key == marked.key
        placed.add(_row(rows, row, is_marked, width), row.key)
        if row.fault:
            room = max(width - LABEL_WIDTH - GAP, 10)
            for said in textwrap.wrap(plain(row.fault), room, max_lines=FAULT_ROWS):
                fault: Row = ((" " * LABEL_WIDTH, ""), (said, FAULT))
                placed.add(exactly(fault, width), row.key)
    if rows.assumed:
        said = ", ".join(assumed_words(row, rows) for row in rows.assumed)
        label = (pad("taken as", LABEL_WIDTH - 1, "right") + " ", LABEL)
        placed.add(spread((label, (said, DIM)), (("  ↓", DIM),), width), "")
    return placed


def assumed_words(row: FormRow, rows: Rows) -> str:
    """What is taken where nothing was typed: 'catch for 1:00', 'tip –'."""
    if row.field.choices:
        return chosen_words(row)
    words = given_words(row.given, row, rows)
    label = row.field.label
    return f"{label if label.isupper() else label.lower()} {words or '–'}"


def given_words(given: Given, row: FormRow, rows: Rows) -> str:
    if isinstance(given, Quantity):
        return show(given.value, row.field.kind_of(given), rows.system)
    return plain(given or "")


def _row(rows: Rows, row: FormRow, marked: bool, width: int) -> Row:
    room = max(width - LABEL_WIDTH, 4)
    echo = "" if row.fault else plain(row.echo)
    box = min(WIDE_BOX if row.field.is_words else BOX_WIDTH, room)
    if echo and not row.text:  # how it is filled is read before anything is typed
        box = max(min(box, room - GAP - cell_len(echo)), LEAST_BOX)
    if row.field.choices:
        words = f"◂ {plain(chosen_words(row))} ▸"
        pieces = [(pad(fit(words, room), min(max(box, cell_len(words)), room)), _style(marked))]
    else:
        pieces = _typed(rows, row, marked, box)
    label = (pad(row.field.label, LABEL_WIDTH - 1, "right") + " ", LABEL)
    return exactly(merge((label, *pieces, (" " * GAP, ""), (echo, DIM))), width)


def _style(marked: bool) -> str:
    return MARKED if marked else BOX


def _typed(rows: Rows, row: FormRow, marked: bool, box: int) -> list[Piece]:
    """The text in its box, the end in sight; the cursor where the next character goes."""
    style = _style(marked)
    if not row.text:
        dim = fit(placeholder(row.field, rows.system), box - 2)
        body = pad(dim, box - 2)
        if marked:
            return [(" ", MARKED), (body[:1] or " ", CURSOR), (body[1:] + " ", MARKED)]
        return [(" ", style), (body + " ", DIM if dim else style)]
    text = plain(row.text)
    if not marked:
        return [(pad(f" {fit(text, box - 2)}", box), style)]
    at = max(len(text) - rows.form.cursor, 0)
    before, under, after = text[:at], text[at : at + 1] or " ", text[at + 1 :]
    while before and cell_len(before) > box - 3:
        before = before[1:]
    after = fit(after, max(box - 3 - cell_len(before), 0))
    rest = max(box - 1 - cell_len(before) - cell_len(under) - cell_len(after), 0)
    return [(f" {before}", MARKED), (under, CURSOR), (after + " " * rest, MARKED)]


class FormView(Drawn):
    """Draws the form it was told; a click tells which row it was on."""

    class Clicked(Message):
        """A row was clicked; by: which way a choice is turned, 0 where the row is only marked."""

        def __init__(self, key: str, by: int) -> None:
            super().__init__()
            self.key = key
            self.by = by

    COMPONENT_CLASSES: ClassVar[set[str]] = {LABEL, BOX, DIM, MARKED, CURSOR, FAULT}
    DEFAULT_CSS = """
FormView { height: auto; width: 1fr; background: $background; color: $foreground; }
FormView > .form-view--label { color: $quiet; }
FormView > .form-view--box { background: $panel; color: $foreground; }
FormView > .form-view--dim { color: $quiet; }
FormView > .form-view--marked { background: $foreground; color: $background; text-style: bold; }
FormView > .form-view--cursor { background: $background; color: $foreground; }
FormView > .form-view--fault { color: $tone-caution; text-style: bold; }
"""

    form: reactive[Rows | None] = reactive(None, repaint=False)
    _tall = 0

    def watch_form(self) -> None:
        tall = len(lay_out(self.form, self._width).rows)
        if tall != self._tall:
            self._tall = tall
            self.display = tall > 0
            self.refresh(layout=True)
        self.redraw()

    @property
    def _width(self) -> int:
        return self.size.width or self.app.size.width

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """A row for each that is to be drawn."""
        return len(lay_out(self.form, width).rows)

    def _first(self, placed: Placed, height: int) -> int:
        """The first row drawn: where not all fit, so that the marked one is in sight."""
        marked = self.form.marked if self.form is not None else None
        if marked is None or len(placed.rows) <= height:
            return 0
        last = max((n for n, key in enumerate(placed.keys) if key == marked.key), default=0)
        return max(0, last - height + 1)

    def draw_rows(self, width: int, height: int) -> list[Row]:
        placed = lay_out(self.form, width)
        first = self._first(placed, height)
        return placed.rows[first : first + height]

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        placed = lay_out(self.form, self.size.width)
        at = offset.y + self._first(placed, self.size.height) if offset is not None else -1
        if self.form is None or offset is None or not 0 <= at < len(placed.keys):
            return
        event.stop()
        key = placed.keys[at]
        chosen = any(row.key == key and row.field.choices for row in self.form.sight)
        by = (-1 if offset.x < LABEL_WIDTH + 2 else 1) if chosen else 0
        self.post_message(self.Clicked(key, by))
