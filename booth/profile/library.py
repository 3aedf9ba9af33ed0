"""All profiles of some folders: those that could be read, and the faults of the others."""

from __future__ import annotations

import os
import shlex
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import NamedTuple

from booth.files.faults import Fault, quoted
from booth.profile.model import Profile
from booth.profile.read import read_profile


class NoProfile(LookupError):
    """There is no such profile, or it has faults; the message is a sentence."""


class Library(NamedTuple):
    """profiles: by name; broken: the faults of each file, or folder, that could not be read; files:
    where each profile was read, by its key."""

    profiles: tuple[Profile, ...]
    broken: dict[Path, tuple[Fault, ...]]
    files: Mapping[str, Path] = {}

    def get(self, key: str) -> Profile | None:
        return next((each for each in self.profiles if each.key == key), None)

    def faulty(self, key: str) -> Path | None:
        """Give the file of this key that could not be read."""
        return next((file for file in self.broken if file.stem == key), None)

    def named(self, key: str) -> Profile:
        """Give the profile of this key. Raises NoProfile with a sentence where it cannot be used."""
        found, faulty = self.get(key), self.faulty(key)
        if found is not None:
            return found
        if faulty is not None:
            raise NoProfile(f"It has faults: {how_to_see(faulty)}")
        known = ", ".join(each.key for each in self.profiles) or "none"
        raise NoProfile(f"No coating profile {quoted(key)}. There are: {known}.")


def how_to_see(file: Path) -> str:
    """The command that tells the faults of a file."""
    return f"booth check {shlex.quote(str(file))}"


def load_folder(paths: Iterable[str | os.PathLike[str]]) -> Library:
    """Read every ``*.toml`` of the folders (and the files) named; the first to take a key has it.

    The painter's own folder comes before the bundled one: a changed copy hides the original, also
    where it has faults, since that is another coating. A folder that does not exist yet holds
    nothing; one that cannot be listed is broken.
    """
    broken: dict[Path, tuple[Fault, ...]] = {}
    answers: dict[str, object] = {}
    files: dict[str, Path] = {}
    for path in paths:
        for file in toml_files(Path(path), broken):
            answer = read_profile(file)
            if not isinstance(answer, Profile):
                broken[file] = answer
            answers.setdefault(file.stem, answer)
            files.setdefault(file.stem, file)
    profiles = [answer for answer in answers.values() if isinstance(answer, Profile)]
    profiles.sort(key=lambda each: (each.name.casefold(), each.key))
    return Library(tuple(profiles), broken, files)


def toml_files(path: Path, broken: dict[Path, tuple[Fault, ...]]) -> list[Path]:
    """Give the profiles of a folder in the order of their names, or the file itself."""
    try:
        names = sorted(os.listdir(path))
    except NotADirectoryError:
        return [path]
    except FileNotFoundError:
        return []
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or "a name no folder can have"
        found = f"a folder that cannot be listed ({why})"
        broken[path] = (Fault(os.fspath(path), None, "", found, "a folder of profiles"),)
        return []
    # A name that begins with a dot is a file being written, or an editor's own.
    return [path / name for name in names if name.lower().endswith(".toml") and name[0] != "."]
