"""The line of keys at the foot of a screen."""

from __future__ import annotations

from functools import lru_cache

from rich.cells import cell_len
from textual.content import Content
from textual.style import Style

from booth.bench.commands import FUNCTION_KEY, KEY_NAMES
from booth.widgets.text import fit

MOST_WORDS = 28
#: What a click finds under the mouse: which key the word stands for.
CLICKED = "booth_key"
NAMED = {name: key for key, name in KEY_NAMES.items()}
#: Of a pair of arrows a click goes forward.
PAIRS = {"↑↓": "down", "←→": "right"}


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


@lru_cache(maxsize=32)
def key_line(keys: tuple[tuple[str, str], ...], width: int) -> Content:
    """As many keys as fit, the next one first and in reverse."""
    parts: list[tuple[str, Style]] = []
    used = 0
    for position, (key, words) in enumerate(keys):
        # A part's name may be among the words; the next key is always there, cut if need be.
        words = fit(words, MOST_WORDS if position else max(width - len(key) - 5, 1))
        need = len(key) + cell_len(words) + 4
        if used + need > width - 1:
            continue  # one with long words does not hide those behind it
        used += need
        click = Style.from_meta({CLICKED: pressed_by(key)})
        name = Style.parse("reverse bold" if position == 0 else "bold")
        parts += [(f" {key} ", name + click), (f" {words} ", click)]
    return Content.assemble(*parts)
