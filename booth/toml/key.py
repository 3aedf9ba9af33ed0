"""What a key takes: the base of all kinds, and those that hold a text, a flag or a word.

Every kind reads a value of the file, judges one of the model and writes one, by the same bounds.
Numbers are in ``quantity``, tables and lists in ``table``.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass, field
from typing import Any, ClassVar

from booth.files.faults import Faults, Path, in_words, nearest, quoted
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS
from booth.trade.result import BadInput
from booth.units import System

MOST_TEXT = 400


@dataclass(frozen=True, slots=True)
class At:
    """A place in a file or a model, and the faults that are gathered there."""

    faults: Faults
    path: Path = ()

    def __getitem__(self, part: str | int) -> At:
        return At(self.faults, (*self.path, part))

    def add(self, found: str, expected: str, advice: str = "") -> None:
        """Note a fault here."""
        self.faults.add(self.path, found, expected, advice)


@dataclass(frozen=True)
class Key(ABC):
    """One key of a file.

    says: what it is; example: as it is typed; attribute: where the model keeps it, if not under the
    key's own name (see `kept_as`); unsaid: what the model holds where the key is missing; label: of
    its row on a form, if that is not its name.
    """

    says: str = ""
    example: str = ""
    attribute: str = field(default="", kw_only=True)
    unsaid: Any = field(default=None, kw_only=True)
    label: str = field(default="", kw_only=True)

    #: How a sentence calls what it takes.
    called: ClassVar[str]

    def kept_as(self, name: str) -> str:
        """Give the attribute of the model that keeps the key of this name."""
        return self.attribute or name

    def label_for(self, name: str) -> str:
        """Give the label of the row of the key of this name on a form."""
        return self.label or name.replace("_", " ").capitalize()

    @property
    def wanted(self) -> str:
        """What it takes, with an example."""
        return f"{self.called}, such as {self.example}" if self.example else self.called

    def read(self, value: Any, at: At) -> Any:
        """Read a value of the file as the model keeps it; None after a fault, which is told, or was."""
        before = len(at.faults)
        kept = self.parse(value, at)
        if kept is not None and len(at.faults) == before:
            # A table is quoted as what it came to.
            self.judge(kept, at, "" if isinstance(value, dict) else in_words(value))
        return kept if len(at.faults) == before else None

    @abstractmethod
    def parse(self, value: Any, at: At) -> Any:
        """Give what the model keeps for a value of the file; tell what has not its shape."""

    def judge(self, value: Any, at: At, found: str = "") -> None:
        """Tell what is wrong with a value of the model. found: how the file put it, where there is one."""
        wrong = self.wrong(value)
        if wrong:
            at.add(found or self.shown(value), *wrong)

    def wrong(self, value: Any) -> tuple[str, str] | None:
        """What was expected instead of a value of the model, and what to do; None where it is right."""
        return None

    def write(self, value: Any, system: System) -> Any:
        """Give a value of the model as it stands in a file."""
        return value

    def shown(self, value: Any) -> str:
        """A value of the model in words, where there is no file to quote."""
        written = self.write(value, System.METRIC)
        return quoted(written, "") if isinstance(written, str) and written else in_words(written)

    def refuse(self, value: Any, at: At, advice: str = "") -> None:
        """Tell that a value of the file is not what is wanted here."""
        at.add(in_words(value), self.wanted, advice)


@dataclass(frozen=True)
class Text(Key):
    """A text that says something. tidy: without blanks around it and with single ones within."""

    unsaid: Any = field(default="", kw_only=True)
    tidy: bool = field(default=False, kw_only=True)
    called = "a text in quotation marks"

    def parse(self, value: Any, at: At) -> Any:
        if not isinstance(value, str):
            return self.refuse(value, at)
        return " ".join(value.split()) if self.tidy else value

    def wrong(self, value: str) -> tuple[str, str] | None:
        if not value.strip():
            return self.wanted, ""
        too_long = len(value) > MOST_TEXT
        return (f"at most {MOST_TEXT} characters", "Say it shorter.") if too_long else None


@dataclass(frozen=True)
class Cup(Text):
    """The name of a flow cup, however it is spelled. keeps: 'name' or 'key', what the model holds."""

    keeps: str = field(default="name", kw_only=True)
    called = "the name of a flow cup"

    def parse(self, value: Any, at: At) -> Any:
        text = super().parse(value, at)
        return text and self._called(text, self.keeps)

    @staticmethod
    def _called(text: str, by: str) -> str:
        """The cup's own name or key; a text that means no cup as it is, to be judged."""
        try:
            return str(getattr(cup_named(text), by))
        except BadInput:
            return text

    def wrong(self, value: str) -> tuple[str, str] | None:
        try:
            cup_named(value)
        except BadInput as error:
            near = nearest(value, [cup.name for cup in CUPS.values()])
            # The first sentence says again what was found; what comes after it helps.
            advice = f'Did you mean "{near}"?' if near else str(error).partition(". ")[2]
            return super().wrong(value) or (self.wanted, advice)
        return None

    def write(self, value: str, system: System) -> str:
        return self._called(value, "name")


@dataclass(frozen=True)
class Choice(Key):
    """One of a few words."""

    choices: tuple[str, ...] = ()
    called = "one of a few words"

    def parse(self, value: Any, at: At) -> Any:
        return value if isinstance(value, str) else at.add(in_words(value), *self._words())

    def wrong(self, value: str) -> tuple[str, str] | None:
        return None if value in self.choices else self._words(nearest(value, self.choices))

    def _words(self, near: str | None = None) -> tuple[str, str]:
        words = ", ".join(f'"{choice}"' for choice in self.choices)
        return f"one of {words}", f'Did you mean "{near}"?' if near else ""


@dataclass(frozen=True)
class Flag(Key):
    """True or false."""

    unsaid: Any = field(default=False, kw_only=True)
    called = "true or false, without quotation marks"

    @property
    def wanted(self) -> str:
        return self.called

    def parse(self, value: Any, at: At) -> Any:
        return value if isinstance(value, bool) else self.refuse(value, at)
