"""The other screens by their keys, each loaded when it is asked for."""

from __future__ import annotations

from typing import Any

from textual.screen import Screen


def screen_of(key: str) -> Screen[Any]:
    """Give the screen of `key`: 'history' or 'shop'. Raises LookupError for any other."""
    if key == "history":
        from booth.screens.history import History

        return History()
    if key == "shop":
        from booth.screens.shop import ShopScreen

        return ShopScreen()
    raise LookupError(f"there is no screen {key!r}")
