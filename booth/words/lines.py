"""Lines to pick from and pages to read, as plain data: what every list and sheet is made of."""

from __future__ import annotations

from collections.abc import Iterable

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


def reflow(lines: Iterable[str]) -> tuple[str, ...]:
    """Give lines that were broken for another width as whole sentences, to be broken anew.

    A line that begins small, or follows one that does not end a sentence, goes on the line before.
    """
    whole: list[str] = []
    for line in lines:
        goes_on = whole and line and (line[0].islower() or whole[-1][-1:] not in set(".:;!?"))
        if goes_on and whole[-1]:
            whole[-1] = f"{whole[-1]} {line}"
        else:
            whole.append(line)
    return tuple(whole)
