"""Lines to pick from and pages to read, as plain data: what every list and sheet is made of."""

from __future__ import annotations

import msgspec


class PickLine(msgspec.Struct, frozen=True):
    """One line of a list.

    name: what it is called; behind: what stands quietly behind it; must: that is to be seen however
    narrow the list is; mark: one cell before the name; head: a heading, not to be picked.
    """

    name: str
    behind: str = ""
    must: bool = False
    mark: str = ""
    head: bool = False


class Page(msgspec.Struct, frozen=True):
    """Something to read. paragraphs: (style, text); a style is head, text, now, done, quiet, warning."""

    paragraphs: tuple[tuple[str, str], ...]
