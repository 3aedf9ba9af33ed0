"""The alarms that ring, across the top of whatever screen is up, until they are silenced."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content
from textual.widgets import Static

from booth.widgets.text import content, put


class AlarmBar(Static):
    """Shows nothing while nothing rings."""

    DEFAULT_CSS = """
    AlarmBar { dock: top; height: auto; max-height: 4; width: 1fr; display: none;
               background: $error; color: $background; text-style: bold; padding: 0 1; }
    AlarmBar.-ringing { display: block; }
    AlarmBar.-ringing.-beat { background: $background; color: $error; }
    """

    def __init__(self) -> None:
        super().__init__("", markup=False)

    def show(self, lines: Sequence[str]) -> None:
        """Show these alarms, each time the other way round: seen from the corner of an eye."""
        self.set_class(bool(lines), "-ringing")
        self.set_class(bool(lines) and not self.has_class("-beat"), "-beat")
        put(self, Content("\n").join([content(line) for line in lines]))
