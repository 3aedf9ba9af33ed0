"""The two themes: the dark booth, and the light of an open door. A test holds their contrast."""

from __future__ import annotations

from typing import Any

from textual.app import App
from textual.theme import Theme

# Chosen so that the states differ in lightness too, where hue is not seen; words and shapes carry
# the meaning in any case. `quiet` is for second-rank text and still meets the contrast of text.
_DARK = {
    "quiet": "#a3aebb",
    "tone-late": "#ff7d6e",
    "tone-closing": "#ffc247",
    "tone-ready": "#6ee787",
    "tone-caution": "#f59bdc",
    "tone-running": "#62dcea",
    "tone-wait": "#86b8ff",
    "tone-good": "#6ed7b5",
    "tone-plain": "#f2f5f7",
}
_BRIGHT = {
    "quiet": "#4a535c",
    "tone-late": "#a3160f",
    "tone-closing": "#7a4700",
    "tone-ready": "#0b5e24",
    "tone-caution": "#8a1a72",
    "tone-running": "#005766",
    "tone-wait": "#17468f",
    "tone-good": "#005c4b",
    "tone-plain": "#12171c",
}


def _chrome(tones: dict[str, str], background: str, panel: str) -> dict[str, str]:
    """The tones, and Textual's own variables that would otherwise be mixed to a paler contrast."""
    ink = tones["tone-plain"]
    return {
        **tones,
        "text-muted": tones["quiet"],
        "text-disabled": tones["quiet"],
        "footer-background": panel,
        "footer-foreground": ink,
        "footer-key-foreground": tones["tone-closing"],
        "footer-description-foreground": ink,
        "footer-item-background": panel,
        "block-cursor-background": ink,
        "block-cursor-foreground": background,
        "input-cursor-background": ink,
        "input-cursor-foreground": background,
        "border": tones["quiet"],
        "border-blurred": tones["quiet"],
    }


DARK_BOOTH = Theme(
    name="dark-booth",
    dark=True,
    background="#0e1216",
    surface="#151b21",
    panel="#1c242c",
    foreground=_DARK["tone-plain"],
    primary=_DARK["tone-wait"],
    secondary=_DARK["tone-good"],
    accent=_DARK["tone-closing"],
    success=_DARK["tone-ready"],
    warning=_DARK["tone-closing"],
    error=_DARK["tone-late"],
    variables=_chrome(_DARK, "#0e1216", "#1c242c"),
)
OPEN_DOOR = Theme(
    name="open-door",
    dark=False,
    background="#fbfaf6",
    surface="#f1efe8",
    panel="#e6e3d9",
    foreground=_BRIGHT["tone-plain"],
    primary=_BRIGHT["tone-wait"],
    secondary=_BRIGHT["tone-good"],
    accent=_BRIGHT["tone-closing"],
    success=_BRIGHT["tone-ready"],
    warning=_BRIGHT["tone-closing"],
    error=_BRIGHT["tone-late"],
    variables=_chrome(_BRIGHT, "#fbfaf6", "#e6e3d9"),
)
THEMES = (DARK_BOOTH, OPEN_DOOR)


def variable_defaults() -> dict[str, str]:
    """The widgets' own variables, for `App.get_theme_variable_defaults`, under any theme."""
    return dict(_DARK)


def install(app: App[Any], name: str = DARK_BOOTH.name) -> None:
    """Make both themes known to the app and use one, the dark one where `name` is neither; to be called in its __init__."""
    for theme in THEMES:
        app.register_theme(theme)
    if name not in {theme.name for theme in THEMES}:
        name = DARK_BOOTH.name
    # Set without its watcher: nothing is drawn yet, and the style sheet would be parsed twice.
    app.set_reactive(App.theme, name)
