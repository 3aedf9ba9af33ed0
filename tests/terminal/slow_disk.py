"""Starts booth on a disk that takes its time over every sync, as a memory card or a network folder may.

Run by hand: python -m tests.terminal.slow_disk SECONDS [ARGUMENTS OF BOOTH]
"""

from __future__ import annotations

import os
import sys
import time

from booth.cli.command import main

_sync = os.fsync


def start(seconds: float, arguments: list[str]) -> int:
    """Run booth; each sync comes back so many seconds late."""

    def late(fd: int) -> None:
        time.sleep(seconds)
        _sync(fd)

    os.fsync = late
    return main(arguments)


if __name__ == "__main__":
    sys.exit(start(float(sys.argv[1]), sys.argv[2:]))
