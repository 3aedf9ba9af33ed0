"""A screen of this program: one that knows whose application it belongs to."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from textual.screen import Screen

if TYPE_CHECKING:
    from booth.app.app import BoothApp

T = TypeVar("T")


class OwnScreen(Screen[T], Generic[T]):
    """Base of the screens; it adds nothing at run time."""

    if TYPE_CHECKING:

        @property
        def app(self) -> BoothApp:  # type: ignore[override]
            """The application."""
            ...
