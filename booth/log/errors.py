"""What the log says when it cannot do what was asked: what happened, why, what to do."""

from __future__ import annotations

import errno
from pathlib import Path

from booth.files.safe_text import visible


class NotKept(Exception):
    """An entry or a new log could not be brought onto the disk; the message is a sentence."""


class LogBusy(Exception):
    """Another program is writing this job's log; the message is a sentence."""

    def __init__(self, path: Path) -> None:
        self.path = path
        super().__init__(
            f"The job {visible(path.stem)} is open in another booth. Go on with it there, or close "
            "it there and open it here again; another job can be opened at any time."
        )


FULL = "the disk is full", "Free some space on it"
LOCKED = "this account may not write there", "Allow writing to that folder, or choose another"
REASONS = {
    errno.ENOSPC: FULL,
    errno.EDQUOT: ("this account's share of the disk is used up", "Free some space"),
    errno.EFBIG: ("the file may not grow any further", "Free some space or lift the limit"),
    errno.EROFS: ("the disk is write-protected", "Make it writable, or choose another folder"),
    errno.EACCES: LOCKED,
    errno.EPERM: LOCKED,
    errno.EIO: ("the disk reports a fault", "Copy the log to another disk, check this one"),
    errno.ENOENT: ("the log or its folder is gone", "Put it back where it was"),
    errno.ESTALE: ("the network folder is gone", "Connect it again"),
    errno.ENOTDIR: ("a file stands where the folder should be", "Move that file away"),
}


def not_done(path: Path, fault: OSError, what: str, again: str = "try again") -> NotKept:
    """Say `what` was not done with a log, why, and what to do before doing it again."""
    unknown = f"the system says: {fault.strerror or type(fault).__name__}", "Put that right"
    why, then = REASONS.get(fault.errno or 0, unknown)
    return NotKept(f"{what}: {why} ({visible(str(path))}). {then}, then {again}.")
