"""Bindings made from the one table of commands."""

from __future__ import annotations

from textual.binding import Binding

from booth.bench.commands import COMMANDS, Command

#: These are handled where the key arrives, with its own time or only while something rings.
_ELSEWHERE = {"go", "silence"}


def _bindings(commands: list[Command], prefix: str = "") -> list[Binding]:
    return [
        Binding(
            ",".join(command.keys),
            prefix + command.action,
            command.word,
            show=False,
            priority=command.priority,
            id=command.id,
        )
        for command in commands
    ]


def bench_bindings() -> list[Binding | tuple[str, str] | tuple[str, str, str]]:
    """The bindings that need an open job."""
    here = [each for each in COMMANDS if each.bench and each.id not in _ELSEWHERE]
    return [*_bindings(here), Binding("question_mark,f1", "help", "help", show=False)]


def app_bindings() -> list[Binding | tuple[str, str] | tuple[str, str, str]]:
    """The bindings of every screen. Silencing works over everything, so it has priority."""
    here = [each for each in COMMANDS if not each.bench and each.id not in _ELSEWHERE]
    silence = Binding("escape", "silence", "silence", show=False, priority=True)
    # A clicker's second press must not do what a second Escape would.
    only = Binding("pageup", "silence_only", "silence", show=False, priority=True)
    aside = Binding("ctrl+z", "suspend_process", "to the shell", show=False, priority=True)
    return [*_bindings(here), silence, only, aside]
