"""Saves a profile as a new file: whole or not at all, and never over one that is there."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

from booth.files.slug import slug
from booth.profile.model import Profile
from booth.profile.read import read_text
from booth.profile.write import write
from booth.units import System

__all__ = ["NotSaved", "save_new"]

#: Names that Windows keeps for devices, whatever their ending.
DEVICES = frozenset({"con", "prn", "aux", "nul"}).union(
    f"{port}{number}" for port in ("com", "lpt") for number in range(10)
)
MOST_TRIES = 1000


class NotSaved(Exception):
    """The profile was not saved; the message is a sentence for the painter."""


def save_new(profile: Profile, folder: str | os.PathLike[str], system: System = System.US) -> Path:
    """Save `profile` under a new name in `folder`, which is made if need be; give its path.

    The name follows from the profile's name and is numbered where it is taken. The file is on disk
    when this returns. Raises NotSaved with a sentence; then no file was added.
    """
    text = write(profile, system)
    answer = read_text(text, "the new profile")
    if not isinstance(answer, Profile):
        raise NotSaved(f"The profile is not saved, it could not be read again: {answer[0].text}")
    try:
        content = text.encode("utf-8")
        place = Path(folder)
        place.mkdir(parents=True, exist_ok=True)
        return _put(content, place, slug(profile.name))
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        raise NotSaved(
            f"The profile is not saved in {os.fspath(folder)}: {why}. Nothing was changed."
        ) from error


def _put(content: bytes, folder: Path, stem: str) -> Path:
    """Write `content` beside its final place, flush it, then give it its name."""
    handle, temporary = tempfile.mkstemp(prefix=".new-", suffix=".tmp", dir=folder)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        # A temporary file is its owner's alone; a profile is read by whoever may read the folder.
        os.chmod(temporary, 0o644)
        for name in _names(stem):
            path = folder / name
            if _named(temporary, path):
                _flush_folder(folder)
                return path
        raise OSError(f"{MOST_TRIES} profiles are called {stem}")
    finally:
        with suppress(FileNotFoundError):
            os.unlink(temporary)


def _names(stem: str) -> Iterator[str]:
    if stem in DEVICES:
        stem = f"profile-{stem}"
    yield f"{stem}.toml"
    for number in range(2, MOST_TRIES + 1):
        yield f"{stem}-{number}.toml"


def _named(temporary: str, path: Path) -> bool:
    """Give the file its name, unless the name is taken: then False."""
    try:
        os.link(temporary, path)
    except FileExistsError:
        return False
    except (OSError, NotImplementedError, AttributeError):
        # A disk without hard links (FAT, some network folders): take the name first, then fill it.
        try:
            os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL))
        except FileExistsError:
            return False
        os.replace(temporary, path)
    return True


def _flush_folder(folder: Path) -> None:
    """Have the new name on disk too; a system that cannot open a folder does it by itself."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        with suppress(OSError):
            os.fsync(handle)
    finally:
        os.close(handle)
