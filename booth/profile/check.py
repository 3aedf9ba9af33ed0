"""``booth check``: tells every fault of the files named. Prints to the stream it is handed."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from typing import TextIO

from booth.files.faults import Fault
from booth.files.safe_text import visible
from booth.profile.library import toml_files
from booth.profile.model import Profile
from booth.profile.read import read_profile

__all__ = ["FAULTS", "OK", "USAGE", "check"]

OK, FAULTS, USAGE = 0, 1, 2


def check(paths: Iterable[str | os.PathLike[str]], out: TextIO) -> int:
    """Check files, and the profiles of folders; print all faults and a line for each file.

    Returns: 0 when every file is a profile, 1 when one has faults, 2 when one is not there or
    nothing was named.
    """
    code, any_file = OK, False
    for path in paths:
        any_file = True
        code = max(code, _check_path(Path(path), out))
    if not any_file:
        _say(out, "Name the profiles to check: booth check FILE ...")
        return USAGE
    return code


def _check_path(path: Path, out: TextIO) -> int:
    try:
        there = path.exists()
    except (OSError, ValueError):
        there = False
    if not there:
        _say(out, f"{path}: no such file or folder")
        return USAGE
    broken: dict[Path, tuple[Fault, ...]] = {}
    files = toml_files(path, broken)
    codes = [_told(folder, faults, out) for folder, faults in broken.items()]
    codes += [_check_file(file, out) for file in files]
    if not codes:
        _say(out, f"{path}: no profiles (*.toml) in this folder")
        return USAGE
    return max(codes)


def _check_file(file: Path, out: TextIO) -> int:
    answer = read_profile(file)
    if isinstance(answer, Profile):
        _say(out, f"{file}: a coating profile, {answer.name}")
        return OK
    return _told(file, answer, out)


def _told(file: Path, faults: tuple[Fault, ...], out: TextIO) -> int:
    for fault in faults:
        _say(out, str(fault))
    count = f"{len(faults)} fault" if len(faults) == 1 else f"{len(faults)} faults"
    _say(out, f"{file}: {count}")
    return FAULTS


def _say(out: TextIO, line: str) -> None:
    text = visible(line)
    # A terminal that cannot write a character gets a question mark, not an exception.
    encoding = getattr(out, "encoding", None) or "utf-8"
    print(text.encode(encoding, "replace").decode(encoding), file=out)
