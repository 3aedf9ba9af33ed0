"""Words in a column of their own: as many as there is room for, the first ones first."""

from __future__ import annotations

import textwrap

from booth.widgets.page_view import STYLES
from booth.widgets.room import MOST_TEXT
from booth.widgets.row_widget import Drawn
from booth.widgets.rows import Row, sized
from booth.widgets.text import ELLIPSIS, plain
from booth.words.shown import Page

MARKED = ("√ ", "→ ", "▲ ", "  ")


@sized
def lay_out(page: Page, width: int, height: int) -> list[Row]:
    """Give them for a size. Where not all fit what is done goes first, then an ellipsis stands."""
    room = max(min(width, MOST_TEXT), 1)
    told = list(page.paragraphs)
    rows = _wrapped(told, room)
    while len(rows) > height and told and told[0][0] == "done":
        rows = _wrapped(told := told[1:], room)
    if len(rows) > height:
        text, style = rows[height - 1]
        rows[height - 1] = (f"{text[: max(room - 2, 0)]} {ELLIPSIS}", style)
    return [((text, STYLES[style]),) for text, style in rows[:height]]


def _wrapped(told: list[tuple[str, str]], room: int) -> list[tuple[str, str]]:
    """In rows of whole words; what goes on hangs under the words, not under the sign before them."""
    found = []
    for style, text in told:
        text = plain(text)
        hang = "  " if text.startswith(MARKED) else ""
        lines = textwrap.wrap(text, room, subsequent_indent=hang, drop_whitespace=True)
        if text.startswith("  ") and lines:
            lines[0] = f"  {lines[0].lstrip()}"
        found += [(line, style) for line in lines or [""]]
    return found


class Said(Drawn):
    """Draws a Page of words without scrolling it."""

    draw = staticmethod(lay_out)
