"""Reads a coating profile strictly: a Profile, or every fault of the file. Never raises."""

from __future__ import annotations

import os
from pathlib import Path

from booth.files.faults import Fault
from booth.files.file_text import text_of
from booth.profile.consistency import judge
from booth.profile.keys import PROFILE
from booth.profile.model import Profile


def read_profile(path: str | os.PathLike[str]) -> Profile | tuple[Fault, ...]:
    """Read the profile at `path`; its key is the file's name without the ending."""
    text = text_of(path, PROFILE.what)
    return (text,) if isinstance(text, Fault) else read_text(text, os.fspath(path))


def read_text(text: str, name: str) -> Profile | tuple[Fault, ...]:
    """Read a profile from its text; `name` stands for the file in faults."""
    values, faults = PROFILE.read(text, name)
    if faults.whole:
        judge(faults, **{part: values.get(part) for part in ("mix", "film", "waits", "steps")})
    return faults.sorted() if faults else Profile(key=Path(name).stem, **values)


def faults_of(profile: Profile) -> tuple[str, ...]:
    """Judge a profile that came from no file, as one in a log, by the rules for files.

    A sentence for each fault, as ``film.coats: found …; expected …``; none for a profile that is
    as one read from a file.
    """
    faults = PROFILE.judge(profile)
    if not faults:
        judge(faults, profile.mix, profile.film, profile.waits, profile.steps)
    return tuple(fault.text for fault in faults.sorted())
