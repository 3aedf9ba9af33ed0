"""A session log open for writing: one event a line, only ever appended to, one writer.

An event is on the disk before ``append`` returns; where it cannot be, NotKept is raised and the
file is as it was. What a crash left at the end is set aside beside the log before anything is
added.
"""

from __future__ import annotations

import errno
import os
from collections.abc import Sequence
from pathlib import Path

from booth.files.atomic import read_all, set_aside, sync
from booth.files.safe_text import visible
from booth.log.codec import UNREADABLE, encode
from booth.log.errors import NotKept, not_done
from booth.log.events import Event, UnknownEvent
from booth.log.parse import LogContent, read_line


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
        #: sentences on what was found wrong with the log and what was done about it
        self.said = [*content.said, *said]

    def append(self, event: Event) -> Event:
        """Bring the event onto the disk; give it as it will be read.

        Raises:
            NotKept: it is not on the disk, and nothing of it is in the log.
        """
        line, kept = checked(event)
        if self._fd is None:
            raise NotKept("This entry is NOT kept: the log is closed. Open the job again.")
        try:
            if not self._mended:
                self._mend()
            if not self.is_in_place:
                raise NotKept(
                    f"This entry is NOT kept: the log {visible(str(self.path))} was moved, "
                    "replaced, deleted or cut short while the job was open. Put it back if it is "
                    "gone, leave the job and open it again."
                )
            self._write(self._fd, b"\n" + line if self._settle(self._fd) else line)
        except OSError as fault:
            again = "enter it again; note it on paper until then"
            raise not_done(self.path, fault, "This entry is NOT kept", again) from fault
        return kept

    @property
    def is_in_place(self) -> bool:
        """Whether the file is open, is the one at its path, and has not become shorter.

        One that was deleted takes entries and loses them.
        """
        if self._fd is None:
            return False
        try:
            here = os.fstat(self._fd)
            return os.path.samestat(here, os.stat(self.path)) and here.st_size >= self._end
        except OSError:
            return False

    def close(self) -> None:
        """Let go of the file and its lock."""
        if self._fd is not None:
            os.close(self._fd)
            self._fd = None

    def __enter__(self) -> Log:
        return self

    def __exit__(self, *_: object) -> None:
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

    def _settle(self, fd: int) -> bool:
        """Bring the end of the log in order; True where a line end has to be written first."""
        if self._half_written:
            self._take_back(fd)
        size = os.fstat(fd).st_size
        if size == self._end:
            return False
        ended = read_all(fd)[-1:] == b"\n"
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
        self.said.append(told)

    def try_to_mend(self) -> None:
        """Mend the end of the log, if it needs that; where it cannot be done, say so."""
        if self._mended:
            return
        try:
            self._mend()
        except OSError as fault:
            what = "The end of the log cannot be mended yet"
            self.said.append(str(not_done(self.path, fault, what)))


def checked(event: Event) -> tuple[bytes, Event]:
    """Give the event as a line that is known to read back, and as it will be read.

    JSON has no words for every number, and a whole number may stand where a broken one is meant.
    """
    try:
        line = encode(event)
        back = read_line(line)
    except (TypeError, *UNREADABLE) as fault:
        raise NotKept(
            f"This entry is NOT kept: something in it cannot be written down ({fault}). "
            "Correct it and enter it again."
        ) from fault
    if isinstance(back, UnknownEvent):
        raise NotKept(f"This entry is NOT kept: {type(event).__name__} is no kind of entry.")
    return line, back
