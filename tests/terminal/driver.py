"""Drives the real program in a real pseudo-terminal and reads its screen as an emulator shows it."""

from __future__ import annotations

import os
import re
import signal
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pexpect
import pyte

KEYS = {
    "enter": "\r",
    "space": " ",
    "esc": "\x1b",
    "up": "\x1b[A",
    "down": "\x1b[B",
    "right": "\x1b[C",
    "left": "\x1b[D",
    "backspace": "\x7f",
    "pagedown": "\x1b[6~",
    "pageup": "\x1b[5~",
    "tab": "\t",
    "f1": "\x1bOP",
    "f2": "\x1bOQ",
    "f3": "\x1bOR",
    "f4": "\x1bOS",
    "f9": "\x1b[20~",
    "f10": "\x1b[21~",
    "ctrl+z": "\x1a",
}

PATIENCE_S = 30.0


class NotShown(AssertionError):
    """A text did not appear; the message holds the screen."""


class Terminal:
    """One run of the program. `rate`: how much faster than real time its clock runs."""

    def __init__(
        self,
        home: Path,
        *arguments: str,
        rows: int = 24,
        columns: int = 80,
        rate: str = "",
        extra: dict[str, str] | None = None,
        command: list[str] | None = None,
    ) -> None:
        environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(home),
            "BOOTH_HOME": str(home / "booth"),
            "TERM": "xterm-256color",
            "COLORTERM": "truecolor",
            "LANG": "C.UTF-8",
            "TZ": "UTC",
        }
        if rate:
            environment["BOOTH_CLOCK_RATE"] = rate
        environment.update(extra or {})
        started = command or [sys.executable, "-m", "booth"]
        self.screen = pyte.HistoryScreen(columns, rows, history=10)
        self.stream = pyte.ByteStream(self.screen)
        self.raw = bytearray()
        self.keys_pressed = 0
        self.child = pexpect.spawn(
            started[0],
            [*started[1:], *arguments],
            env=environment,  # type: ignore[arg-type]
            dimensions=(rows, columns),
            timeout=PATIENCE_S,
        )
        self.child.delaybeforesend = None  # type: ignore[assignment]

    def __enter__(self) -> Terminal:
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    def end(self) -> None:
        """Make sure that nothing is left running."""
        if self.child.isalive():
            self.child.kill(signal.SIGKILL)
        self.child.close(force=True)

    def pump(self, seconds: float = 0.05) -> None:
        """Take in what the program has drawn."""
        try:
            data = self.child.read_nonblocking(65536, seconds)
        except (pexpect.TIMEOUT, pexpect.EOF):
            return
        self.raw += data
        self.stream.feed(_without_private(data))

    @property
    def lines(self) -> list[str]:
        """The screen, line by line."""
        return [line.rstrip() for line in self.screen.display]

    @property
    def text(self) -> str:
        """The screen."""
        return "\n".join(self.lines)

    def until(self, wanted: str | Callable[[str], bool], patience_s: float = PATIENCE_S) -> str:
        """Wait until the screen shows `wanted` (a regular expression) and give the screen."""
        end = time.monotonic() + patience_s
        shown = wanted if callable(wanted) else lambda text: re.search(wanted, text) is not None
        while time.monotonic() < end:
            self.pump()
            if shown(self.text):
                return self.text
            if not self.child.isalive():
                self.pump(0.1)
                if shown(self.text):
                    return self.text
                break
        alive = "" if self.child.isalive() else " (the program has ended)"
        raise NotShown(f"not shown{alive}: {wanted!r}\n{self.text}")

    def press(self, *keys: str) -> None:
        """Press keys by name, or type a text as it stands."""
        for key in keys:
            self.keys_pressed += 1 if key in KEYS else len(key)
            self.child.send(KEYS.get(key, key))
            self.pump(0.02)

    def resize(self, rows: int, columns: int) -> None:
        """Resize the terminal and its emulator together."""
        self.child.setwinsize(rows, columns)
        self.screen.resize(rows, columns)

    def kill(self, number: int = signal.SIGKILL) -> None:
        """Send a signal."""
        self.child.kill(number)

    def wait(self, patience_s: float = PATIENCE_S) -> int:
        """Wait for the end; give the exit code, or 128 + signal."""
        end = time.monotonic() + patience_s
        while self.child.isalive() and time.monotonic() < end:
            self.pump()
        if self.child.isalive():
            raise NotShown(f"the program did not end\n{self.text}")
        self.pump(0.1)
        if self.child.exitstatus is not None:
            return int(self.child.exitstatus)
        return 128 + int(self.child.signalstatus or 0)


#: Keyboard-protocol queries that the emulator does not know and would print.
_PRIVATE = re.compile(rb"\x1b\[[<>=?][0-9;]*[uqm]|\x1b\[\?[0-9;]*\$p")


def _without_private(data: bytes) -> bytes:
    return _PRIVATE.sub(b"", data)
