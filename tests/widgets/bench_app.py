"""An application that holds widgets and nothing else, and what stands on its screen."""

from __future__ import annotations

from typing import Any

from textual.app import App, ComposeResult
from textual.widget import Widget

from booth.widgets.themes import install, variable_defaults


class WidgetApp(App[None]):
    """Shows the widgets given, one beneath the other; keeps the messages they send."""

    def __init__(self, *widgets: Widget) -> None:
        super().__init__()
        install(self)
        self._widgets = widgets
        self.heard: list[object] = []

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return variable_defaults()

    def compose(self) -> ComposeResult:
        yield from self._widgets


def screen_lines(app: App[Any]) -> list[str]:
    """The text on the screen, row by row."""
    strips = app.screen._compositor.render_strips()
    return ["".join(segment.text for segment in strip) for strip in strips]
