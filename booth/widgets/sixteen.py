"""Sixteen colours: pairs that are read with whatever palette a terminal has. Pure.

A terminal of sixteen colours draws each as it pleases: its yellow may be brown, its green pale. These
pairs keep 4.5:1 in the usual palettes; the nearest colours would not. Where a tone has no dark colour
that is read on a bright ground, black stands on the tone, and the tone on black behind the edge.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from rich.color import Color, ColorSystem
from rich.segment import Segment
from rich.style import Style
from textual.color import Color as Ground
from textual.filter import LineFilter

from booth.widgets.textual_internals import FaultApp
from booth.widgets.themes import THEMES

BLACK, RED, BLUE, GREY, GREEN, YELLOW, CYAN, WHITE = 0, 1, 4, 7, 10, 11, 14, 15
#: Ink and ground of each tone before the edge; behind it they change places.
DARK = {
    "late": (WHITE, RED),
    "closing": (YELLOW, BLACK),
    "ready": (GREEN, BLACK),
    "running": (CYAN, BLACK),
    "wait": (WHITE, BLUE),
    "plain": (WHITE, BLACK),
}
BRIGHT = {
    "late": (RED, WHITE),
    "closing": (BLACK, YELLOW),
    "ready": (BLACK, GREEN),
    "running": (BLACK, CYAN),
    "wait": (BLUE, WHITE),
    "plain": (BLACK, WHITE),
}
#: What holds, whichever of the two is the ground.
HOLDS = {
    frozenset(pair)
    for pair in (
        *DARK.values(),
        *BRIGHT.values(),
        (BLACK, GREY),
        (BLUE, YELLOW),
    )
}


def _pairs() -> dict[str, tuple[int, int]]:
    """The pairs by the paint of the tone."""
    return {
        theme.variables[f"tone-{tone}"]: pair
        for theme in THEMES
        for tone, pair in (DARK if theme.dark else BRIGHT).items()
    }


PAIRS = _pairs()


@lru_cache(maxsize=1024)
def in_sixteen(style: Style) -> Style:
    """The style in a pair that is read."""
    if style.color is None or style.bgcolor is None:
        return style
    ink, ground = style.color, style.bgcolor
    if ink.name in PAIRS:
        pair = PAIRS[ink.name]
    elif ground.name in PAIRS:
        pair = PAIRS[ground.name][::-1]
    else:
        pair = _nearest(ink), _nearest(ground)
    if frozenset(pair) not in HOLDS:
        pair = _read_on(pair[1])
    colours = (Color.from_ansi(number) for number in pair)
    return style + Style.from_color(*colours)


def _nearest(colour: Color) -> int:
    return colour.downgrade(ColorSystem.STANDARD).number or 0


def _read_on(ground: int) -> tuple[int, int]:
    """Black or white on that ground; on its bright sister where neither is read."""
    for ink in (BLACK, WHITE):
        if frozenset((ink, ground)) in HOLDS:
            return ink, ground
    return (BLACK, ground | 8) if frozenset((BLACK, ground | 8)) in HOLDS else (BLACK, WHITE)


class Sixteen(LineFilter):
    """What a terminal of sixteen colours is drawn with."""

    def apply(self, segments: list[Segment], background: Ground) -> list[Segment]:
        return [
            Segment(text, None if style is None else in_sixteen(style), control)
            for text, style, control in segments
        ]


class ColourApp(FaultApp):
    """An app that is read in a terminal of sixteen colours too."""

    def get_line_filters(self) -> Sequence[LineFilter]:
        own = super().get_line_filters()
        few = self.console.color_system == "standard" and not self.no_color
        return [*own, Sixteen()] if few and not self.is_headless else own
