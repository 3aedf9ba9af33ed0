"""A key as it was pressed."""

from __future__ import annotations

from typing import NamedTuple


class Key(NamedTuple):
    """Its name, and the character it makes, if it makes one."""

    name: str
    character: str | None = None
