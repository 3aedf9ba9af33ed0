"""Whole files or none: every file that is written at one go is written here, and is on the disk before anyone says so.

``write_new`` never touches a file that is there; ``write_over`` takes the place of one and keeps its
old content where that is asked. However the program ends, the old file or the new one stands there
whole; a kill can leave a hidden ``.new-….tmp`` beside it, which nobody reads. The rest is for logs,
which grow in place: syncing, new folders, a torn end set aside. What a file says is no matter here.
"""

from __future__ import annotations

import errno
import os
import shutil
import sys
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

BINARY = getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)
MOST_SET_ASIDE = 10_000


def write_new(folder: Path, names: Iterable[str], content: bytes) -> Path:
    """Write a whole new file into `folder` under the first of `names` that nothing has; give its path.

    The folder is made where it is missing. Raises OSError, FileExistsError where every name is
    taken; then no file was added.
    """
    make_folder(folder)
    with _written(folder, content) as fresh:
        path = _named(fresh, folder, names, os.rename)
    try:
        sync_folder(folder)
    except OSError:
        path.unlink(missing_ok=True)
        raise
    return path


def write_over(path: Path, content: bytes, keep: Iterable[str] | None = None) -> Path | None:
    """Write a whole file in the place of what is there, if anything is; its folder is made.

    keep: names beside it; the first that nothing has takes what stood there before, and its path is
    given. A link stays a link: what it leads to is written. Raises OSError; then the old file or
    the new one stands there.
    """
    path = Path(os.path.realpath(path))
    make_folder(path.parent)
    kept = None
    with _written(path.parent, content) as fresh:
        if path.exists():
            shutil.copymode(path, fresh)
            if keep is not None:
                kept = _named(path, path.parent, keep, _copy)
                # The second name is on the disk before the first is taken away.
                sync_folder(path.parent)
        os.replace(fresh, path)
    sync_folder(path.parent)
    return kept


@contextmanager
def _written(folder: Path, content: bytes) -> Iterator[Path]:
    """Bring `content` onto the disk under a hidden name, which is gone in the end."""
    fresh = folder / f".new-{os.urandom(6).hex()}.tmp"
    fd = os.open(fresh, os.O_CREAT | os.O_EXCL | os.O_WRONLY | BINARY, 0o644)
    try:
        try:
            while content:
                content = content[os.write(fd, content) :]
            sync(fd)
        finally:
            os.close(fd)
        yield fresh
    finally:
        with suppress(OSError):
            fresh.unlink(missing_ok=True)


def _named(
    file: Path, folder: Path, names: Iterable[str], without_links: Callable[[Path, Path], object]
) -> Path:
    """Give `file` the first of `names` that nothing has."""
    for name in names:
        path = folder / name
        try:
            os.link(file, path)
        except FileExistsError:
            continue
        except (OSError, RuntimeError, AttributeError):
            # A disk without hard links (FAT, some network folders). In the moment between this look
            # and the move another program may take the name; half a file is never there.
            if os.path.lexists(path):
                continue
            without_links(file, path)
        return path
    raise FileExistsError(errno.EEXIST, "every name for it is taken already", str(folder))


def _copy(file: Path, path: Path) -> None:
    write_new(path.parent, [path.name], file.read_bytes())
    shutil.copymode(file, path)


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
    if not folder.exists() and folder != folder.parent:
        make_folder(folder.parent)
        folder.mkdir(exist_ok=True)
        sync_folder(folder.parent)
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
        if beside.is_file() and beside.read_bytes() == torn:
            return beside
        if not os.path.lexists(beside):
            return write_new(beside.parent, [beside.name], torn)
    raise OSError(errno.EEXIST, "too many torn ends are set aside here already", str(log))
