"""Fills the whole window with one word for a moment: seen from across the room, with the back half turned."""

from __future__ import annotations

from textual.geometry import Size
from textual.widgets import Static

from booth.widgets.lettering.bigfigure import draw
from booth.widgets.text import content

SHOWN_FOR_S = 0.9


class Flash(Static):
    """One word over everything; goes away by itself and takes no key."""

    DEFAULT_CSS = """
    Flash { layer: flash; position: absolute; offset: 0 0; width: 100%; height: 100%;
            background: $warning; color: $background; content-align: center middle; }
    """

    def __init__(self, word: str) -> None:
        super().__init__("", markup=False)
        self.word = word

    def on_mount(self) -> None:
        size: Size = self.app.size
        lines = draw(self.word, max(size.width - 6, 4), max(size.height - 4, 1))
        self.update(content("\n".join(lines), keep_lines=True))
        self.set_timer(SHOWN_FOR_S, self.remove)
