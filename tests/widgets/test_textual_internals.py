"""The private parts of the widget library that are leaned on: each fails here when the library changes."""

from __future__ import annotations

import asyncio
import os
import threading
from collections.abc import Callable
from typing import Any

import pytest
from textual._xterm_parser import XTermParser
from textual.app import App, ComposeResult
from textual.drivers._writer_thread import WriterThread
from textual.events import Key, Paste
from textual.widgets import Static

from booth.widgets.textual_internals import (
    HUNG_UP,
    OWN_FAULT,
    FaultApp,
    Panic,
    Parser,
    fail,
    mend,
)


class Invented(Exception):
    """A fault of its own, invented for a test."""


# -- what the terminal sends -----------------------------------------------------------------------


class Input:
    """The library's own thread that reads keys, on reads that a test hands it."""

    def __init__(self, *reads: bytes) -> None:
        self._reads = iter(reads)
        self.keys: list[str | None] = []
        self.asked: list[tuple[Any, ...]] = []

    def run(self, process: Callable[[Any], None] | None = None) -> None:
        """Run it to the end of the reads, at which the terminal is gone."""
        linux_driver = pytest.importorskip("textual.drivers.linux_driver")
        mend()
        driver = linux_driver.LinuxDriver.__new__(linux_driver.LinuxDriver)
        readable, writable = os.pipe()
        os.write(writable, b"x")  # never taken: there is always something to read
        driver.fileno, driver.exit_event, driver._debug = readable, threading.Event(), False
        driver._app, driver.process_message = self, process or self._process
        try:
            with pytest.MonkeyPatch.context() as patch:
                patch.setattr(os, "read", lambda fd, most: next(self._reads, b""))
                driver.run_input_thread()
        finally:
            os.close(readable)
            os.close(writable)

    def _process(self, message: Any) -> None:
        if isinstance(message, Key):
            self.keys.append(message.character or message.key)

    def call_later(self, *what: Any) -> None:
        """What the thread asks the app to do."""
        self.asked.append(what)

    def exit(self) -> None:
        """Stands for the app's own."""


@pytest.mark.parametrize(
    ("reads", "keys"),
    [
        ((b"a\xe9b",), ["a", "�", "b"]),  # one byte, as an 8-bit terminal sends é
        ((b"\xffb",), ["�", "b"]),
        ((b"\x80\xbfb",), ["�", "�", "b"]),
        ((b"\xc3", b"\xbcb"), ["ü", "b"]),
        ((b"\xe8\xbb", b"\x8ab"), ["車", "b"]),
        ((b"\xe8\xbb", b"b"), ["�", "b"]),
        ((b"\x1b[1114112ub",), ["b"]),
        ((b"\x1b[99999999999999999ub",), ["b"]),
        ((b"\x1b[97;1;1114112ub",), ["b"]),
        ((b"\x1b[97:1;2;3ub",), ["b"]),
        ((b"\x1b[55296ub",), ["b"]),  # half a surrogate pair: no file could take it
        ((b"\x1b[97;;56320ub",), ["b"]),
        ((b"\x1b[48;0;0;0;0t\x1b[<0;5;5Mb",), ["b"]),  # a window of no size, then the mouse
        ((b"\x1b[97ub",), ["a", "b"]),
        ((b"\x1b[Ab",), ["up", "b"]),
    ],
)
def test_a_byte_or_a_key_that_cannot_be_ends_nothing(
    reads: tuple[bytes, ...], keys: list[str]
) -> None:
    thread = Input(*reads)
    thread.run()
    assert thread.keys == keys


@pytest.mark.parametrize(
    "sequence", ["\x1b[1114112u", "\x1b[97:1;2;3u", "\x1b[48;0;0;0;0t\x1b[<0;5;5M"]
)
def test_the_librarys_own_parser_still_fails_there(sequence: str) -> None:
    """When this no longer holds, ``Parser`` is not needed."""
    with pytest.raises((ValueError, ArithmeticError)):
        list(XTermParser().feed(sequence))


@pytest.mark.parametrize(
    "pasted", ["wet edge", "wet \x1b[Aedge  x", "\x1b[1114112u", "a\nb\x1b", ""]
)
def test_what_is_pasted_is_one_text_and_no_key_is_pressed(pasted: str) -> None:
    parser = Parser()
    found = [*parser.feed(f"a\x1b[200~{pasted[:6]}"), *parser.feed(f"{pasted[6:]}\x1b[201~\x1b[Ab")]
    before, paste, *after = found
    assert isinstance(before, Key) and isinstance(paste, Paste)
    assert paste.text == pasted
    assert [key.key for key in after if isinstance(key, Key)] == ["up", "b"] and len(after) == 2


def test_the_librarys_own_parser_presses_what_is_pasted_after_an_escape() -> None:
    """When this no longer holds, ``Parser`` need not know what a paste is."""
    found = list(XTermParser().feed("\x1b[200~wet \x1b[Aedge\x1b[201~"))
    assert any(isinstance(each, Key) for each in found)


def test_a_terminal_that_is_gone_is_left_with_the_code_of_a_hangup() -> None:
    ended = Input(b"a")
    ended.run()
    assert ended.asked == [(ended.exit, None, HUNG_UP)]

    def broken(_: Any) -> None:
        raise OSError(5, "Input/output error")

    failed = Input(b"a")
    failed.run(broken)
    assert failed.asked == [(failed.exit, None, HUNG_UP)]


def test_any_other_fault_of_the_thread_ends_the_app_like_every_fault() -> None:
    fault = Invented("in the thread")

    def broken(_: Any) -> None:
        raise fault

    thread = Input(b"a")
    thread.run(broken)
    assert thread.asked == [(fail, thread, fault)]


def test_what_draws_is_never_left_waiting_for_a_terminal_that_is_gone() -> None:
    class Gone:
        def write(self, text: str) -> None:
            raise OSError(5, "Input/output error")

        def flush(self) -> None:
            raise OSError(5, "Input/output error")

    mend()
    thread = WriterThread(Gone())  # type: ignore[arg-type]
    thread.start()
    draws = threading.Thread(target=lambda: [thread.write("x") for _ in range(200)], daemon=True)
    draws.start()
    draws.join(10)
    assert not draws.is_alive(), "it waits for room in the queue"
    thread.stop()
    assert not thread.is_alive()


# -- faults ----------------------------------------------------------------------------------------


class Small(FaultApp):
    """Something to end."""

    def compose(self) -> ComposeResult:
        yield Static("here")


@pytest.mark.parametrize("another_thread", [False, True])
async def test_a_fault_ends_the_app_with_its_own_code_and_is_kept(
    another_thread: bool, capsys: pytest.CaptureFixture[str]
) -> None:
    app, first = Small(), Invented("the first")
    with pytest.raises(Invented, match="the first"):
        async with app.run_test() as _:
            if another_thread:
                threading.Thread(target=app.call_later, args=(fail, app, first)).start()
            else:
                fail(app, first)
            fail_again = Invented("what only follows from it")
            await asyncio.sleep(0.05)
            fail(app, fail_again)
    assert app.fatal is first
    assert app.return_code == OWN_FAULT == 70
    assert capsys.readouterr() == ("", "")


async def test_a_panic_is_a_fault_like_every_other(capsys: pytest.CaptureFixture[str]) -> None:
    from rich.traceback import Traceback

    app = Small()
    with pytest.raises(Panic):
        async with app.run_test():
            try:
                raise Invented("[bold] in a thread of the library")
            except Invented:
                app.call_later(app.panic, Traceback())
            await asyncio.sleep(0.05)
    assert app.return_code == OWN_FAULT
    assert "[bold] in a thread of the library" in str(app.fatal)
    assert "\x1b" not in str(app.fatal)
    assert capsys.readouterr() == ("", "")


async def test_the_librarys_own_panic_ends_with_a_traceback_and_no_code(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """When this no longer holds, ``FaultApp.panic`` is not needed."""
    app = App[None]()
    async with app.run_test():
        app.call_later(app.panic, "given up")
        await asyncio.sleep(0.05)
    assert app.return_code is None
    assert "given up" in capsys.readouterr().err
