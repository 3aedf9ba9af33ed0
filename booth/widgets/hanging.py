"""Lines that hang: where one goes on in the next row, its arrow, number or name stands free before it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from textual.content import Content
from textual.visual import Visual

if TYPE_CHECKING:
    from textual.css.styles import RulesMap
    from textual.strip import Strip
    from textual.style import Style
    from textual.visual import RenderOptions

#: What a line may begin with: blanks, a sign, a number.
_MARKED = re.compile(r" *(?:[→√▲×·–?] +)?(?:\d+ +)?")
#: The end of a name or a time that has a column of its own.
_COLUMN = re.compile(r"\S {2,}(?=\S)")
#: A column begins no further in than so many cells, and leaves half of the row to the words.
MOST_LEAD = 28


def lead(text: str, width: int) -> int:
    """Give how many characters stand free before the words of a line, at a width.

    >>> lead("→ 1 Pull the fan in.", 40), lead("n or F2   Write a note", 40), lead("Stir it.", 40)
    (4, 10, 0)
    """
    marked = _MARKED.match(text)
    columns = [each.end() for each in _COLUMN.finditer(text) if each.end() <= MOST_LEAD]
    at = max([marked.end() if marked else 0, *columns])
    return at if 2 * at <= width else 0


class Hanging(Visual):
    """Draws lines of text so, in as many rows as they need."""

    def __init__(self, text: Content) -> None:
        self._lines = text.split("\n", allow_blank=True)
        self._at: tuple[int, Content] = (0, text)

    def at(self, width: int) -> Content:
        """The text with its rows parted, where they hang."""
        if self._at[0] != width:
            rows = (row for line in self._lines for row in _rows(line, width))
            self._at = width, Content("\n").join(rows)
        return self._at[1]

    def render_strips(
        self, width: int, height: int | None, style: Style, options: RenderOptions
    ) -> list[Strip]:
        return self.at(width).render_strips(width, height, style, options)

    def get_optimal_width(self, rules: RulesMap, container_width: int) -> int:
        return max((line.cell_length for line in self._lines), default=0)

    def get_height(self, rules: RulesMap, width: int) -> int:
        return self.at(width).get_height(rules, width)


def _rows(line: Content, width: int) -> Iterator[Content]:
    free = lead(line.plain, width)
    if not free or line.cell_length <= width:
        yield line
        return
    before = line[:free]
    words = line[free:].wrap(width - before.cell_length)
    yield before + words[0]
    blank = Content(" " * before.cell_length)
    yield from (blank + each for each in words[1:])
