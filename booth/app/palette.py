"""Everything by name: the table of commands, and the steps of the job that is open."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from textual.app import App, SystemCommand
from textual.command import CommandInput, CommandPalette
from textual.screen import Screen

from booth.bench.commands import COMMANDS
from booth.screens.base import OwnScreen
from booth.widgets.text import plain


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
