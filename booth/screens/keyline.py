"""The line of keys at the foot of a screen."""

from __future__ import annotations

from textual.content import Content

from booth.commands import COMMANDS, key_name


def key_words() -> tuple[tuple[str, str], ...]:
    """The keys of the bench that are always there, from the table of commands."""
    return tuple((key_name(command.keys[0]), command.word) for command in COMMANDS if command.shown)


def key_line(keys: tuple[tuple[str, str], ...], width: int) -> Content:
    """As many keys as fit, the next one first and in reverse."""
    parts: list[Content | str | tuple[str, str]] = []
    used = 0
    for position, (key, words) in enumerate(keys):
        need = len(key) + len(words) + 4
        if used + need > width - 1:
            break
        used += need
        parts += [(f" {key} ", "reverse bold" if position == 0 else "bold"), f" {words} "]
    return Content.assemble(*parts)
