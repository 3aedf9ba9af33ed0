"""The line of keys at the foot of a screen."""

from __future__ import annotations

from rich.cells import cell_len
from textual.content import Content

from booth.commands import COMMANDS, key_name
from booth.widgets.text import fit

MOST_WORDS = 40


def key_words() -> tuple[tuple[str, str], ...]:
    """The keys of the bench that are always there, from the table of commands."""
    return tuple((key_name(command.keys[0]), command.word) for command in COMMANDS if command.shown)


def key_line(keys: tuple[tuple[str, str], ...], width: int) -> Content:
    """As many keys as fit, the next one first and in reverse."""
    parts: list[Content | str | tuple[str, str]] = []
    used = 0
    for position, (key, words) in enumerate(keys):
        # A part's name may be among the words; the next key is always there, cut if need be.
        words = fit(words, MOST_WORDS if position else max(width - len(key) - 5, 1))
        need = len(key) + cell_len(words) + 4
        if used + need > width - 1:
            break
        used += need
        parts += [(f" {key} ", "reverse bold" if position == 0 else "bold"), f" {words} "]
    return Content.assemble(*parts)
