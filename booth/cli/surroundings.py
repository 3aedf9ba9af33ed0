"""What the program finds around it, looked at before anything is drawn: terminal, encoding, folder.

Where it cannot go on there, a sentence says what was found and what to do.
"""

from __future__ import annotations

import os
import stat
import sys
from collections.abc import Mapping, MutableMapping
from pathlib import Path

from booth.cli.endings import Refused
from booth.files.places import Places
from booth.files.safe_text import shortened

#: What a terminal calls itself that cannot place a text anywhere.
CANNOT_DRAW = frozenset({"dumb", "unknown"})
#: What the widget library takes; anything else stops it at its import.
COLOURS = "TEXTUAL_COLOR_SYSTEM"
COLOUR_SYSTEMS = frozenset({"auto", "standard", "256", "truecolor", "windows"})


def mind_terminal(environment: MutableMapping[str, str] = os.environ) -> None:
    """See to it that the screen can be drawn here. Raises Refused where it cannot."""
    if not all(stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr)):
        raise Refused(
            "the screen needs a terminal to draw in; this is a pipe or a file. "
            "'booth log' and 'booth figure' work without one."
        )
    why = unfit(environment)
    if why:
        raise Refused(why)
    if environment.get(COLOURS) not in COLOUR_SYSTEMS:
        environment.pop(COLOURS, None)
    from booth.widgets.cells import signs

    lacks = signs(environment, sys.stderr.encoding)
    if lacks is not None:
        from booth.widgets.textual_internals import write_as

        write_as(lacks)


def unfit(environment: Mapping[str, str]) -> str:
    """Say why the screen cannot be drawn in this terminal and what to do; empty where it can.

    >>> unfit({"TERM": "xterm"})
    ''
    """
    term = environment.get("TERM", "")
    if term in CANNOT_DRAW:
        return (
            f"this terminal calls itself {term!r}, which is one that cannot place text on the "
            "screen. Start booth in another one; or, if it can, say: export TERM=xterm-256color"
        )
    return ""


def places() -> Places:
    """Give where everything is. Raises Refused where there can be no such folder."""
    try:
        found = Places.standard()
    except (OSError, RuntimeError) as fault:  # ~nobody, or the folder we stand in is gone
        why = getattr(fault, "strerror", None) or str(fault)
        raise Refused(_no_home(os.environ.get("BOOTH_HOME", ""), why)) from None
    for folder in dict.fromkeys((found.jobs_dir.parent, found.preferences_file.parent)):
        why = _no_folder(folder)
        if why:
            raise Refused(_no_home(str(folder), why))
    return found


def _no_folder(folder: Path) -> str:
    """Say why `folder` is none and can be none; empty where it is one or may become one."""
    try:
        is_folder = stat.S_ISDIR(os.stat(folder).st_mode)
    except FileNotFoundError:
        return ""
    except OSError as fault:
        return fault.strerror or str(fault)
    return "" if is_folder else "it is a file"


def _no_home(named: str, why: str) -> str:
    return (
        f"the files cannot be kept in {shortened(named)}: {why.rstrip('.')}. "
        "Set BOOTH_HOME to a folder that you may write to."
    )
