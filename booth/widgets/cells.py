"""What is written where a terminal, or its font, has not all the signs that the screen is drawn with. Pure.

``full``: everything; ``whole``: no eighths and no quarters of a cell, which fonts of few signs lack;
``ascii``: nothing but ASCII, a cell for a cell, so that nothing moves. The environment variable
``BOOTH_CELLS`` chooses; without it the locale and the encoding do.
"""

from __future__ import annotations

import codecs
import unicodedata
from collections.abc import Mapping

from rich.cells import cell_len

VARIABLE = "BOOTH_CELLS"
FULL, WHOLE, ASCII = "full", "whole", "ascii"
#: A locale that knows no letters but those of ASCII.
BARE = frozenset({"C", "POSIX"})
#: What the interpreter puts in the place of such a locale, for itself.
PUT_THERE = "C.UTF-8"
#: A terminal whose font has a few hundred signs: the console of Linux.
FEW_SIGNS = "linux"

#: What stands for which signs where there are no eighths and no quarters: what is nearest.
_AS_WHOLE = {" ": "▏▎▍▁▂", "▌": "▋", "▀": "▘▝", "▄": "▃▅▖▗", "█": "▊▉▆▇▞▚▛▜▙▟"}
_AS_ASCII = {
    " ": "▏▎▍▁▂",
    "#": "▌▋▊▉█▐▛▜▙▟▆▇■▓●",
    "_": "▃▄▅",
    '"': "▀“”",
    "'": "▝’‘",
    "`": "▘",
    ".": "▖▗·…░",
    ":": "▒┊",
    "/": "▞",
    "\\": "▚",
    "!": "▲",
    "=": "▬═",
    ">": "►»→▸",
    "<": "←◂",
    "^": "↑",
    "v": "↓▼",
    "+": "√┴┬┼├┤",
    "-": "–—−─┄━",
    "|": "┃│",
    "o": "°○",
    "u": "µμ",
    "x": "×",
}


class Signs(dict[int, str]):
    """What stands for each character, for `str.translate`: a cell for a cell."""

    def __init__(self, kind: str) -> None:
        table = _AS_WHOLE if kind == WHOLE else _AS_ASCII
        super().__init__((ord(each), stands) for stands, all_ in table.items() for each in all_)
        self.kind = kind

    def __missing__(self, code: int) -> str:
        char = chr(code)
        self[code] = char if code < 128 or self.kind == WHOLE else _bare(char)
        return self[code]


def _bare(char: str) -> str:
    """A letter without its marks, as wide as it was; question marks where there is none."""
    wide = cell_len(char)
    base = unicodedata.normalize("NFKD", char)[:1]
    return base if base.isascii() and base.isprintable() and wide == 1 else "?" * wide


def kind_of(environment: Mapping[str, str], encoding: str) -> str:
    """Which of the three this terminal is drawn with.

    >>> kind_of({"LANG": "C.UTF-8"}, "utf-8"), kind_of({"LANG": "C"}, "utf-8")
    ('full', 'ascii')
    """
    utf8 = codecs.lookup(encoding).name == "utf-8"
    wanted = environment.get(VARIABLE, "").strip().lower()
    if wanted == ASCII or not utf8:
        return ASCII
    if wanted in (FULL, WHOLE):
        return wanted
    if _locale(environment) in BARE:
        return ASCII
    return WHOLE if environment.get("TERM") == FEW_SIGNS else FULL


def _locale(environment: Mapping[str, str]) -> str:
    """What rules the letters; what the interpreter itself put there is passed over."""
    ruling, language = environment.get("LC_CTYPE", ""), environment.get("LANG", "")
    if language in BARE and ruling == PUT_THERE:
        ruling = ""
    return environment.get("LC_ALL") or ruling or language


def signs(environment: Mapping[str, str], encoding: str) -> Signs | None:
    """What is put in the place of which character; None where all are written."""
    kind = kind_of(environment, encoding)
    return None if kind == FULL else Signs(kind)
