"""``booth check``: tells every fault of the files named, profiles, coating systems, shop files. Prints to the stream it is handed."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import TextIO

from booth.files.faults import Fault, counted
from booth.files.file_text import text_of
from booth.files.safe_text import visible
from booth.profile.keys import PROFILE
from booth.profile.library import load_folder, toml_files
from booth.profile.model import Profile
from booth.profile.read import read_noted
from booth.profile.system import (
    FOLDER,
    SYSTEM,
    CoatingSystem,
    is_system_text,
    load_systems,
    read_system,
)
from booth.profile.window_notes import notes_of_profile, notes_of_system
from booth.shop.keys import SHOP
from booth.shop.model import Shop
from booth.shop.read import read_shop
from booth.toml.lines import where

OK, FAULTS, USAGE = 0, 1, 2

#: The name a shop file goes by, whatever stands in it.
NAME = "shop.toml"
#: A text that has one of these is a shop file, unless it also has one of the others.
MARKS = (("gun", 0), ("cup", 0), ("compressor",), ("room",))
MARKS_OF_PROFILES = (("name",), ("source",), ("film",), ("waits",), ("mix",), ("efflux",))

#: Gives the folders of profiles, asked only where a file names some.
Folders = Callable[[], Sequence[Path]]


def check(
    paths: Iterable[str | os.PathLike[str]], out: TextIO, folders: Folders = lambda: ()
) -> int:
    """Check files, and those of folders; print all notes and faults and a line for each file.

    folders: where the profiles that a coating system names are, beside those near its own file.

    Returns: 0 when every file is in order, 1 when one has faults, 2 when one is not there or
    nothing was named.
    """
    codes = [_check_path(Path(path), out, folders) for path in paths]
    if not codes:
        print("Name the profiles to check: booth check FILE ...", file=out)
    return max(codes, default=USAGE)


def _check_path(path: Path, out: TextIO, folders: Folders) -> int:
    broken: dict[Path, tuple[Fault, ...]] = {}
    try:
        why_not = "" if path.exists() else "no such file or folder"
    except (OSError, ValueError):
        why_not = "no such file or folder"
    found = [] if why_not else [(file, *_read(file, folders)) for file in toml_files(path, broken)]
    found = [*((folder, faults, "", ()) for folder, faults in broken.items()), *found]
    if not found:
        why_not = why_not or "no profiles (*.toml) in this folder"
        print(visible(f"{path}: {why_not}"), file=out)
        return USAGE
    for file, faults, what, notes in found:
        told = [
            *map(str, (*notes, *faults)),
            f"{file}: {counted(len(faults), 'fault') if faults else what}",
        ]
        print(*map(visible, told), sep="\n", file=out)
    return FAULTS if any(faults for _, faults, _, _ in found) else OK


def _read(file: Path, folders: Folders) -> tuple[tuple[Fault, ...], str, tuple[Fault, ...]]:
    """The faults of a file, what it is where it has none, and notes on what is odd in it."""
    if is_shop_file(file):
        answer = read_shop(file)
        return answer.faults, f"a shop file, {_in_words(answer.shop)}", ()
    text = text_of(file)
    if isinstance(text, str) and is_system_text(text):
        # Profiles are looked up as for a job; then beside the file, or beside its folder of systems.
        beside = file.parent.parent if file.absolute().parent.name == FOLDER else file.parent
        library = load_folder([*folders(), beside])
        system = read_system(file, library)
        if not isinstance(system, CoatingSystem):
            return system, "", ()
        products = ", then ".join(each.name for each in system.profiles)
        told = f"a coating system, {system.name}: {products}"
        return (), told, notes_of_system(system, library)
    profile, notes = read_noted(file)
    if isinstance(profile, Profile):
        notes = (*notes, *_windows(file, profile, folders))
        return (), f"a coating profile, {profile.name}", notes
    return profile, "", notes


def _windows(file: Path, profile: Profile, folders: Folders) -> tuple[Fault, ...]:
    """Notes on its windows for other products, in the systems that are there."""
    if not any(each.name for each in profile.next_products):
        return ()
    every = [*folders(), file.parent]
    systems = load_systems(every, load_folder(every)).values()
    found = (each for each in systems if isinstance(each, CoatingSystem))
    return notes_of_profile(file, profile, found)


def is_shop_file(path: str | os.PathLike[str]) -> bool:
    """Whether the file at `path` is one, by its name or by what stands in it."""
    if not os.path.isfile(path):
        return False
    if os.path.basename(os.fspath(path)) == NAME:
        return True
    text = text_of(path)
    return isinstance(text, str) and is_shop_text(text)


def is_shop_text(text: str) -> bool:
    """Whether a text is meant as a shop file, damaged or not: it has one of its tables.

    A profile has a table [gun], a shop file a list of tables [[gun]].
    """
    lines = where(text.removeprefix("\ufeff")).lines
    is_profile = any(mark in lines for mark in MARKS_OF_PROFILES)
    return not is_profile and any(mark in lines for mark in MARKS)


def print_keys(out: TextIO) -> int:
    """Print every key of a coating profile, of a coating system and of the shop file."""
    print("\n".join(each.reference() for each in (PROFILE, SYSTEM, SHOP)), end="", file=out)
    return OK


def _in_words(shop: Shop) -> str:
    words = [counted(len(shop.guns), "gun"), counted(len(shop.cups), "flow cup")]
    words += [] if shop.compressor is None else ["the compressor"]
    words += [] if shop.room is None else ["the room"]
    return ", ".join(words)
