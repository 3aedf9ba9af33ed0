"""That a page goes on is said as in a list: an arrow at its edge, above or below; a click scrolls."""

from __future__ import annotations

from rich.color import Color
from rich.segment import Segment, Segments
from rich.style import Style
from textual.scrollbar import ScrollBarRender

UP, DOWN = "↑", "↓"
PLAIN = Color.default()


class Arrows(ScrollBarRender):
    """In the place of the widget library's scrollbar."""

    @classmethod
    def render_bar(
        cls,
        size: int = 25,
        virtual_size: float = 50,
        window_size: float = 20,
        position: float = 0,
        thickness: int = 1,
        vertical: bool = True,
        back_color: Color = PLAIN,
        bar_color: Color = PLAIN,
    ) -> Segments:
        def cell(sign: str, does: str) -> Segment:
            style = Style(color=bar_color, bgcolor=back_color, meta={"@mouse.down": does})
            return Segment(sign.ljust(thickness), style)

        column = [cell(" ", "grab")] * size
        if window_size and column and position >= 1:
            column[0] = cell(UP, "scroll_up")
        if window_size and column and position + window_size < virtual_size:
            column[-1] = cell(DOWN, "scroll_down")
        return Segments(column, new_lines=True)
