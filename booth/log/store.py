"""The session logs of a folder, one file a job: begun, opened to go on with, read, listed."""

from __future__ import annotations

import errno
import os
import stat
from contextlib import suppress
from pathlib import Path

import msgspec

from booth.files.atomic import BINARY, read_all, write_new
from booth.log import lock
from booth.log.errors import LogBusy, NotKept, not_done
from booth.log.events import JobOpened
from booth.log.judge import oddities
from booth.log.log_file import Log, checked
from booth.log.naming import new_stems, short_name
from booth.log.parse import LogContent, parse

SUFFIX = ".jsonl"
APPENDING = os.O_RDWR | os.O_APPEND | BINARY
NO_LOCKS = (
    "The disk that holds the log has no locks: see to it that no other booth has this job open."
)


def create_log(folder: Path, first: JobOpened) -> Log:
    """Make the log of a new job with its first event on the disk, and its folder where needed.

    Where `first` has no name for the job, it gets that of the log. The file has its name only when
    it is whole: however the program ends, there is no log without its first entry.

    Raises:
        NotKept: that cannot be done; no log is left behind.
    """
    what = "The job cannot be begun"
    odd = oddities(first)
    if odd:
        raise NotKept(f"{what}: {'; '.join(odd)}. Mend the profile's file, then try again.")
    try:
        path = _written(folder, first)
    except OSError as fault:
        raise not_done(folder, fault, what) from fault
    try:
        return open_log(path)
    except NotKept as fault:
        with suppress(OSError):
            path.unlink(missing_ok=True)
        raise NotKept(f"{what}. {fault}") from fault
    except LogBusy as busy:
        raise NotKept(f"{what} here. {busy}") from busy


def _written(folder: Path, first: JobOpened) -> Path:
    taken = [short_name(path) for path in log_files(folder)]
    for stem in new_stems(first.at, first.title, taken):
        name = stem + SUFFIX
        job = first.job or short_name(Path(name))
        line, _ = checked(msgspec.structs.replace(first, job=job))
        with suppress(FileExistsError):
            return write_new(folder, [name], line)
    raise OSError(errno.EEXIST, "too many jobs of this name were begun in this minute", str(folder))


def open_log(path: Path) -> Log:
    """Open a job's log to go on with it, mending what a crash left at its end.

    Raises:
        LogBusy: another program has it open.
        NotKept: it cannot be opened for writing.
    """
    what = "The job cannot be gone on with, only read"
    try:
        _require_file(path)
        fd = os.open(path, APPENDING)
    except OSError as fault:
        raise not_done(path, fault, what) from fault
    try:
        locked = lock.take(fd)
        if locked is False:
            raise LogBusy(path)
        data = read_all(fd)
        log = Log(path, fd, parse(data), len(data), [] if locked else [NO_LOCKS])
        log.try_to_mend()
    except BaseException as fault:
        os.close(fd)
        if isinstance(fault, OSError):
            raise not_done(path, fault, what) from fault
        raise
    return log


def is_free(path: Path) -> bool:
    """Whether the log could be opened now; its lock is held for that moment only."""
    try:
        fd = os.open(path, APPENDING)
    except OSError:
        return False
    try:
        return lock.take(fd) is not False
    finally:
        os.close(fd)


def read_log(path: Path) -> LogContent:
    """Read a log without its lock, changing nothing. Raises OSError where it cannot be read."""
    return parse(log_bytes(path))


def log_bytes(path: Path) -> bytes:
    """Give the bytes of a log. Raises OSError where it cannot be read, or is no file."""
    _require_file(path)
    return path.read_bytes()


def log_files(folder: Path) -> list[Path]:
    """Give what is named as a log in `folder`, latest name first; nothing where it is missing."""
    try:
        names = [name for name in os.listdir(folder) if name.endswith(SUFFIX)]
    except OSError:
        return []
    return [folder / name for name in sorted(names, reverse=True) if not name.startswith(".")]


def _require_file(path: Path) -> None:
    """A pipe or a device by the name of a log would keep us waiting for ever."""
    if not stat.S_ISREG(os.stat(path).st_mode):
        raise OSError(errno.EINVAL, "it is not a file", str(path))
