"""Starts an installed `booth` in a pseudo-terminal from an empty home and does the first step of a job.

Run by hand: python tests/terminal/first_step.py PATH-OF-BOOTH
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.terminal.driver import Terminal
from tests.terminal.painter import read_a_caution


def main(command: str) -> None:
    """Open a bundled profile, acknowledge a caution, see that it is on disk, leave."""
    with tempfile.TemporaryDirectory() as folder, Terminal(Path(folder), command=[command]) as run:
        run.until("Coating profiles")
        run.until("demo")
        run.press("enter")
        run.until("Parts")
        run.press("left door, right door", "enter")
        run.until("read and understood")
        read_a_caution(run)
        logs = list((Path(folder) / "booth" / "jobs").glob("*.jsonl"))
        kept = logs[0].read_text("utf-8").splitlines()
        if len(logs) != 1 or "caution acknowledged" not in kept[-1]:
            raise SystemExit(f"the caution is not in the log: {kept}")
        run.press("f10")
        code = run.wait()
        if code != 0:
            raise SystemExit(f"the program ended with {code}")
    print("the installed program started, kept a first step and left cleanly")


if __name__ == "__main__":
    main(sys.argv[1])
