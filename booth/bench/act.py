"""What a key does, as data: the word for the key line, and effects that the bench carries out.

The word and the effects are made together, so that they cannot disagree. Effects are carried out in
their order; where an entry cannot be kept, those behind it are not.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from booth.bench.context import Context
from booth.forms.form import Form
from booth.log.events import Event


@dataclass(frozen=True, slots=True)
class Act:
    """word: what the key does, for the key line, empty where it is not shown there; text: the key
    is a character of a text."""

    word: str
    do: tuple[Effect, ...] = ()
    text: bool = False


@dataclass(frozen=True, slots=True)
class Keep:
    """Bring an entry onto the disk."""

    event: Event


@dataclass(frozen=True, slots=True)
class SetForm:
    """The form is like this now."""

    form: Form


@dataclass(frozen=True, slots=True)
class Say:
    """Say a sentence in the line above the keys."""

    words: str
    fault: bool = False


@dataclass(frozen=True, slots=True)
class Offer:
    """Entries that were voided a moment ago: the same key brings them back."""

    targets: tuple[int, ...] = ()
    words: str = ""


NO_OFFER = Offer()


@dataclass(frozen=True, slots=True)
class GoOn:
    """Open the next open step."""


@dataclass(frozen=True, slots=True)
class OpenStep:
    """Open a step by its key."""

    key: str


@dataclass(frozen=True, slots=True)
class PickStep:
    """Walk the list of steps at this one; "" leaves the list."""

    key: str = ""


@dataclass(frozen=True, slots=True)
class Choice:
    """One line of a menu, and what it does when it is chosen at a later now."""

    words: str
    act: Callable[[Context], Act]
    behind: str = ""


@dataclass(frozen=True, slots=True)
class Menu:
    """Let the painter choose."""

    title: str
    choices: tuple[Choice, ...]


@dataclass(frozen=True, slots=True)
class Ask:
    """Let the painter write a line; `act` says what becomes of it. needed: it may not be empty."""

    question: str
    act: Callable[[Context, str], Act]
    why: str = ""
    text: str = ""
    needed: bool = False


@dataclass(frozen=True, slots=True)
class Command:
    """A command of the table of commands, by its id."""

    id: str


@dataclass(frozen=True, slots=True)
class Scroll:
    """Move what is read by so many rows."""

    by: int


@dataclass(frozen=True, slots=True)
class CloseJob:
    """The job is closed: leave the bench."""


Effect = (
    Keep
    | SetForm
    | Say
    | Offer
    | GoOn
    | OpenStep
    | PickStep
    | Menu
    | Ask
    | Command
    | Scroll
    | CloseJob
)
NOTHING = Act("")


def refused(sentence: str, word: str = "") -> Act:
    """Nothing is done but said why."""
    return Act(word, (Say(sentence, fault=True),))
