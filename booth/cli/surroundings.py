"""What the program finds around it, looked at before anything is drawn: terminal, encoding, folder.

Where it cannot go on there, a sentence says what was found and what to do.
"""

from __future__ import annotations

import codecs
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
#: What rules the encoding, the strongest first.
LOCALE = ("LC_ALL", "LC_CTYPE", "LANG")


def mind_terminal(environment: MutableMapping[str, str] = os.environ) -> None:
    """See to it that the screen can be drawn here. Raises Refused where it cannot."""
    if not all(stream.isatty() for stream in (sys.stdin, sys.stdout, sys.stderr)):
        raise Refused(
            "the screen needs a terminal to draw in; this is a pipe or a file. "
            "'booth log' and 'booth figure' work without one."
        )
    why = unfit(sys.stderr.encoding, environment, sys.platform)
    if why:
        raise Refused(why)
    if environment.get(COLOURS) not in COLOUR_SYSTEMS:
        environment.pop(COLOURS, None)


def unfit(encoding: str, environment: Mapping[str, str], platform: str) -> str:
    """Say why the screen cannot be drawn in this terminal and what to do; empty where it can.

    >>> unfit("utf-8", {"TERM": "xterm"}, "linux")
    ''
    """
    term = environment.get("TERM", "")
    if term in CANNOT_DRAW:
        return (
            f"this terminal calls itself {term!r}, which is one that cannot place text on the "
            "screen. Start booth in another one; or, if it can, say: export TERM=xterm-256color"
        )
    if codecs.lookup(encoding).name != "utf-8":
        return (
            f"this terminal is set to the encoding {encoding}, which has not the signs that the "
            f"screen is drawn with. Say: {_to_utf8(environment, platform)}"
        )
    return ""


def _to_utf8(environment: Mapping[str, str], platform: str) -> str:
    """What to say in the shell so that the terminal is taken for UTF-8."""
    if environment.get("PYTHONIOENCODING"):
        return "set PYTHONIOENCODING=" if platform == "win32" else "unset PYTHONIOENCODING"
    if platform == "win32":
        return "set PYTHONUTF8=1"
    rules = next((name for name in LOCALE if environment.get(name)), LOCALE[-1])
    return f"export {rules}={'en_US.UTF-8' if platform == 'darwin' else 'C.UTF-8'}"


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
