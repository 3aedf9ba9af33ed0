"""Everything that leans on private parts of the widget library, each with its reason.

One version of the library is asked for; tests/widgets/test_textual_internals.py fails when one of these
parts is no longer what it was.
"""

from __future__ import annotations

import codecs
import functools
import io
import sys
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from rich.console import Console
from textual._xterm_parser import BRACKETED_PASTE_END, BRACKETED_PASTE_START, XTermParser
from textual.app import App
from textual.drivers._writer_thread import WriterThread
from textual.events import Key, Paste
from textual.message import Message

#: The exit code of a fault of the program itself (EX_SOFTWARE of sysexits.h).
OWN_FAULT = 70
#: What a shell makes of a program whose terminal went away: 128 and the number of SIGHUP.
HUNG_UP = 128 + 1


# -- faults --------------------------------------------------------------------------------------


class Panic(Exception):
    """The library gave up with something to show, and no exception; the message is that, as text."""


class FaultApp(App[None]):
    """An app that meets a fault of its own without a traceback on the screen.

    It leaves with exit code 70 and keeps the first fault in ``fatal``, for whoever started it to
    report. The library's own ways (``_handle_exception`` and ``panic``) print a traceback with the
    values of local names over the shell, and after a panic the exit code is 0.
    """

    fatal: BaseException | None = None

    def _handle_exception(self, error: Exception) -> None:
        if self.fatal is None:  # what fails while leaving only follows from it
            self.fatal = self._exception = error
        self._exception_event.set()
        self.exit(return_code=OWN_FAULT)

    def panic(self, *renderables: Any) -> None:
        """End by the path of every other fault."""
        shown = io.StringIO()
        Console(file=shown, color_system=None, markup=False).print(*renderables, sep="\n")
        self._handle_exception(Panic(shown.getvalue()))


def fail(app: App[Any], error: Exception) -> None:
    """End `app` because of `error`. From another thread: ``app.call_later(fail, app, error)``."""
    app._handle_exception(error)


# -- what the terminal sends ---------------------------------------------------------------------


class HungUp(Exception):
    """The terminal went away: there is nothing more to read."""


class Decoder(codecs.getincrementaldecoder("utf-8")):  # type: ignore[misc]
    """Bytes that are no UTF-8 become replacement characters; a torn character waits for its rest."""

    def __init__(self) -> None:
        super().__init__("replace")

    def decode(self, data: bytes, final: bool = False) -> str:
        """Decode what was read. Raises HungUp at the end of what the terminal sends."""
        if not data and not final:
            raise HungUp
        return str(super().decode(data, final))


class Parser(XTermParser):
    """A key code that cannot be (above Unicode, half a surrogate pair) is passed over, no more.

    And what is pasted is never pressed: after an escape in a paste the library takes the rest of it
    for keys.
    """

    def __init__(self, debug: bool = False) -> None:
        super().__init__(debug)
        self._last = ""
        self._pasted: list[str] | None = None

    def feed(self, data: str) -> Iterable[Message]:
        """Parse `data`; where the library's parser fails it begins anew with the next character."""
        if not data:
            yield from super().feed(data)  # the end
        for character in data:
            self._last = (self._last + character)[-len(BRACKETED_PASTE_START) :]
            if self._pasted is not None:
                self._pasted.append(character)
                if self._last == BRACKETED_PASTE_END:
                    text = "".join(self._pasted).removesuffix(BRACKETED_PASTE_END)
                    self._pasted = None
                    yield Paste(text.replace("\0", ""))
            elif self._last == BRACKETED_PASTE_START:
                self._begin_anew()
                self._pasted = []
            else:
                yield from self._feed_one(character)

    def _feed_one(self, character: str) -> Iterable[Message]:
        try:
            for message in super().feed(character):
                if not _impossible(message):
                    yield message
        except (ValueError, ArithmeticError):
            self._begin_anew()

    def _begin_anew(self) -> None:
        self._tokens.clear()
        self._timeout_time = None
        self._gen = self.parse(self._tokens.append)
        self._awaiting = next(self._gen)


def _impossible(message: Message) -> bool:
    """Whether this is a key whose character no file and no terminal can take."""
    if not isinstance(message, Key):
        return False
    return any("\ud800" <= char <= "\udfff" for char in message.key + (message.character or ""))


def _reading(read: Callable[[Any], None], driver: Any) -> None:
    """Let a fault of the thread that reads the keys end the app like any other fault."""
    app = driver._app
    try:
        read(driver)
    except (HungUp, OSError):  # a terminal that is gone cannot be read, by either name
        app.call_later(app.exit, None, HUNG_UP)
    except Exception as error:
        app.call_later(fail, app, error)


def _writing(write: Callable[[WriterThread], None], thread: WriterThread) -> None:
    """Let the thread that writes to the terminal outlive it.

    It ended with the first write that failed; whoever draws then waits for room in its queue for
    ever, and the program stays, with the job's log locked.
    """
    try:
        write(thread)
    except OSError:
        while thread._queue.get() is not None:
            pass


def write_as(signs: Mapping[int, str]) -> None:
    """Write other characters in the place of some: the last door to a terminal that lacks them.

    The library writes blocks and frames to any terminal, as bytes of UTF-8 or as escapes.
    """
    if sys.platform == "win32":
        from textual.drivers.windows_driver import WindowsDriver as driver
    else:
        from textual.drivers.linux_driver import LinuxDriver as driver
    _replace(driver, "write", lambda write, one, data: write(one, data.translate(signs)))


# -- all of it -----------------------------------------------------------------------------------


def mend() -> None:
    """Put the mends in place, once for the whole program."""
    _replace(WriterThread, "run", _writing)
    if sys.platform == "win32":
        from textual.drivers import win32 as driver
    else:
        from textual.drivers import linux_driver as driver

        _replace(driver.LinuxDriver, "run_input_thread", _reading)
        driver.getincrementaldecoder = lambda _: Decoder  # type: ignore[assignment]
    driver.XTermParser = Parser  # type: ignore[misc]


def _replace(owner: type, name: str, mended: Callable[..., None]) -> None:
    """Put a mended method in the place of the library's own, which it is given; never twice."""
    own = getattr(owner, name)
    if not hasattr(own, "__wrapped__"):
        setattr(owner, name, functools.wraps(own)(lambda *given: mended(own, *given)))
