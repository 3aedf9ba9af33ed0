"""Draws the rows of a form that is kept elsewhere; a click marks a row or turns a choice."""

from __future__ import annotations

import textwrap
from typing import ClassVar

from rich.cells import cell_len
from rich.style import Style
from textual import events
from textual.message import Message

from booth.forms.form import Row as FormRow
from booth.forms.form import Rows, chosen_words, placeholder, told
from booth.units import Quantity
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import MARKED, QUIET, Piece, Row, exactly, merge, spread, toned
from booth.widgets.text import fit, pad, plain
from booth.words.shown import Tone

BOX, DIM, CURSOR = "form-view--box", "form-view--dim", "$foreground on $background"
LABEL_WIDTH, LEAST_BOX, BOX_WIDTH, WIDE_BOX, GAP = 14, 12, 18, 48, 2
FAULT_ROWS = 2


def placed_rows(rows: Rows, width: int) -> list[tuple[Row, str]]:
    """Give the form at a width, each row with the key of the form's row that it belongs to."""
    placed: list[tuple[Row, str]] = []
    marked, labels = rows.marked, label_width(rows)
    for row in rows.sight:
        is_marked = marked is not None and row.key == marked.key
        placed.append((_row(rows, row, is_marked, width), row.key))
        if row.fault:
            room = max(width - labels - GAP, 10)
            for said in textwrap.wrap(plain(row.fault), room, max_lines=FAULT_ROWS):
                fault: Row = ((" " * labels, ""), (said, toned(Tone.CAUTION)))
                placed.append((exactly(fault, width), row.key))
    if rows.assumed:
        name, said = assumed_words(rows)
        label = pad(name, LABEL_WIDTH - 1, "right") + " "
        placed.append((spread(((label + said, QUIET),), (("  ↓", QUIET),), width), ""))
    return placed


def assumed_words(rows: Rows) -> tuple[str, str]:
    """The quiet line: what is taken where nothing was typed, 'catch for 1 min', and what more may be
    typed. As its label and its words."""
    every = [(each, _assumed(each, rows)) for each in rows.assumed]
    taken = ", ".join(words for each, words in every if each.given is not None)
    more = ", ".join(words for each, words in every if each.given is None)
    if not taken:
        return "also", more
    return "taken as", f"{taken}; also {more}" if more else taken


def _assumed(row: FormRow, rows: Rows) -> str:
    if row.field.choices:
        return plain(chosen_words(row))
    label, given = plain(row.field.label), row.given
    name = label if label.isupper() else label.lower()
    if isinstance(given, Quantity):
        return f"{name} {told(given, row.field, rows.system)}"
    return f"{name} {plain(given or '')}".rstrip()


def label_width(rows: Rows) -> int:
    """How wide the column of labels is: nothing where no row has one."""
    return LABEL_WIDTH if rows.assumed or any(row.field.label for row in rows.sight) else 0


def _box(rows: Rows, row: FormRow, room: int) -> int:
    """How wide a row's box is: boxes of a kind are alike, and leave their hints room."""
    alike = [each for each in rows.sight if each.field.is_words == row.field.is_words]
    # How it is filled is read before anything is typed.
    hints = [plain(each.echo) for each in alike if not (each.text or each.fault)]
    least = min((room - GAP - cell_len(hint) for hint in hints if hint), default=room)
    return max(min(WIDE_BOX if row.field.is_words else BOX_WIDTH, room, least), LEAST_BOX)


def _row(rows: Rows, row: FormRow, marked: bool, width: int) -> Row:
    labels = label_width(rows)
    room = max(width - labels, 4)
    echo = "" if row.fault else plain(row.echo)
    box = min(_box(rows, row, room), room)
    if row.field.choices:
        words = f"◂ {plain(chosen_words(row))} ▸"
        pieces = [(pad(fit(words, room), min(max(box, cell_len(words)), room)), _style(marked))]
    else:
        pieces = _typed(rows, row, marked, box)
    label = (pad(row.field.label, labels - 1, "right") + " " if labels else "", QUIET)
    return exactly(merge((label, *pieces, (" " * GAP, ""), (echo, QUIET))), width)


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


def in_sight(rows: Rows, width: int, height: int) -> list[tuple[Row, str]]:
    """The rows drawn: where not all fit, so that the marked one is in sight."""
    placed, marked = placed_rows(rows, width), rows.marked
    at = [n for n, (_, key) in enumerate(placed) if marked is not None and key == marked.key]
    first = max(0, at[-1] - height + 1) if at and len(placed) > height else 0
    return placed[first : first + height]


def lay_out(rows: Rows, width: int, height: int) -> list[Row]:
    """Give the form for a size."""
    return [row for row, _ in in_sight(rows, width, height)]


class FormView(Drawn):
    """Draws the form it was told; a click tells which row it was on."""

    class Clicked(Message):
        """A row was clicked; by: which way a choice is turned, 0 where the row is only marked."""

        def __init__(self, key: str, by: int) -> None:
            super().__init__()
            self.key = key
            self.by = by

    COMPONENT_CLASSES: ClassVar[set[str]] = {BOX, DIM}
    DEFAULT_CSS = """
FormView { height: auto; }
FormView > .form-view--box { background: $panel; color: $foreground; }
FormView > .form-view--dim { background: $panel; color: $quiet; }
"""

    def style_of(self, style: str) -> Style:
        is_box = style in (BOX, DIM)
        return self.get_component_rich_style(style) if is_box else super().style_of(style)

    draw = staticmethod(lay_out)

    def rows_wanted(self, shown: Rows, width: int) -> int:
        return len(placed_rows(shown, width))

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        rows = self.shown
        placed = in_sight(rows, *self.size) if rows is not None else []
        if offset is None or offset.y >= len(placed):
            return
        event.stop()
        _, key = placed[offset.y]
        chosen = any(row.key == key and row.field.choices for row in rows.sight)
        by = (-1 if offset.x < label_width(rows) + 2 else 1) if chosen else 0
        self.post_message(self.Clicked(key, by))
