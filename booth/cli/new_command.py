"""``booth new``: begins a coating profile, from another one or from nothing; never over a file."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable
from pathlib import Path

from booth.cli.endings import BAD_INPUT
from booth.cli.surroundings import places
from booth.files.atomic import write_new
from booth.files.safe_text import visible
from booth.files.slug import slug
from booth.profile.begin import copy_text, empty_text
from booth.profile.library import NoProfile, load_folder
from booth.profile.model import Profile
from booth.profile.read import read_text
from booth.toml.edit import CannotEdit

LONGEST = 80


def _text_of(key: str, folders: Iterable[Path]) -> str:
    """The text of the profile of this key: the first file of that name, as the library takes it."""
    files = (folder / f"{key}.toml" for folder in folders)
    return next(file for file in files if file.exists()).read_text("utf-8")


def new(options: argparse.Namespace) -> int:
    """Write the file and say where it is and what comes next; give the exit code."""
    name = " ".join(options.name.split())
    if not 0 < len(name) <= LONGEST or not name.isprintable():
        print("booth new: a name is wanted, in one line, as 'Deck oil'.", file=sys.stderr)
        return BAD_INPUT
    where, text = places(), ""
    library = load_folder(where.profiles_dirs)
    if any(slug(each.name) == slug(name) or each.key == slug(name) for each in library.profiles):
        print(f"booth new: there is a profile called {visible(name)} already.", file=sys.stderr)
        return BAD_INPUT
    if options.like is None:
        text = empty_text(name)
    else:
        try:
            like = library.named(options.like).key
            text = copy_text(_text_of(like, where.profiles_dirs), name, like)
        except (CannotEdit, NoProfile) as fault:
            print(f"booth new: {visible(str(fault))}", file=sys.stderr)
            return BAD_INPUT
    assert isinstance(read_text(text, "the new profile"), Profile), "a new profile reads well"
    path = write_new(where.own_profiles_dir, [f"{slug(name)}.toml"], text.encode())
    print(f"Begun: {visible(str(path))}")
    print("Put in the figures of its own data sheet, then: booth check", visible(str(path)))
    return 0
