"""Bytes that are on the disk before anyone says so: syncing, new folders, setting aside."""

from __future__ import annotations

import errno
import os
import sys
from pathlib import Path

__all__ = ["make_folder", "read_all", "set_aside", "sync", "sync_folder"]

BINARY = getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
MOST_SET_ASIDE = 10_000


def sync(fd: int) -> None:
    """Have the file on the disk before returning. Raises OSError where that fails."""
    if sys.platform == "darwin":
        import fcntl

        # There fsync stops at the drive's own cache; network disks know only fsync.
        try:
            fcntl.fcntl(fd, fcntl.F_FULLFSYNC)
            return
        except OSError as fault:
            if fault.errno not in (errno.EINVAL, errno.ENOTSUP, errno.ENOTTY):
                raise
    os.fsync(fd)


def sync_folder(folder: Path) -> None:
    """Have the folder's list of files on the disk, where the platform can do that at all."""
    if sys.platform == "win32":
        return
    fd = os.open(folder, os.O_RDONLY | BINARY)
    try:
        os.fsync(fd)
    except OSError as fault:
        if fault.errno not in (errno.EINVAL, errno.ENOTSUP, errno.EBADF):
            raise
    finally:
        os.close(fd)


def make_folder(folder: Path) -> None:
    """Make the folder and what lies above it, each on the disk before the next."""
    missing = []
    at = folder
    while not at.exists() and at != at.parent:
        missing.append(at)
        at = at.parent
    for each in reversed(missing):
        each.mkdir(exist_ok=True)
        sync_folder(each.parent)
    if not folder.is_dir():
        raise NotADirectoryError(errno.ENOTDIR, os.strerror(errno.ENOTDIR), str(folder))


def read_all(fd: int) -> bytes:
    """Give all bytes of an open file, from its beginning."""
    with open(fd, "rb", closefd=False) as file:
        file.seek(0)
        return file.read()


def set_aside(log: Path, torn: bytes) -> Path:
    """Save what was torn off `log` in a file beside it, on the disk before returning.

    A program that died between saving and cutting saved the same bytes before: that file serves.
    """
    for number in range(1, MOST_SET_ASIDE):
        beside = log.with_name(f"{log.stem}.torn-{number}")
        try:
            fd = os.open(beside, os.O_CREAT | os.O_EXCL | os.O_WRONLY | BINARY, 0o644)
        except FileExistsError:
            if beside.is_file() and beside.read_bytes() == torn:
                return beside
            continue
        try:
            try:
                _write_whole(fd, torn)
                sync(fd)
            finally:
                os.close(fd)
        except OSError:
            beside.unlink(missing_ok=True)
            raise
        sync_folder(beside.parent)
        return beside
    raise OSError(errno.EEXIST, "too many torn ends are set aside here already", str(log))


def _write_whole(fd: int, data: bytes) -> None:
    while data:
        data = data[os.write(fd, data) :]
