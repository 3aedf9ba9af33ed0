"""Every command of the program, once: its keys, its word in the key line, its line in menu and help.

Key line, menus, palette and help are made from this table, so that they cannot drift apart.
"""

from __future__ import annotations

import re

import msgspec


class Command(msgspec.Struct, frozen=True):
    """One thing the painter can ask for.

    keys: the first is the one shown where letters are no text, the function key where they are;
    word: in the key line; says: in menus and the help.
    """

    id: str
    keys: tuple[str, ...]
    word: str
    says: str

    @property
    def bench(self) -> bool:
        """Whether it can be asked for only while a job is open."""
        return self.id not in ANYWHERE and self.id not in PAST

    @property
    def shown(self) -> bool:
        """Whether it has room in the key line."""
        return self.id not in UNSHOWN

    @property
    def shown_keys(self) -> str:
        return " or ".join(key_name(key) for key in self.keys)


FUNCTION_KEY = re.compile(r"f\d+")
ANYWHERE = {"help", "units", "learnt", "theme", "alarm", "palette", "quit"}
#: About a past job, where past jobs are.
PAST = ("again",)
#: What can be asked for where past jobs are: of one of them.
OF_A_JOB = ("card", *PAST)
UNSHOWN = {"change", "learnt", "theme", "alarm", "palette", *OF_A_JOB}

#: A line each: id, keys, word, what it says.
_TABLE = """
note          n f2              note          Write a note
skip          s f6              skip          Skip this step
log           l f4              log           All that was kept in this job; void, bring back
help          question_mark f1  help          What it is, what to do, rule, limits, source
units         u f3              units         Show US or metric units
hints         h f5              hints         Hide or show how each step is done
save_profile  p f11             save profile  Save its settings as a new coating profile
change        c f12             change        Change coats, parts, gun, tip or cup
theme         t f7              bright/dark   The dark booth, or the open garage door
alarm         a f8              test alarm    One alarm of each kind, to see and hear it
card          e ctrl+e          card          Write its card as a page to print, say where
again         v ctrl+y          look again    Second verdict of a past job, polish, cure
learnt        o ctrl+o          learnt        What this shop has learnt from its own jobs
home          f9                jobs          Leave the bench; the job and its clocks go on
palette       ctrl+p            by name       Every step, command and word of the trade by name
quit          f10 ctrl+q        quit          Leave the program; every wait goes on
"""
COMMANDS = tuple(
    Command(id, tuple(keys.split()), word, says)
    for id, keys, word, says in (re.split(" {2,}", line) for line in _TABLE.strip().splitlines())
)
_BY_KEY = {key: command for command in COMMANDS for key in command.keys}


#: Keys that are no command of this table, for the help.
KEYS = (
    ("Space or PgDn", "Start or stop the clock in front of you"),
    ("Enter", "Keep the row and go to the next; on the last row keep the measurement; go on"),
    ("↑ ↓ ← →", "Rows, parts, choices, units; ↑ from the top: the steps; → where it is free: more"),
    ("Bksp", "Erase; where nothing is typed, void the last entry, and once more brings it back"),
    ("Esc or PgUp", "Silence the alarm that is shown; the next one comes up"),
)

#: How keys are written for the painter.
KEY_NAMES = {
    "space": "Space",
    "pagedown": "PgDn",
    "pageup": "PgUp",
    "escape": "Esc",
    "backspace": "Bksp",
    "question_mark": "?",
    "ctrl+q": "Ctrl+Q",
    "ctrl+p": "Ctrl+P",
    "ctrl+e": "Ctrl+E",
    "ctrl+o": "Ctrl+O",
    "ctrl+y": "Ctrl+Y",
    "enter": "Enter",
    "up": "↑",
    "down": "↓",
    "left": "←",
    "right": "→",
}


def command_of(key: str) -> Command | None:
    return _BY_KEY.get(key)


def on_bench(key: str) -> Command | None:
    """The command of a key, if it is one of those that work on the bench."""
    command = command_of(key)
    return None if command is None or command.id in PAST else command


def key_name(key: str) -> str:
    return KEY_NAMES.get(key, key.upper() if FUNCTION_KEY.fullmatch(key) else key)


def key_lines() -> tuple[str, ...]:
    """Give every key and what it does, a line each."""
    lines = [*KEYS, *((command.shown_keys, command.says) for command in COMMANDS)]
    return tuple(f"{keys}: {says}" for keys, says in lines)
