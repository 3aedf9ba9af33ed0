"""Saves a profile as a new file, never over one that is there; how it is written whole is in ``files.atomic``."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from booth.files.atomic import write_new
from booth.files.slug import slug
from booth.profile.model import Profile
from booth.profile.read import read_text
from booth.profile.write import write
from booth.units import System

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
    stem = slug(profile.name)
    try:
        return write_new(Path(folder), _names(stem), text.encode("utf-8"))
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        if isinstance(error, FileExistsError):
            why = f"{MOST_TRIES} profiles are called {stem}"
        raise NotSaved(
            f"The profile is not saved in {os.fspath(folder)}: {why}. Nothing was changed."
        ) from error


def _names(stem: str) -> Iterator[str]:
    if stem in DEVICES:
        stem = f"profile-{stem}"
    yield f"{stem}.toml"
    for number in range(2, MOST_TRIES + 1):
        yield f"{stem}-{number}.toml"
