"""A screen of this program: what a key does there and what its key line says come from one function.

Keys reach a screen through ``press`` alone, one after the other: the next one waits until what the one
before has opened stands on the screen, so that a key is what it was on the screen that was seen.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from typing import TYPE_CHECKING, Any, Generic, NamedTuple, Protocol, TypeVar, cast

from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from booth.bench.commands import COMMANDS, command_of, key_name
from booth.clock import Clock
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.keyline import key_line
from booth.widgets.quiet_line import put
from booth.widgets.text import content

if TYPE_CHECKING:
    from booth.files.faults import Fault
    from booth.files.places import Places
    from booth.log.open_jobs import OpenJobs
    from booth.log.session import Session
    from booth.shop.model import Shop
    from booth.units import System

T = TypeVar("T")


class Host(Protocol):
    """What a screen may ask of the application."""

    clock: Clock
    places: Places
    system: System

    @property
    def shop(self) -> Shop:
        """The painter's equipment, as read last."""
        ...

    @property
    def jobs(self) -> OpenJobs:
        """The jobs that are open."""
        ...

    @property
    def hints(self) -> bool:
        """Whether it is shown how each step is done."""
        ...

    async def show(
        self,
        screen: OwnScreen[Any],
        then: Callable[[Any], Awaitable[None] | None] | None = None,
    ) -> None:
        """Open a screen; returns when it stands there."""
        ...

    async def command(self, id: str) -> None:
        """Do what a command asks for that is the same on every screen."""
        ...

    async def take_up(self, session: Session) -> None:
        """Put a job on the bench."""
        ...

    async def leave_job(self) -> None:
        """Back to the list of jobs."""
        ...

    def read_shop(self) -> tuple[Fault, ...]:
        """Read the shop file anew; give what is wrong with it."""
        ...

    def remember(self, key: str, value: str | bool) -> None:
        """Keep a preference for the next start."""
        ...

    def tick(self) -> None:
        """Draw now, and as often as is wanted from here on."""
        ...

    def mind_alarms(self) -> None:
        """Show and sound what rings now."""
        ...


class Deed(NamedTuple):
    """What a key does: its word for the key line (empty: not shown), and the doing of it."""

    word: str
    do: Callable[[], Awaitable[None] | None] | None = None


#: The keys whose words stand in a key line before the commands, with how they are written.
ASKED: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Space", ("space",)),
    ("Enter", ("enter",)),
    ("↑↓", ("down", "up")),
    ("←→", ("right", "left")),
    ("Bksp", ("backspace",)),
    ("Esc", ("escape",)),
)


class OwnScreen(Screen[T], Generic[T]):
    """Base of the screens. A subclass answers ``deed``; drawing changes nothing."""

    AUTO_FOCUS = ""
    #: the commands that stand in the key line here
    SHOWS: tuple[str, ...] = ("help", "units")
    #: what becomes of what the screen gives when it is closed
    then: Callable[[Any], Awaitable[None] | None] | None = None

    @property
    def host(self) -> Host:
        """The application."""
        return cast("Host", self.app)

    def deed(self, key: Key) -> Deed | None:
        """What a key does here; None where it does nothing of this screen's own."""
        return None

    async def command(self, id: str) -> None:
        """Do what a command of the table asks for."""
        await self.host.command(id)

    def commands(self) -> tuple[str, ...]:
        """The commands that work here."""
        return tuple(command.id for command in COMMANDS if not command.bench)

    def _deed(self, key: Key) -> Deed | None:
        own = self.deed(key)
        if own is not None:
            return own
        command = command_of(key.name)
        if command is None or command.id not in self.commands():
            return None
        return Deed(command.word, lambda: self.command(command.id))

    async def press(self, key: Key, at: Moment) -> None:
        """A key, pressed at `at`."""
        deed = self._deed(key)
        if deed is None or deed.do is None:
            return
        done = deed.do()
        if done is not None:
            await done
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

    @property
    def frames(self) -> int:
        """How many times a second it wants to be drawn; 0 for once, on the whole second."""
        return 0

    # -- lines ------------------------------------------------------------------------------

    def key_words(self) -> tuple[tuple[str, str], ...]:
        """The keys that do something now, with their words: asked of ``deed``, nothing else."""
        found = []
        for name, keys in ASKED:
            deeds = (self.deed(Key(key, " " if key == "space" else None)) for key in keys)
            word = next((deed.word for deed in deeds if deed is not None and deed.word), "")
            if word:
                found.append((name, word))
        return (*found, *self._command_words())

    def _command_words(self) -> list[tuple[str, str]]:
        found = []
        for command in COMMANDS:
            for name in command.keys if command.id in self.SHOWS else ():
                letter = name if len(name) == 1 else "?" if name == "question_mark" else None
                if self.deed(Key(name, letter)) is None:
                    found.append((key_name(name), command.word))
                    break
        return found

    def draw_keys(self, where: str = "#keys") -> None:
        """Draw the key line."""
        self.put(where, key_line(self.key_words(), self.size.width or self.app.size.width))

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
