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
    return _read(text, name)[0]


def read_noted(
    path: str | os.PathLike[str],
) -> tuple[Profile | tuple[Fault, ...], tuple[Fault, ...]]:
    """Read the profile at `path`, with notes on what is odd in it and no fault."""
    text = text_of(path, PROFILE.what)
    return ((text,), ()) if isinstance(text, Fault) else _read(text, os.fspath(path))


def _read(text: str, name: str) -> tuple[Profile | tuple[Fault, ...], tuple[Fault, ...]]:
    values, faults = PROFILE.read(text, name)
    unsaid = {"key": Path(name).stem, "name": "", "source": ""}
    profile = Profile(**{**unsaid, **values})
    if faults.whole:
        judge(faults, profile)
    return faults.sorted() if faults else profile, tuple(faults.notes)


def faults_of(profile: Profile) -> tuple[str, ...]:
    """Judge a profile that came from no file, as one in a log, by the rules for files.

    A sentence for each fault, as ``film.coats: found …; expected …``; none for a profile that is
    as one read from a file.
    """
    faults = PROFILE.judge(profile)
    if not faults:
        judge(faults, profile)
    return tuple(fault.text for fault in faults.sorted())
