"""On which line each key of a TOML text stands, which ``tomllib`` does not tell.

Walks the text once and follows tables, dotted keys, inline tables, lists and strings of every kind,
so that what looks like a key inside a string misleads nobody. It judges nothing: of a text that is
not TOML it gives what it understood up to there.
"""

from __future__ import annotations

import tomllib
from contextlib import suppress
from dataclasses import dataclass, field

from booth.files.faults import Path

__all__ = ["Repeat", "Where", "where"]

BARE = frozenset("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-")


@dataclass(frozen=True, slots=True)
class Repeat:
    """A key or a table that was given before: its path, its line, the line of the first."""

    path: Path
    line: int
    first: int
    table: bool


@dataclass(slots=True)
class Where:
    """lines: the line of every key, table and list item, by path; repeats: given twice."""

    lines: dict[Path, int] = field(default_factory=dict)
    repeats: list[Repeat] = field(default_factory=list)


class _Lost(Exception):
    """The text is not TOML from here on."""


def where(text: str) -> Where:
    """Find the lines of all keys of `text`."""
    walker = _Walker(text.replace("\r\n", "\n"))
    with suppress(_Lost, IndexError, RecursionError):
        walker.document()
    return walker.found


class _Walker:
    def __init__(self, text: str) -> None:
        # The closing newline spares every loop the test for the end of the text.
        self.text = text + "\n"
        self.at = 0
        self.line = 1
        self.counted = 0
        self.found = Where()
        self.given: dict[Path, int] = {}
        self.headed: dict[Path, int] = {}
        self.counts: dict[Path, int] = {}

    def document(self) -> None:
        table: Path = ()
        while True:
            self.blank(newlines=True)
            if self.at >= len(self.text):
                return
            if self.text.startswith("[[", self.at):
                table = self.header("[[", "]]")
            elif self.text[self.at] == "[":
                table = self.header("[", "]")
            else:
                self.pair(table)
            self.blank()
            if self.text[self.at] != "\n":
                raise _Lost

    def header(self, opening: str, closing: str) -> Path:
        line = self.here()
        self.at += len(opening)
        names = self.key()
        self.expect(closing)
        path: Path = ()
        for name in names[:-1]:
            path = self.last((*path, name))
            self.found.lines.setdefault(path, line)
        path = (*path, names[-1])
        first = self.headed.get(path) or self.given.get(path)
        if first is None and opening == "[" and path in self.counts:
            first = self.found.lines[path]
        if first is not None:
            self.found.repeats.append(Repeat(path, line, first, table=True))
        self.found.lines.setdefault(path, line)
        if opening == "[[":
            self.counts[path] = self.counts.get(path, 0) + 1
        else:
            self.headed.setdefault(path, line)
        path = self.last(path)
        self.found.lines.setdefault(path, line)
        return path

    def last(self, path: Path) -> Path:
        """A name in a header that is a list of tables means the last of them."""
        return (*path, self.counts[path] - 1) if path in self.counts else path

    def pair(self, table: Path) -> None:
        self.blank()
        line = self.here()
        names = self.key()
        path = table
        for name in names:
            path = (*path, name)
            self.found.lines.setdefault(path, line)
        first = self.given.get(path) or self.headed.get(path)
        if first is not None:
            self.found.repeats.append(Repeat(path, line, first, table=False))
        self.given.setdefault(path, line)
        self.expect("=")
        self.value(path)

    def value(self, path: Path) -> None:
        self.blank()
        char = self.text[self.at]
        if char in "\"'":
            self.string()
        elif char == "[":
            self.items(path)
        elif char == "{":
            self.inline(path)
        else:
            while self.text[self.at] not in ",]}#\n":
                self.at += 1

    def items(self, path: Path) -> None:
        self.at += 1
        number = 0
        while True:
            self.blank(newlines=True)
            if self.text[self.at] == "]":
                self.at += 1
                return
            self.found.lines.setdefault((*path, number), self.here())
            self.value((*path, number))
            number += 1
            self.separator("]")

    def inline(self, path: Path) -> None:
        self.at += 1
        while True:
            # Newlines are allowed here by later editions of TOML.
            self.blank(newlines=True)
            if self.text[self.at] == "}":
                self.at += 1
                return
            self.pair(path)
            self.separator("}")

    def separator(self, closing: str) -> None:
        self.blank(newlines=True)
        if self.text[self.at] == ",":
            self.at += 1
        elif self.text[self.at] != closing:
            raise _Lost

    def key(self) -> list[str]:
        names = []
        while True:
            self.blank()
            start = self.at
            if self.text[start] in "\"'":
                self.string()
                names.append(_meant(self.text[start : self.at]))
            else:
                while self.text[self.at] in BARE:
                    self.at += 1
                if self.at == start:
                    raise _Lost
                names.append(self.text[start : self.at])
            self.blank()
            if self.text[self.at] != ".":
                return names
            self.at += 1

    def string(self) -> None:
        mark = self.text[self.at]
        escapes = mark == '"'
        closing = mark * 3 if self.text.startswith(mark * 3, self.at) else mark
        self.at += len(closing)
        while not self.text.startswith(closing, self.at):
            if self.text[self.at] == "\n" and len(closing) == 1:
                raise _Lost
            self.at += 2 if escapes and self.text[self.at] == "\\" else 1
        self.at += len(closing)
        if len(closing) == 3:
            # Up to two more of the same mark may belong to the text.
            for _ in range(2):
                if self.text.startswith(mark, self.at):
                    self.at += 1

    def blank(self, newlines: bool = False) -> None:
        skipped = " \t\n" if newlines else " \t"
        while self.at < len(self.text):
            if self.text[self.at] == "#":
                self.at = self.text.index("\n", self.at)
            elif self.text[self.at] in skipped:
                self.at += 1
            else:
                return

    def expect(self, mark: str) -> None:
        self.blank()
        if not self.text.startswith(mark, self.at):
            raise _Lost
        self.at += len(mark)

    def here(self) -> int:
        self.line += self.text.count("\n", self.counted, self.at)
        self.counted = self.at
        return self.line


def _meant(text: str) -> str:
    """Give the name that a quoted key means."""
    try:
        return str(tomllib.loads(f"a = {text}")["a"])
    except (ValueError, RecursionError):
        raise _Lost from None
