"""Lines that were broken for one width, as whole sentences for any other. Pure."""

from __future__ import annotations

from collections.abc import Iterable


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
