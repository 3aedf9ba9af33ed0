"""The writer's lock on a log: one program at a time, gone with the program however it ends.

It is held by the open file itself, so a kill leaves nothing behind to clear away. It never waits.
"""

from __future__ import annotations

import errno
import os
import sys

#: Windows locks bytes, and nobody else may then read them: lock one far beyond the end of any log.
FAR_BYTE = 0x7FFF_0000
HELD = frozenset({errno.EACCES, errno.EAGAIN, errno.EWOULDBLOCK, errno.EDEADLK})


def take(fd: int) -> bool | None:
    """Lock the open file for writing; None where its file system has no locks.

    False where another program, or this one through another opening, holds it.
    """
    try:
        _lock(fd)
    except OSError as fault:
        return False if fault.errno in HELD else None
    return True


if sys.platform == "win32":
    import msvcrt

    def _lock(fd: int) -> None:
        """Documented, not tried."""
        os.lseek(fd, FAR_BYTE, os.SEEK_SET)
        msvcrt.locking(fd, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock(fd: int) -> None:
        fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
