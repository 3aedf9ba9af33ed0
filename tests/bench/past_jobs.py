"""Past jobs by the thousand: start, list, search, side by side, job after job, as a painter's keys ask for
them in the real program; and the memory it takes."""

from __future__ import annotations

import os
import statistics
import tempfile
import time
from pathlib import Path

import psutil

from tests.bench.drive import BARE, BOOTH, drain, first_paint, start, until
from tests.bench.made import many_jobs

#: Keys as a terminal sends them.
END, F6, F11, F12 = b"\x1b[F", b"\x1b[17~", b"\x1b[23~", b"\x1b[24~"
KEYS = 9
#: What the first screen reads takes less than this.
READ_S = 3.0


def pressed(master: int, key: bytes, *words: bytes) -> float:
    """Seconds from a key to all of these words on the screen."""
    begun = time.perf_counter()
    os.write(master, key)
    until(master, words)
    return time.perf_counter() - begun


def listed(master: int) -> tuple[float, float]:
    """Seconds from Enter on 'Past jobs' to the first page of the list, and to all of it."""
    begun = time.perf_counter()
    os.write(master, END + b"\r")
    seen, first = b"", 0.0
    while b"type a word" not in seen:
        seen += drain(master, 0.005)
        if not first and b"Past jobs  " in seen:
            first = time.perf_counter() - begun
    return first, time.perf_counter() - begun


def walk(home: Path, count: int) -> dict[str, float]:
    """One walk through the past jobs of a home: seconds of each thing, and the memory [MiB]."""
    child, master, begun = start(BOOTH, home)
    found: dict[str, float] = {}
    try:
        until(master, [b"Coating profiles"])
        found["start to the first frame"] = time.perf_counter() - begun
        drain(master, READ_S)  # profiles, shop file and the latest logs
        first, every = listed(master)
        found["Enter to the first page of the list"] = first
        found["Enter to all jobs listed"] = every
        drain(master, 0.5)
        keys = []
        for _ in range(KEYS):
            keys.append(pressed(master, b"d", b"with d"))
            pressed(master, b"\x7f", b"type a word")
        found["a letter to the list redrawn"] = statistics.median(keys)
        os.write(master, F6 + F6)
        drain(master, 0.5)
        found["two jobs side by side"] = pressed(master, F11, b"rows differ")
        pressed(master, b"\x7f", b"Past jobs")
        drain(master, 0.5)
        found["job after job of one product"] = pressed(master, F12, b"mean ")
        found["memory"] = psutil.Process(child.pid).memory_info().rss / 2**20
    finally:
        child.kill()
        child.wait()
        os.close(master)
    return found


def bare_memory() -> float:
    """The memory of a bare program [MiB]."""
    with tempfile.TemporaryDirectory() as folder:
        child, master, _ = start(BARE, Path(folder))
        try:
            until(master, [b"hello"])
            return float(psutil.Process(child.pid).memory_info().rss / 2**20)
        finally:
            child.kill()
            child.wait()
            os.close(master)


def past_jobs(bare_s: float) -> None:
    """Measure 1,000 and 10,000 jobs, at the first start and at the next one, and print it."""
    bare_mib = bare_memory()
    for count in (1000, 10000):
        with tempfile.TemporaryDirectory() as folder:
            many_jobs(Path(folder) / "jobs", count)
            for which in ("first start", "next start"):
                found = walk(Path(folder), count)
                memory = found.pop("memory")
                print(
                    f"{count} jobs of 100 entries, {which}: {memory:.0f} MiB (bare {bare_mib:.0f})"
                )
                for what, seconds in found.items():
                    print(
                        f"  {what}: {seconds / bare_s:.2f} of a bare start ({1000 * seconds:.0f} ms)"
                    )


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as empty:
        past_jobs(first_paint(BARE, Path(empty), [b"hello"]))
