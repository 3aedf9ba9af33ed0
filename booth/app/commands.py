"""The commands that are the same on every screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.widgets import themes

if TYPE_CHECKING:
    from booth.app.app import BoothApp


async def do_command(app: BoothApp, id: str) -> None:
    """Do what a command of the table asks for."""
    match id:
        case "units":
            change_units(app)
        case "theme":
            names = [theme.name for theme in themes.THEMES]
            at = names.index(app.theme) if app.theme in names else 0
            app.theme = names[(at + 1) % len(names)]
            app.remember("theme", app.theme)
        case "alarm":
            app.flash("ALARM")
            app.sound.play("alarm")
        case "palette":
            from booth.app.palette import show_palette

            await show_palette(app)
        case "quit":
            app.exit()
        case "help":
            from booth.bench.commands import key_table
            from booth.screens.sheet import Sheet

            await app.show(Sheet("Keys", (key_table(),)))


def change_units(app: BoothApp) -> None:
    """US or metric, on every screen at once; what was typed keeps its meaning."""
    before, app.system = app.system, app.system.other
    for screen in app.own_screens:
        screen.units_changed(before)
    app.remember("units", app.system.value)
    app.draw_all()
