"""The line of keys at the foot of a screen."""

from __future__ import annotations

import re

from rich.cells import cell_len
from textual.content import Content
from textual.style import Style

from booth.bench.commands import COMMANDS, KEY_NAMES, key_name
from booth.widgets.text import fit

MOST_WORDS = 40
#: What a click finds under the mouse: which key the word stands for.
CLICKED = "booth_key"
NAMED = {name: key for key, name in KEY_NAMES.items()}
#: Of a pair of arrows a click goes forward.
PAIRS = {"↑↓": "down", "←→": "right"}
FUNCTION_KEY = re.compile(r"f\d+")


def key_words(*, typing: bool = False) -> tuple[tuple[str, str], ...]:
    """The keys of the bench that are always there, from the table of commands.

    typing: the focus is in an entry, where letters are text and the function keys still ask.
    """
    shown = []
    for command in COMMANDS:
        if command.shown:
            function = next((key for key in command.keys if FUNCTION_KEY.fullmatch(key)), None)
            key = function if typing and function is not None else command.keys[0]
            shown.append((key_name(key), command.word))
    return tuple(shown)


def keys_now(
    own: tuple[tuple[str, str], ...], *, can_void: bool, typing: bool, typed: bool
) -> tuple[tuple[str, str], ...]:
    """The keys of an instrument and of the bench, each true to what it does at this moment. Pure.

    can_void: Backspace has something to void; typing: the focus is in an entry; typed: it holds text.
    """
    if typing:
        # In an entry left and right move the cursor; the choice is a row away.
        own = tuple(("↑↓", "rows") if key == "←→" else (key, word) for key, word in own)
    if typed:
        # A space is text now, and Backspace takes the last character.
        own = (*(each for each in own if each[0] != "Space"), ("Bksp", "erase"))
    found: dict[str, str] = {}
    for key, word in own:
        found.setdefault(key, word)
    for key, word in key_words(typing=typing):
        if can_void or key != key_name("backspace"):
            found.setdefault(key, word)
    return tuple(found.items())


def pressed_by(shown: str) -> str | None:
    """The key that a click on its name presses; None for a name of several, as 'digits'.

    >>> pressed_by("Space"), pressed_by("F2"), pressed_by("n"), pressed_by("↑↓"), pressed_by("0-9")
    ('space', 'f2', 'n', 'down', None)
    """
    if shown in PAIRS:
        return PAIRS[shown]
    if shown in NAMED:
        return NAMED[shown]
    if FUNCTION_KEY.fullmatch(shown.lower()):
        return shown.lower()
    return shown if len(shown) == 1 and shown.isalpha() else None


def clickable(*words: tuple[str, str]) -> Content:
    """Words that are keys when they are clicked: (what stands there, key)."""
    return Content("   ").join(
        Content.styled(said, Style.from_meta({CLICKED: key})) for said, key in words
    )


def key_line(keys: tuple[tuple[str, str], ...], width: int) -> Content:
    """As many keys as fit, the next one first and in reverse."""
    parts: list[tuple[str, Style]] = []
    used = 0
    for position, (key, words) in enumerate(keys):
        # A part's name may be among the words; the next key is always there, cut if need be.
        words = fit(words, MOST_WORDS if position else max(width - len(key) - 5, 1))
        need = len(key) + cell_len(words) + 4
        if used + need > width - 1:
            break
        used += need
        click = Style.from_meta({CLICKED: pressed_by(key)})
        name = Style.parse("reverse bold" if position == 0 else "bold")
        parts += [(f" {key} ", name + click), (f" {words} ", click)]
    return Content.assemble(*parts)
