"""Sixteen colours: what is written is read in each of the usual palettes, and tones are told apart.

The palettes are from memory, not checked: those of xterm, of the text mode of VGA, of the desktop
theme Tango, of the Windows console since 2017 and of the terminal of macOS. Contrast as in
test_themes.py.
"""

from __future__ import annotations

from itertools import combinations

import pytest
from rich.style import Style
from textual.color import Color
from textual.theme import Theme

from booth.widgets.sixteen import HOLDS, in_sixteen
from booth.widgets.themes import THEMES
from booth.words.shown import Tone
from tests.widgets.test_themes import GROUNDS, colour, contrast
from tests.widgets.test_tones_seen import GROUPS

PALETTES = {
    "xterm": "000000 cd0000 00cd00 cdcd00 0000ee cd00cd 00cdcd e5e5e5 "
    "7f7f7f ff0000 00ff00 ffff00 5c5cff ff00ff 00ffff ffffff",
    "vga": "000000 aa0000 00aa00 aa5500 0000aa aa00aa 00aaaa aaaaaa "
    "555555 ff5555 55ff55 ffff55 5555ff ff55ff 55ffff ffffff",
    "tango": "2e3436 cc0000 4e9a06 c4a000 3465a4 75507b 06989a d3d7cf "
    "555753 ef2929 8ae234 fce94f 729fcf ad7fa8 34e2e2 eeeeec",
    "windows": "0c0c0c c50f1f 13a10e c19c00 0037da 881798 3a96dd cccccc "
    "767676 e74856 16c60c f9f1a5 3b78ff b4009e 61d6d6 f2f2f2",
    "macos": "000000 c23621 25bc24 adad27 492ee1 d338d3 33bbc8 cbcccd "
    "818383 fc391f 31e722 eaec23 5833ff f935f8 14f0f0 e9ebeb",
}
SEEN = {name: [Color.parse(f"#{each}") for each in text.split()] for name, text in PALETTES.items()}
LEAST = 4.5


def drawn(theme: Theme, ink: str, ground: str, reverse: bool = False) -> tuple[int, int]:
    """The numbers of ink and ground in which that is drawn."""
    colours = colour(theme, ink).rich_color, colour(theme, ground).rich_color
    style = in_sixteen(Style(color=colours[0], bgcolor=colours[1], reverse=reverse))
    assert style.color is not None and style.bgcolor is not None
    numbers = style.color.number, style.bgcolor.number
    assert None not in numbers
    return numbers[::-1] if style.reverse else numbers  # type: ignore[return-value]


@pytest.mark.parametrize("palette", SEEN)
def test_every_pair_that_is_used_holds(palette: str) -> None:
    for pair in HOLDS:
        one, other = (SEEN[palette][number] for number in pair)
        assert contrast(one, other) >= LEAST, (pair, contrast(one, other))


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize("palette", SEEN)
def test_what_is_written_is_read(theme: Theme, palette: str) -> None:
    inks = ("foreground", "quiet", *(tone.css for tone in Tone))
    pairs = [(ink, ground) for ink in inks for ground in GROUNDS]
    pairs += [(ground, ink) for ink, ground in pairs]
    for ink, ground in pairs:
        for reverse in (False, True):
            one, other = (
                SEEN[palette][number] for number in drawn(theme, ink, ground, reverse=reverse)
            )
            assert contrast(one, other) >= LEAST, (ink, ground)


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize("reverse", [False, True])
def test_tones_are_told_apart_on_either_side_of_the_edge(theme: Theme, reverse: bool) -> None:
    seen = [drawn(theme, group[0].css, "background", reverse=reverse) for group in GROUPS]
    assert not [pair for pair in combinations(seen, 2) if pair[0] == pair[1]]
    for group in GROUPS:
        both = {drawn(theme, group[0].css, "background", reverse=each) for each in (False, True)}
        assert len(both) == 2, "the edge is seen"
