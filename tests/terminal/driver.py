"""Drives the real program in a real pseudo-terminal and reads its screen as an emulator shows it."""

from __future__ import annotations

import contextlib
import os
import re
import signal
import sys
import termios
import time
import warnings
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

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
    "f5": "\x1b[15~",
    "f6": "\x1b[17~",
    "f7": "\x1b[18~",
    "f8": "\x1b[19~",
    "f9": "\x1b[20~",
    "f10": "\x1b[21~",
    "ctrl+p": "\x10",
    "ctrl+z": "\x1a",
}

PATIENCE_S = 30.0
#: How long the screen is waited for at a time; drawing wakes it at once.
POLL_S = 0.1
ESCAPE_S = 0.15
#: Presses of these that are meant lie so long after the last, or an Enter that may have stood for
#: one [s, by the program's clock].
THUMB, MEANT_S = ("space", "pagedown"), 0.8
#: A rate for tests that ask nothing of the time: a thumb waits a quarter of a second there. Not where
#: the first press comes right after a job was begun: a busy machine may not have shown it by then.
BRISK = "3"
#: How the program is started; first_step.py names an installed one instead.
PROGRAM = (sys.executable, "-m", "booth")
ROOT = Path(__file__).resolve().parents[2]


class NotShown(AssertionError):
    """A text did not appear; the message holds the screen."""


class Terminal:
    """One run of the program. `rate`: how much faster than real time its clock runs.

    before: called in the child between fork and exec, to set a limit. raw: every byte it drew.
    """

    def __init__(
        self,
        home: Path,
        *arguments: str,
        rows: int = 24,
        columns: int = 80,
        rate: str = "",
        extra: dict[str, str] | None = None,
        command: Sequence[str] | None = None,
        before: Callable[[], None] | None = None,
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
        started = [*(command or PROGRAM), *arguments]
        self.screen = pyte.Screen(columns, rows)
        self.stream = pyte.ByteStream(self.screen)
        self.raw = bytearray()
        self.keys_pressed = 0
        #: of them those that went to alarms
        self.alarm_keys = 0
        #: whether an alarm that comes up is silenced while something else is waited for
        self.silences = False
        self.home = home
        self._held = b""
        self._escaped = self._thumb = 0.0
        self._apart_s = MEANT_S / float(rate.partition("@")[0] or 1)
        with warnings.catch_warnings():
            # The child only becomes another program: threads of this one do not matter to it.
            warnings.filterwarnings(
                "ignore", message=".*multi-threaded", category=DeprecationWarning
            )
            self.child = pexpect.spawn(
                started[0],
                started[1:],
                env=environment,  # type: ignore[arg-type]
                dimensions=(rows, columns),
                timeout=PATIENCE_S,
                cwd=str(ROOT),
                preexec_fn=before,
            )
        self.child.delaybeforesend = None  # type: ignore[assignment]
        self.child.delayafterclose = 0.01
        self.child.ptyproc.delayafterclose = 0.01
        self.child.ptyproc.delayafterterminate = 0.01

    def __enter__(self) -> Terminal:
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    @property
    def pid(self) -> int:
        """The process of the program."""
        return int(self.child.pid)

    def end(self) -> None:
        """Make sure that nothing is left running."""
        if self.child.isalive():
            self.kill()
            self.child.wait()
        self.child.close(force=True)

    def pump(self, seconds: float = 0.05) -> bool:
        """Take in what the program has drawn; False where nothing came in that time."""
        try:
            data = self.child.read_nonblocking(65536, seconds)
        except (pexpect.TIMEOUT, pexpect.EOF):
            return False
        self.raw += data
        if _MAY_WHOLE_FRAMES in data:
            self.child.send(_YES)
        self._feed(data)
        return True

    def drain(self) -> None:
        """Take in everything that was drawn so far, up to the end if the program has ended."""
        while self.pump(0.0 if self.child.isalive() else 0.02):
            pass
        if not self.child.isalive():
            self.stream.feed(_PRIVATE.sub(b"", self._held))
            self._held = b""

    def settle(self, quiet_s: float = 0.1, patience_s: float = 0.5) -> str:
        """Take in what is drawn until nothing new comes for a while; give the screen."""
        end = time.monotonic() + patience_s
        while self.pump(quiet_s) and time.monotonic() < end:
            pass
        return self.text

    def _feed(self, data: bytes) -> None:
        """Show it on the emulator: a frame, or a sequence that is cut in two, only as a whole."""
        data = self._held + data
        begun = data.rfind(_FRAME)
        if begun < 0 or _FRAME_ENDS in data[begun:]:
            cut = _UNFINISHED.search(data)
            begun = cut.start() if cut else len(data)
        self._held = data[begun:]
        self.stream.feed(_PRIVATE.sub(b"", data[:begun]))

    @property
    def lines(self) -> list[str]:
        """The screen, line by line."""
        return [line.rstrip() for line in self.screen.display]

    @property
    def text(self) -> str:
        """The screen."""
        return "\n".join(self.lines)

    @property
    def bells(self) -> int:
        """How often the bell was rung (the same byte also ends the setting of a title)."""
        return _TITLE.sub(b"", bytes(self.raw)).count(b"\x07")

    @property
    def dialog(self) -> str:
        """What the dialog that is up says, in one line: its words are broken anywhere."""
        inside = re.findall(r"▌(.*?)▐", self.text)
        return " ".join(" ".join(inside).split())

    def until(self, wanted: str | Callable[[str], Any], patience_s: float = PATIENCE_S) -> str:
        """Wait until the screen shows `wanted` (a regular expression) and give the screen."""
        end = time.monotonic() + patience_s
        shown = wanted if callable(wanted) else lambda text: re.search(wanted, text) is not None
        while True:
            goes_on = self.child.isalive() and time.monotonic() < end
            self.drain()
            if shown(text := self.text):
                return text
            if self.silences and "silences" in text:
                self.press("pageup")
                self.alarm_keys += 1
                self.linger(0.3)  # until it is seen to be gone
            if not goes_on:
                break
            self.pump(POLL_S)
        alive = "" if self.child.isalive() else " (the program has ended)"
        raise NotShown(f"not shown{alive}: {wanted!r}\n{self.text}\n{self.fault_report()[-3000:]}")

    def fault_report(self) -> str:
        """What the program wrote about a fault of its own, if it met one."""
        path = self.home / "booth" / "fault-report.txt"
        return path.read_text("utf-8") if path.exists() else ""

    def press(self, *keys: str) -> None:
        """Press keys by name, or type a text as it stands: at once, for the program minds the order."""
        for key in keys:
            # What follows on Escape within a tenth of a second is read as one sequence with it.
            wait = max(self._escaped + ESCAPE_S, self._thumb if key in THUMB else 0.0)
            self.linger(wait - time.monotonic())
            self.keys_pressed += 1 if key in KEYS else len(key)
            self.send(KEYS.get(key, key))
            if key == "esc":
                self._escaped = time.monotonic()
            elif key in (*THUMB, "enter"):
                self._thumb = time.monotonic() + self._apart_s

    def send(self, data: str) -> None:
        """Send what a key sends, at this very moment."""
        self.child.send(data)

    def linger(self, seconds: float) -> None:
        """Let so much real time pass, taking in what is drawn."""
        end = time.monotonic() + seconds
        while (left := end - time.monotonic()) > 0:
            self.pump(left)

    def resize(self, rows: int, columns: int) -> None:
        """Resize the terminal and its emulator together."""
        self.child.setwinsize(rows, columns)
        self.screen.resize(rows, columns)

    def modes(self) -> tuple[int, int]:
        """Whether the line discipline echoes and edits lines, as it does for a shell."""
        return termios.tcgetattr(self.child.child_fd)[3] & termios.ECHO, termios.tcgetattr(
            self.child.child_fd
        )[3] & termios.ICANON

    def kill(self, number: int = signal.SIGKILL) -> None:
        """Send a signal."""
        with contextlib.suppress(ProcessLookupError):
            os.kill(self.pid, number)

    def hold(self) -> None:
        """Stop the program as the kernel does it, and return once all of it stands still."""
        self.kill(signal.SIGSTOP)
        tasks = Path(f"/proc/{self.child.pid}/task")
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            states = [
                (task / "stat").read_text().rpartition(") ")[2][0] for task in tasks.iterdir()
            ]
            if set(states) == {"T"}:
                return
            time.sleep(0.005)
        raise NotShown("the program was not held")

    def wait(self, patience_s: float = PATIENCE_S) -> int:
        """Wait for the end; give the exit code, or 128 + signal."""
        end = time.monotonic() + patience_s
        while self.child.isalive() and time.monotonic() < end:
            self.pump()
        if self.child.isalive():
            raise NotShown(f"the program did not end\n{self.text}")
        self.drain()
        if self.child.exitstatus is not None:
            return int(self.child.exitstatus)
        return 128 + int(self.child.signalstatus or 0)


#: Queries that the emulator does not know and would print; colours, which would only cost it time.
_PRIVATE = re.compile(rb"\x1b\[[<>=?][0-9;]*[uqm]|\x1b\[\?[0-9;]*\$p|\x1b\[[0-9;]*m")
_TITLE = re.compile(rb"\x1b\][^\x07\x1b]*(\x07|\x1b\\)")
#: Asked whether whole frames may be sent, a terminal of today says yes; then each stands between these.
_MAY_WHOLE_FRAMES, _YES = b"\x1b[?2026$p", b"\x1b[?2026;2$y"
_FRAME, _FRAME_ENDS = b"\x1b[?2026h", b"\x1b[?2026l"
#: The beginning of a sequence at the very end of what was read.
_UNFINISHED = re.compile(rb"\x1b(\[[0-9;<>=?$]*)?\Z")
