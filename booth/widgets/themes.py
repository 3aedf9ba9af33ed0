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


def _theme(name: str, tones: dict[str, str], grounds: tuple[str, str, str]) -> Theme:
    """A theme of its tones and of its grounds: background, surface, panel."""
    background, surface, panel = grounds
    ink, quiet = tones["tone-plain"], tones["quiet"]
    # Textual's own variables that would otherwise be mixed to a paler contrast.
    chrome = {
        "text-muted": quiet,
        "text-disabled": quiet,
        "footer-background": panel,
        "footer-foreground": ink,
        "footer-key-foreground": tones["tone-closing"],
        "footer-description-foreground": ink,
        "footer-item-background": panel,
        "block-cursor-background": ink,
        "block-cursor-foreground": background,
        "input-cursor-background": ink,
        "input-cursor-foreground": background,
        "border": quiet,
        "border-blurred": quiet,
    }
    return Theme(
        name=name,
        dark=tones is _DARK,
        background=background,
        surface=surface,
        panel=panel,
        foreground=ink,
        primary=tones["tone-wait"],
        secondary=tones["tone-good"],
        accent=tones["tone-closing"],
        success=tones["tone-ready"],
        warning=tones["tone-closing"],
        error=tones["tone-late"],
        variables=tones | chrome,
    )


DARK_BOOTH = _theme("dark-booth", _DARK, ("#0e1216", "#151b21", "#1c242c"))
OPEN_DOOR = _theme("open-door", _BRIGHT, ("#fbfaf6", "#f1efe8", "#e6e3d9"))
THEMES = (DARK_BOOTH, OPEN_DOOR)


def variable_defaults() -> dict[str, str]:
    """The widgets' own variables, for `App.get_theme_variable_defaults`, under any theme."""
    return dict(_DARK)


def install(app: App[Any], name: str = DARK_BOOTH.name) -> None:
    """Make both themes known to the app, in its __init__, and use one, the dark one where `name` is neither."""
    for theme in THEMES:
        app.register_theme(theme)
    if name != OPEN_DOOR.name:
        name = DARK_BOOTH.name
    # Set without its watcher: nothing is drawn yet, and the style sheet would be parsed twice.
    app.set_reactive(App.theme, name)
