"""All profiles of some folders: those that could be read, and the faults of the others."""

from __future__ import annotations

import os
import shlex
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from pathlib import Path

from booth.files.faults import Fault, counted
from booth.files.safe_text import shortened, visible
from booth.profile.model import Profile
from booth.profile.read import read_profile

__all__ = ["Library", "load_folder", "toml_files"]


@dataclass(frozen=True, slots=True)
class Library:
    """profiles: by name; broken: the faults of each file that could not be read.

    files: where each profile came from, by key; hidden: files whose key was taken already, and by
    which file. The painter's own folder comes before the bundled one, so that a changed copy hides
    the original; faulty: the file with faults that comes first for its key.
    """

    profiles: tuple[Profile, ...] = ()
    broken: dict[Path, tuple[Fault, ...]] = field(default_factory=dict)
    files: dict[str, Path] = field(default_factory=dict)
    hidden: dict[Path, Path] = field(default_factory=dict)
    faulty: dict[str, Path] = field(default_factory=dict)

    def profile(self, key: str) -> Profile | None:
        """The profile of this key, if it could be read."""
        return next((profile for profile in self.profiles if profile.key == key), None)

    def why_not(self, key: str) -> str:
        """Say why no job can be begun with the profile of this key; empty where one can.

        A painter's own file with faults is told even where a bundled one has the same key: that is
        another coating.
        """
        named = shortened(key, most=40)
        if key in self.faulty:
            file = self.faulty[key]
            return (
                f"The coating profile '{named}' has {counted(len(self.broken[file]), 'fault')}: "
                f"booth check {visible(shlex.quote(str(file)))}"
            )
        if self.profile(key) is not None:
            return ""
        known = ", ".join(each.key for each in self.profiles)
        return f"No coating profile '{named}'. There are: {visible(known) or 'none'}."


def load_folder(paths: Iterable[str | os.PathLike[str]]) -> Library:
    """Read every ``*.toml`` of the folders (and the files) named; the first to take a key has it.

    A folder that does not exist yet holds nothing; one that cannot be listed is broken.
    """
    library = Library()
    profiles: list[Profile] = []
    for path in paths:
        for file in toml_files(Path(path), library.broken):
            answer = read_profile(file)
            if not isinstance(answer, Profile):
                library.broken[file] = answer
                if file.stem not in library.files:
                    library.faulty.setdefault(file.stem, file)
            elif answer.key in library.files:
                library.hidden[file] = library.files[answer.key]
            else:
                library.files[answer.key] = file
                profiles.append(answer)
    profiles.sort(key=lambda each: (each.name.casefold(), each.key))
    return replace(library, profiles=tuple(profiles))


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
