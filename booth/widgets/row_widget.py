"""A widget that is told data, draws rows of it and repaints only the rows that changed."""

from __future__ import annotations

from functools import lru_cache
from itertools import takewhile
from typing import Any

from rich.segment import Segment
from rich.style import Style
from textual import events
from textual.geometry import Offset, Region, Size
from textual.message import Message
from textual.reactive import reactive
from textual.strip import Strip
from textual.style import Style as OwnStyle
from textual.widget import Widget

from booth.widgets.rows import Piece, Row, width_of

NOT_DRAWN = Size(-1, -1)


@lru_cache(maxsize=512)
def _upon(base: OwnStyle, style: OwnStyle) -> Style:
    return (base + style).rich_style


def _differs(before: Row, after: Row, y: int, width: int) -> Region:
    """Where in a row of that width the pieces are others."""
    left = sum(width_of((a,)) for a, _ in takewhile(_alike, zip(after, before, strict=False)))
    if left >= width:
        return Region(0, y, width, 1)
    backward = zip(reversed(after), reversed(before), strict=False)
    right = sum(width_of((a,)) for a, _ in takewhile(_alike, backward))
    return Region(left, y, max(width - left - right, 1), 1)


def _alike(pair: tuple[Piece, Piece]) -> bool:
    return pair[0] == pair[1]


class Drawn(Widget):
    """Base of the program's own widgets: `shown` is what it draws.

    A subclass says in `draw` what is seen of it at a size. Rows are compared as drawn, so a clock
    whose text is the same costs a comparison and no painting.
    """

    class Picked(Message):
        """A thing was clicked; again: it was picked already."""

        def __init__(self, index: int, again: bool) -> None:
            super().__init__()
            self.index = index
            self.again = again

    DEFAULT_CSS = """
Drawn { height: 1fr; width: 1fr; background: $background; color: $foreground; }
"""

    shown: reactive[Any] = reactive(None, repaint=False)
    _rows: tuple[Row, ...] = ()
    _rows_size = NOT_DRAWN
    _tall = 0
    painted_rows = 0
    """How many rows were asked to be repainted since the start, for tests and benchmarks."""

    @staticmethod
    def draw(shown: Any, width: int, height: int, /) -> list[Row]:
        """What is to be seen at a size."""
        return []

    def rows_wanted(self, shown: Any, width: int) -> int:
        """How high it is where its height is its content's; it is gone where that is nothing."""
        return 0

    def index_at(self, shown: Any, offset: Offset, size: Size) -> int | None:
        """Which thing stands there; None where none does that can be picked."""
        return None

    def watch_shown(self) -> None:
        """Draw anew and repaint the rows that differ."""
        if not self.is_attached:
            return
        tall = self._wanted(self.size.width or self.app.size.width)
        if tall != self._tall:
            self._tall = tall
            self.display = tall > 0
            self.refresh(layout=True)
        before, size = self._rows, self.size
        if size.width <= 0:
            self._rows_size = NOT_DRAWN  # what stands there is of another time
            return
        self._rows = self._drawn(size)
        if self._rows_size != size or len(before) != len(self._rows):
            self._rows_size = size
            self.painted_rows += size.height
            self.refresh()
            return
        changed = [y for y, row in enumerate(self._rows) if row != before[y]]
        if changed:
            self.painted_rows += len(changed)
            # Regions of the content: the library itself adds where that begins.
            self.refresh(*(_differs(before[y], self._rows[y], y, size.width) for y in changed))

    def on_show(self) -> None:
        """What changed while it was out of sight was not painted."""
        self._rows_size = NOT_DRAWN
        self.refresh()

    def _drawn(self, size: Size) -> tuple[Row, ...]:
        return tuple(self.draw(self.shown, *size)) if self.shown else ()

    def _wanted(self, width: int) -> int:
        return self.rows_wanted(self.shown, width) if self.shown else 0

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return self._wanted(width)

    def render_line(self, y: int) -> Strip:
        """Give one row in the colours of the theme."""
        if self._rows_size != self.size:
            self._rows_size = self.size
            self._rows = self._drawn(self.size)
        if y >= len(self._rows):
            return Strip.blank(self.size.width, self.style_of(""))
        segments = [Segment(text, self.style_of(style)) for text, style in self._rows[y]]
        return Strip(segments).adjust_cell_length(self.size.width, self.style_of(""))

    def style_of(self, style: str) -> Style:
        """What a style of a piece is here."""
        if not style:
            return self.visual_style.rich_style
        return _upon(self.visual_style, self.app.stylesheet.parse_style(style))

    def on_click(self, event: events.Click) -> None:
        offset = event.get_content_offset(self)
        if offset is None or not self.shown:
            return
        index = self.index_at(self.shown, offset, self.size)
        if index is not None:
            event.stop()
            self.post_message(self.Picked(index, index == getattr(self.shown, "picked", None)))
