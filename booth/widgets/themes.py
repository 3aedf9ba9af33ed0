"""The two themes: the dark booth, and the light of an open door. A test holds their contrast."""

from __future__ import annotations

from typing import Any

from textual.app import App
from textual.theme import Theme

# Few tones, called after what a sprayer knows them by. They differ in lightness too, where hue is
# not seen; words and signs carry the meaning in any case. A test holds how far apart they look, also
# to the colour-blind. `quiet` is for second-rank text and still meets the contrast of text.
_TONES_OF = {
    "red oxide": ("late",),
    "masking tape": ("closing", "caution"),
    "primer green": ("ready", "good"),
    "water": ("running",),
    "guide coat": ("wait",),
    "chalk": ("plain",),
}
_DARK_PAINTS = {
    "red oxide": "#ff8a78",
    "masking tape": "#ffe04a",
    "primer green": "#56b011",
    "water": "#74dcff",
    "guide coat": "#7289ee",
    "chalk": "#f4f6f7",
}
#: The same in the light of an open door: dark on a bright ground.
_BRIGHT_PAINTS = {
    "red oxide": "#c12035",
    "masking tape": "#533100",
    "primer green": "#00692a",
    "water": "#0066a7",
    "guide coat": "#152ebc",
    "chalk": "#12171c",
}


def _tones(paints: dict[str, str], quiet: str) -> dict[str, str]:
    """The variables of a theme, each tone in its paint."""
    found = {f"tone-{tone}": paints[paint] for paint, tones in _TONES_OF.items() for tone in tones}
    return {"quiet": quiet} | found


_DARK = _tones(_DARK_PAINTS, "#a3aebb")
_BRIGHT = _tones(_BRIGHT_PAINTS, "#4a535c")


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
        "screen-selection-background": ink,
        "screen-selection-foreground": background,
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
    # Set without its watcher: nothing is drawn yet, and the style sheet would be parsed twice. It was
    # made with the colours of the toolkit's own theme.
    app.set_reactive(App.theme, name)
    app.stylesheet.set_variables(app.get_css_variables())
