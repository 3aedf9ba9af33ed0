"""The commands that are the same on every screen; everything by name: commands, steps of the open job."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import TYPE_CHECKING, Any

from textual.app import App, SystemCommand
from textual.command import CommandInput, CommandPalette
from textual.screen import Screen

from booth.bench.commands import COMMANDS, key_lines
from booth.screens.base import OwnScreen
from booth.screens.dialog import Sheet
from booth.widgets import themes
from booth.widgets.text import plain

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
            app.alarms.rehearse()
        case "palette":
            await show_palette(app)
        case "learnt":
            from booth.screens.learnt import LearntScreen

            await app.show(LearntScreen())
        case "quit":
            app.exit()
        case "help":
            await app.show(Sheet("Keys", ("\n".join(key_lines()),)))


def change_units(app: BoothApp) -> None:
    """US or metric, on every screen at once; what was typed keeps its meaning."""
    before, app.system = app.system, app.system.other
    for screen in app.own_screens:
        screen.units_changed(before)
    app.remember("units", app.system.value)
    app.draw_all()


# -- by name -----------------------------------------------------------------------------------


async def show_palette(app: App[Any]) -> None:
    """Open it; returns when it stands there and takes what is typed."""
    if not CommandPalette.is_open(app):
        shown = CommandPalette(id="--command-palette")
        await app.push_screen(shown)
        shown.set_focus(shown.query_one(CommandInput))


def palette(screen: Screen[Any]) -> Iterator[SystemCommand]:
    """Give what can be asked for now."""
    if not isinstance(screen, OwnScreen):
        return
    for command in COMMANDS:
        if command.id in screen.WORK:
            title = f"{command.word} ({command.shown_keys})"
            yield SystemCommand(title, command.says, partial(_soon, screen, command.id))
    from booth.screens.bench import BenchScreen

    if isinstance(screen, BenchScreen):
        from booth.job.steps import steps_of

        for step in steps_of(screen.desk.job):
            # Titles are user text that the palette reads as markup: brackets are taken out.
            name = plain(step.name).replace("[", "(").replace("]", ")")
            opens = partial(screen.app.call_next, screen.open_step, step.key)
            yield SystemCommand(f"step: {name}", "Open this step", opens)


def _soon(screen: OwnScreen[Any], id: str) -> None:
    """In its turn among the keys."""
    screen.app.call_next(screen.command, id)
