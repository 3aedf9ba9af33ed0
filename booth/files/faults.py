"""A fault of a file that a painter wrote, in a painter's words, and the collector of all of them."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from booth.files.safe_text import visible

#: What was found is quoted up to this length.
MOST_SHOWN = 48
#: So many faults of one file are told; the rest is counted.
MOST_FAULTS = 100
#: How alike two words must be for a 'did you mean' (0..1); difflib's own default.
ALIKE = 0.6

#: Where a value stands in a file: names of tables and keys, numbers of list items from 0.
Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: where it is, what was found, what was expected, what to do.

    file: as it was named; line and column count from 1, None where the file as a whole is meant;
    key: dotted, as in ``mix.parts[2].density``, empty where no key is meant; note: odd, but the file
    can be worked with as it is.
    """

    file: str
    line: int | None
    key: str
    found: str
    expected: str
    advice: str = ""
    column: int | None = None
    note: bool = False

    @property
    def place(self) -> str:
        """``file:line`` or ``file:line:column``, whichever is known."""
        numbers = [str(number) for number in (self.line, self.column) if number is not None]
        return ":".join([visible(self.file), *numbers])

    @property
    def text(self) -> str:
        """What is wrong, without its place: ``gun.tip: found ..., expected ...; advice``."""
        key = f"{self.key}: " if self.key else ""
        advice = f" {self.advice}" if self.advice else ""
        return f"{key}found {self.found}; expected {self.expected}.{advice}"

    def __str__(self) -> str:
        return f"{self.place}: {'note: ' if self.note else ''}{self.text}"


@dataclass(slots=True)
class Faults:
    """Gathers the faults of one file.

    what: the kind of file, as 'a coating profile'; lines: gives the line of each key, asked only
    where something is wrong; whole: False once a line was set aside for its syntax, so that what
    stood in it is not called missing; elsewhere: where a key belongs that is unknown in its table,
    given its name and the table's; units: the first one typed of each kind of quantity, so that
    figures are told as the file has them.
    """

    file: str
    what: str
    lines: Callable[[], Mapping[Path, int]] = dict
    whole: bool = True
    elsewhere: Callable[[str, str], str] = lambda name, table: ""
    units: dict[str, str] = field(default_factory=dict)
    notes: list[Fault] = field(default_factory=list)
    _all: list[Fault] = field(default_factory=list)
    _paths: list[Path] = field(default_factory=list)

    def add(
        self, path: Path, found: str, expected: str, advice: str = "", line: int | None = None
    ) -> None:
        """Note a fault at `path`; its line is that of the key, or of the nearest table above."""
        self._paths.append(path)
        line = line or self.line(path)
        self._all.append(Fault(self.file, line, dotted(path), found, expected, advice))

    def note(self, path: Path, found: str, expected: str, advice: str = "") -> None:
        """Note what is odd and no fault."""
        line = self.line(path)
        self.notes.append(Fault(self.file, line, dotted(path), found, expected, advice, note=True))

    def add_at(
        self,
        line: int | None,
        found: str,
        expected: str,
        advice: str = "",
        column: int | None = None,
    ) -> None:
        """Note a fault of a line, or of the file as a whole."""
        self._all.append(Fault(self.file, line, "", found, expected, advice, column))

    def line(self, path: Path) -> int | None:
        """Give the line of `path`, or of the nearest table above it that has one."""
        lines = self.lines()
        while path and path not in lines:
            path = path[:-1]
        return lines.get(path)

    def below(self, path: Path) -> bool:
        """Whether something is wrong at `path` or within it."""
        return any(other[: len(path)] == path for other in self._paths)

    def hides(self, path: Path) -> bool:
        """Whether something is wrong at `path`, within it, or with a table that it stands in."""
        return self.below(path) or any(other == path[: len(other)] for other in self._paths)

    def __iter__(self) -> Iterator[Fault]:
        return iter(self._all)

    def __len__(self) -> int:
        return len(self._all)

    def sorted(self) -> tuple[Fault, ...]:
        """All faults in the order of the file; those of the file as a whole come first."""
        ordered = sorted(self, key=lambda fault: (fault.line or 0, fault.column or 0))
        if len(ordered) <= MOST_FAULTS:
            return tuple(ordered)
        more = f"{len(ordered) - MOST_FAULTS} faults more"
        rest = Fault(self.file, ordered[MOST_FAULTS].line, "", more, "none", "Mend these first.")
        return (*ordered[:MOST_FAULTS], rest)


def dotted(path: Path) -> str:
    """Write a path as a painter finds it in the file; list items count from 1.

    >>> dotted(("mix", "parts", 1, "density"))
    'mix.parts[2].density'
    """
    text = ""
    for part in path:
        if isinstance(part, int):
            text += f"[{part + 1}]"
        else:
            text += ("." if text else "") + quoted(part, marks="")
    return text


def counted(number: int, thing: str, several: str = "") -> str:
    """Say how many there are of something. several: the word for more than one, where it is not with s.

    >>> counted(1, "fault"), counted(3, "fault"), counted(2, "entry", "entries")
    ('1 fault', '3 faults', '2 entries')
    """
    return f"{number} {thing if number == 1 else several or f'{thing}s'}"


def quoted(text: str, marks: str = '"') -> str:
    """Quote text from a file: nothing in it acts, and it is cut where it is long."""
    # One character more than is shown, so that a cut is seen to be one.
    shown = visible(text[: MOST_SHOWN + 1])
    if len(shown) > MOST_SHOWN:
        shown = shown[: MOST_SHOWN - 1] + "…"
    return f"{marks}{shown}{marks}"


def in_words(value: Any) -> str:
    """Say what kind of thing a value of a TOML file is, in a painter's words."""
    match value:
        case bool():
            return "true" if value else "false"
        case str():
            return f"the text {quoted(value)}" if value else "an empty text"
        case int() if abs(value) >= 10**15:
            return "a whole number of more than fifteen digits"
        case int() | float():
            return f"the bare number {value:.12g}"
        case list():
            return f"a list of {len(value)}" if value else "an empty list"
        case dict():
            return "a table"
        case datetime.datetime() | datetime.date():
            return f"the date {value}"
        case datetime.time():
            return f"the time of day {value}"
    return "something else"


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Give the known word most like `word`, whatever its case, spaces and hyphens; None if far."""
    import difflib  # wanted for faults only

    plain = {folded(other): other for other in known}
    close = difflib.get_close_matches(folded(word)[:64], plain, n=1, cutoff=ALIKE)
    return plain[close[0]] if close else None


def folded(word: str) -> str:
    """Give `word` in small letters without spaces, hyphens and underscores."""
    return word.casefold().replace(" ", "").replace("-", "").replace("_", "")
