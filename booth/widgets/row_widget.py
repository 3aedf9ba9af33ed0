"""A widget that draws rows of styled text itself and repaints only the rows that changed."""

from __future__ import annotations

from rich.segment import Segment
from rich.style import Style
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widget import Widget

from booth.widgets.rows import Row

NOT_DRAWN = Size(-1, -1)


class Drawn(Widget):
    """Base of the program's own widgets: `draw_rows` gives what is to be seen at a size.

    A subclass calls `redraw` when what it was told has changed. Rows are compared as drawn, so a
    clock whose text is the same costs a comparison and no painting.
    """

    def __init__(
        self, *, name: str | None = None, id: str | None = None, classes: str | None = None
    ) -> None:
        super().__init__(name=name, id=id, classes=classes)
        self._rows: list[Row] = []
        self._rows_size = NOT_DRAWN
        self.painted_rows = 0
        """How many rows were asked to be repainted since the start, for tests and benchmarks."""

    def draw_rows(self, width: int, height: int) -> list[Row]:
        return []

    def redraw(self) -> None:
        """Draw anew and repaint the rows that differ."""
        if not self.is_attached or self.size.width <= 0:
            self._rows_size = NOT_DRAWN  # what stands there is of another time
            return
        before, size = self._rows, self.size
        rows = self.draw_rows(size.width, size.height)
        self._rows = rows
        if self._rows_size != size or len(before) != len(rows):
            self._rows_size = size
            self.painted_rows += size.height
            self.refresh()
            return
        changed = [y for y, row in enumerate(rows) if row != before[y]]
        if changed:
            self.painted_rows += len(changed)
            # Regions of the content: the library itself adds where that begins.
            self.refresh(*(Region(0, y, size.width, 1) for y in changed))

    def render_line(self, y: int) -> Strip:
        """Give one row, in the styles of the component classes named by its pieces."""
        width = self.size.width
        if self._rows_size != self.size:
            self._rows_size = self.size
            self._rows = self.draw_rows(width, self.size.height)
        base = self.rich_style
        if y >= len(self._rows):
            return Strip.blank(width, base)
        segments = [Segment(text, self._style(style, base)) for text, style in self._rows[y]]
        return Strip(segments).adjust_cell_length(width, base)

    def _style(self, name: str, base: Style) -> Style:
        return self.get_component_rich_style(name) if name else base
