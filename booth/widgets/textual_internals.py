"""Mends of the widget library, of the one version that the project asks for."""

from __future__ import annotations

from textual.widgets import OptionList

__all__ = ["mend"]


def mend() -> None:
    """Let Page Up and Page Down in a list that is not laid out yet do nothing.

    The list looks its highlighted row up among lines that are counted when it is drawn; a key that
    comes before (the command palette just opened, the jobs read anew) raised KeyError.
    """
    move: object = getattr(OptionList, "_move_page")  # noqa: B009 - private
    if getattr(move, "mended", False):
        return

    def move_page(self: OptionList, direction: int) -> None:
        if (self.highlighted or 0) in self._index_to_line:
            move(self, direction)  # type: ignore[operator]

    move_page.mended = True  # type: ignore[attr-defined]
    OptionList._move_page = move_page  # type: ignore[method-assign]
