"""The command palette: the table of commands, and the steps of the job that is open."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from typing import TYPE_CHECKING, Any

from textual.app import SystemCommand
from textual.screen import Screen

from booth.bench.commands import COMMANDS, Command, key_name
from booth.widgets.text import plain

if TYPE_CHECKING:
    from booth.app.app import BoothApp


def palette(app: BoothApp, screen: Screen[Any]) -> Iterator[SystemCommand]:
    """Give what can be asked for now."""
    from booth.screens.bench import Bench

    on_bench = isinstance(screen, Bench)
    for command in COMMANDS:
        if command.bench and not on_bench:
            continue
        keys = " or ".join(key_name(key) for key in command.keys)
        yield SystemCommand(f"{command.word} ({keys})", command.says, _action(app, screen, command))
    if isinstance(screen, Bench):
        from booth.job.steps import steps_of

        for step in steps_of(screen.desk.job):
            # Titles are user text that the palette reads as markup: brackets are taken out.
            name = plain(step.name).replace("[", "(").replace("]", ")")
            yield SystemCommand(f"step: {name}", "Open this step", partial(screen.ask_step, step))


def _action(app: BoothApp, screen: Screen[Any], command: Command) -> Callable[[], Any]:
    namespace = screen if hasattr(screen, f"action_{command.action}") else app
    return partial(app.run_action, command.action, namespace)
