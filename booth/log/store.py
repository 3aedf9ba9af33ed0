"""Session logs on the disk: one file a job, one event a line, only ever appended to, one writer.

An event is on the disk before ``append`` returns; where it cannot be, NotKept is raised and the
file is as it was. What a crash left at the end is set aside beside the log before anything is
added.
"""

from __future__ import annotations

import errno
import os
import re
import secrets
import stat
import unicodedata
from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType

from booth.files.atomic import BINARY, make_folder, read_all, set_aside, sync, sync_folder
from booth.files.safe_text import visible
from booth.log import lock
from booth.log.errors import LogBusy, NotKept, not_kept, not_opened
from booth.log.events import Event, JobOpened, encode
from booth.log.parse import LogContent, parse, read_line
from booth.moment import Moment

__all__ = [
    "SUFFIX",
    "Log",
    "LogBusy",
    "LogContent",
    "NotKept",
    "create_log",
    "log_bytes",
    "log_files",
    "open_log",
    "read_log",
]

SUFFIX = ".jsonl"
MOST_OF_NAME = 40
APPENDING = os.O_RDWR | os.O_APPEND | BINARY


class Log:
    """One job's log, open for writing. content: what it held when it was opened."""

    def __init__(
        self, path: Path, fd: int, content: LogContent, end: int, said: Sequence[str] = ()
    ) -> None:
        self.path = path
        self.content = content
        self._fd: int | None = fd
        self._end = end
        self._half_written = False
        self._mended = content.torn is None and not content.unended
        self._more = list(said)

    @property
    def said(self) -> list[str]:
        """Sentences on what was found wrong with the log and what was done about it."""
        return self.content.said + self._more

    def append(self, event: Event) -> None:
        """Bring the event onto the disk.

        Raises:
            NotKept: it is not on the disk, and nothing of it is in the log.
        """
        if self._fd is None:
            raise NotKept("This entry is NOT kept: the log is closed. Open the job again.")
        line = _line(event)
        try:
            if not self._mended:
                self._mend()
            self._check_place()
            if self._settle():
                line = b"\n" + line
            self._write(self._fd, line)
        except OSError as fault:
            raise not_kept(self.path, fault) from fault

    def close(self) -> None:
        """Let go of the file and its lock."""
        if self._fd is not None:
            os.close(self._fd)
            self._fd = None

    def __enter__(self) -> Log:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        fault: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def _write(self, fd: int, line: bytes) -> None:
        """Write and sync; whatever goes wrong, the log ends where it ended before."""
        try:
            written = os.write(fd, line)
            if written != len(line):
                raise OSError(errno.ENOSPC, f"only {written} of {len(line)} bytes were taken")
            sync(fd)
        except BaseException:
            self._half_written = True
            self._take_back(fd)
            raise
        self._end += len(line)

    def _take_back(self, fd: int) -> None:
        """Cut off what a failed write left; where even that fails, the next append tries again."""
        try:
            os.ftruncate(fd, self._end)
            self._half_written = False
            sync(fd)
        except OSError:
            pass

    def _check_place(self) -> None:
        """See that the log still has its name: a deleted file takes entries and loses them."""
        assert self._fd is not None
        here = os.fstat(self._fd)
        try:
            there = os.stat(self.path)
        except FileNotFoundError:
            there = None
        if there is None or not os.path.samestat(here, there):
            raise NotKept(
                f"This entry is NOT kept: the log {visible(str(self.path))} was moved, replaced or "
                "deleted while the job was open. Put it back if it is gone, leave the job and "
                "open it again."
            )

    def _settle(self) -> bool:
        """Bring the end of the log in order; True where a line end has to be written first."""
        assert self._fd is not None
        if self._half_written:
            self._take_back(self._fd)
        size = os.fstat(self._fd).st_size
        if size < self._end:
            raise NotKept(
                f"This entry is NOT kept: the log {visible(str(self.path))} has become shorter "
                f"({size} of {self._end} bytes): something else wrote to it. Leave the job, look "
                "at the file, open the job again."
            )
        if size == self._end:
            return False
        ended = read_all(self._fd)[-1:] == b"\n"
        if self._half_written and ended:
            # A whole line that was refused still stands there: with more after it, it would count.
            raise OSError(errno.EIO, "what a failed write left cannot be taken back")
        # What something else added, or half a line that cannot be cut off, stays a line of its own.
        self._half_written = False
        self._end = size
        return not ended

    def _mend(self) -> None:
        """Set a torn end aside and cut it off, or give the last line the end that it lacks."""
        assert self._fd is not None
        if self.content.torn is not None:
            beside = set_aside(self.path, self.content.torn)
            told = f"What was cut off is set aside in {visible(beside.name)}."
        else:
            told = "The last entry lacked its line end, which is added."
        size = os.fstat(self._fd).st_size
        if size > self.content.end:
            os.ftruncate(self._fd, self.content.end)
        self._end = self.content.end
        if self.content.unended:
            self._write(self._fd, b"\n")
        else:
            sync(self._fd)
        self._mended = True
        self._more.append(told)

    def _try_to_mend(self) -> None:
        try:
            self._mend()
        except OSError as fault:
            said = str(not_opened(self.path, fault, "The end of the log cannot be mended yet"))
            self._more.append(said)


def create_log(folder: Path, first: JobOpened) -> Log:
    """Make the log of a new job with its first event on the disk, and its folder where needed.

    Raises:
        NotKept: that cannot be done; no file is left behind.
    """
    line = _line(first)
    try:
        make_folder(folder)
        path, fd = _new_file(folder, first)
    except OSError as fault:
        raise not_opened(folder, fault, "The job cannot be begun") from fault
    log = Log(path, fd, LogContent(events=[first]), 0)
    try:
        log._more += _lock(path, fd)
        log._write(fd, line)
        sync_folder(folder)
    except BaseException as fault:
        log.close()
        path.unlink(missing_ok=True)
        if isinstance(fault, OSError):
            raise not_opened(folder, fault, "The job cannot be begun") from fault
        raise
    return log


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
        raise not_opened(path, fault, what) from fault
    try:
        said = _lock(path, fd)
        data = read_all(fd)
        log = Log(path, fd, parse(data), len(data), said)
        if not log._mended:
            log._try_to_mend()
    except BaseException as fault:
        os.close(fd)
        if isinstance(fault, OSError):
            raise not_opened(path, fault, what) from fault
        raise
    return log


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


def _lock(path: Path, fd: int) -> list[str]:
    """Take the writer's lock; give what the painter has to know where there is none to take."""
    try:
        if lock.take(fd):
            return []
    except lock.Busy:
        raise LogBusy(path) from None
    return [
        "The disk that holds the log has no locks: see to it that no other booth has this job open."
    ]


def _line(event: Event) -> bytes:
    """Give the event as a line that is known to read back: JSON has no words for every number."""
    try:
        line = encode(event)
        back = read_line(line)
    except (ValueError, TypeError, ArithmeticError, RecursionError) as fault:
        raise NotKept(
            f"This entry is NOT kept: something in it cannot be written down ({fault}). "
            "Correct it and enter it again."
        ) from fault
    if type(back) is not type(event):
        raise NotKept(f"This entry is NOT kept: {type(event).__name__} is no kind of entry.")
    return line


def _new_file(folder: Path, first: JobOpened) -> tuple[Path, int]:
    name = f"{_utc(first.at)}-{_slug(first.profile.name)}"
    for _ in range(100):
        path = folder / f"{name}-{secrets.token_hex(2)}{SUFFIX}"
        try:
            return path, os.open(path, APPENDING | os.O_CREAT | os.O_EXCL, 0o644)
        except FileExistsError:
            continue
    raise OSError(errno.EEXIST, "too many jobs of this name were begun in this minute", str(folder))


def _utc(moment: Moment) -> str:
    try:
        return datetime.fromtimestamp(moment.wall, UTC).strftime("%Y%m%d-%H%M")
    except (OverflowError, OSError, ValueError):
        return "00000000-0000"


def _slug(name: str) -> str:
    """Give a file name's worth of a profile's name: plain letters, digits and hyphens."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain)[:MOST_OF_NAME].strip("-") or "job"
