"""Every command of the program, once: its keys, its word in the key line, its line in the palette.

Bindings, key line, palette and help are made from this table, so that they cannot drift apart.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Command:
    """One thing the painter can ask for.

    action: the Textual action; keys: the first is the one shown; word: in the key line; says: in the
    palette and the help; bench: only while a job is open; priority: also works while typing.
    """

    id: str
    action: str
    keys: tuple[str, ...]
    word: str
    says: str
    bench: bool = True
    priority: bool = False
    shown: bool = True


COMMANDS: tuple[Command, ...] = (
    Command(
        "go",
        "go",
        ("space", "pagedown"),
        "start/stop",
        "Start or stop the clock in front of you",
        shown=False,
    ),
    Command(
        "silence",
        "silence",
        ("escape", "pageup"),
        "silence",
        "Silence the alarms that ring",
        bench=False,
        shown=False,
    ),
    Command("void", "void_last", ("backspace",), "void last", "Void the last entry of this step"),
    Command(
        "help",
        "help",
        ("question_mark", "f1"),
        "help",
        "What this figure is, its rule, its source, its limits",
        bench=False,
    ),
    Command("note", "note", ("n", "f2"), "note", "Write a note"),
    Command("units", "units", ("u", "f3"), "units", "Show US or metric units", bench=False),
    Command(
        "log",
        "show_log",
        ("l", "f4"),
        "log",
        "Everything that was kept in this job; void or bring back",
    ),
    Command("hints", "hints", ("h", "f5"), "hints", "Hide or show how each step is done"),
    Command("skip", "skip_step", ("s", "f6"), "skip", "Skip this step"),
    Command(
        "save_profile",
        "save_profile",
        ("p", "f11"),
        "save profile",
        "Save the settings of this job as a new coating profile",
    ),
    Command(
        "theme",
        "theme",
        ("t", "f7"),
        "bright/dark",
        "Change between the dark booth and the open garage door",
        bench=False,
        shown=False,
    ),
    Command(
        "alarm",
        "try_alarm",
        ("a", "f8"),
        "test alarm",
        "Sound the alarm once, to hear whether it reaches you",
        bench=False,
        shown=False,
    ),
    Command(
        "home", "home", ("f9",), "jobs", "Leave the bench; the job stays open and its clocks go on"
    ),
    Command(
        "quit",
        "quit",
        ("f10", "ctrl+q"),
        "quit",
        "Leave the program; every wait goes on",
        bench=False,
    ),
)

BY_ID = {command.id: command for command in COMMANDS}

#: How keys are written for the painter.
KEY_NAMES = {
    "space": "Space",
    "pagedown": "PgDn",
    "pageup": "PgUp",
    "escape": "Esc",
    "backspace": "Bksp",
    "question_mark": "?",
    "ctrl+q": "Ctrl+Q",
    "enter": "Enter",
    "up": "↑",
    "down": "↓",
    "left": "←",
    "right": "→",
}


def key_name(key: str) -> str:
    """Give the key as it is written on the screen."""
    return KEY_NAMES.get(key, key.upper() if key.startswith("f") and key[1:].isdigit() else key)


def key_table() -> str:
    """Give every command with its keys, a line each."""
    return "\n".join(
        f"{' or '.join(key_name(key) for key in command.keys):<16} {command.says}"
        for command in COMMANDS
    )
