"""Writes a profile as TOML and saves it as a new file, never over one that is there."""

from __future__ import annotations

import os
from pathlib import Path

import tomli_w

from booth.files.atomic import write_new
from booth.files.slug import numbered, slug
from booth.profile.keys import PROFILE
from booth.profile.model import Profile
from booth.profile.read import read_text
from booth.units import System

#: Names that Windows keeps for devices, whatever their ending.
DEVICES = frozenset({"con", "prn", "aux", "nul"}).union(
    f"{port}{number}" for port in ("com", "lpt") for number in range(10)
)
MOST_TRIES = 1000
HEADER = "# Coating profile. `booth check --keys` tells every key.\n\n"


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
    stem = f"profile-{stem}" if stem in DEVICES else stem
    try:
        return write_new(Path(folder), numbered(stem, ".toml", MOST_TRIES), text.encode("utf-8"))
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        if isinstance(error, FileExistsError):
            why = f"{MOST_TRIES} profiles are called {stem}"
        raise NotSaved(
            f"The profile is not saved in {os.fspath(folder)}: {why}. Nothing was changed."
        ) from error


def write(profile: Profile, system: System = System.US) -> str:
    """Give `profile` as the text of a TOML file; read back, it is the same within rounding.

    Each quantity stands in the unit in which its number is shortest, the units of `system` first:
    what was typed as 6.5 fl oz/min comes out as that, though it is kept in ml/min.
    """
    return HEADER + tomli_w.dumps(PROFILE.table.write(profile, system))
