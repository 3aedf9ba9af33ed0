"""A screen of this program: what a key does there and what its key line says come from one function.

Keys reach a screen through ``press`` alone, one after the other: the next one waits until what the one
before has opened stands on the screen, so that a key is what it was on the screen that was seen.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING, Any, Generic, NamedTuple, Protocol, TypeVar, cast

from rich.cells import cell_len
from textual.app import ComposeResult
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from booth.bench.commands import ANYWHERE, COMMANDS, command_of, key_name
from booth.clock import local_hhmm
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.keyline import key_line
from booth.widgets.text import content, put

if TYPE_CHECKING:
    from booth.job.wait import Alarm
    from booth.screens.host import Host
    from booth.units import System

T = TypeVar("T")
#: Beside the name of a screen, and between it and the time of day, there is room for these cells.
NAME_SIDES, LEAST_GAP = 2, 2
#: The class of a screen all of which an alarm covers.
COVERED = "-alarm"


class Deed(NamedTuple):
    """What a key does: its word for the key line (empty: not shown), and the doing of it."""

    word: str
    do: Callable[[], Awaitable[object] | None] | None = None


async def carry_out(deed: Deed) -> None:
    """Do what a key does."""
    done = deed.do() if deed.do is not None else None
    if done is not None:
        await done


#: The keys whose words stand in a key line before the commands, with how they are written.
ASKED = (
    ("Space", "space"),
    ("Enter", "enter"),
    ("↑", "up"),
    ("↓", "down"),
    ("←", "left"),
    ("→", "right"),
    ("Bksp", "backspace"),
    ("Esc", "escape"),
)


def _pressed(key: str) -> Key:
    return Key(key, " " if key == "space" else None)


def front_words(screen: OwnScreen[Any], now: Moment) -> tuple[tuple[str, str], ...]:
    """The keys that the application takes before the screen, with their words."""
    found = ((name, screen.host.front(_pressed(key), now)) for name, key in ASKED)
    return tuple((name, deed.word) for name, deed in found if deed is not None and deed.word)


class Behind(Protocol):
    """A screen that an alarm may fill, while nothing on it is needed."""

    def may_be_covered(self, alarm: Alarm | None, now: Moment) -> bool:
        """Whether nothing that stands there is needed this moment. alarm: None for a rehearsed one."""
        ...

    def called(self, alarm: Alarm, at: Moment) -> Deed | None:
        """What Space does, pressed at `at`, while this alarm is in front; None for nothing."""
        ...


class OwnScreen(Screen[T], Generic[T]):
    """Base of the screens. A subclass answers ``deed``; drawing changes nothing."""

    AUTO_FOCUS = ""
    #: the commands that work here, and those that stand in the key line
    WORK: tuple[str, ...] = tuple(command.id for command in COMMANDS if command.id in ANYWHERE)
    SHOWS: tuple[str, ...] = ("help", "units")
    #: the keys that are asked for their word, with how they are written
    ASKS: tuple[tuple[str, str], ...] = ASKED
    #: how it is with an alarm in front of the whole of it; None where it is never covered
    behind: Behind | None = None
    #: what becomes of what the screen gives when it is closed
    then: Callable[[Any], Awaitable[None] | None] | None = None

    @property
    def host(self) -> Host:
        return cast("Host", self.app)

    def deed(self, key: Key) -> Deed | None:
        """What a key does here; None where it does nothing of this screen's own."""
        return None

    async def command(self, id: str) -> None:
        """Do what a command of the table asks for."""
        await self.host.command(id)

    async def press(self, key: Key, at: Moment) -> None:
        """A key, pressed at `at`."""
        deed, command = self.deed(key), command_of(key.name)
        if deed is None and command is not None and command.id in self.WORK:
            deed = Deed(command.word, lambda: self.command(command.id))
        if deed is None or deed.do is None:
            return
        await carry_out(deed)
        if self.is_attached:
            self.draw(self.host.clock.now())

    async def close(self, result: T | None = None) -> None:
        """Go away, then hand over what the screen was opened for. Not from one's own handlers."""
        await self.dismiss(result)
        done = self.then(result) if self.then is not None else None
        if done is not None:
            await done

    def press_soon(self, name: str) -> None:
        """What a click stands for, in its turn among the keys."""
        self.app.call_next(self.press, Key(name), self.host.clock.now())

    async def paste(self, text: str) -> None:
        """A pasted text; most screens have no use for it."""

    def units_changed(self, before: System) -> None:
        """The units shown are others now; `before`: those until now."""

    def draw(self, now: Moment) -> None:
        """Draw what has changed."""

    def on_resize(self) -> None:
        if self.is_mounted:
            self.draw(self.host.clock.now())

    #: what happened meanwhile was not drawn here
    on_screen_resume = on_resize

    @property
    def frames(self) -> int:
        """How many times a second it wants to be drawn; 0 for once, on the whole second."""
        return 0

    def key_words(self) -> tuple[tuple[str, str], ...]:
        """The keys that do something now, with their words: asked of `deed`, nothing else.

        The commands follow, each by the first of its keys that `deed` leaves to it.
        """
        found: dict[str, str] = {}
        first = dict(front_words(self, self.host.clock.now()))
        for name, key in self.ASKS:
            deed = self.deed(_pressed(key))
            word = first.get(name) or (deed.word if deed is not None else "")
            if word:
                found[word] = found.get(word, "") + name
        for command in COMMANDS:
            for key in command.keys if command.id in self.SHOWS else ():
                letter = key if len(key) == 1 else "?" if key == "question_mark" else None
                if self.deed(Key(key, letter)) is None:
                    found[command.word] = key_name(key)
                    break
        return tuple((name, word) for word, name in found.items())

    def draw_keys(self) -> None:
        """Draw the key line."""
        self.put("#keys", key_line(self.key_words(), self.size.width or self.app.size.width))

    def put(self, where: str, line: Content) -> None:
        """Let a line of this screen say something, where that is new."""
        put(self.query_one(where, Static), line)

    def say(self, sentence: str, *, fault: bool = False) -> None:
        """Say something in the line above the keys."""
        if not self.is_attached:
            return
        shown = self.query_one("#say", Static)
        shown.set_class(fault, "-fault")
        put(shown, content(sentence))
        shown.display = bool(sentence)


class Framed(OwnScreen[T], Generic[T]):
    """A screen with its name and the time of day above what it holds, what it says and its keys below,
    and a way back."""

    #: the keys that leave; the first has the word in the key line
    LEAVES: tuple[str, ...] = ("escape", "f9")
    BACK = "back"
    NAME = ""

    def heading(self) -> str:
        return self.NAME

    def body(self) -> ComposeResult:
        """What stands between the name and the keys."""
        yield from ()

    def compose(self) -> ComposeResult:
        yield Static("", id="name", markup=False)
        yield from self.body()
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())

    def draw(self, now: Moment) -> None:
        name, time = self.heading(), local_hhmm(now)
        gap = self.size.width - NAME_SIDES - cell_len(name) - len(time)
        # A dialog lies over a screen that has it.
        has_time = not self.is_modal and gap >= LEAST_GAP
        self.put("#name", content(f"{name}{' ' * gap}{time}" if has_time else name))
        self.draw_keys()

    def deed(self, key: Key) -> Deed | None:
        if key.name in self.LEAVES:
            return Deed(self.BACK if key.name == self.LEAVES[0] else "", self.leave)
        return None

    async def leave(self) -> None:
        """Back, with nothing done."""
        await self.close()
