"""Contrast by the formula of WCAG 2.1 (W3C Recommendation, 5 June 2018), 'relative luminance' and
'contrast ratio'. Its criterion 1.4.3 asks 4.5 of text and 3 of large text, 1.4.11 asks 3 of shapes.
"""

from __future__ import annotations

import pytest
from rich.color import ColorSystem
from rich.segment import Segment
from rich.style import Style
from textual.color import Color
from textual.filter import Monochrome
from textual.theme import Theme

from booth.widgets.figure_panel import FigurePanel
from booth.widgets.themes import DARK_BOOTH, OPEN_DOOR, THEMES, variable_defaults
from booth.words.shown import Readout, Tone
from tests.widgets.bench_app import WidgetApp

GROUNDS = ("background", "surface", "panel")


def luminance(color: Color) -> float:
    def linear(channel: int) -> float:
        share = channel / 255
        return share / 12.92 if share <= 0.03928 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(channel) for channel in color.rgb)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Color, other: Color) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def colour(theme: Theme, name: str) -> Color:
    return Color.parse(theme.variables.get(name) or getattr(theme, name))


def test_the_formula_on_known_pairs() -> None:
    """Black on white is 21 to 1 by definition; #767676 on white is W3C's own example of 4.54."""
    assert contrast(Color.parse("#000"), Color.parse("#fff")) == pytest.approx(21)
    # Given to two places.
    assert contrast(Color.parse("#767676"), Color.parse("#fff")) == pytest.approx(4.54, abs=0.005)


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize("ground", GROUNDS)
def test_text_and_figures_meet_their_contrast(theme: Theme, ground: str) -> None:
    on = colour(theme, ground)
    # Tones colour small words too, so they are held to the contrast of text, not only of figures.
    for name in ("foreground", "quiet", *(tone.css for tone in Tone)):
        assert contrast(colour(theme, name), on) >= 4.5, name
    # What fills a bar or a current row is reversed: the ground's colour upon the tone's.
    assert contrast(colour(theme, "background"), colour(theme, "foreground")) >= 4.5


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_textual_own_chrome_meets_it_too(theme: Theme) -> None:
    drawn = theme.to_color_system().generate() | theme.variables
    for text, ground in (
        ("footer-foreground", "footer-background"),
        ("footer-key-foreground", "footer-background"),
        ("footer-description-foreground", "footer-background"),
        ("input-cursor-foreground", "input-cursor-background"),
        ("block-cursor-foreground", "block-cursor-background"),
    ):
        assert contrast(Color.parse(drawn[text]), Color.parse(drawn[ground])) >= 4.5, text


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_without_colour_the_contrast_stays(theme: Theme) -> None:
    """NO_COLOR: the application is drawn in the greys that Textual's own filter makes of it."""

    for ground in GROUNDS:
        for tone in Tone:
            style = Style(
                color=colour(theme, tone.css).rich_color,
                bgcolor=colour(theme, ground).rich_color,
            )
            [grey] = Monochrome().apply([Segment("x", style)], Color(0, 0, 0))
            assert grey.style is not None and grey.style.color and grey.style.bgcolor
            seen = [Color.from_rich_color(c) for c in (grey.style.color, grey.style.bgcolor)]
            assert contrast(*seen) >= 4.5, (tone, ground)


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_sixteen_colours_leave_ink_on_ground(theme: Theme) -> None:
    """A terminal of sixteen colours gets the nearest of them: never the ground's own."""
    for ground in GROUNDS:
        on = colour(theme, ground).rich_color.downgrade(ColorSystem.STANDARD)
        for name in ("foreground", "quiet", *(tone.css for tone in Tone)):
            ink = colour(theme, name).rich_color.downgrade(ColorSystem.STANDARD)
            assert ink.number != on.number, (name, ground)


def test_every_theme_and_the_defaults_know_every_variable() -> None:
    wanted = {tone.css for tone in Tone} | {"quiet"}
    assert wanted <= set(variable_defaults())
    assert all(wanted <= set(theme.variables) for theme in THEMES)
    assert DARK_BOOTH.dark


async def test_the_light_can_be_switched_while_it_runs() -> None:
    panel = FigurePanel()
    app = WidgetApp(panel)
    async with app.run_test(size=(40, 9)) as pilot:
        panel.shown = Readout("4:31", tone=Tone.LATE, word="")
        await pilot.pause()
        for theme in (OPEN_DOOR, DARK_BOOTH):
            app.theme = theme.name
            await pilot.pause()
            [style] = {
                segment.style
                for segment in panel.render_line(4)
                if segment.text.strip() and segment.style
            }
            assert style.color == colour(theme, "tone-late").rich_color
            assert style.bgcolor == colour(theme, "background").rich_color
