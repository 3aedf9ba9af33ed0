"""Frames: how many are drawn in a second of those wanted, and what each costs, in the largest window.

Run: python -m tests.bench.frames
"""

from __future__ import annotations

import fcntl
import os
import select
import struct
import tempfile
import termios
import time
from pathlib import Path

import psutil

from tests.bench.__main__ import BOOTH, drain, start
from tests.bench.made import open_step

SIZE = (200, 50)
#: What is drawn in tenths: the edge of a cup that runs, the bar of the pace; frames wanted a second.
RUNNING = {"efflux": 10, "pace": 20}
WATCHED_S = 8.0
#: Writes so close to one another are one frame [s].
ONE_FRAME_S = 0.01


def frames(kind: str) -> tuple[float, float]:
    """Frames drawn in a second, and CPU for each [ms], while that step's clock runs."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        open_step(home / "jobs", kind)
        child, master, _ = start(BOOTH, home)
        columns, rows = SIZE
        fcntl.ioctl(master, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        try:
            drain(master, 3.0)
            for key in (b"\r", b" "):  # take the job up; start the clock
                os.write(master, key)
                drain(master, 3.0)
            process = psutil.Process(child.pid)
            before = process.cpu_times()
            drawn, took = _count(master, WATCHED_S)
            after = process.cpu_times()
        finally:
            child.kill()
            child.wait()
            os.close(master)
    used = (after.user - before.user) + (after.system - before.system)
    return drawn / took, 1000 * used / max(drawn, 1)


def _count(master: int, seconds: float) -> tuple[int, float]:
    """How many frames came, and in how long [s]."""
    begun = time.perf_counter()
    drawn, last = 0, 0.0
    while (now := time.perf_counter()) < begun + seconds:
        if select.select([master], [], [], 0.05)[0]:
            os.read(master, 1 << 20)
            now = time.perf_counter()
            drawn += now - last > ONE_FRAME_S
            last = now
    return drawn, time.perf_counter() - begun


def main() -> None:
    """Measure both and print it."""
    for kind, wanted in RUNNING.items():
        drawn, each_ms = frames(kind)
        print(
            f"{kind} at {SIZE[0]}x{SIZE[1]}: {drawn:.1f} of {wanted} frames a second, {each_ms:.1f} ms each"
        )


if __name__ == "__main__":
    main()
