"""A dialog lies over another screen: a title, something to read or to choose from, its keys."""

from __future__ import annotations

from typing import Generic, TypeVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import ModalScreen

from booth.screens.base import Framed

T = TypeVar("T")
#: Rows of a dialog besides what it holds (frame, padding, title, keys), and of the screen around it.
AROUND = 10
LEAST_ROWS = 3
#: The commands that work over another screen too.
WORK_OVER: tuple[str, ...] = ("theme", "alarm", "quit")


class Dialog(Framed[T], ModalScreen[T], Generic[T]):
    """The base of all of them. title: its first line; grave: something went wrong."""

    WORK = WORK_OVER
    SHOWS: tuple[str, ...] = ()

    def __init__(self, title: str, *, grave: bool = False) -> None:
        super().__init__(classes="dialog")
        self.words = title
        self.grave = grave

    def heading(self) -> str:
        return self.words

    def compose(self) -> ComposeResult:
        with Vertical(classes="sheet -grave" if self.grave else "sheet"):
            yield from super().compose()

    @property
    def room(self) -> int:
        """The rows for what it holds, so that its keys stay in sight in a low window."""
        return max((self.size.height or self.app.size.height) - AROUND, LEAST_ROWS)
