"""On which line each key of a TOML text stands, which ``tomllib`` does not tell.

Walks the text once and follows tables, dotted keys, inline tables, lists and strings of every kind,
so that what looks like a key inside a string misleads nobody. It judges nothing: of a text that is
not TOML it gives what it understood up to there.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from itertools import count

from booth.files.faults import Path

#: What a text is made of: strings, a comment or blanks, the end of a line, marks, and bare words.
TOKEN = re.compile(
    r'"""(?:[^\\]|\\.)*?"{3,5}'
    r"|'''.*?'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
    r"|(?P<nothing>[ \t]+|\#[^\n]*)"
    r"|[\n\[\]{}=,]"
    r"|[^\s\[\]{}=,\#\"']+",
    re.DOTALL,
)


@dataclass(frozen=True, slots=True)
class Repeat:
    """A key or a table that was given before: its path, its line, the line of the first."""

    path: Path
    line: int
    first: int
    table: bool


def where(text: str) -> Where:
    """Find the lines of all keys of `text`."""
    found = Where(text.replace("\r\n", "\n"))
    with suppress(_Lost, IndexError, RecursionError):
        found.document()
    return found


class _Lost(Exception):
    """The text is not TOML from here on."""


def _tokens(text: str) -> Iterator[tuple[str, int]]:
    """Give each token with the line on which it begins, up to what is none."""
    at, line = 0, 1
    while found := TOKEN.match(text, at):
        if found["nothing"] is None:
            yield found[0], line
        at = found.end()
        line += found[0].count("\n")


class Where:
    """Notes where every key stands.

    lines: the line of every key, table and list item, by path; repeats: what is given twice.
    """

    def __init__(self, text: str) -> None:
        self.lines: dict[Path, int] = {}
        self.repeats: list[Repeat] = []
        self.tokens = list(_tokens(f"{text}\n"))
        self.at = 0
        self.pairs: dict[Path, int] = {}  # keys with a value
        self.headed: dict[Path, int] = {}  # tables with a header
        self.counts: dict[Path, int] = {}  # of lists of tables

    @property
    def next(self) -> str:
        return self.tokens[self.at][0]

    @property
    def line(self) -> int:
        return self.tokens[self.at][1]

    def take(self, mark: str) -> None:
        if self.next != mark:
            raise _Lost
        self.at += 1

    def note(self, path: Path, line: int, first: int | None = None, *, table: bool = False) -> None:
        """Note a line. first: that in which the same was given before."""
        if first is not None:
            self.repeats.append(Repeat(path, line, first, table))
        self.lines.setdefault(path, line)

    def document(self) -> None:
        table: Path = ()
        while True:
            if self.next == "[":
                table = self.header()
            elif self.next != "\n":
                self.pair(table)
            self.take("\n")

    def header(self) -> Path:
        line = self.line
        self.take("[")
        is_list = self.next == "["
        self.at += is_list
        *above, name = self.key("]")
        self.take("]")
        self.at += is_list
        path: Path = ()
        for part in above:
            path = self.last((*path, part))
            self.note(path, line)
        path = (*path, name)
        first = self.headed.get(path) or self.pairs.get(path)
        if first is None and not is_list and path in self.counts:
            first = self.lines[path]
        self.note(path, line, first, table=True)
        if is_list:
            self.counts[path] = self.counts.get(path, 0) + 1
        else:
            self.headed.setdefault(path, line)
        path = self.last(path)
        self.note(path, line)
        return path

    def last(self, path: Path) -> Path:
        """A name in a header that is a list of tables means the last of them."""
        return (*path, self.counts[path] - 1) if path in self.counts else path

    def key(self, end: str) -> list[str]:
        """Read the names of a key, dotted or not, up to the mark after it."""
        names: list[str] = []
        while self.next != end:
            if self.next in "\n[]{},=":
                raise _Lost
            quoted = self.next[0] in "\"'"
            names += [_meant(self.next)] if quoted else filter(None, self.next.split("."))
            self.at += 1
        if not names:
            raise _Lost
        return names

    def pair(self, table: Path) -> None:
        path, line = table, self.line
        for name in self.key("="):
            path = (*path, name)
            self.note(path, line)
        self.note(path, line, self.pairs.get(path) or self.headed.get(path))
        self.pairs.setdefault(path, line)
        self.take("=")
        self.value(path)

    def value(self, path: Path) -> None:
        if self.next == "[":
            for number in self.items("]"):
                self.note((*path, number), self.line)
                self.value((*path, number))
        elif self.next == "{":
            for _ in self.items("}"):
                self.pair(path)
        else:
            while self.next not in (",", "]", "}", "\n"):
                self.at += 1

    def items(self, closing: str) -> Iterator[int]:
        """Go through a list or an inline table: stop at each item, and behind the closing mark."""
        self.at += 1
        for number in count():
            self.end_lines()
            if self.next == closing:
                break
            yield number
            self.end_lines()
            if self.next != closing:  # the last item needs no comma
                self.take(",")
        self.at += 1

    def end_lines(self) -> None:
        # Lines may end within { } too, by later editions of TOML.
        while self.next == "\n":
            self.at += 1


def _meant(text: str) -> str:
    """Give the name that a quoted key means."""
    try:
        return str(tomllib.loads(f"a = {text}")["a"])
    except (ValueError, RecursionError):
        raise _Lost from None
