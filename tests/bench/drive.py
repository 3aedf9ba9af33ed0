"""A program in a pseudo-terminal, timed from outside."""

from __future__ import annotations

import os
import pty
import select
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path

HELLO = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    def compose(self):
        yield Static("hello")
Bare().run()
"""
BOOTH, BARE = [sys.executable, "-m", "booth"], [sys.executable, "-c", HELLO]


def start(command: list[str], home: Path) -> tuple[subprocess.Popen[bytes], int, float]:
    """Start a program in a pseudo-terminal of 80 x 24."""
    master, slave = pty.openpty()
    import fcntl
    import struct
    import termios

    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    environment = {**os.environ, "BOOTH_HOME": str(home), "TERM": "xterm-256color"}
    begun = time.perf_counter()
    child = subprocess.Popen(
        command, stdin=slave, stdout=slave, stderr=slave, env=environment, start_new_session=True
    )
    os.close(slave)
    return child, master, begun


def drain(master: int, seconds: float) -> bytes:
    """Read what is drawn for so long."""
    found = b""
    end = time.perf_counter() + seconds
    while (left := end - time.perf_counter()) > 0:
        if select.select([master], [], [], left)[0]:
            try:
                found += os.read(master, 65536)
            except OSError:
                break
    return found


def first_paint(command: list[str], home: Path, words: Sequence[bytes]) -> float:
    """Seconds from start to the first frame that shows all of `words`."""
    child, master, begun = start(command, home)
    try:
        until(master, words)
        return time.perf_counter() - begun
    finally:
        child.kill()
        child.wait()
        os.close(master)


def until(master: int, words: Sequence[bytes]) -> None:
    seen = b""
    while not all(word in seen for word in words):
        if not select.select([master], [], [], 20)[0]:
            raise SystemExit(f"{words} did not come: {seen[-400:]!r}")
        seen += os.read(master, 65536)
