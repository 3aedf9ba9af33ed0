"""Benchmarks: a report, never a gate. Each is a ratio to a bare Textual program in the same run.

Run: python -m tests.bench
"""

from __future__ import annotations

import json
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path

import psutil

from tests.bench.drive import BARE, BOOTH, drain, first_paint, start, until
from tests.bench.made import eight_clocks, many_jobs
from tests.bench.past_jobs import past_jobs

#: What stands on the first screen when it can be used: the first and the last bundled profile.
LISTED = (b"Epoxy primer", b"Waterborne two-pack")
RUNS = 9
IDLE_S = 8.0


def enter_to_bench(home: Path, words: Sequence[bytes]) -> float:
    """Seconds from Enter on the first line of the list to a bench that shows all of `words`."""
    child, master, _ = start(BOOTH, home)
    try:
        until(master, [b"Coating profiles"])
        drain(master, 1.0)
        begun = time.perf_counter()
        os.write(master, b"\r")
        until(master, words)
        return time.perf_counter() - begun
    finally:
        child.kill()
        child.wait()
        os.close(master)


def idle_cpu(command: list[str], home: Path, keys: bytes = b"") -> float:
    """CPU of one core [%] once the program has settled."""
    child, master, _ = start(command, home)
    try:
        drain(master, 2.5)
        if keys:
            os.write(master, keys)
            drain(master, 2.0)
        process = psutil.Process(child.pid)
        before = process.cpu_times()
        begun = time.perf_counter()
        drain(master, IDLE_S)
        after = process.cpu_times()
        used = (after.user - before.user) + (after.system - before.system)
        return 100 * used / (time.perf_counter() - begun)
    finally:
        child.kill()
        child.wait()
        os.close(master)


def key_to_stamp(home: Path) -> tuple[float, float]:
    """Median and 99th percentile [ms] from the byte written to the stamp kept in the log."""
    child, master, _ = start(BOOTH, home)
    lags: list[float] = []
    try:
        drain(master, 2.5)
        os.write(master, b"\r")  # take up the job: its current step is the coats
        drain(master, 2.0)
        log = next((home / "jobs").glob("*.jsonl"))
        for _ in range(60):
            known = log.read_bytes().count(b"\n")
            pressed = time.clock_gettime(time.CLOCK_BOOTTIME)
            os.write(master, b" ")
            for _ in range(200):
                drain(master, 0.01)
                lines = log.read_bytes().splitlines()
                if len(lines) > known:
                    break
            else:
                continue
            events = [json.loads(line) for line in lines[known:]]
            coats = [event for event in events if event["event"].startswith("coat ")]
            if coats:
                lags.append(1000 * (coats[0]["at"]["continuous"] - pressed))
    finally:
        child.kill()
        child.wait()
        os.close(master)
    lags.sort()
    return statistics.median(lags), lags[int(0.99 * (len(lags) - 1))]


def by_turns(*measures: Callable[[], float]) -> list[float]:
    """The median of each, measured by turns, so that a busy machine is busy for all of them."""
    found: list[list[float]] = [[] for _ in measures]
    for _ in range(RUNS):
        for times, measure in zip(found, measures, strict=True):
            times.append(measure())
    return [statistics.median(times) for times in found]


def starts() -> float:
    """Start to the list that can be used, with and without an open job, and from there to its bench.

    Gives the start of a bare program [s].
    """
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryDirectory() as busy:
        home, open_job = Path(folder), Path(busy)
        eight_clocks(open_job / "jobs")
        first_paint(BOOTH, home, LISTED)  # compile everything once
        first_paint(BARE, home, [b"hello"])
        bare, empty, listed, bench = by_turns(
            lambda: first_paint(BARE, home, [b"hello"]),
            lambda: first_paint(BOOTH, home, LISTED),
            lambda: first_paint(BOOTH, open_job, [*LISTED, b"Trial clear"]),
            lambda: enter_to_bench(open_job, [b"part 8", b"Coats and waits"]),
        )
    print(f"a bare Textual program: {1000 * bare:.0f} ms to its first frame")
    for what, seconds in (
        ("start to the list of profiles", empty),
        ("the same with an open job listed", listed),
        ("Enter on that job to its bench with eight clocks", bench),
    ):
        print(f"{what}: {seconds / bare:.2f} of that ({1000 * seconds:.0f} ms)")
    return bare


def main() -> None:
    """Measure everything once and print it."""
    bare_s = starts()
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        eight_clocks(home / "jobs")
        clocks, hello = idle_cpu(BOOTH, home, b"\r"), idle_cpu(BARE, home)
        print(
            f"idle, eight clocks running: {clocks:.2f} % of a core; bare {hello:.2f} %; "
            f"{clocks / max(hello, 0.01):.1f} times"
        )
        middle, most = key_to_stamp(home)
        print(
            f"key to stamp with eight clocks: median {middle:.2f} ms, 99th percentile {most:.2f} ms"
        )
    with tempfile.TemporaryDirectory() as folder:
        jobs = Path(folder) / "jobs"
        many_jobs(jobs, 1000)
        code = (
            "import time; from pathlib import Path; from booth.log.history import history\n"
            f"t = time.perf_counter(); n = len(history(Path({str(jobs)!r})))\n"
            "print(n, time.perf_counter() - t)"
        )
        out = subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True
        ).stdout.split()
        print(
            f"history of {out[0]} jobs of 100 events: {float(out[1]) / bare_s:.2f} of the start of a "
            f"bare program ({1000 * float(out[1]):.0f} ms)"
        )
    past_jobs(bare_s)


if __name__ == "__main__":
    main()
